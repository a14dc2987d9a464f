// SPDX-License-Identifier: Apache-2.0
package kerfglow.fuzz;

import java.nio.file.Path;
import java.util.List;
import kerfglow.api.proof.ImportOptions;
import kerfglow.api.proof.ProofException;

/** Any bytes as a proof: refused in words, or sound. */
public final class ProofBytes {
    private static final Path FOLDER = Bench.folder("proof");

    private ProofBytes() {
    }

    public static void fuzzerTestOneInput(byte[] bytes) {
        Path file = Bench.write(FOLDER.resolve("proof.svg"), bytes);
        Guard.over(FOLDER.toString(), () -> Bench.requireSound(Bench.importer().read(file, ImportOptions.defaults())), List.of(ProofException.class));
    }
}
