// SPDX-License-Identifier: Apache-2.0
package kerfglow.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import kerfglow.dropins.Dropins;

/** What the command line does with the checks of a shop. */
interface OwnChecks {
    /** Takes in those of a folder. */
    void use(Path folder);

    /**
     * Writes the project of a new one.
     *
     * @return the files written
     * @throws IllegalArgumentException when the name is none
     */
    List<Path> newCheck(String name, Path folder) throws IOException;

    static OwnChecks of(Dropins dropins) {
        return new OwnChecks() {
            @Override
            public void use(Path folder) {
                dropins.use(folder);
            }

            @Override
            public List<Path> newCheck(String name, Path folder) throws IOException {
                return dropins.newCheck(name, folder);
            }
        };
    }
}
