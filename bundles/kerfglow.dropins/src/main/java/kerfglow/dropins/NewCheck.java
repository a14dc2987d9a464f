// SPDX-License-Identifier: Apache-2.0
package kerfglow.dropins;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import javax.lang.model.SourceVersion;
import org.eclipse.core.runtime.FileLocator;
import org.osgi.framework.Bundle;
import org.osgi.framework.BundleContext;

/** Writes the project of a shop's own check: it builds, its tests pass, and it needs nothing of the program but the bundles that lie in it. */
final class NewCheck {
    private static final Pattern NAME = Pattern.compile("[a-z][a-z0-9-]*(\\.[a-z][a-z0-9-]*)+");
    /** What a check is compiled against. */
    private static final List<String> PUBLISHED = List.of("kerfglow.api", "kerfglow.geometry", "kerfglow.light", "org.locationtech.jts.jts-core", "kerfglow.testkit");
    /** What the test kit needs beside those to read a drawing as the program does. */
    private static final List<String> FOR_TESTS = List.of("kerfglow.host", "kerfglow.svg", "kerfglow.fonts", "org.snakeyaml.engine", "org.apache.batik.css",
            "wrapped.org.apache.xmlgraphics.xmlgraphics-commons", "wrapped.xml-apis.xml-apis-ext", "org.apache.commons.commons-io", "org.apache.commons.commons-logging", "org.eclipse.osgi");

    private final String id;
    private final Path folder;

    private NewCheck(String id, Path folder) {
        this.id = id;
        this.folder = folder;
    }

    /**
     * Writes the project. Files that are there already are left as they are, but for the program's bundles, which are written anew.
     *
     * @param id {@code owner.risk}, the id of the check to be
     * @param folder where the project comes to be
     * @return the files written
     * @throws IllegalArgumentException when the id is none; the message says what one is
     */
    static List<Path> write(String id, Path folder, BundleContext program) throws IOException {
        NewCheck project = new NewCheck(id, folder);
        if (!NAME.matcher(id).matches() || !SourceVersion.isName(project.packageName())) {
            throw new IllegalArgumentException("\"" + id + "\" is no name for a check: write OWNER.RISK, lower case with hyphens and no word of Java, for instance acme.seams");
        }
        return project.write(program);
    }

    private String packageName() {
        return id.replace('-', '_');
    }

    private String className() {
        StringBuilder name = new StringBuilder();
        for (String word : id.substring(id.lastIndexOf('.') + 1).split("-")) {
            name.append(word.substring(0, 1).toUpperCase(Locale.ROOT)).append(word.substring(1));
        }
        return name.append("Check").toString();
    }

    private List<Path> write(BundleContext program) throws IOException {
        Map<String, Path> published = files(PUBLISHED, program);
        Map<String, Path> forTests = files(FOR_TESTS, program);
        String inPackage = packageName().replace('.', '/') + "/";
        Map<String, String> files = new LinkedHashMap<>();
        files.put("pom.xml", "pom.xml.txt");
        files.put("README.md", "README.md.txt");
        files.put("src/main/java/" + inPackage + className() + ".java", "Check.java.txt");
        files.put("src/main/resources/" + inPackage + "page.md", "page.md.txt");
        files.put("src/test/java/" + inPackage + className() + "Test.java", "CheckTest.java.txt");
        List<Path> written = new ArrayList<>();
        for (Map.Entry<String, String> file : files.entrySet()) {
            Path target = folder.resolve(file.getKey());
            if (!Files.exists(target)) {
                Files.createDirectories(target.getParent());
                Files.writeString(target, filled(file.getValue(), published, forTests));
                written.add(target);
            }
        }
        copy(published, folder.resolve("lib"), written);
        copy(forTests, folder.resolve("lib/test"), written);
        return written;
    }

    private static Map<String, Path> files(List<String> names, BundleContext program) throws IOException {
        Map<String, Path> files = new LinkedHashMap<>();
        for (String name : names) {
            Bundle bundle = Arrays.stream(program.getBundles()).filter(each -> name.equals(each.getSymbolicName())).findFirst().orElse(null);
            if (bundle != null) {
                files.put(name, FileLocator.getBundleFileLocation(bundle).orElseThrow(() -> new IOException("bundle " + name + " is no file")).toPath());
            }
        }
        return files;
    }

    private static void copy(Map<String, Path> bundles, Path to, List<Path> written) throws IOException {
        Files.createDirectories(to);
        for (Map.Entry<String, Path> bundle : bundles.entrySet()) {
            written.add(Files.copy(bundle.getValue(), to.resolve(bundle.getKey() + ".jar"), StandardCopyOption.REPLACE_EXISTING));
        }
    }

    private String filled(String template, Map<String, Path> published, Map<String, Path> forTests) throws IOException {
        StringBuilder dependencies = new StringBuilder();
        published.keySet().forEach(name -> dependencies.append("    <dependency><groupId>").append(name, 0, name.lastIndexOf('.')).append("</groupId><artifactId>").append(name)
                .append("</artifactId><version>1</version><scope>system</scope><systemPath>${kerfglow.lib}/").append(name).append(".jar</systemPath></dependency>\n"));
        StringBuilder libraries = new StringBuilder();
        forTests.keySet().forEach(name -> libraries.append("            <additionalClasspathElement>${kerfglow.lib}/test/").append(name).append(".jar</additionalClasspathElement>\n"));
        try (InputStream in = NewCheck.class.getResourceAsStream("newcheck/" + template)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).replace("@ID@", id).replace("@OWNER@", id.substring(0, id.lastIndexOf('.')))
                    .replace("@PACKAGE@", packageName()).replace("@CLASS@", className()).replace("@DEPENDENCIES@", dependencies.toString().stripTrailing())
                    .replace("@TEST_LIBRARIES@", libraries.toString().stripTrailing());
        }
    }
}
