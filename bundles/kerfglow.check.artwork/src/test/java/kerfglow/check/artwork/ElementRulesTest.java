// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.artwork;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import java.util.function.UnaryOperator;
import kerfglow.api.Finding;
import kerfglow.api.Rule;
import kerfglow.api.Severity;
import kerfglow.api.proof.Effect;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.ImageInfo;
import kerfglow.api.proof.ImportNote;
import kerfglow.api.proof.Paint;
import kerfglow.api.proof.Role;
import kerfglow.api.proof.TextRun;
import kerfglow.api.proof.Visibility;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

class ElementRulesTest {
    private static final Geometry NOTHING = new GeometryFactory().createPolygon();

    private static Drawn sign() {
        return new Drawn().path("sign", OutlineRulesTest.square(100, 100, 400));
    }

    private static Finding only(Drawn drawn, Rule rule) {
        assertEquals(List.of(rule.id()), drawn.broken());
        List<Finding> findings = drawn.findings(rule);
        assertEquals(1, findings.size(), findings::toString);
        return findings.get(0);
    }

    // specks

    @Test
    void a_single_point_is_stray() {
        Finding finding = only(sign().path("dot", "POINT (700 700)"), Specks.STRAY);
        assertEquals(new Coordinate(700, 700), finding.at().orElseThrow());
    }

    @Test
    void a_filled_line_paints_nothing_and_is_stray() {
        Finding finding = only(sign().path("line", "LINESTRING (600 600, 640 630)"), Specks.STRAY);
        assertTrue(finding.message().contains("a line of 50 mm without width"), finding.message());
    }

    @Test
    void five_thousand_points_are_one_finding() {
        Drawn drawn = sign();
        for (int i = 0; i < 5000; i++) {
            drawn.path("dot" + i, "POINT (" + (600 + i % 100) + " " + (600 + i / 100.0) + ")");
        }
        Finding finding = only(drawn, Specks.STRAY);
        assertEquals(5000, finding.measured().orElseThrow().value());
        assertEquals(5000, finding.place().orElseThrow().getNumGeometries());
        assertEquals(5000, finding.elements().size());
    }

    @Test
    void points_are_listed_singly_up_to_the_limit() {
        Drawn drawn = sign().with(Gatherer.LIST_AT_MOST, 2).path("a", "POINT (600 600)").path("b", "POINT (610 600)");
        assertEquals(2, drawn.findings(Specks.STRAY).size());
        assertEquals(1, drawn.path("c", "POINT (620 600)").findings(Specks.STRAY).size());
    }

    @Test
    void a_stray_point_among_notes_is_no_matter() {
        Drawn drawn = sign().role("Notes", Role.NOTE).path("frame", OutlineRulesTest.square(600, 600, 50), e -> e.layer("Notes"));
        assertEquals(List.of(), drawn.path("dot", CheckTester.wkt("POINT (610 610)"), e -> e.layer("Notes")).broken());
    }

    @Test
    void a_speck_is_measured_by_its_greatest_extent() {
        // A square of side s has the extent s times the square root of 2.
        Finding finding = only(sign().path("speck", OutlineRulesTest.square(700, 700, 1.059)), Specks.TINY);
        assertEquals(1.059 * Math.sqrt(2), finding.measured().orElseThrow().value(), 1e-9);
        assertEquals(List.of(), sign().path("small", OutlineRulesTest.square(700, 700, 1.061)).broken());
    }

    // not cuttable

    @Test
    void live_text_weighs_more_when_its_font_is_not_there() {
        Geometry glyphs = CheckTester.wkt("MULTIPOLYGON (((600 600, 620 600, 620 640, 600 640, 600 600)))");
        Element.Builder text = Element.builder("t").tag("text").layer("Faces").line(7).origin(Element.Origin.TEXT).fillArea(glyphs);
        Finding own = only(sign().add(text.text(new TextRun("Open", "Serif A", "Serif A", false, 40)).build()), NotCuttable.TEXT);
        assertEquals("text t (layer Faces, line 7) is live text, \"Open\", in font Serif A, 40 mm em", own.message());
        Finding other = only(sign().add(text.text(new TextRun("Open", "Serif A", "Sans B", true, 40)).build()), NotCuttable.SUBSTITUTED);
        assertTrue(other.message().endsWith("it is not here, so Sans B stands in for it"), other.message());
        assertEquals(Severity.STOP, other.rule().severity());
        assertEquals(List.of(), sign().role("Notes", Role.NOTE).add(text.layer("Notes").build()).broken());
    }

    @Test
    void a_stroke_is_live_from_just_above_a_hairline() {
        assertEquals(List.of(), stroked(0.36).broken());
        assertEquals(0.37, only(stroked(0.37), NotCuttable.STROKE).measured().orElseThrow().value());
    }

    @Test
    void a_cut_line_that_became_a_part_is_named_and_one_that_joined_its_fill_is_not() {
        Drawn unfilled = stroked(0.3, e -> e.fill(Paint.NONE).fillArea(CheckTester.wkt("POLYGON EMPTY")));
        assertEquals("path a (layer Faces, line 1) has a line 0.3 mm wide in #112233 and no fill; the line itself is measured, not the shape inside it",
                only(unfilled, NotCuttable.CUT_LINE).message());
        Drawn otherwise = stroked(0.3, e -> e.fill(Paint.colour(0x445566)));
        assertEquals("path a (layer Faces, line 1) has a line 0.3 mm wide in #112233; it is measured beside the filled shape, as a part of its own",
                only(otherwise, NotCuttable.CUT_LINE).message());
        assertEquals(0.3, only(otherwise, NotCuttable.CUT_LINE).measured().orElseThrow().value());
        assertEquals(List.of(), stroked(0.3, e -> e.fill(Paint.colour(0x112233))).broken());
    }

    private static Drawn stroked(double width, UnaryOperator<Element.Builder> more) {
        Geometry line = CheckTester.wkt(OutlineRulesTest.square(100, 100, 400));
        return new Drawn().path("a", line, e -> more.apply(e.stroke(Paint.colour(0x112233), width).strokeArea(line.buffer(width / 2))));
    }

    private static Drawn stroked(double width) {
        return stroked(width, e -> e.fill(Paint.colour(0x112233)));
    }

    @Test
    void an_image_is_named_with_its_pixels_and_its_size() {
        Drawn drawn = sign().add(Element.builder("pic").tag("image").layer("Faces").line(9).origin(Element.Origin.IMAGE)
                .fillArea(CheckTester.wkt("POLYGON ((600 600, 800 600, 800 700, 600 700, 600 600))"))
                .image(new ImageInfo(640, 320, 200, 100, true)).build());
        assertEquals("image pic (layer Faces, line 9) is an image of 640 by 320 pixels over 200 mm by 100 mm; it cannot be cut",
                only(drawn, NotCuttable.IMAGE).message());
    }

    @ParameterizedTest
    @EnumSource(Effect.class)
    void effects_are_for_printers_only(Effect effect) {
        Drawn face = new Drawn().path("a", CheckTester.wkt(OutlineRulesTest.square(100, 100, 400)), e -> e.effects(Set.of(effect)));
        assertEquals(List.of(effect == Effect.MASK ? "artwork.mask" : "artwork.effect"), face.broken());
        boolean printable = effect != Effect.MASK && effect != Effect.MARKER;
        assertEquals(printable, face.role("Faces", Role.PRINT).broken().isEmpty());
    }

    // unseen

    @ParameterizedTest
    @EnumSource(value = Visibility.class, mode = EnumSource.Mode.EXCLUDE, names = "SHOWN")
    void what_is_not_seen_is_one_finding_a_layer(Visibility visibility) {
        Drawn drawn = sign();
        for (int i = 0; i < 40; i++) {
            drawn.path("old" + i, CheckTester.wkt(OutlineRulesTest.square(600, 600, 50)), e -> e.layer("Old").visibility(visibility));
        }
        assertEquals(40, only(drawn, Unseen.RULE).measured().orElseThrow().value());
    }

    // page and size

    @Test
    void shapes_off_the_page_and_over_its_edge_are_told_apart() {
        Finding off = only(sign().path("far", OutlineRulesTest.square(1030, 1040, 50)), OffPage.WHOLLY);
        assertEquals(50, off.measured().orElseThrow().value(), 1e-9); // 30, 40, 50: a right triangle
        Finding over = only(sign().path("edge", OutlineRulesTest.square(960, 500, 50)), OffPage.PARTLY);
        assertEquals(10, over.measured().orElseThrow().value(), 1e-9);
        assertEquals(List.of(), sign().path("edge", OutlineRulesTest.square(950.1, 500, 50)).broken(), "within the margin");
    }

    @Test
    void a_sign_of_no_plausible_size_names_the_slips_that_would_explain_it() {
        Finding small = only(new Drawn().path("a", OutlineRulesTest.square(100, 100, 60)), SignSize.IMPLAUSIBLE);
        assertTrue(small.message().contains("drawn to 1:10 scale (then 600 mm by 600 mm)"), small.message());
        // 96/72 = 4/3 and 96/25.4 = 3.7795
        assertTrue(small.message().contains("drawn at 72 units per inch (then 80 mm by 80 mm)"), small.message());
        assertTrue(small.message().contains("millimetres written as px (then 226.77 mm by 226.77 mm)"), small.message());
        assertFalse(small.message().contains("90 units"), "96/90 of 60 mm is 64 mm, still too small");
        assertEquals(List.of(), new Drawn().path("a", OutlineRulesTest.square(100, 100, 80)).broken());
        Finding large = only(new Drawn().page(1e6, 1e6).path("a", OutlineRulesTest.square(100, 100, 30_001)), SignSize.IMPLAUSIBLE);
        assertTrue(large.message().contains("px taken for millimetres"), large.message());
    }

    @Test
    void an_assumed_size_says_what_other_units_would_make() {
        Finding finding = only(sign().note(new ImportNote(ImportNote.Kind.ASSUMED_SIZE, "svg", 1, "no size given; 96 px per inch assumed")),
                SignSize.ASSUMED);
        assertTrue(finding.message().contains("at 90 units per inch it is 426.67 mm by 426.67 mm, at 72 units per inch 533.33 mm by 533.33 mm"),
                finding.message());
    }

    // intent

    @Test
    void unassigned_parts_are_said_once() {
        Drawn drawn = sign().unassigned("Extra").path("a", CheckTester.wkt(OutlineRulesTest.square(600, 600, 50)), e -> e.layer("Extra"))
                .path("b", CheckTester.wkt(OutlineRulesTest.square(700, 600, 50)), e -> e.layer("Extra"));
        Finding finding = only(drawn, Unassigned.RULE);
        assertEquals("2 parts have no role, in: Extra; they count as faces", finding.message());
        assertEquals(List.of("p2", "p3"), finding.parts());
    }

    @Test
    void a_light_shape_on_top_may_be_a_counter() {
        assertEquals(List.of("p2", "p1"), only(on(0x204060, 0xFFFFFF, 200), KnockOut.RULE).parts());
        assertEquals(List.of(), on(0x204060, 0xC04030, 200).broken(), "a darker colour is a choice");
        assertEquals(List.of(), on(0x204060, 0xFFFFFF, 200).role("Faces", Role.VINYL).broken(), "light film on dark film is lettering");
        assertEquals(List.of(), on(0x204060, 0xFFFFFF, 490).broken().stream().filter(id -> id.contains("knock")).toList(), "not wholly on top");
    }

    @Test
    void a_light_shape_beside_another_in_its_notch_is_no_counter() {
        String angle = "LINESTRING (100 100, 300 100, 300 140, 140 140, 140 300, 100 300, 100 100)";
        assertEquals(List.of(), new Drawn().path("a", angle).path("b", CheckTester.wkt(OutlineRulesTest.square(180, 180, 60)),
                e -> e.fill(Paint.colour(0xFFFFFF))).broken());
    }

    @Test
    void the_colour_of_what_lies_below_may_be_a_counter() {
        Drawn drawn = new Drawn().role("Faces", Role.VINYL).path("ground", CheckTester.wkt(OutlineRulesTest.square(50, 50, 700)), e -> e.fill(Paint.colour(0x303030)))
                .path("letter", CheckTester.wkt(OutlineRulesTest.square(100, 100, 400)), e -> e.fill(Paint.colour(0xC04030)));
        assertEquals(List.of(), drawn.broken());
        drawn.add(Drawn.outlined(Element.builder("counter").layer("Faces 2").order(9), CheckTester.wkt(OutlineRulesTest.square(200, 200, 100)))
                .fill(Paint.colour(0x303030)).build()).role("Faces 2", Role.VINYL);
        only(drawn, KnockOut.RULE);
    }

    private static Drawn on(int below, int top, double at) {
        return new Drawn().path("a", CheckTester.wkt(OutlineRulesTest.square(100, 100, 400)), e -> e.fill(Paint.colour(below)))
                .path("b", CheckTester.wkt(OutlineRulesTest.square(at, 200, 100)), e -> e.fill(Paint.colour(top)));
    }

    @Test
    void luminance_agrees_with_published_contrast() {
        // WCAG 2.x: black to white is 21:1; #777777 on white is 4.478:1, the known near miss of 4.5.
        assertEquals(21, (1 + 0.05) / (KnockOut.luminance(0) + 0.05), 1e-9);
        assertEquals(4.478, (KnockOut.luminance(0xFFFFFF) + 0.05) / (KnockOut.luminance(0x777777) + 0.05), 0.001);
    }

    // import

    @ParameterizedTest
    @EnumSource(ImportNote.Kind.class)
    void every_kind_of_note_is_a_finding(ImportNote.Kind kind) {
        String rule = switch (kind) {
            case BAD_VALUE -> "artwork.bad-value";
            case ASSUMED_SIZE -> "artwork.assumed-size";
            default -> "artwork.not-taken-over";
        };
        assertEquals(List.of(rule), sign().note(new ImportNote(kind, "sign", 3, "said so")).broken());
    }

    @Test
    void an_element_without_any_shape_harms_no_rule() {
        assertEquals(List.of(), sign().add(Element.builder("empty").layer("Faces").fillArea(NOTHING).build()).broken());
        assertEquals(List.of("artwork.nothing-drawn"), new Drawn().broken());
    }
}
