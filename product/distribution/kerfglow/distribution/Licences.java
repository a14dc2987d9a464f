// SPDX-License-Identifier: Apache-2.0
package kerfglow.distribution;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.regex.Pattern;
import org.cyclonedx.model.License;

/** The folder {@code licences} of a program: a list of all jars, the text of each licence, and what each jar itself says about licences. */
final class Licences {
    /** Where libraries keep their licences and notices. */
    private static final Pattern TEXT = Pattern.compile("(?i)META-INF/[^/]*(licen[cs]e|notice|AL2\\.0|LGPL2\\.1)[^/]*|licen[cs]e/[^/]+|about\\.html|about_files/[^/]+|.*/[^/]*LICENSE[^/]*\\.txt");

    private Licences() {
    }

    static void write(Path program, List<Shipped> jars) throws IOException {
        Path folder = Files.createDirectories(program.resolve("licences"));
        StringBuilder list = new StringBuilder("""
                What ships in plugins/, each with the licence of the work as a whole (SPDX). The text of a licence is the file of
                its name in this folder. What a jar says itself, also about parts of others inside it, is in the folder of its name.

                """);
        Set<String> ids = new TreeSet<>();
        for (Shipped jar : jars) {
            List<String> own = copyTexts(jar, folder);
            ids.addAll(Dependencies.ids(jar.licence()));
            list.append(jar.jar().getFileName()).append('\t').append(jar.licence()).append('\t').append(own.isEmpty() ? "" : jar.name() + "/").append('\n');
        }
        for (String id : ids) {
            Files.writeString(folder.resolve(id + ".txt"), standardText(id));
        }
        Files.writeString(folder.resolve("list.txt"), list);
    }

    private static List<String> copyTexts(Shipped jar, Path folder) throws IOException {
        List<String> names = new ArrayList<>();
        try (JarFile file = new JarFile(jar.jar().toFile())) {
            List<JarEntry> texts = file.stream().filter(entry -> !entry.isDirectory() && !entry.getName().endsWith(".class") && TEXT.matcher(entry.getName()).matches())
                    .sorted(Comparator.comparing(JarEntry::getName)).toList();
            for (JarEntry text : texts) {
                String name = text.getName().replaceFirst("^META-INF/", "").replace('/', '-');
                Path target = Files.createDirectories(folder.resolve(jar.name())).resolve(name);
                try (InputStream in = file.getInputStream(text)) {
                    Files.write(target, in.readAllBytes());
                }
                names.add(name);
            }
        }
        return names;
    }

    /** The text that SPDX lists under an id; the CycloneDX library carries them all. */
    private static String standardText(String id) throws IOException {
        try (InputStream in = License.class.getResourceAsStream("/licenses/" + id + ".txt")) {
            if (in == null) {
                throw new IOException("docs/decisions.md, table of dependencies: " + id + " is no licence that SPDX lists");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).replace("\r\n", "\n");
        }
    }
}
