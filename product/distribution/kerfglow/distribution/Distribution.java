// SPDX-License-Identifier: Apache-2.0
package kerfglow.distribution;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;

/**
 * Completes what the Tycho build assembled: licences and bill of materials into each platform's program, then the archives. Called by product/pom.xml with
 * the folder of programs, the top folder, Maven's local repository, the version, the time of the commit (seconds since 1970) and what to do.
 */
public final class Distribution {
    private static final String BILL = "kerfglow.cdx.json";

    private Distribution() {
    }

    /** @param arguments see above; the last is {@code complete} or {@code archive} */
    public static void main(String[] arguments) throws IOException {
        Path products = Path.of(arguments[0]);
        Path top = Path.of(arguments[1]);
        String version = arguments[3];
        Instant built = Instant.ofEpochSecond(Long.parseLong(arguments[4]));
        boolean complete = arguments[5].equals("complete");
        Dependencies dependencies = complete ? Dependencies.read(top, Path.of(arguments[2])) : null;
        for (Path program : programs(products)) {
            // products/kerfglow/linux/gtk/x86_64/kerfglow
            Path platform = products.resolve("kerfglow").relativize(program.getParent());
            String name = platform.toString().replace('\\', '/').replace('/', '.');
            if (complete) {
                List<Shipped> jars = Shipped.of(program, dependencies);
                Licences.write(program, jars);
                Files.copy(top.resolve("LICENSE"), program.resolve("LICENSE"), StandardCopyOption.REPLACE_EXISTING);
                BillOfMaterials.write(program.resolve(BILL), jars, name, version, built);
            } else {
                Files.copy(program.resolve(BILL), products.resolve("kerfglow-" + name + ".cdx.json"), StandardCopyOption.REPLACE_EXISTING);
                if (name.startsWith("win32")) {
                    Archive.zip(products.resolve("kerfglow-" + name + ".zip"), program, built);
                } else {
                    Archive.tarGz(products.resolve("kerfglow-" + name + ".tar.gz"), program, built);
                }
            }
        }
    }

    private static List<Path> programs(Path products) throws IOException {
        try (Stream<Path> all = Files.find(products.resolve("kerfglow"), 4, (path, attributes) -> attributes.isDirectory() && path.getFileName().toString().equals("kerfglow")
                && Files.isDirectory(path.resolve("plugins")))) {
            return all.sorted().toList();
        }
    }
}
