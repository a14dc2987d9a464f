// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import kerfglow.api.Check;
import kerfglow.api.CheckInfo;
import kerfglow.api.Inspection;
import kerfglow.api.Outcome;
import kerfglow.api.PlacedModule;
import kerfglow.api.Quantity;
import kerfglow.api.Rule;
import kerfglow.api.Setting;
import kerfglow.api.Severity;
import kerfglow.api.Table;
import kerfglow.api.TableInfo;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.Proof;
import kerfglow.api.proof.ProofImporter;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SessionTest {
    private static final TableInfo.Column SIZE = TableInfo.Column.number("size", "size", Quantity.LENGTH);

    @TempDir
    private Path folder;
    private Path file;
    private int imports;
    private final List<String> ran = Collections.synchronizedList(new ArrayList<>());
    private final CheckCatalogue catalogue = new CheckCatalogue();

    private final ProofImporter importer = (path, options) -> {
        imports++;
        return new Proof(path.toString(), "0".repeat(64), 100, 100, options.scale(), options.chordErrorMm(),
                List.of(Element.builder("bar").layer("L").idPath(List.of("bar")).fillArea(CheckTester.wkt("POLYGON ((0 0, 40 0, 40 2, 0 2, 0 0))")).build()), List.of());
    };

    /** A check with one setting {@code ID.size}, which it puts into its table {@code numbers}. */
    private final class Trial implements Check {
        private final String id;
        private final List<String> reads;
        private final Function<Inspection, String> asks;
        private final Setting<Double> size;
        private final TableInfo numbers = new TableInfo("numbers", "numbers", List.of(SIZE));

        Trial(String id, List<String> reads, Function<Inspection, String> asks) {
            this.id = id;
            this.reads = reads;
            this.asks = asks;
            this.size = Setting.lengthMm(id + ".size", "size", 3.0, 0.1, 25.0, "reason", "source");
        }

        @Override
        public CheckInfo info() {
            return new CheckInfo(id, id, List.of(new Rule(id + ".rule", Severity.REVIEW, "title", "why", "fix", "source")), List.of(size), List.of(), List.of(numbers),
                    "## " + id + ".rule\n");
        }

        @Override
        public List<String> reads() {
            return reads;
        }

        @Override
        public Outcome inspect(Inspection inspection) {
            ran.add(id + asks.apply(inspection));
            List<Object> row = Arrays.<Object>asList(inspection.settings().get(size));
            return Outcome.of(List.of()).withTables(List.of(new Table(numbers, List.of(row))));
        }
    }

    private void add(String id, List<String> reads, Function<Inspection, String> asks) {
        catalogue.add(new Trial(id, reads, asks), id, "1");
    }

    private static String sizeOf(Inspection inspection, String check) {
        return inspection.table(check, "numbers").map(table -> "=" + table.rows().get(0).get(0)).orElse("=nothing");
    }

    private Result run(Session session, JobSheet job, String... settings) throws Exception {
        ran.clear();
        Result result = session.run(new RunRequest(file, Optional.of(job), Optional.empty(), Optional.empty(), List.of(settings), List.of()), Watcher.NONE);
        Collections.sort(ran);
        return result;
    }

    @BeforeEach
    void aFile() throws Exception {
        file = Files.writeString(folder.resolve("bar.svg"), "<svg/>");
    }

    private static JobSheet withModule(double xMm) {
        return new JobSheet("", "", Optional.empty(), Optional.empty(), JobSheet.NONE.scale(), Optional.empty(), Optional.of("cabinet"), List.of(), List.of(),
                JobSheet.NONE.knockOut(), List.of(), List.of(new PlacedModule(xMm, 5, 0)));
    }

    @Test
    void a_check_runs_after_those_that_it_reads() throws Exception {
        add("a", List.of("z"), inspection -> sizeOf(inspection, "z"));
        add("z", List.of(), inspection -> "");
        run(new Runner(importer, catalogue).session(), JobSheet.NONE, "z.size=7 mm");
        assertEquals(List.of("a=7.0", "z"), ran);
    }

    @Test
    void checks_that_were_left_out_are_told() throws Exception {
        add("a", List.of(), inspection -> "");
        add("z", List.of(), inspection -> "");
        Result some = new Runner(importer, catalogue).run(new RunRequest(file, Optional.of(JobSheet.NONE), Optional.empty(), Optional.empty(), List.of(), List.of("z")), Watcher.NONE);
        assertEquals(List.of("z"), ran);
        assertTrue(some.remarks().contains("Not every check ran, as was asked for; left out: a."), some.remarks()::toString);
        assertTrue(run(new Runner(importer, catalogue).session(), JobSheet.NONE).remarks().stream().noneMatch(remark -> remark.contains("left out: a")));
    }

    @Test
    void a_check_that_is_read_but_not_there_leaves_nothing_to_read() throws Exception {
        add("a", List.of("z"), inspection -> sizeOf(inspection, "z"));
        run(new Runner(importer, catalogue).session(), JobSheet.NONE);
        assertEquals(List.of("a=nothing"), ran);
    }

    @Test
    void checks_that_read_each_other_fail_and_do_not_hang() throws Exception {
        add("a", List.of("b"), inspection -> "");
        add("b", List.of("a"), inspection -> "");
        Result result = run(new Runner(importer, catalogue).session(), JobSheet.NONE);
        assertEquals(Result.Status.FAILED, result.checks().get(0).status());
        assertTrue(result.checks().get(0).why().contains("in turn"), result.checks().get(0).why());
        assertEquals(2, result.checks().size());
    }

    @Test
    void tables_that_a_check_does_not_name_are_refused() throws Exception {
        add("a", List.of(), inspection -> sizeOf(inspection, "z"));
        Result result = run(new Runner(importer, catalogue).session(), JobSheet.NONE);
        assertEquals(Result.Status.FAILED, result.checks().get(0).status());
    }

    @Test
    void a_changed_setting_runs_the_checks_that_use_it_and_those_that_read_them() throws Exception {
        add("a", List.of(), inspection -> "");
        add("b", List.of(), inspection -> "");
        add("c", List.of("b"), inspection -> sizeOf(inspection, "b"));
        Session session = new Runner(importer, catalogue).session();
        run(session, JobSheet.NONE);
        assertEquals(List.of("a", "b", "c=3.0"), ran);
        run(session, JobSheet.NONE);
        assertEquals(List.of(), ran);
        Result changed = run(session, JobSheet.NONE, "b.size=4 mm");
        assertEquals(List.of("b", "c=4.0"), ran);
        assertEquals(List.of("a", "b", "c"), changed.checks().stream().map(Result.CheckRow::check).toList(), "the result is whole");
        assertEquals(1, imports);
    }

    @Test
    void a_changed_file_runs_all_again() throws Exception {
        add("a", List.of(), inspection -> "");
        Session session = new Runner(importer, catalogue).session();
        run(session, JobSheet.NONE);
        Files.writeString(file, "<svg></svg>");
        run(session, JobSheet.NONE);
        assertEquals(List.of("a"), ran);
        assertEquals(2, imports);
    }

    @Test
    void a_moved_module_runs_only_the_checks_that_look_at_modules() throws Exception {
        add("a", List.of(), inspection -> "");
        add("light", List.of(), inspection -> " at " + inspection.placedModules().get(0).xMm() + " in " + inspection.build().orElseThrow());
        Session session = new Runner(importer, catalogue).session();
        run(session, withModule(10));
        run(session, withModule(12));
        assertEquals(List.of("light at 12.0 in cabinet"), ran);
    }

    @Test
    void each_check_is_told_as_it_ends() throws Exception {
        add("a", List.of(), inspection -> "");
        add("b", List.of("a"), inspection -> "");
        List<Result.CheckRow> told = new ArrayList<>();
        Result result = new Runner(importer, catalogue).run(RunRequest.of(file, JobSheet.NONE), new Watcher() {
            @Override
            public void progress(String what, double fraction) {
                // not looked at here
            }

            @Override
            public boolean isCancelled() {
                return false;
            }

            @Override
            public void ended(Result.CheckRow row, List<Result.ReportedFinding> findings) {
                told.add(row);
            }
        });
        assertEquals(2, told.size());
        assertSame(result.checks().get(0), told.get(0));
    }
}
