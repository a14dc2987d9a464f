// SPDX-License-Identifier: Apache-2.0
package kerfglow.it;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Hashtable;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import kerfglow.api.Check;
import kerfglow.api.CheckInfo;
import kerfglow.api.Finding;
import kerfglow.api.Inspection;
import kerfglow.api.Outcome;
import kerfglow.api.Rule;
import kerfglow.api.Severity;
import kerfglow.host.CheckCatalogue;
import kerfglow.host.Result;
import kerfglow.host.RunRequest;
import kerfglow.host.Runner;
import kerfglow.host.Watcher;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.osgi.framework.BundleContext;
import org.osgi.framework.FrameworkUtil;
import org.osgi.framework.ServiceRegistration;
import org.osgi.util.tracker.ServiceTracker;

/** The real bundles in Equinox: services find each other, checks come and go, and a bad check costs its own result alone. */
class ServicesTest {
    private static final long WAIT_MILLIS = 10_000;
    private static final Rule RULE = new Rule("trial.rule", Severity.REVIEW, "A trial", "trial", "trial", "trial");

    private final BundleContext bundles = FrameworkUtil.getBundle(ServicesTest.class).getBundleContext();
    private Runner runner;
    private CheckCatalogue catalogue;
    @TempDir
    private Path folder;

    @BeforeEach
    void services() throws InterruptedException {
        runner = service(Runner.class);
        catalogue = service(CheckCatalogue.class);
    }

    private <T> T service(Class<T> type) throws InterruptedException {
        ServiceTracker<T, T> tracker = new ServiceTracker<>(bundles, type, null);
        tracker.open();
        T service = tracker.waitForService(WAIT_MILLIS);
        assertNotNull(service, type.getName());
        return service;
    }

    private List<String> ids() {
        return catalogue.entries().stream().map(entry -> entry.info().id()).toList();
    }

    private Result run(String... settings) throws Exception {
        Path proof = Files.writeString(folder.resolve("bar.svg"),
                "<svg xmlns='http://www.w3.org/2000/svg' width='100mm' height='50mm' viewBox='0 0 100 50'><rect x='10' y='10' width='80' height='30'/></svg>");
        return runner.run(new RunRequest(proof, Optional.empty(), Optional.empty(), List.of(settings), List.of()), Watcher.NONE);
    }

    private static Result.CheckRow row(Result result, String check) {
        return result.checks().stream().filter(row -> row.check().equals(check)).findFirst().orElseThrow();
    }

    private record Trial(String id, Function<Inspection, Outcome> work) implements Check {
        @Override
        public CheckInfo info() {
            return new CheckInfo(id, "trial", List.of(new Rule(id + ".rule", RULE.severity(), RULE.summary(), RULE.why(), RULE.fix(), RULE.source())), List.of(),
                    List.of(), List.of(), "## " + id + ".rule\n");
        }

        @Override
        public Outcome inspect(Inspection inspection) {
            return work.apply(inspection);
        }
    }

    private ServiceRegistration<Check> register(Check check) {
        return bundles.registerService(Check.class, check, new Hashtable<>());
    }

    @Test
    void the_shipped_checks_are_there_and_run_on_a_real_file() throws Exception {
        assertEquals("org.eclipse.osgi", bundles.getBundle(0).getSymbolicName());
        assertTrue(ids().containsAll(List.of("artwork", "fit", "legibility", "mount", "print", "returns", "router", "sheet", "trim", "vinyl")), ids()::toString);
        assertTrue(ids().containsAll(List.of("artwork", "fit", "glow", "legibility", "print", "returns", "router", "sheet", "trim", "vinyl")), ids()::toString);
        assertTrue(ids().containsAll(List.of("artwork", "fit", "legibility", "power", "print", "returns", "router", "sheet", "trim")), ids()::toString);
        Result result = run();
        assertEquals(1, result.parts().size());
        assertEquals(2400, result.parts().get(0).shape().getArea(), 1e-6);
        assertTrue(result.checks().size() >= 8);
        assertTrue(!result.isBroken(), () -> result.checks().toString());
    }

    @Test
    void live_text_becomes_outlines_inside_the_framework() throws Exception {
        Path proof = Files.writeString(folder.resolve("text.svg"),
                "<svg xmlns='http://www.w3.org/2000/svg' width='300mm' height='100mm' viewBox='0 0 300 100'><text x='10' y='80' font-size='60' font-family='No Such Family'>Hi</text></svg>");
        Result result = runner.run(RunRequest.of(proof), Watcher.NONE);
        assertEquals(3, result.parts().size(), "H, and i with its dot");
        assertTrue(result.findings().stream().anyMatch(finding -> finding.rule().id().equals("artwork.substituted-font")));
    }

    @Test
    void a_check_appears_while_the_program_runs_and_goes_again() throws Exception {
        ServiceRegistration<Check> there = register(new Trial("trial", inspection -> Outcome.of(List.of(Finding.of(new Trial("trial", null).info().rules().get(0), "seen").build()))));
        try {
            assertTrue(ids().contains("trial"));
            assertEquals(Result.Status.FINDINGS, row(run(), "trial").status());
        } finally {
            there.unregister();
        }
        assertTrue(!ids().contains("trial"));
    }

    @Test
    void a_check_that_throws_costs_its_own_result_alone() throws Exception {
        ServiceRegistration<Check> bad = register(new Trial("trial", inspection -> {
            throw new IllegalStateException("on purpose");
        }));
        try {
            Result result = run();
            assertEquals(Result.Status.FAILED, row(result, "trial").status());
            assertTrue(row(result, "trial").why().contains("on purpose"));
            assertTrue(row(result, "router").status() != Result.Status.FAILED);
            assertTrue(result.isBroken());
        } finally {
            bad.unregister();
        }
    }

    @Test
    void a_check_that_overruns_is_given_up() throws Exception {
        ServiceRegistration<Check> slow = register(new Trial("trial", inspection -> {
            while (true) {
                Thread.onSpinWait(); // never calls its checkpoint
            }
        }));
        try {
            long start = System.nanoTime();
            Result result = run("host.check-time-limit=1.5");
            assertEquals(Result.Status.TIMED_OUT, row(result, "trial").status());
            assertTrue((System.nanoTime() - start) / 1e9 < 10);
        } finally {
            slow.unregister();
        }
    }

    @Test
    void a_second_check_with_the_same_id_is_refused() {
        ServiceRegistration<Check> impostor = register(new Trial("router", inspection -> Outcome.of(List.of())));
        try {
            assertEquals(1, catalogue.entries().stream().filter(entry -> entry.info().id().equals("router")).count());
            assertTrue(catalogue.refused().stream().anyMatch(refused -> refused.why().contains("router")));
        } finally {
            impostor.unregister();
        }
    }
}
