// SPDX-License-Identifier: Apache-2.0
package kerfglow.views;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import kerfglow.api.ColourScale;
import kerfglow.api.Measure;
import kerfglow.api.OverlayLayer;
import kerfglow.api.Rule;
import kerfglow.api.Severity;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.Paint;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Proof;
import kerfglow.api.proof.Role;
import kerfglow.host.JobSheet;
import kerfglow.host.Result;
import kerfglow.host.ShopSheet;
import kerfglow.testkit.CheckTester;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

/** A small result made by hand: a bar with a hole on a page of 100 by 50 mm, whose words try to break out of every view. */
public final class Sample {
    /** A hostile text. */
    public static final String HOSTILE = "Too narrow & <b>\"thin\"</b> {0} [x](1) ]]> \u0001";
    public static final Rule NARROW = new Rule("trial.narrow", Severity.STOP, HOSTILE, "It breaks.", "Widen it.", "geometry");
    public static final Rule DECIDE = new Rule("trial.decide", Severity.REVIEW, "A person must look", "So that somebody knows.", "Look.", "common practice, no source");
    public static final Rule NOTE = new Rule("trial.note", Severity.INFO, "A note", "So that you know.", "Nothing.", "geometry");

    private Sample() {
    }

    /** A finding at points, or of the whole proof. */
    public static Result.ReportedFinding finding(String id, Rule rule, double measured, String... points) {
        List<Result.Place> places = Arrays.stream(points).map(point -> {
            Geometry geometry = CheckTester.wkt("POINT (" + point + ")");
            return new Result.Place(geometry.getCoordinate(), geometry, Optional.of(Measure.mm(measured)));
        }).toList();
        return new Result.ReportedFinding(id, rule, rule.severity(), "", List.of("p1"), List.of("bar"), Optional.of(Measure.mm(measured)), Optional.of(Measure.mm(3)), places,
                "Part p1 is narrow.", rule.fix());
    }

    /** A finding with a place of its own shape. */
    public static Result.ReportedFinding at(String id, Rule rule, String wkt) {
        Geometry geometry = CheckTester.wkt(wkt);
        return new Result.ReportedFinding(id, rule, rule.severity(), "", List.of(), List.of(), Optional.empty(), Optional.empty(),
                List.of(new Result.Place(geometry.getInteriorPoint().getCoordinate(), geometry, Optional.empty())), "Here.", rule.fix());
    }

    /** The result. */
    public static Result result(List<Result.ReportedFinding> findings) {
        Geometry box = CheckTester.wkt("POLYGON ((10 10, 90 10, 90 40, 10 40, 10 10), (20 20, 30 20, 30 30, 20 30, 20 20))");
        Proof proof = new Proof("some folder/bar & co.svg", "ab".repeat(32), 100, 50, 1, 0.02,
                List.of(Element.builder("bar").layer("L").fill(Paint.colour(0x3366cc)).fillArea(box).build()), List.of());
        Part part = Part.builder("p1", Role.FACE, (Polygon) box).layer("L").elements(List.of("bar")).build();
        OverlayLayer map = new OverlayLayer("map", "Map of <levels>", List.of(new OverlayLayer.Item(CheckTester.wkt("LINESTRING (0 0, 50 50)"), 0.5, "half")),
                Optional.of(new OverlayLayer.Raster(10, 10, 5, 2, 2, new int[] {0xffff0000, 0xff00ff00, 0, 0xffff0000})),
                List.of(new OverlayLayer.LegendEntry(ColourScale.rgb(0), "0 cd/m²"), new OverlayLayer.LegendEntry(ColourScale.rgb(1), "100 cd/m²")));
        List<Result.CheckRow> rows = List.of(new Result.CheckRow("trial", "trial", "1.0.0", Result.Status.FINDINGS, 12, "", List.of(), List.of(map)),
                new Result.CheckRow("late", "lateness", "1.0.0", Result.Status.TIMED_OUT, 60_000, "Took longer than 60 s.", List.of(), List.of()),
                new Result.CheckRow("other", "otherness", "1.0.0", Result.Status.NOT_MEASURED, 1, "No thickness.", List.of(), List.of()),
                new Result.CheckRow("quiet", "quietness", "1.0.0", Result.Status.PASSED, 1, "", List.of(), List.of()));
        List<Result.SettingUsed> settings = List.of(new Result.SettingUsed("trial.width", "all", 3.0, "mm", "check"), new Result.SettingUsed("trial.depth", "role=face", 4.5, "mm", "command line"));
        return new Result(proof, JobSheet.NONE, ShopSheet.NONE, UnitSystem.METRIC, List.of(part), findings, rows, settings, List.of("A remark."));
    }

    /** A stop at two places, one to look at, a note on the whole proof. */
    public static Result result() {
        return result(List.of(finding("00000001", NARROW, 2.5, "20 10", "60 40"), finding("00000002", DECIDE, 2.9, "50 25"), finding("00000003", NOTE, 2.9999)));
    }
}
