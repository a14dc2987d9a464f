// SPDX-License-Identifier: Apache-2.0
package kerfglow.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Bundles that do what no bundle should, one for each way: each costs its own row, which says what happened, and nothing else. */
class IsolationTest {
    private static final Path PROOF = Kerfglow.TESTDATA.resolve("plain-letters.svg");
    private static final String SHORT_LIMIT = "host.check-time-limit=2";
    /** What is left of a process after it was ended. */
    private static final int DYING_MILLIS = 2000;

    /** By which the child process of a check is known. */
    private static final String CHILD_SECONDS = "98765";

    private static final String SOURCE = """
            package bad;
            import java.util.*;
            import kerfglow.api.*;
            import org.locationtech.jts.geom.*;
            public class Bad implements Check {
                private final String way = CheckInfo.page(Bad.class, "way.txt");
                private final Rule rule = new Rule("bad." + way + ".rule", Severity.REVIEW, "Trial", "why", "fix", "geometry");
                static {
                    if (CheckInfo.page(Bad.class, "way.txt").equals("hangs-on-load")) {
                        try { Thread.sleep(Long.MAX_VALUE); } catch (InterruptedException e) { }
                    }
                }
                public List<String> reads() {
                    return way.equals("reads-null") ? Arrays.asList((String) null) : List.of();
                }
                public CheckInfo info() {
                    return new CheckInfo("bad." + way, "trial", List.of(rule), List.of(), List.of(), List.of(), "## " + rule.id() + "\\n");
                }
                private Outcome at(Geometry place) {
                    return Outcome.of(List.of(Finding.of(rule, "found").at(new Coordinate(1, 1)).place(place).build()));
                }
                private static Geometry ring(double... xy) {
                    Coordinate[] ring = new Coordinate[xy.length / 2];
                    for (int i = 0; i < ring.length; i++) {
                        ring[i] = new Coordinate(xy[2 * i], xy[2 * i + 1]);
                    }
                    return new GeometryFactory().createPolygon(ring);
                }
                public Outcome inspect(Inspection inspection) {
                    switch (way) {
                        case "throws": throw new IllegalStateException("on purpose");
                        case "error": throw new AssertionError("an error on purpose");
                        case "recursion": return inspect(inspection);
                        case "endless": while (true) { inspection.checkpoint(0.5); }
                        case "deaf": while (true) { try { inspection.checkpoint(0.5); Thread.sleep(1); } catch (Throwable ignored) { } }
                        case "silent": while (true) { Thread.onSpinWait(); }
                        case "null": return null;
                        case "nan": return Outcome.of(List.of(Finding.of(rule, "found").measured(Measure.mm(Double.NaN)).build()));
                        case "nan-place": return at(new GeometryFactory().createLineString(new Coordinate[] {new Coordinate(0, 0), new Coordinate(Double.NaN, 1)}));
                        case "invalid": return at(ring(0, 0, 10, 10, 10, 0, 0, 10, 0, 0));
                        case "empty": return at(new GeometryFactory().createPolygon());
                        case "undeclared": return Outcome.of(List.of(Finding.of(new Rule("bad.other", Severity.STOP, "a", "b", "c", "d"), "found").build()));
                        case "million": return Outcome.of(Collections.nCopies(1_000_000, Finding.of(rule, "found").place(ring(0, 0, 1, 0, 1, 1, 0, 0)).build()));
                        case "memory": { List<byte[]> all = new ArrayList<>(); while (true) { all.add(new byte[1 << 20]); } }
                        case "exit": System.exit(7); return null;
                        case "halt": Runtime.getRuntime().halt(9); return null;
                        case "threads": for (int i = 0; i < 50; i++) { new Thread(() -> { while (true) { Thread.onSpinWait(); } }).start(); } return Outcome.of(List.of());
                        case "changes": inspection.parts().get(0).shape().apply((CoordinateFilter) at -> at.x += 1); return Outcome.of(List.of());
                        case "prints": { String line = "x".repeat(1 << 20); for (int i = 0; i < 300; i++) { System.out.println(line); System.err.println(line); } return Outcome.of(List.of()); }
                        case "raw": try { new java.io.FileOutputStream(java.io.FileDescriptor.out).write("hello\\n".getBytes()); } catch (java.io.IOException e) { } return Outcome.of(List.of());
                        case "wordy": throw new ArithmeticException("much ".repeat(1_000_000));
                        case "unwritable": { Geometry deep = new GeometryFactory().createPoint(new Coordinate(1, 1)); for (int i = 0; i < 100_000; i++) { deep = new GeometryFactory().createGeometryCollection(new Geometry[] {deep}); } return at(deep); }
                        case "nested": { Geometry deep = new GeometryFactory().createPoint(new Coordinate(1, 1)); for (int i = 0; i < 300; i++) { deep = new GeometryFactory().createGeometryCollection(new Geometry[] {deep}); } return at(deep); }
                        case "asks": try { return System.in.read() < 0 ? Outcome.of(List.of()) : null; } catch (java.io.IOException e) { return null; }
                        case "closes": try { new java.io.FileOutputStream(java.io.FileDescriptor.out).close(); } catch (java.io.IOException e) { } return Outcome.of(List.of());
                        case "child": try { new ProcessBuilder("sleep", "CHILD_SECONDS").start(); } catch (java.io.IOException e) { throw new RuntimeException(e); } return Outcome.of(List.of());
                        case "hook": Runtime.getRuntime().addShutdownHook(new Thread(() -> { while (true) { Thread.onSpinWait(); } })); System.exit(0); return null;
                        case "interrupts": Thread.currentThread().interrupt(); return Outcome.of(List.of());
                        default: return at(ring(0, 0, 1, 0, 1, 1, 0, 0));
                    }
                }
            }
            """.replace("CHILD_SECONDS", CHILD_SECONDS);

    /** What is expected of each way: the state of its row, and words that the row must have. */
    private record Expected(String status, String words) {
    }

    @TempDir
    private Path folder;
    private final Map<String, Expected> ways = new LinkedHashMap<>();

    private IsolationTest way(String name, String status, String words) {
        ways.put(name, new Expected(status, words));
        return this;
    }

    private JsonNode run(String... words) throws Exception {
        ShopBundle bad = ShopBundle.compile(folder.resolve("classes"), "bad.Bad", SOURCE);
        Path checks = Files.createDirectories(folder.resolve("checks"));
        for (String way : ways.keySet()) {
            bad.write(checks.resolve(way + ".jar"), "bad." + way, "1.0.0", Map.of(), Map.of("bad/way.txt", way));
        }
        String[] command = Stream.concat(Stream.of("check", "--checks-folder", checks.toString(), "--format", "json", PROOF.toString()), Stream.of(words)).toArray(String[]::new);
        Kerfglow.Ran ran = Kerfglow.run(command);
        assertEquals(3, ran.status(), ran::err);
        JsonNode result = new ObjectMapper().readTree(ran.out());
        ways.forEach((way, expected) -> {
            JsonNode row = row(result, "bad." + way);
            assertEquals(expected.status(), row.get("status").asText(), row::toString);
            assertTrue(row.get("why").asText().contains(expected.words()), row::toString);
        });
        long start = System.nanoTime();
        while (workers() > 0) {
            assertTrue((System.nanoTime() - start) / 1e6 < DYING_MILLIS, "no process is left behind");
            Thread.sleep(50);
        }
        return result;
    }

    /** Worker processes of the program under test, and what they started. */
    private static long workers() throws IOException {
        String plugins = Kerfglow.program().resolveSibling("plugins").toString();
        return ProcessHandle.allProcesses().filter(each -> {
            String command = each.info().commandLine().orElse("");
            return command.contains("kerfglow.worker.process.Main") && command.contains(plugins) || command.endsWith("sleep " + CHILD_SECONDS);
        }).count();
    }

    @Test
    void a_check_that_does_not_end_is_ended_with_its_process() throws Exception {
        way("endless", "timed out", "host.check-time-limit").way("deaf", "timed out", "host.check-time-limit").way("silent", "timed out", "host.check-time-limit");
        way("hook", "timed out", "host.check-time-limit");
        run("--set", SHORT_LIMIT, "--only", "bad.endless,bad.deaf,bad.silent,bad.hook");
    }

    /** What cannot even say who it is has no row; a remark names the bundle, and the others are not touched. */
    @Test
    void a_bundle_that_names_nothing_as_what_it_reads_is_refused_alone() throws Exception {
        ShopBundle bad = ShopBundle.compile(folder.resolve("classes"), "bad.Bad", SOURCE);
        Path checks = Files.createDirectories(folder.resolve("checks"));
        bad.write(checks.resolve("reads-null.jar"), "bad.reads-null", "1.0.0", Map.of(), Map.of("bad/way.txt", "reads-null"));
        bad.write(checks.resolve("good.jar"), "bad.good", "1.0.0", Map.of(), Map.of("bad/way.txt", "good"));
        Kerfglow.Ran ran = Kerfglow.run("check", "--checks-folder", checks.toString(), "--only", "bad.good", "--format", "json", PROOF.toString());
        JsonNode result = new ObjectMapper().readTree(ran.out());
        assertEquals("findings", row(result, "bad.good").get("status").asText());
        assertTrue(result.get("remarks").toString().contains("reads-null.jar is not used: it cannot say who it is"), result.get("remarks")::toString);
    }

    /** It is waited for, since it may be slow; but not long, and once for all that hang. */
    @Test
    void a_bundle_that_hangs_while_it_is_loaded_is_given_up_and_named() throws Exception {
        ShopBundle bad = ShopBundle.compile(folder.resolve("classes"), "bad.Bad", SOURCE);
        Path checks = Files.createDirectories(folder.resolve("checks"));
        bad.write(checks.resolve("hangs.jar"), "bad.hangs", "1.0.0", Map.of(), Map.of("bad/way.txt", "hangs-on-load"));
        bad.write(checks.resolve("good.jar"), "bad.good", "1.0.0", Map.of(), Map.of("bad/way.txt", "good"));
        Kerfglow.Ran ran = Kerfglow.run("check", "--checks-folder", checks.toString(), "--only", "bad.good", "--format", "json", PROOF.toString());
        JsonNode result = new ObjectMapper().readTree(ran.out());
        assertEquals("findings", row(result, "bad.good").get("status").asText());
        assertTrue(result.get("remarks").toString().contains("hangs.jar is not used: it did not say who it is within 10 s"), result.get("remarks")::toString);
    }

    @Test
    void each_fault_costs_its_own_row_and_nothing_else() throws Exception {
        way("throws", "failed", "on purpose").way("error", "failed", "an error on purpose").way("recursion", "failed", "StackOverflowError");
        way("null", "failed", "answered nothing").way("nan", "failed", "finite").way("nan-place", "failed", "not finite");
        way("invalid", "failed", "invalid geometry (Self-intersection").way("empty", "failed", "empty geometry").way("undeclared", "failed", "does not declare");
        way("million", "findings", "1000000 findings; the first 10000 are kept").way("memory", "failed", "more than the 512 MiB of memory");
        way("exit", "failed", "ended with status 7").way("halt", "failed", "ended with status 9").way("threads", "passed", "50 threads");
        way("changes", "failed", "changed the geometry").way("prints", "passed", "printed 600 MiB").way("raw", "failed", "what its process answered cannot be used");
        way("wordy", "failed", "ArithmeticException: much").way("unwritable", "failed", "cannot be written: java.lang.StackOverflowError").way("nested", "failed", "a collection of geometries inside another");
        way("asks", "passed", "").way("interrupts", "passed", "").way("child", "passed", "").way("closes", "failed", "ended with status 0 while it worked");
        way("good", "findings", "");
        JsonNode without = new ObjectMapper().readTree(Kerfglow.run("check", "--checks-folder", folder.resolve("none").toString(), "--format", "json", PROOF.toString()).out());
        JsonNode with = run();
        for (JsonNode shipped : without.get("checks")) {
            JsonNode same = row(with, shipped.get("check").asText());
            assertEquals(shipped.get("status"), same.get("status"), same::toString);
            assertEquals(shipped.get("measurements"), same.get("measurements"));
        }
        assertEquals(without.get("findings").size(), with.get("findings").size() - 2, "that of the good one, and the million that are alike");
    }

    private static JsonNode row(JsonNode result, String check) {
        return StreamSupport.stream(result.get("checks").spliterator(), false).filter(row -> row.get("check").asText().equals(check)).findFirst()
                .orElseThrow(() -> new AssertionError("no row " + check + " in " + result.get("remarks")));
    }
}
