// SPDX-License-Identifier: Apache-2.0
package kerfglow.distribution;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.jar.JarFile;
import java.util.stream.Stream;

/**
 * One jar of an assembled program.
 *
 * @param library null for our own
 * @param licence an SPDX expression for the work as a whole
 */
record Shipped(Path jar, String name, String version, Dependencies.Library library, String licence) {
    /** Ours, and that of the font inside {@code kerfglow.fonts}. */
    static final String OURS = "Apache-2.0";
    static final String FONT = "OFL-1.1";
    static final String FONT_BUNDLE = "kerfglow.fonts";

    boolean ours() {
        return library == null;
    }

    static List<Shipped> of(Path program, Dependencies dependencies) throws IOException {
        List<Shipped> all = new ArrayList<>();
        try (Stream<Path> jars = Files.list(program.resolve("plugins"))) {
            for (Path jar : jars.sorted().toList()) {
                try (JarFile file = new JarFile(jar.toFile())) {
                    String name = file.getManifest().getMainAttributes().getValue("Bundle-SymbolicName").replaceFirst(";.*", "").strip();
                    String version = file.getManifest().getMainAttributes().getValue("Bundle-Version");
                    boolean ours = name.startsWith("kerfglow.");
                    Dependencies.Library library = ours ? null : dependencies.of(jar, name);
                    String licence = !ours ? library.licence() : name.equals(FONT_BUNDLE) ? OURS + " AND " + FONT : OURS;
                    all.add(new Shipped(jar, name, version, library, licence));
                }
            }
        }
        return all;
    }
}
