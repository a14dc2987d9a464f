// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import kerfglow.api.Measure;
import kerfglow.api.Rule;
import kerfglow.api.Severity;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Proof;
import kerfglow.api.proof.Role;
import kerfglow.host.JobSheet;
import kerfglow.host.Result;
import kerfglow.host.ShopSheet;
import kerfglow.testkit.CheckTester;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

/** Results made by hand, so that what was decided on is known. */
final class Samples {
    static final Instant NOON = Instant.parse("2026-03-02T12:00:00Z");
    static final Clock CLOCK = Clock.fixed(NOON, ZoneOffset.UTC);
    static final Rule GAP = new Rule("router.narrow-gap", Severity.STOP, "The bit does not pass", "It stays joined.", "Open it.", "geometry");
    static final Rule THIN = new Rule("router.thin-stroke", Severity.REVIEW, "The stroke is thin", "It breaks.", "Widen it.", "geometry");
    static final Rule NUMBER = new Rule("sheet.used", Severity.INFO, "Sheets used", "So that you know.", "Nothing.", "geometry");

    private Samples() {
    }

    /** Three letters of different shape on one line: what an alignment has to go by. */
    static final List<String> LETTERS = List.of("POLYGON ((0 0, 20 0, 20 100, 0 100, 0 0))", "POLYGON ((60 0, 160 0, 160 20, 120 20, 120 100, 100 100, 100 20, 60 20, 60 0))",
            "POLYGON ((200 0, 260 0, 260 100, 200 100, 200 0), (220 20, 240 20, 240 80, 220 80, 220 20))");

    static String digest(String seed) {
        return DiskFile.digest(seed.getBytes(StandardCharsets.UTF_8));
    }

    static Result result(String revision, List<? extends Geometry> shapes, List<Result.ReportedFinding> findings) {
        return result(revision, 1, shapes, findings, JobSheet.NONE);
    }

    static Result result(String revision, double scale, List<? extends Geometry> shapes, List<Result.ReportedFinding> findings, JobSheet sheet) {
        List<Part> parts = new ArrayList<>();
        for (Geometry shape : shapes) {
            parts.add(Part.builder("p" + (parts.size() + 1), Role.FACE, (Polygon) shape).layer("Letters").elements(List.of("e" + (parts.size() + 1))).build());
        }
        Proof proof = new Proof("sign.svg", digest(revision), 300 * scale, 120 * scale, scale, 0.02, List.of(), List.of());
        List<Result.CheckRow> rows = List.of(row("router", Result.Status.FINDINGS), row("sheet", Result.Status.PASSED));
        List<Result.SettingUsed> settings = List.of(new Result.SettingUsed("router.least-stroke", "all", 3.0, "mm", "check"));
        return new Result(proof, sheet, ShopSheet.NONE, UnitSystem.METRIC, parts, findings, rows, settings, List.of());
    }

    static Result with(Result result, List<Result.CheckRow> rows) {
        return new Result(result.proof(), result.job(), result.shop(), result.units(), result.parts(), result.findings(), rows, result.settings(), result.remarks());
    }

    static Result.CheckRow row(String check, Result.Status status) {
        return new Result.CheckRow(check, check, "1.0.0", status, 5, status == Result.Status.PASSED ? "" : "why", List.of(), List.of());
    }

    static List<Geometry> letters() {
        return LETTERS.stream().map(CheckTester::wkt).toList();
    }

    /** A finding on the first part with its places, as WKT. */
    static Result.ReportedFinding finding(String id, Rule rule, double measured, double required, String... places) {
        List<Geometry> shapes = Arrays.stream(places).map(CheckTester::wkt).toList();
        return finding(id, rule, measured, required, shapes);
    }

    static Result.ReportedFinding finding(String id, Rule rule, double measured, double required, List<Geometry> shapes) {
        Measure found = Measure.mm(measured);
        return new Result.ReportedFinding(id, rule, rule.severity(), "", List.of("p1"), List.of("e1"), Optional.of(found), Optional.of(Measure.mm(required)),
                shapes.stream().map(shape -> new Result.Place(shape.getInteriorPoint().getCoordinate(), shape, Optional.of(found))).toList(), "Found " + measured + ".", rule.fix());
    }

    static JobState state() {
        return JobState.of(ProofRef.of("sign.svg"), JobSheet.NONE);
    }
}
