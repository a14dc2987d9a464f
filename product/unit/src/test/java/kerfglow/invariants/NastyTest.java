// SPDX-License-Identifier: Apache-2.0
package kerfglow.invariants;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import kerfglow.api.Measure;
import kerfglow.api.proof.ProofException;
import kerfglow.host.Result;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Outlines that break geometry, and outlines that are very much, through all checks: each ends with an answer, or is refused or told timed
 * out by name. What has a closed form is measured right.
 *
 * <p>{@code -Dnasty.size=400000} takes outlines of that many corners (100,000 holes) instead of thousands: minutes.
 */
class NastyTest {
    private static final int SIZE = Integer.getInteger("nasty.size", 2000);
    private static final boolean IS_LONG = SIZE > 10_000;
    private static final double BIT_MM = 4;
    /** Two chord errors. */
    private static final double WIDTH_TOLERANCE_MM = 0.04;

    private static final String SHOP = """
            name: a shop
            stock:
              router-bits: [{name: four, diameter: 4 mm, flute-length: 12 mm}]
            """;

    private static Result run(String data, String fillRule, String role, boolean lit) throws Exception {
        String build = role.equals("vinyl") ? "vinyl" : role.equals("face") ? "face-lit letters" : "routed panel";
        String svg = "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"3000mm\" height=\"3000mm\" viewBox=\"0 0 3000 3000\"><g id=\"Plate\">"
                + (role.equals("opening") ? "<path d=\"M-10 -10H2000V2000H-10Z\"/>" : "") + "</g><g id=\"Nasty\"><path fill=\"#b03030\" fill-rule=\"" + fillRule + "\" d=\"" + data
                + "\"/></g>" + (lit ? "<g id=\"Modules\"><rect x=\"270\" y=\"420\" width=\"70\" height=\"15\"/></g>" : "") + "</svg>";
        String job = "build: " + build + "\nroles:\n  - {layer: Nasty, role: " + role + "}\n  - {layer: Plate, role: panel}\n  - {layer: Modules, role: module}\n"
                + "materials:\n  - {material: acrylic, thickness: 4.5 mm}\n"
                + "settings: {returns.depth: 60 mm, legibility.distance: 10 m, legibility.wall-colour: \"#ffffff\", trim.faces: all, fit.make-backs: all, mount.wind-pressure: 800 Pa,"
                + " print.viewing-distance: 2 m, router.least-stroke: 5 mm, glow.cell: 10 mm, glow.lit: " + (lit ? "by build" : "none") + "}\n";
        return AllChecks.run(svg, job, SHOP, List.of());
    }

    private static List<Result.CheckRow> withStatus(Result result, Result.Status status) {
        return result.checks().stream().filter(row -> row.status() == status).toList();
    }

    @ParameterizedTest
    @CsvSource({"evenodd, face", "nonzero, opening", "evenodd, vinyl"})
    void degenerate_outlines_end_with_an_answer(String fillRule, String role) throws Exception {
        List<String> failed = new ArrayList<>();
        for (Map.Entry<String, String> each : Nasty.degenerate().entrySet()) {
            Result result = run(each.getValue(), fillRule, role, false);
            if (result.isBroken()) {
                failed.add(each.getKey() + ": " + withStatus(result, Result.Status.FAILED) + withStatus(result, Result.Status.TIMED_OUT));
            }
        }
        assertEquals(List.of(), failed);
    }

    @Test
    void degenerate_faces_are_lit() throws Exception {
        for (String name : List.of("spikes along the edges", "ring drawn twice", "one corner many times", "hole touching its ring in a corner")) {
            Result result = run(Nasty.degenerate().get(name), "nonzero", "face", true);
            assertFalse(result.isBroken(), () -> name + ": " + result.checks());
            assertEquals(Result.Status.FINDINGS, result.checks().stream().filter(row -> row.check().equals("glow")).findFirst().orElseThrow().status(), name);
        }
    }

    /** What a degenerate outline paints, by the definition of the fill rules: SVG 2, 13.4.2. */
    @ParameterizedTest
    @CsvSource({"ring drawn twice, evenodd, 0", "ring drawn twice, nonzero, 160000", "ring and its reverse, evenodd, 0", "ring and its reverse, nonzero, 0",
        "'ring drawn twice, half a turn on', nonzero, 160000", "'twice, a hair apart', nonzero, 160000", "'twice, a hair apart', evenodd, 0",
        "'hole as large as its ring, a hair apart', evenodd, 0", "spikes along the edges, nonzero, 160000", "bow-tie, evenodd, 80000", "flat rectangle, nonzero, 0",
        "there and back, nonzero, 0", "sliver, nonzero, 0", "1e-9 wide, nonzero, 0", "corner on corner, evenodd, 80000", "edge on edge, evenodd, 80000"})
    void a_degenerate_outline_paints_what_its_fill_rule_says(String name, String fillRule, double areaMm2) throws Exception {
        Result result = run(Nasty.degenerate().get(name), fillRule, "face", false);
        assertEquals(areaMm2, result.parts().stream().mapToDouble(part -> part.shape().getArea()).sum(), 1e-3);
    }

    @Test
    void very_much_of_one_kind_ends_with_an_answer_or_a_named_refusal() throws Exception {
        for (Map.Entry<String, String> each : Nasty.large(SIZE).entrySet()) {
            for (String role : List.of("face", "opening", "vinyl")) {
                try {
                    Result result = run(each.getValue(), "evenodd", role, false);
                    assertEquals(List.of(), withStatus(result, Result.Status.FAILED), each.getKey() + " as " + role);
                    List<String> late = withStatus(result, Result.Status.TIMED_OUT).stream().map(Result.CheckRow::check).toList();
                    assertTrue(IS_LONG || late.isEmpty(), () -> each.getKey() + " as " + role + " timed out: " + late);
                    if (IS_LONG) {
                        System.out.println(each.getKey() + " as " + role + ": " + result.checks().stream().map(row -> row.check() + " " + row.millis() + " ms" + (late.contains(row.check())
                                ? " timed out" : "")).collect(Collectors.joining(", ")));
                    }
                } catch (ProofException refused) {
                    assertEquals("crossings", each.getKey(), refused.getMessage());
                }
            }
        }
    }

    /** Teeth of 2 mm with gaps of 1 mm; a strip of 4 mm with gaps of 3 mm; holes of 6 mm with 2 mm between; rings of 8 mm, 8 mm apart. */
    @ParameterizedTest
    @CsvSource({"comb, 2, 1", "spiral, 4, 3", "holes, 2, ", "nested rings, , "})
    void strokes_and_gaps_have_the_widths_that_were_drawn(String name, Double strokeMm, Double gapMm) throws Exception {
        Result result = run(Nasty.large(Math.min(SIZE, 4000)).get(name), "evenodd", "face", false);
        assertWidth(result, "router.thin-stroke", strokeMm);
        assertWidth(result, "router.narrow-gap", gapMm);
        if (name.equals("comb")) {
            assertEquals(Math.min(SIZE, 4000) / 4, count(result, "router.thin-stroke"));
            assertEquals(Math.min(SIZE, 4000) / 4 - 1, count(result, "router.narrow-gap"));
        }
        if (name.equals("holes")) { // derived: geometry; a round bit leaves a square corner r (sqrt 2 - 1) deep
            assertEquals(4 * (Math.min(SIZE, 4000) / 4), count(result, "router.inside-corner"));
            result.findings().stream().filter(finding -> finding.rule().id().equals("router.inside-corner"))
                    .forEach(finding -> assertEquals(BIT_MM / 2 * (Math.sqrt(2) - 1), finding.measured().orElseThrow().value(), 1e-6));
        }
    }

    /**
     * Holes of 24 mm with 12 corners, 20 mm apart, break no rule of the router's (a round bit of 4 mm leaves 2 (1 / sin 75 degrees - 1) = 0.07 mm in each corner); holes of up to 12 mm
     * that nearly touch break several. Every check answers, or is told timed out when 100,000 are asked for.
     */
    @ParameterizedTest
    @CsvSource({"true", "false"})
    void a_perforated_face_ends_with_an_answer(boolean healthy) throws Exception {
        int count = Math.max(400, SIZE / 4);
        Result result = run(healthy ? Nasty.roundHoles(count) : Nasty.irregularHoles(count), "evenodd", "face", false);
        assertEquals(List.of(), withStatus(result, Result.Status.FAILED));
        List<Result.CheckRow> late = withStatus(result, Result.Status.TIMED_OUT);
        assertTrue(IS_LONG || late.isEmpty(), late::toString);
        if (IS_LONG) {
            System.out.println(count + (healthy ? " healthy" : " faulty") + " holes: " + result.checks().stream().map(row -> row.check() + " " + row.millis() + " ms " + row.status().word()).collect(Collectors.joining(", ")));
        }
        assertEquals(count, result.parts().get(0).shape().getNumInteriorRing());
        if (healthy) {
            assertEquals(0, count(result, "router.thin-stroke") + count(result, "router.inside-corner") + count(result, "router.narrow-gap") + count(result, "fit.back-splits"));
        } else if (!IS_LONG) {
            assertTrue(count(result, "router.thin-stroke") > count / 2, "webs of about 2 mm between holes");
        }
    }

    private static int count(Result result, String rule) {
        return result.findings().stream().filter(finding -> finding.rule().id().equals(rule)).mapToInt(Result.ReportedFinding::count).sum();
    }

    private static void assertWidth(Result result, String rule, Double widthMm) {
        List<Double> widths = result.findings().stream().filter(finding -> finding.rule().id().equals(rule)).flatMap(finding -> finding.places().stream())
                .map(place -> place.measured().map(Measure::value).orElseThrow()).toList();
        assertEquals(widthMm == null, widths.isEmpty(), () -> rule + " " + widths);
        widths.forEach(each -> assertEquals(widthMm, each, WIDTH_TOLERANCE_MM, rule));
    }
}
