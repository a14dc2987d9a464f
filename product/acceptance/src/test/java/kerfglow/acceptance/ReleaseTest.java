// SPDX-License-Identifier: Apache-2.0
package kerfglow.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import aQute.bnd.differ.Baseline;
import aQute.bnd.differ.DiffPluginImpl;
import aQute.bnd.header.Parameters;
import aQute.bnd.osgi.Analyzer;
import aQute.bnd.osgi.Descriptors;
import aQute.bnd.osgi.Instructions;
import aQute.bnd.osgi.Jar;
import aQute.bnd.osgi.Processor;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.jar.JarFile;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is handed over: versions, archives, layout. */
class ReleaseTest {
    private static final Path TOP = Kerfglow.TOP;

    /** OSGi semantic versioning (OSGi Core 8, 3.7): the build fails on a change of the API that its version does not admit. */
    @Test
    void the_api_changes_only_as_its_version_admits() throws Exception {
        try (Stream<Path> baselines = Files.list(TOP.resolve("product/baseline"))) {
            for (Path baseline : baselines.filter(path -> path.toString().endsWith(".jar")).toList()) {
                String bundle = baseline.getFileName().toString().replaceFirst("_.*", "");
                Path built = TOP.resolve("bundles/" + bundle + "/target/" + bundle + "-0.1.0-SNAPSHOT.jar");
                assertEquals(Set.of(), mismatches(built, baseline), bundle + ": raise the version of these packages in its manifest, or undo the change");
            }
        }
    }

    private static Set<String> mismatches(Path built, Path released) throws Exception {
        try (Processor processor = new Processor(); Jar newer = new Jar(built.toFile()); Jar older = new Jar(released.toFile())) {
            DiffPluginImpl differ = new DiffPluginImpl();
            Set<String> wrong = new TreeSet<>();
            for (Baseline.Info info : new Baseline(processor, differ).baseline(newer, older, new Instructions())) {
                if (info.mismatch) {
                    wrong.add(info.packageName + " is " + info.newerVersion + ", should be " + info.suggestedVersion);
                }
            }
            return wrong;
        }
    }

    /** Class files also refer to packages that no import statement names; one that the manifest forgets fails only when it is used. */
    @Test
    void manifests_import_every_package_that_class_files_refer_to() throws Exception {
        try (Stream<Path> bundles = Files.list(TOP.resolve("bundles"))) {
            for (Path bundle : bundles.toList()) {
                String name = bundle.getFileName().toString();
                try (Analyzer analyzer = new Analyzer(new Jar(bundle.resolve("target/" + name + "-0.1.0-SNAPSHOT.jar").toFile()))) {
                    Set<String> imported = new Parameters(analyzer.getJar().getManifest().getMainAttributes().getValue("Import-Package")).keySet();
                    analyzer.analyze();
                    Set<String> missing = new TreeSet<>();
                    analyzer.getReferred().keySet().stream().map(Descriptors.PackageRef::getFQN)
                            .filter(each -> !each.startsWith("java.") && !imported.contains(each) && analyzer.getContained().keySet().stream().noneMatch(own -> own.getFQN().equals(each)))
                            .forEach(missing::add);
                    assertEquals(Set.of(), missing, name);
                }
            }
        }
    }

    @Test
    void there_is_an_archive_for_each_platform() throws IOException {
        Path products = TOP.resolve("product/target/products");
        assertTrue(Files.size(products.resolve("kerfglow-linux.gtk.x86_64.tar.gz")) > 1_000_000);
        assertTrue(Files.size(products.resolve("kerfglow-macosx.cocoa.aarch64.tar.gz")) > 1_000_000);
        try (ZipFile windows = new ZipFile(products.resolve("kerfglow-win32.win32.x86_64.zip").toFile())) {
            Set<String> names = windows.stream().map(entry -> entry.getName()).collect(Collectors.toSet());
            assertTrue(names.stream().anyMatch(name -> name.endsWith("kerfglow.cmd")), names::toString);
            assertTrue(names.stream().anyMatch(name -> name.contains("kerfglow.check.router_")), names::toString);
        }
    }

    /** The plain unit build repeats the versions of the target platform; they must not drift apart. */
    @Test
    void the_unit_build_uses_the_versions_that_ship() throws IOException {
        Pattern dependency = Pattern.compile("<groupId>([^<]+)</groupId><artifactId>([^<]+)</artifactId><version>([^<]+)</version>");
        Map<String, String> shipped = new HashMap<>();
        Matcher target = dependency.matcher(Files.readString(TOP.resolve("product/kerfglow.target")));
        while (target.find()) {
            shipped.put(target.group(1) + ":" + target.group(2), target.group(3));
        }
        Matcher unit = dependency.matcher(Files.readString(TOP.resolve("product/unit/pom.xml")));
        int compared = 0;
        while (unit.find()) {
            String version = shipped.get(unit.group(1) + ":" + unit.group(2));
            if (version != null) {
                assertEquals(version, unit.group(3), unit.group(2));
                compared++;
            }
        }
        assertTrue(compared >= 10, "compared " + compared);
    }

    @Test
    void the_top_level_holds_what_it_should() throws IOException {
        try (Stream<Path> top = Files.list(TOP)) {
            Set<String> names = top.map(path -> path.getFileName().toString()).filter(name -> !name.startsWith(".") && !name.equals("target"))
                    .collect(Collectors.toCollection(TreeSet::new));
            assertEquals(new TreeSet<>(List.of("README.md", "DEVELOPERS.md", "pom.xml", "bundles", "features", "product", "testdata", "docs", "LICENSE")), names);
        }
    }

    /** The checks that ship use what a shop's check can use and nothing else: by their manifests, by their classes, by the libraries of a new project. */
    @Test
    void the_checks_that_ship_have_no_back_door(@TempDir Path project) throws Exception {
        Path plugins = Kerfglow.program().resolveSibling("plugins");
        Set<String> published = new TreeSet<>();
        Kerfglow.run("new-check", "acme.trial", "--folder", project.toString());
        try (Stream<Path> libraries = Files.list(project.resolve("lib"))) {
            for (Path library : libraries.filter(path -> path.toString().endsWith(".jar")).toList()) {
                published.addAll(header(library, "Export-Package").keySet());
            }
        }
        published.remove("kerfglow.testkit"); // for tests; in no worker process
        int checks = 0;
        try (Stream<Path> all = Files.list(plugins)) {
            for (Path check : all.filter(path -> path.getFileName().toString().startsWith("kerfglow.check.")).toList()) {
                String name = check.getFileName().toString();
                for (String none : List.of("Require-Bundle", "DynamicImport-Package", "Fragment-Host", "Bundle-Activator", "Eclipse-BuddyPolicy")) {
                    assertTrue(header(check, none).isEmpty(), name + ": " + none);
                }
                Set<String> used = new TreeSet<>(header(check, "Import-Package").keySet());
                try (Analyzer analyzer = new Analyzer(new Jar(check.toFile()))) {
                    analyzer.analyze();
                    analyzer.getReferred().keySet().stream().map(Descriptors.PackageRef::getFQN).filter(each -> !each.startsWith("java."))
                            .filter(each -> analyzer.getContained().keySet().stream().noneMatch(own -> own.getFQN().equals(each))).forEach(used::add);
                }
                used.removeAll(published);
                used.remove("org.osgi.service.component.annotations"); // read when the bundle is built, gone when it runs
                assertEquals(Set.of(), used, name);
                checks++;
            }
        }
        assertTrue(checks >= 10, "looked at " + checks);
    }

    private static Parameters header(Path jar, String name) throws IOException {
        try (JarFile file = new JarFile(jar.toFile())) {
            return new Parameters(file.getManifest().getMainAttributes().getValue(name));
        }
    }

    /** Arrows run one way: checks see the API and the geometry alone; only the importer sees Batik; no check sees another. */
    @Test
    void bundles_import_only_what_they_may() throws IOException {
        try (Stream<Path> bundles = Files.list(TOP.resolve("bundles"))) {
            for (Path bundle : bundles.toList()) {
                String name = bundle.getFileName().toString();
                String manifest = Files.readString(bundle.resolve("META-INF/MANIFEST.MF")).replace("\n ", "");
                Matcher imports = Pattern.compile("Import-Package: (.*)").matcher(manifest);
                String imported = imports.find() ? imports.group(1) : "";
                assertNotNull(imported);
                assertFalse(manifest.contains("Require-Bundle"), name);
                if (name.startsWith("kerfglow.check.")) {
                    assertFalse(imported.replaceAll("kerfglow\\.(api|geometry|light)", "").contains("kerfglow."), name + ": " + imported);
                }
                if (!name.equals("kerfglow.svg")) {
                    assertFalse(imported.contains("batik"), name);
                }
                if (name.equals("kerfglow.api") || name.equals("kerfglow.geometry")) {
                    assertFalse(imported.replace("kerfglow.api.proof", "").contains("kerfglow."), name + ": " + imported);
                }
            }
        }
    }
}
