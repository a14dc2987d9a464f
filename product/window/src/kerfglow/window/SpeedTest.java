// SPDX-License-Identifier: Apache-2.0
package kerfglow.window;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.locks.LockSupport;
import kerfglow.api.Check;
import kerfglow.api.CheckInfo;
import kerfglow.api.Inspection;
import kerfglow.api.Outcome;
import kerfglow.api.Rule;
import kerfglow.api.Setting;
import kerfglow.api.Severity;
import kerfglow.api.SharedSettings;
import kerfglow.check.artwork.ArtworkCheck;
import kerfglow.check.router.RouterCheck;
import kerfglow.check.trim.TrimCheck;
import kerfglow.host.Result;
import kerfglow.host.Scope;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A changed setting is seen soon, and does not wait for a check that takes long. */
class SpeedTest {
    private static final Path TESTDATA = Path.of(System.getProperty("testdata"));
    private static final String LEAST_STROKE = "router.least-stroke";
    /** Ten times what product/bench/settings asks for, so that a busy machine passes. */
    private static final long MOST_MILLIS = 1000;
    private static final int CHANGES = 9;

    @TempDir
    Path folder;

    @BeforeEach
    void copy() throws Exception {
        for (String name : List.of("skelderfen.svg", "skelderfen.job.yaml", "shop.yaml")) {
            Files.copy(TESTDATA.resolve(name), folder.resolve(name));
        }
    }

    /** Uses a setting that the router uses too, and does not end until it is let go. */
    private static final class Slow implements Check {
        private final AtomicBoolean held = new AtomicBoolean();

        @Override
        public CheckInfo info() {
            return new CheckInfo("acme.slow", "takes long", List.of(new Rule("acme.slow.rule", Severity.REVIEW, "A fault of ours", "for the test", "nothing", "none")), List.of(SharedSettings.HAIRLINE), List.of(),
                    List.of(), "## acme.slow.rule\n");
        }

        @Override
        public Outcome inspect(Inspection inspection) {
            while (held.get()) {
                inspection.checkpoint(0);
                LockSupport.parkNanos(5_000_000);
            }
            return Outcome.of(List.of());
        }
    }

    private static Setting<?> leastStroke(Window window) {
        return window.editor().settings().stream().filter(each -> each.key().equals(LEAST_STROKE)).findFirst().orElseThrow();
    }

    private static Result.CheckRow row(Window window, String check) {
        return window.desk().result().orElseThrow().checks().stream().filter(each -> each.check().equals(check)).findFirst().orElseThrow();
    }

    private static long ofRouter(Window window) {
        return window.desk().findings().listed().stream().filter(item -> item.check().equals("router")).count();
    }

    @Test
    void findings_are_listed_while_another_check_is_still_at_work_and_go_again_when_it_is_stopped() throws Exception {
        Slow slow = new Slow();
        try (Window window = new Window(folder.resolve("state"), List.of(new RouterCheck(), new TrimCheck(), slow))) {
            window.open(folder.resolve("skelderfen.svg"));
            long before = ofRouter(window);
            Result.CheckRow trim = row(window, "trim");
            Result.CheckRow router = row(window, "router");
            slow.held.set(true);
            assertTrue(window.editor().change(SharedSettings.HAIRLINE, "0 mm", Scope.ALL).isEmpty());
            assertTrue(window.editor().change(leastStroke(window), "12 mm", Scope.ALL).isEmpty(), "the next change does not wait either");
            window.await(() -> ofRouter(window) > before, "the router's findings, of which a stricter limit makes more");
            assertTrue(window.desk().work().busy(), "the other check is still at work");
            assertSame(trim, row(window, "trim"), "what the setting does not concern stays");
            assertEquals("12 mm", window.editor().text(leastStroke(window), Scope.ALL));
            long found = ofRouter(window);

            window.worker().cancel();
            window.await(() -> !window.desk().work().busy(), "the end");
            assertSame(router, row(window, "router"), "what was found so far is no whole result");
            assertEquals(before, ofRouter(window));

            slow.held.set(false);
            window.worker().checkAgain();
            window.await(() -> !window.desk().work().busy() && row(window, "router") != router, "all checks");
            assertEquals(found, ofRouter(window));
            assertNotSame(router, row(window, "router"));
        }
    }

    @Test
    void a_changed_setting_is_seen_within_a_second() throws Exception {
        try (Window window = new Window(folder.resolve("state"), List.of(new ArtworkCheck(), new RouterCheck()))) {
            window.open(folder.resolve("skelderfen.svg"));
            window.tab("Settings");
            long[] millis = new long[CHANGES];
            for (int i = 0; i < CHANGES; i++) {
                Result.CheckRow router = row(window, "router");
                long start = System.nanoTime();
                assertTrue(window.editor().change(leastStroke(window), i % 2 == 0 ? "4 mm" : "3 mm", Scope.ALL).isEmpty());
                window.turnUntil(() -> row(window, "router") != router, "the router's findings");
                millis[i] = (System.nanoTime() - start) / 1_000_000;
                window.turnUntil(() -> !window.desk().work().busy(), "all checks");
            }
            Arrays.sort(millis);
            assertFalse(millis[CHANGES / 2] > MOST_MILLIS, "milliseconds of each change: " + Arrays.toString(millis));
        }
    }
}
