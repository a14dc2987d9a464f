// SPDX-License-Identifier: Apache-2.0
package kerfglow.api.proof;

import java.nio.file.Path;
import org.osgi.annotation.versioning.ProviderType;

/** Reads a proof. An OSGi service; safe for several threads at once. */
@ProviderType
public interface ProofImporter {
    /**
     * Reads an SVG file. Touches no network and no file but this one; runs no script.
     *
     * @param file the SVG file
     * @param options scale, chord error, progress
     * @return the proof at real size
     * @throws ProofException when the file cannot be used: missing, damaged, not SVG, or over a limit that the message names
     */
    Proof read(Path file, ImportOptions options) throws ProofException;
}
