// SPDX-License-Identifier: Apache-2.0
package kerfglow.api;

import java.util.Optional;
import kerfglow.api.proof.Part;
import org.osgi.annotation.versioning.ProviderType;

/** The values in force: from the check, then the shop sheet, then the job sheet, then the command line. */
@ProviderType
public interface Settings {
    /** The value that holds where nothing more specific was given. */
    <T> T get(Setting<T> setting);

    /** The value that holds for one part: by its role, material, thickness, layer or id. */
    <T> T get(Setting<T> setting, Part part);

    /** The value for one part of a setting that has no default; empty when nobody gave one that holds for it. */
    default <T> Optional<T> given(Setting<T> setting, Part part) {
        return Optional.ofNullable(get(setting, part));
    }
}
