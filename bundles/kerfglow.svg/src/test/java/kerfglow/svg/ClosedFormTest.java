// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import kerfglow.api.proof.Element;
import kerfglow.api.proof.ImportOptions;
import kerfglow.api.proof.Proof;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;

/** Sizes, areas and places against closed forms; the tables are those of trade.md, sections 7.1 to 7.3, where named. */
class ClosedFormTest {
    /** design.md, section 2: what coordinates are right to. */
    private static final double COORDINATE_MM = 0.001;

    /** trade.md 7.1 (CSS Values): 1 in = 96 px = 25.4 mm = 72 pt = 6 pc = 101.6 Q. */
    @ParameterizedTest
    @CsvSource({"1in, 25.4", "96px, 25.4", "96, 25.4", "25.4mm, 25.4", "2.54cm, 25.4", "72pt, 25.4", "6pc, 25.4", "101.6Q, 25.4",
        "1mm, 1", "1pt, 0.352777777778", "1pc, 4.233333333333", "1Q, 0.25", "1px, 0.264583333333", "1.5e1mm, 15"})
    void units_of_the_proof(String width, double mm) {
        Proof proof = Svg.read("<svg xmlns='http://www.w3.org/2000/svg' width='" + width + "' height='10mm' viewBox='0 0 1 1' "
                + "preserveAspectRatio='none'><rect width='1' height='1'/></svg>");
        assertEquals(mm, proof.widthMm(), 1e-9);
        assertEquals(mm, proof.elements().get(0).fillArea().getEnvelopeInternal().getWidth(), 1e-9);
        assertTrue(proof.notes().isEmpty(), proof.notes()::toString);
    }

    /** trade.md 7.1: files at 72 or 90 units per inch come out 96/72 and 96/90 times larger. */
    @ParameterizedTest
    @CsvSource({"96, 1, 25.4", "72, 1, 33.8666666667", "90, 1, 27.0933333333", "96, 10, 254"})
    void units_per_inch_and_scale(double unitsPerInch, double scale, double mm) {
        ImportOptions options = ImportOptions.defaults().withUnitsPerInch(unitsPerInch).withScale(scale);
        Proof proof = Svg.read("<svg xmlns='http://www.w3.org/2000/svg' width='96' height='96px'><rect width='96' height='1in'/></svg>", options);
        assertEquals(mm, proof.widthMm(), 1e-6);
        Envelope rect = proof.elements().get(0).fillArea().getEnvelopeInternal();
        assertEquals(mm, rect.getWidth(), 1e-6);
        assertEquals(25.4 * scale, rect.getHeight(), 1e-6, "an inch in the file is an inch at any number of units");
    }

    @Test
    void sizes_that_are_not_stated_are_assumed_and_said() {
        Proof proof = Svg.read("<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 96 192'><rect width='96' height='96'/></svg>");
        assertEquals(25.4, proof.widthMm(), 1e-9);
        assertEquals(50.8, proof.heightMm(), 1e-9);
        assertEquals(kerfglow.api.proof.ImportNote.Kind.ASSUMED_SIZE, proof.notes().get(0).kind());
        Proof bare = Svg.read("<svg xmlns='http://www.w3.org/2000/svg'><rect x='96' width='96' height='96'/></svg>");
        assertEquals(50.8, bare.widthMm(), 1e-9);
        assertEquals(1, bare.notes().size());
        Proof one = Svg.read("<svg xmlns='http://www.w3.org/2000/svg' width='100mm' height='100%' viewBox='0 0 2 1'/>");
        assertEquals(50, one.heightMm(), 1e-9);
        assertEquals(java.util.List.of(), one.notes(), "one length and the viewBox settle the other");
    }

    /** trade.md 7.2: four cubics with kappa enclose 3.1424723327 times the radius squared, 0.028 % more than the circle. */
    @Test
    void circle_of_four_cubics() {
        double k = 40 * 0.5522847498307935;
        Element e = Svg.only("<path d='M90 50 c0 " + k + " " + (k - 40) + " 40 -40 40 s-40 " + (k - 40) + " -40 -40 "
                + (40 - k) + " -40 40 -40 40 " + (40 - k) + " 40 40z'/>");
        // A chord lies within the chord error of its curve: the area lacks less than that along the outline.
        double lost = 3.1424723327 * 1600 - e.fillArea().getArea();
        assertTrue(lost > 0 && lost < 2 * Math.PI * 40 * Svg.EXACT_MM, "lost " + lost);
    }

    /** trade.md 7.2: R 100 and s 0.01 need 223 chords, s 0.1 needs 71; R 10 and s 0.01 needs 71. Four arcs round up each. */
    @ParameterizedTest
    @CsvSource({"100, 0.01, 223", "100, 0.1, 71", "10, 0.01, 71"})
    void chords_of_a_circle(double radius, double chordError, int least) {
        Proof proof = Svg.read(Svg.in100("<circle r='" + radius + "'/>"), ImportOptions.defaults().withChordErrorMm(chordError));
        int chords = proof.elements().get(0).fillArea().getNumPoints() - 1;
        assertTrue(chords >= least && chords <= least + 4, chords + " chords");
    }

    /** Every chord's middle lies within the chord error of the circle; trade.md 7.2, sagitta. */
    @Test
    void flattening_keeps_the_chord_error_at_real_size() {
        Geometry ring = Svg.only("<g transform='scale(20 5)'><circle r='2'/></g>").fillArea().getBoundary();
        Coordinate[] c = ring.getCoordinates();
        double worst = 0;
        for (int i = 1; i < c.length; i++) {
            double x = (c[i].x + c[i - 1].x) / 2 / 40;
            double y = (c[i].y + c[i - 1].y) / 2 / 10;
            double toEdge = 1 - Math.hypot(x, y);
            double normal = Math.hypot(x / 40, y / 10) / Math.hypot(x, y);
            worst = Math.max(worst, toEdge / normal);
        }
        assertTrue(worst > Svg.EXACT_MM / 3 && worst < Svg.EXACT_MM * 1.01, "sagitta " + worst);
    }

    /** trade.md 7.2: area of an ellipse pi a b. */
    @Test
    void ellipse() {
        assertArea(Math.PI * 40 * 12, Svg.only("<ellipse cx='50' cy='50' rx='40' ry='12'/>").fillArea());
        assertArea(40 * 30 - (4 - Math.PI) * 5 * 8, Svg.only("<rect width='40' height='30' rx='5' ry='8'/>").fillArea());
    }

    /** trade.md 7.3: butt Lw, square (L + w)w, round Lw + pi w²/4; circle 2 pi R w. */
    @ParameterizedTest
    @CsvSource({"butt, 480", "square, 544", "round, 530.2654825"})
    void strokes_of_a_segment(String cap, double area) {
        assertArea(area, Svg.only("<path d='M10 50H70' stroke='black' stroke-width='8' stroke-linecap='" + cap + "'/>").strokeArea());
    }

    @Test
    void strokes_of_circles() {
        assertArea(2 * Math.PI * 30 * 9, Svg.only("<circle cx='50' cy='50' r='30' stroke='black' stroke-width='9'/>").strokeArea());
        // Wider than the circle: the pen covers the middle too.
        assertArea(Math.PI * 28 * 28, Svg.only("<circle cx='50' cy='50' r='8' stroke='black' stroke-width='40'/>").strokeArea());
    }

    /** trade.md 7.3: pentagon (0,0),(30,0),(40,15),(25,30),(5,22), w 3: miter 340.0279421643, round 338.5642862457. */
    @ParameterizedTest
    @CsvSource({"miter, 340.0279421643", "round, 338.5642862457"})
    void stroke_of_a_pentagon(String join, double area) {
        assertArea(area, Svg.only("<polygon points='0,0 30,0 40,15 25,30 5,22' stroke='black' stroke-width='3' stroke-linejoin='" + join + "'/>")
                .strokeArea());
    }

    /** trade.md 7.3: the limit 4 lies at 28.955 degrees, 10 at 11.478; beyond it the join is a bevel. */
    @ParameterizedTest
    @CsvSource({"4, 29.0, true", "4, 28.9, false", "10, 11.5, true", "10, 11.4, false", "1.414, 90.1, true", "1.414, 89.9, false"})
    void miter_limit(double limit, double degrees, boolean mitred) {
        double half = Math.toRadians(degrees / 2);
        Geometry stroke = Svg.only(String.format(java.util.Locale.ROOT, "<path fill='none' d='M%.9f 90L50 40L%.9f 90' stroke='black' "
                + "stroke-width='4' stroke-miterlimit='%s'/>", 50 - 50 * Math.tan(half), 50 + 50 * Math.tan(half), limit)).strokeArea();
        double tip = mitred ? 40 - 2 / Math.sin(half) : 40 - 2 * Math.sin(half);
        assertEquals(tip, stroke.getEnvelopeInternal().getMinY(), 1e-6);
    }

    /** 80 mm dashed 12 on, 5 off: four whole dashes and 12 of the fifth. */
    @Test
    void dashes() {
        assertArea((4 * 12 + 12) * 10, Svg.only("<path d='M10 50H90' stroke='black' stroke-width='10' stroke-dasharray='12 5'/>").strokeArea());
    }

    /** SVG 2, 9.6.1: a pathLength of 8 makes one dash unit 10 mm of the 80. */
    @Test
    void dashes_in_parts_of_the_path_length() {
        assertArea(4 * 10 * 10, Svg.only("<path d='M10 50H90' pathLength='8' stroke='black' stroke-width='10' stroke-dasharray='1'/>").strokeArea());
    }

    @Test
    void stroke_that_keeps_its_width() {
        Proof proof = Svg.read("<svg xmlns='http://www.w3.org/2000/svg' width='96px' height='96px'><rect transform='scale(2 1)' width='20' height='40' "
                + "fill='none' stroke='black' stroke-width='4' vector-effect='non-scaling-stroke'/></svg>");
        double px = 25.4 / 96;
        assertArea(160 * 4 * px * px, proof.elements().get(0).strokeArea());
        assertEquals(4 * px, proof.elements().get(0).strokeWidthMm(), 1e-9);
    }

    /** Clips that the independent renderer does not follow: half a disc each. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "<clipPath id='c' clip-path='url(#d)'><circle cx='50' cy='50' r='30'/></clipPath>",
        "<clipPath id='c'><circle cx='50' cy='50' r='30' clip-path='url(#d)'/></clipPath>"})
    void clipped_clips(String clip) {
        assertArea(Math.PI * 450, Svg.only("<clipPath id='d'><rect width='50' height='100'/></clipPath>" + clip
                + "<rect width='100' height='100' clip-path='url(#c)'/>").fillArea());
    }

    /** SVG 2, user agent style sheet: nested svg and symbol clip to their viewport unless overflow is visible. */
    @ParameterizedTest
    @CsvSource({"'', 1000", "overflow='visible', 4000", "style='overflow:visible', 4000", "overflow='hidden', 1000"})
    void viewports_clip(String overflow, double area) {
        assertArea(area, Svg.only("<svg x='10' width='50' height='20' " + overflow + "><rect width='80' height='50'/></svg>").fillArea());
        assertArea(area, Svg.only("<symbol id='s' " + overflow + "><rect width='80' height='50'/></symbol>"
                + "<use href='#s' width='50' height='20'/>").fillArea());
    }

    /** design.md, section 2: right to 0.001 mm up to 4 m and to 1e-6 beyond; here the digits that doubles hold are asked for. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "<path d='M3999.1234 10h.0005v.25h-.0005z'/>                                                  | 3999.1234",
        "<g transform='translate(-1234567890.5)'><path d='M1234571890.0625 10h.0005v.25h-.0005z'/></g> | 3999.5625",
        "<g transform='matrix(1 0 0 1 -98765432.125 0)'><polygon points='98769431.2,10 98769431.2005,10 98769431.2005,10.25 98769431.2,10.25'/></g> | 3999.075",
        "<g transform='scale(1e-6)'><g transform='scale(1e6)'><rect x='3999.1234' y='10' width='.0005' height='.25'/></g></g> | 3999.1234",
        "<defs><path id='p' d='M.0625 10h.0005v.25h-.0005z'/></defs><use href='#p' x='16777217' transform='translate(-16773217)'/> | 4000.0625",
        "<rect x='3999.1234' y='10' width='.0005' height='.25' transform='rotate(360 1e6 1e6)'/>      | 3999.1234"})
    void precision(String content, double left) {
        Envelope box = Svg.only(content).fillArea().getEnvelopeInternal();
        assertEquals(left, box.getMinX(), COORDINATE_MM / 100);
        assertEquals(0.0005, box.getWidth(), COORDINATE_MM / 100);
        assertEquals(0.25, box.getHeight(), COORDINATE_MM / 100);
    }

    private static void assertArea(double expected, Geometry area) {
        assertTrue(area.isValid());
        // Twice the chord error along the outline: design.md, section 2.
        assertEquals(expected, area.getArea(), 1e-6 + 2 * Svg.EXACT_MM * area.getLength());
    }
}
