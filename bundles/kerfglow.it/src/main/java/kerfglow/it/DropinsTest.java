// SPDX-License-Identifier: Apache-2.0
package kerfglow.it;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;
import java.util.jar.Attributes;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;
import java.util.jar.Manifest;
import kerfglow.api.proof.ProofImporter;
import kerfglow.dropins.Dropins;
import kerfglow.host.CheckCatalogue;
import kerfglow.host.Result;
import kerfglow.host.RunRequest;
import kerfglow.host.Runner;
import kerfglow.host.Watcher;
import kerfglow.it.shop.TrialCheck;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.osgi.framework.BundleContext;
import org.osgi.framework.FrameworkUtil;
import org.osgi.util.tracker.ServiceTracker;

/** The checks folder in the real framework: bundles come, are replaced and go while it runs; their processes stay warm or are ended. */
class DropinsTest {
    private static final long WAIT_MILLIS = 20_000;
    private static final double SOON_SECONDS = 2;
    private static final String IMPORTS = "kerfglow.api;version=\"[1.1,2)\",kerfglow.api.proof;version=\"[1.1,2)\",org.locationtech.jts.geom";

    private final BundleContext bundles = FrameworkUtil.getBundle(DropinsTest.class).getBundleContext();
    private Dropins dropins;
    private Runner runner;
    private CheckCatalogue catalogue;
    @TempDir
    private Path home;
    private Path folder;

    @BeforeEach
    void services() throws Exception {
        dropins = service(Dropins.class);
        runner = service(Runner.class);
        catalogue = service(CheckCatalogue.class);
        folder = Files.createDirectory(home.resolve("checks"));
    }

    @AfterEach
    void nothing_is_left() {
        dropins.use(home.resolve("none"));
        assertTrue(version().isEmpty());
        assertEquals(List.of(), catalogue.refused());
    }

    private <T> T service(Class<T> type) throws InterruptedException {
        ServiceTracker<T, T> tracker = new ServiceTracker<>(bundles, type, null);
        tracker.open();
        T service = tracker.waitForService(WAIT_MILLIS);
        assertNotNull(service, type.getName());
        return service;
    }

    /** Puts a bundle with the trial check into the folder, in one move as a file manager does. */
    private Path drop(String name, String version, String imports) throws IOException {
        Manifest manifest = new Manifest();
        Attributes main = manifest.getMainAttributes();
        main.put(Attributes.Name.MANIFEST_VERSION, "1.0");
        main.putValue("Bundle-ManifestVersion", "2");
        main.putValue("Bundle-SymbolicName", "shop.trial");
        main.putValue("Bundle-Version", version);
        main.putValue("Import-Package", imports);
        main.putValue("Service-Component", "OSGI-INF/check.xml");
        String className = TrialCheck.class.getName();
        Path part = home.resolve("part");
        try (OutputStream out = Files.newOutputStream(part); JarOutputStream zip = new JarOutputStream(out, manifest);
                InputStream bytes = TrialCheck.class.getResourceAsStream("TrialCheck.class")) {
            zip.putNextEntry(new JarEntry(className.replace('.', '/') + ".class"));
            bytes.transferTo(zip);
            zip.putNextEntry(new JarEntry("OSGI-INF/check.xml"));
            zip.write(("<scr:component xmlns:scr=\"http://www.osgi.org/xmlns/scr/v1.4.0\" name=\"" + className + "\"><implementation class=\"" + className
                    + "\"/><service><provide interface=\"kerfglow.api.Check\"/></service></scr:component>").getBytes(StandardCharsets.UTF_8));
        }
        return Files.move(part, folder.resolve(name), StandardCopyOption.REPLACE_EXISTING);
    }

    private Optional<String> version() {
        return catalogue.entries().stream().filter(entry -> entry.info().id().equals("shop.trial")).map(CheckCatalogue.Entry::version).findFirst();
    }

    /** Seconds until it is so. */
    private static double until(BooleanSupplier so) throws InterruptedException {
        long start = System.nanoTime();
        while (!so.getAsBoolean()) {
            assertTrue((System.nanoTime() - start) / 1e6 < WAIT_MILLIS, "it never came to be");
            Thread.sleep(10);
        }
        return (System.nanoTime() - start) / 1e9;
    }

    private Result run(Watcher watcher, String way, String... sheet) throws Exception {
        Path proof = Files.writeString(home.resolve("bar.svg"),
                "<svg xmlns='http://www.w3.org/2000/svg' width='100mm' height='50mm' viewBox='0 0 100 50'><rect x='10' y='10' width='80' height='30'/></svg>");
        Path job = Files.writeString(home.resolve("job.yaml"), sheet.length > 0 ? sheet[0] : "units: metric\n");
        return runner.run(new RunRequest(proof, Optional.of(job), Optional.empty(), way.isEmpty() ? List.of() : List.of("shop.trial.way=" + way), way.isEmpty() ? List.of() : List.of("shop.trial")), watcher);
    }

    private static Result.CheckRow row(Result result) {
        return result.checks().stream().filter(row -> row.check().equals("shop.trial")).findFirst().orElseThrow(() -> new AssertionError(result.remarks().toString()));
    }

    /** What the check says of its process. */
    private String process() throws Exception {
        Result result = run(Watcher.NONE, "good");
        return result.findings().stream().filter(finding -> finding.rule().id().equals("shop.trial.rule")).findFirst()
                .orElseThrow(() -> new AssertionError(row(result).toString())).message();
    }

    @Test
    void a_bundle_comes_is_replaced_and_goes_while_the_program_runs() throws Exception {
        AtomicInteger changes = new AtomicInteger();
        Runnable listener = changes::incrementAndGet;
        catalogue.listen(listener);
        dropins.watch(folder);
        Thread.sleep((long) (1000 * SOON_SECONDS)); // the program runs for a while before anybody drops anything in
        drop("trial.jar", "1.0.0", IMPORTS);
        double came = until(() -> version().equals(Optional.of("1.0.0")));
        assertEquals("1.0.0", row(run(Watcher.NONE, "good")).version());
        assertTrue(catalogue.entries().stream().anyMatch(entry -> entry.info().page().contains("The page.")), "its help");
        drop("trial.jar", "1.0.1", IMPORTS);
        double replaced = until(() -> version().equals(Optional.of("1.0.1")));
        drop("trial.jar", "1.0.2", IMPORTS);
        double again = until(() -> version().equals(Optional.of("1.0.2")));
        assertEquals("1.0.2", row(run(Watcher.NONE, "good")).version());
        assertEquals(3, changes.get(), "one change for each, so that whoever shows results makes them again once");
        Files.delete(folder.resolve("trial.jar"));
        assertTrue(until(() -> version().isEmpty()) < SOON_SECONDS);
        catalogue.unlisten(listener);
        assertTrue(Math.min(came, Math.min(replaced, again)) < SOON_SECONDS, "at best, on a machine that may be busy: " + came + ", " + replaced + ", " + again + " s");
    }

    @Test
    void a_process_stays_warm_until_it_is_at_fault() throws Exception {
        drop("trial.jar", "1.0.0", IMPORTS);
        dropins.use(folder);
        String first = process();
        assertTrue(first.contains("parts 1"), first);
        assertEquals(first, process());
        assertTrue(row(run(Watcher.NONE, "throw")).why().contains("on purpose"));
        assertEquals(first, process(), "what it throws does not end it");
        assertTrue(row(run(Watcher.NONE, "exit")).why().contains("ended with status 5"));
        assertNotEquals(first, process());
    }

    @Test
    void cancel_is_handed_on_and_a_check_that_ignores_it_is_ended() throws Exception {
        drop("trial.jar", "1.0.0", IMPORTS);
        dropins.use(folder);
        String first = process();
        assertTrue(cancelled("wait") < 1);
        assertEquals(first, process(), "it heard, so its process stays");
        assertTrue(cancelled("deaf") < 1, "the run does not wait for it");
        assertNotEquals(first, process());
    }

    private double cancelled(String way) {
        long start = System.nanoTime();
        long[] asked = new long[1];
        Watcher impatient = new Watcher() {
            @Override
            public void progress(String what, double fraction) {
                asked[0] = what.equals("shop.trial") && asked[0] == 0 ? System.nanoTime() : asked[0];
            }

            @Override
            public boolean isCancelled() {
                return asked[0] != 0 && System.nanoTime() - asked[0] > 3e8;
            }
        };
        assertThrows(CancellationException.class, () -> run(impatient, way));
        assertTrue(asked[0] > start, "it told its progress");
        return (System.nanoTime() - asked[0]) / 1e9 - 0.3;
    }

    @Test
    void settings_of_a_job_are_kept_while_the_bundle_is_away() throws Exception {
        String sheet = "settings: {shop.trial.least: 42 mm}\n";
        Result away = run(Watcher.NONE, "", sheet);
        assertTrue(away.remarks().stream().anyMatch(remark -> remark.contains("shop.trial.least is for a check that is not installed; it is left alone")), away.remarks()::toString);
        drop("trial.jar", "1.0.0", IMPORTS);
        dropins.use(folder);
        Result there = run(Watcher.NONE, "", sheet);
        assertEquals(42.0, there.findings().stream().filter(finding -> finding.rule().id().equals("shop.trial.rule")).findFirst().orElseThrow().measured().orElseThrow().value());
    }

    private String refused() {
        return catalogue.refused().stream().map(CheckCatalogue.Refused::why).reduce("", String::concat);
    }

    @Test
    void a_bundle_that_does_not_start_says_what_is_missing() throws Exception {
        drop("trial.jar", "1.0.0", IMPORTS + ",com.example.glue;version=\"[1.2,2)\"");
        Files.writeString(folder.resolve("text.jar"), "this is no archive");
        dropins.use(folder);
        assertTrue(refused().contains("it needs the package com.example.glue, version 1.2.0 or later but below 2.0.0, which neither this program nor a bundle in the folder has"), refused());
        assertEquals(2, catalogue.refused().size());
        assertTrue(run(Watcher.NONE, "").remarks().stream().anyMatch(remark -> remark.contains("trial.jar is not used: it needs the package com.example.glue")));
        Files.delete(folder.resolve("text.jar"));
        drop("trial.jar", "1.0.0", "kerfglow.api;version=\"[9,10)\"");
        dropins.use(folder);
        assertTrue(refused().contains("kerfglow.api, version 9.0.0 or later but below 10.0.0; here there is version 1."), refused());
        drop("trial.jar", "1.0.1", "org.locationtech.jts.geom");
        dropins.use(folder);
        assertTrue(refused().contains("a check of it cannot be made: java.lang.ClassNotFoundException: kerfglow.api"), refused());
    }

    /** The published test kit inside the framework, where the import is a service; its own tests run it without one. */
    @Test
    void a_file_in_place_of_the_folder_is_told() throws Exception {
        dropins.use(Files.writeString(home.resolve("no-folder"), ""));
        assertTrue(refused().contains("a file, not a folder"), refused());
    }

    @Test
    void the_test_kit_runs_inside_the_framework_too() throws Exception {
        CheckTester tester = CheckTester.of(new TrialCheck()).importer(service(ProofImporter.class))
                .svg("<svg xmlns='http://www.w3.org/2000/svg' width='100mm' height='50mm' viewBox='0 0 100 50'><rect x='10' y='10' width='80' height='30'/></svg>")
                .job("settings: {shop.trial.least: 42 mm}");
        tester.expect(TrialCheck.RULE, "POLYGON ((10 10, 90 10, 90 40, 10 40, 10 10))", 42).verify();
        assertThrows(AssertionError.class, () -> tester.expect(TrialCheck.RULE, "POINT (95 45)").verify());
    }

    @Test
    void where_digests_are_listed_only_those_bundles_run() throws Exception {
        Path jar = drop("trial.jar", "1.0.0", IMPORTS);
        Files.writeString(folder.resolve("allowed.sha256"), "0".repeat(64) + "  other.jar\n");
        dropins.use(folder);
        assertTrue(version().isEmpty());
        String digest = HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(jar)));
        assertTrue(refused().contains(digest), refused());
        Files.writeString(folder.resolve("allowed.sha256"), digest + "  trial.jar\n");
        dropins.use(folder);
        assertEquals(Optional.of("1.0.0"), version());
    }

    /** Runs that answer much, throw and end their process, and bundles that are replaced: what is left in the host does not grow. */
    @Test
    void the_heap_of_the_host_is_flat_over_a_hundred_cycles() throws Exception {
        drop("trial.jar", "1.0.0", IMPORTS);
        dropins.use(folder);
        long early = 0;
        for (int cycle = 1; cycle <= 120; cycle++) {
            run(Watcher.NONE, cycle % 40 == 39 ? "exit" : cycle % 25 == 0 ? "many" : cycle % 3 == 0 ? "throw" : "good");
            if (cycle % 40 == 0) {
                drop("trial.jar", "1.0." + cycle, IMPORTS);
                dropins.use(folder);
            }
            early = cycle == 20 ? usedBytes() : early;
        }
        long grown = usedBytes() - early;
        assertTrue(grown < 4 << 20, "grown by " + grown / 1024 + " KiB from " + early / 1024 + " KiB");
    }

    private static long usedBytes() throws InterruptedException {
        for (int i = 0; i < 3; i++) {
            System.gc();
            Thread.sleep(100);
        }
        return Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
    }
}
