// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import kerfglow.api.Check;
import kerfglow.api.CheckInfo;
import kerfglow.api.Concerns;
import kerfglow.api.Finding;
import kerfglow.api.Inspection;
import kerfglow.api.Measure;
import kerfglow.api.Outcome;
import kerfglow.api.Rule;
import kerfglow.api.Setting;
import kerfglow.api.Severity;
import kerfglow.api.Table;
import kerfglow.api.TableInfo;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.ImportNote;
import kerfglow.api.proof.ImportOptions;
import kerfglow.api.proof.Proof;
import kerfglow.api.proof.ProofException;
import kerfglow.api.proof.ProofImporter;
import kerfglow.api.proof.Role;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.impl.CoordinateArraySequence;
import org.locationtech.jts.geom.util.AffineTransformation;

class RunnerTest {
    private static final Setting<Double> WIDTH = Setting.lengthMm("trial.width", "width", 3.0, 0.1, 25.0, "reason", "source");
    private static final Rule NARROW = new Rule("trial.narrow", Severity.REVIEW, "Too narrow", "why", "fix", "source");
    private static final TableInfo NUMBERS = new TableInfo("numbers", "numbers", List.of(TableInfo.Column.text("part", "part")));

    @TempDir
    private Path folder;
    private final List<Double> scales = new ArrayList<>();

    /** A proof of one bar 40 x 2, as large as the scale says. */
    private final ProofImporter importer = (file, options) -> {
        scales.add(options.scale());
        options.progress().accept(1);
        Geometry bar = AffineTransformation.scaleInstance(options.scale(), options.scale()).transform(CheckTester.wkt("POLYGON ((0 0, 40 0, 40 2, 0 2, 0 0))"));
        return new Proof(file.toString(), "0".repeat(64), 100 * options.scale(), 100 * options.scale(), options.scale(), options.chordErrorMm(),
                List.of(Element.builder("bar").layer("L").idPath(List.of("bar")).fillArea(bar).build()),
                List.of(new ImportNote(ImportNote.Kind.ASSUMED_SIZE, "svg", 1, "size assumed"), new ImportNote(ImportNote.Kind.SCRIPT, "svg", 1, "not run")));
    };

    private record Trial(String id, Function<Inspection, Outcome> work) implements Check {
        @Override
        public CheckInfo info() {
            return new CheckInfo("trial", "trial", List.of(NARROW), List.of(WIDTH), List.of(), List.of(NUMBERS), "## trial.narrow\n");
        }

        @Override
        public Outcome inspect(Inspection inspection) {
            return work.apply(inspection);
        }
    }

    private Runner runner(Function<Inspection, Outcome> work) {
        CheckCatalogue catalogue = new CheckCatalogue();
        catalogue.add(new Trial("trial", work), "trial.bundle", "1.2.3");
        return new Runner(importer, catalogue);
    }

    private Result run(Function<Inspection, Outcome> work, String... settings) throws Exception {
        return runner(work).run(new RunRequest(folder.resolve("bar.svg"), Optional.empty(), Optional.empty(), List.of(settings), List.of()), Watcher.NONE);
    }

    private static Finding at(double x, double y, double measured) {
        return Finding.of(NARROW, "narrow at " + x + " " + y).place(CheckTester.wkt("POINT (" + x + " " + y + ")")).measured(Measure.mm(measured)).required(Measure.mm(3))
                .parts("p1").build();
    }

    @Test
    void findings_are_ordered_named_and_carry_their_elements() throws Exception {
        Result result = run(inspection -> Outcome.of(List.of(at(9, 5, 1), at(1, 1, 2), at(30, 1, 2.01))));
        assertEquals(2, result.findings().size(), "equal measures within 0.02 mm at congruent places are one");
        Result.ReportedFinding two = result.findings().get(0);
        assertEquals(2, two.count());
        assertEquals(List.of("bar"), two.elements());
        assertEquals("narrow at 1.0 1.0.", two.message(), "with a full stop");
        assertEquals(Severity.REVIEW, two.severity());
        assertTrue(two.id().matches("[0-9a-f]{8}"));
        assertEquals(Result.Status.FINDINGS, result.checks().get(0).status());
        assertEquals("1.2.3", result.checks().get(0).version());
    }

    @Test
    void ids_stay_when_other_findings_come_and_go() throws Exception {
        String alone = run(inspection -> Outcome.of(List.of(at(9, 5, 1)))).findings().get(0).id();
        Result more = run(inspection -> Outcome.of(List.of(at(2, 2, 2), at(9, 5, 1), at(9.1, 5.1, 0.5))));
        assertTrue(more.findings().stream().anyMatch(finding -> finding.id().equals(alone)));
        assertEquals(3, more.findings().stream().map(Result.ReportedFinding::id).distinct().count());
    }

    @Test
    void ids_of_findings_without_a_place_stay_too() throws Exception {
        Finding acrylic = Finding.of(NARROW, "for acrylic").elements(List.of("a1", "a2")).build();
        Finding brass = Finding.of(NARROW, "for brass").elements(List.of("b1")).build();
        String alone = run(inspection -> Outcome.of(List.of(brass))).findings().get(0).id();
        Result both = run(inspection -> Outcome.of(List.of(acrylic, brass)));
        assertEquals(alone, both.findings().stream().filter(finding -> finding.message().contains("brass")).findFirst().orElseThrow().id());
    }

    @Test
    void a_check_that_breaks_its_promises_fails_alone() throws Exception {
        Rule undeclared = new Rule("trial.other", Severity.INFO, "a", "b", "c", "d");
        TableInfo unknown = new TableInfo("other", "other", List.of());
        List<Function<Inspection, Outcome>> broken = List.of(inspection -> null, inspection -> {
            throw new AssertionError("even an error");
        }, inspection -> Outcome.of(List.of(Finding.of(undeclared, "x").build())),
                inspection -> Outcome.of(List.of()).withTables(List.of(new Table(unknown, List.of()))),
                inspection -> Outcome.of(List.of(Finding.of(NARROW, "x").at(new Coordinate(Double.NaN, 0)).build())),
                inspection -> endless(1));
        for (Function<Inspection, Outcome> work : broken) {
            Result.CheckRow row = run(work).checks().get(0);
            assertEquals(Result.Status.FAILED, row.status(), row.why());
            assertTrue(row.why().contains("defect of the check"), row.why());
        }
    }

    @Test
    void a_check_that_needs_too_much_memory_says_so_and_is_no_defect() throws Exception {
        Result.CheckRow row = run(inspection -> {
            throw new OutOfMemoryError("Java heap space");
        }).checks().get(0);
        assertEquals(Result.Status.FAILED, row.status());
        assertTrue(row.why().contains(Runtime.getRuntime().maxMemory() / (1 << 20) + " MiB of memory") && row.why().contains("KERFGLOW_VMARGS"), row.why());
        assertFalse(row.why().contains("defect"), row.why());
    }

    private static Outcome endless(int depth) {
        return endless(depth + 1);
    }

    /** A place that takes ten seconds to compare, as a hundred thousand do that are small. */
    private static Geometry slowToCompare() {
        return new Point(new CoordinateArraySequence(new Coordinate[] {new Coordinate(1, 1)}), new GeometryFactory()) {
            @Override
            public String getGeometryType() {
                try {
                    Thread.sleep(10_000);
                } catch (InterruptedException over) {
                    Thread.currentThread().interrupt();
                }
                return super.getGeometryType();
            }
        };
    }

    @Test
    void repeats_are_collected_in_the_time_of_their_check() throws Exception {
        Finding slow = Finding.of(NARROW, "slow").place(slowToCompare()).at(new Coordinate(1, 1)).build();
        long start = System.nanoTime();
        Result result = run(inspection -> Outcome.of(List.of(slow, slow)), "host.check-time-limit=0.2");
        assertEquals(Result.Status.TIMED_OUT, result.checks().get(0).status());
        assertTrue(System.nanoTime() - start < 8e9);
    }

    @Test
    void a_check_is_stopped_at_its_checkpoint_when_its_time_is_up() throws Exception {
        Result result = run(inspection -> {
            while (true) {
                inspection.checkpoint(0.5);
            }
        }, "host.check-time-limit=0.2");
        assertEquals(Result.Status.TIMED_OUT, result.checks().get(0).status());
        assertTrue(result.checks().get(0).why().contains("host.check-time-limit"));
        assertTrue(result.isBroken());
    }

    @Test
    void an_import_that_takes_too_long_is_refused_with_the_limit() {
        ProofImporter slow = (file, options) -> {
            while (true) {
                options.progress().accept(0.5);
            }
        };
        RunRequest request = new RunRequest(folder.resolve("bar.svg"), Optional.empty(), Optional.empty(), List.of("host.import-time-limit=0.1"), List.of());
        ProofException refused = assertThrows(ProofException.class, () -> new Runner(slow, new CheckCatalogue()).run(request, Watcher.NONE));
        assertTrue(refused.getMessage().contains("host.import-time-limit"), refused.getMessage());
    }

    @Test
    void the_person_can_cancel_import_and_checks() {
        Watcher cancelled = new Watcher() {
            @Override
            public void progress(String what, double fraction) {
                // not of interest here
            }

            @Override
            public boolean isCancelled() {
                return true;
            }
        };
        assertThrows(CancellationException.class, () -> runner(inspection -> Outcome.of(List.of())).run(RunRequest.of(folder.resolve("bar.svg")), cancelled));
    }

    @Test
    void not_measured_is_neither_a_pass_nor_a_finding() throws Exception {
        Result result = run(inspection -> Outcome.notMeasured("No thickness is given."));
        assertEquals(Result.Status.NOT_MEASURED, result.checks().get(0).status());
        assertEquals("No thickness is given.", result.checks().get(0).why());
        assertTrue(!result.isBroken() && !result.has(Severity.INFO));
    }

    @Test
    void the_scale_follows_from_a_known_dimension() throws Exception {
        Files.writeString(folder.resolve("bar.job.yaml"), "known-dimension: {id: bar, width: 2 m}\nroles: [{layer: L, role: back}]\n");
        Result result = run(inspection -> Outcome.of(List.of()));
        assertEquals(List.of(1.0, 50.0), scales);
        assertEquals(2000, result.parts().get(0).shape().getEnvelopeInternal().getWidth(), 1e-9);
        assertTrue(result.remarks().stream().anyMatch(remark -> remark.contains("Scale 50")), result.remarks()::toString);
        Files.writeString(folder.resolve("bar.job.yaml"), "known-dimension: {id: none, width: 2 m}\n");
        assertTrue(assertThrows(SheetException.class, () -> run(inspection -> Outcome.of(List.of()))).getMessage().contains("known-dimension"));
    }

    @Test
    void nothing_is_assumed_about_the_size_once_a_person_has_said_it() throws Exception {
        Function<Inspection, Outcome> nothing = inspection -> Outcome.of(List.of());
        assertEquals(List.of(ImportNote.Kind.ASSUMED_SIZE, ImportNote.Kind.SCRIPT), kinds(run(nothing)));
        assertEquals(List.of(ImportNote.Kind.SCRIPT), kinds(run(nothing, "host.units-per-inch=72")));
        Files.writeString(folder.resolve("bar.job.yaml"), "known-dimension: {id: bar, width: 2 m}\n");
        assertEquals(List.of(ImportNote.Kind.SCRIPT), kinds(run(nothing)));
    }

    private static List<ImportNote.Kind> kinds(Result result) {
        return result.proof().notes().stream().map(ImportNote::kind).toList();
    }

    @Test
    void rules_of_the_job_sheet_that_fit_nothing_are_said() throws Exception {
        Files.writeString(folder.resolve("bar.job.yaml"), """
                roles:
                  - {layer: Face, role: face}
                  - {layer: "L*", role: back}
                materials:
                  - {role: panel, material: steel}
                  - {fill: "#00ff00", material: brass}
                  - {role: back, material: acrylic}
                knock-out: ["#ffffff"]
                """);
        assertTrue(run(inspection -> Outcome.of(List.of())).remarks().contains("Nothing in the proof fits these rules of bar.job.yaml: "
                + "layer Face (role face); role=panel (material steel); fill #00ff00 (material brass); #ffffff (knock-out)."));
        Files.writeString(folder.resolve("bar.job.yaml"), "roles: [{layer: L, role: back}]\nmaterials: [{role: back, material: acrylic}]\n");
        assertTrue(run(inspection -> Outcome.of(List.of())).remarks().stream().noneMatch(remark -> remark.contains("fits these rules")));
    }

    @Test
    void the_shop_weighs_a_rule_with_a_reason_that_is_kept() throws Exception {
        Files.writeString(folder.resolve("bar.job.yaml"), "shop: shop.yaml\n");
        Files.writeString(folder.resolve("shop.yaml"), "severity:\n  - {rule: trial.narrow, severity: stop, reason: broke twice}\nsettings: {trial.width: 4 mm}\n");
        Result result = run(inspection -> Outcome.of(List.of(at(1, 1, inspection.settings().get(WIDTH)))));
        assertEquals(Severity.STOP, result.findings().get(0).severity());
        assertTrue(result.findings().get(0).severityReason().contains("broke twice"));
        assertEquals(4, result.findings().get(0).measured().orElseThrow().value());
        assertEquals("shop.yaml line 3", result.settings().stream().filter(used -> used.key().equals("trial.width")).findFirst().orElseThrow().from());
    }

    @Test
    void a_shop_sheet_that_the_job_names_and_that_is_not_there_is_laid_to_the_job() throws Exception {
        Files.writeString(folder.resolve("bar.job.yaml"), "shop: sub/shop.yaml\n");
        SheetException wrong = assertThrows(SheetException.class, () -> run(inspection -> Outcome.of(List.of())));
        assertEquals("bar.job.yaml, shop: there is no file shop.yaml in " + folder.resolve("sub") + "; the path counts from the job sheet", wrong.getMessage());
    }

    @Test
    void two_runs_agree() throws Exception {
        Function<Inspection, Outcome> work = inspection -> Outcome.of(List.of(at(9, 5, 1), at(1, 1, 2), at(3, 8, 2.7)));
        assertEquals(run(work).findings(), run(work).findings());
    }

    private Result.CheckRow concerned(Concerns concerns, String job) throws Exception {
        CheckCatalogue catalogue = new CheckCatalogue();
        catalogue.add(new Check() {
            @Override
            public CheckInfo info() {
                return new CheckInfo("trial", "trial", List.of(NARROW), List.of(), List.of(), List.of(), "## trial.narrow\n", concerns);
            }

            @Override
            public Outcome inspect(Inspection inspection) {
                return Outcome.of(List.of());
            }
        }, "trial.bundle", "1");
        return new Runner(importer, catalogue).run(RunRequest.of(folder.resolve("bar.svg"), JobSheet.parse("job", job, folder)), Watcher.NONE).checks().get(0);
    }

    @Test
    void a_check_is_not_asked_about_a_proof_that_does_not_concern_it() throws Exception {
        String face = "roles: [{layer: \"*\", role: face}]\n";
        assertEquals(Result.Status.PASSED, concerned(Concerns.ALL, face).status());
        assertEquals(Result.Status.PASSED, concerned(Concerns.ofRoles(Role.PANEL, Role.FACE), face).status());
        Result.CheckRow noPanel = concerned(Concerns.ofRoles(Role.PANEL, Role.VINYL), face);
        assertEquals(Result.Status.NOT_MEASURED, noPanel.status());
        assertEquals("It is about parts of role panel, vinyl; this proof has none.", noPanel.why());
        Concerns cabinets = Concerns.ALL.inBuilds("cabinet", "routed panel");
        assertEquals(Result.Status.PASSED, concerned(cabinets, face).status(), "a job that does not say how it is built concerns every check");
        assertEquals(Result.Status.PASSED, concerned(cabinets, face + "build: cabinet\n").status());
        Result.CheckRow otherwise = concerned(cabinets, face + "build: vinyl\n");
        assertEquals(Result.Status.NOT_MEASURED, otherwise.status());
        assertEquals("Not for this build: it is about cabinet, routed panel, and the job says vinyl.", otherwise.why());
    }

    @Test
    void whoever_listens_is_told_once_when_a_new_version_takes_over() {
        CheckCatalogue catalogue = new CheckCatalogue();
        Check before = new Trial("trial", null);
        catalogue.add(before, "trial.bundle", "1");
        List<String> versions = new ArrayList<>();
        Runnable listener = () -> versions.add(catalogue.entries().get(0).version());
        catalogue.listen(listener);
        catalogue.change(List.of(before), List.of(new CheckCatalogue.Arrival(new Trial("trial", null), "trial.bundle", "2")));
        catalogue.refuse("other.jar", Optional.of("it is broken"));
        catalogue.refuse("other.jar", Optional.of("it is broken"));
        assertEquals(List.of("2", "2"), versions, "the change, and one refusal; what is known already is no news");
        assertEquals(List.of(new CheckCatalogue.Refused("other.jar", "it is broken")), catalogue.refused());
        catalogue.unlisten(listener);
        catalogue.refuse("other.jar", Optional.empty());
        assertEquals(2, versions.size());
        assertEquals(List.of(), catalogue.refused());
    }

    /** Waits for another check, as one does whose process hangs. */
    private record Elsewhere(String id, CountDownLatch other) implements Check, RunsElsewhere {
        @Override
        public CheckInfo info() {
            return new CheckInfo(id, "trial", List.of(new Rule(id + ".rule", Severity.INFO, "a", "b", "c", "d")), List.of(), List.of(), List.of(), "## " + id + ".rule\n");
        }

        @Override
        public Outcome inspect(Inspection inspection) {
            try {
                return other.await(30, TimeUnit.SECONDS) ? Outcome.of(List.of()) : null;
            } catch (InterruptedException stopped) {
                return null;
            }
        }
    }

    @Test
    void checks_that_run_elsewhere_keep_no_other_from_its_turn() throws Exception {
        CountDownLatch measured = new CountDownLatch(1);
        CheckCatalogue catalogue = new CheckCatalogue();
        for (int i = 0; i <= Runtime.getRuntime().availableProcessors(); i++) {
            catalogue.add(new Elsewhere("acme.wait" + i, measured), "acme.wait", "1");
        }
        catalogue.add(new Trial("trial", inspection -> {
            measured.countDown();
            return Outcome.of(List.of());
        }), "trial.bundle", "1");
        Result result = new Runner(importer, catalogue).run(RunRequest.of(folder.resolve("bar.svg"), JobSheet.NONE), Watcher.NONE);
        result.checks().forEach(row -> assertEquals(Result.Status.PASSED, row.status(), row::toString));
    }
}
