// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.Proof;
import kerfglow.api.proof.TextRun;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.algorithm.Angle;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.LineString;

/** Live text in the font that ships. Its glyph sizes are read from the font file's own tables (2048 units to the em). */
class TextTest {
    private static final String LIBERATION = "font-family='Liberation Sans' font-size='100'";
    /** Glyph H: xMin 168, xMax 1312, yMax 1409; advance 1479 (glyf and hmtx tables). */
    private static final double H_LEFT = 168 / 2048.0 * 100;
    private static final double H_RIGHT = 1312 / 2048.0 * 100;
    private static final double H_HEIGHT = 1409 / 2048.0 * 100;
    private static final double H_ADVANCE = 1479 / 2048.0 * 100;
    private static final double EXACT = 0.001;

    @Test
    void a_letter_has_the_outline_of_the_font() {
        Element h = Svg.only("<text id='t' x='10' y='90' " + LIBERATION + ">H</text>");
        Envelope box = h.fillArea().getEnvelopeInternal();
        assertEquals(10 + H_LEFT, box.getMinX(), EXACT);
        assertEquals(10 + H_RIGHT, box.getMaxX(), EXACT);
        assertEquals(90 - H_HEIGHT, box.getMinY(), EXACT);
        assertEquals(90, box.getMaxY(), EXACT);
        TextRun run = h.text().orElseThrow();
        assertEquals(List.of("H", "Liberation Sans", "Liberation Sans", false, 100.0),
                List.of(run.text(), run.fontAsked(), run.fontUsed(), run.substituted(), run.sizeMm()));
        assertEquals(Element.Origin.TEXT, h.origin());
    }

    /** OS/2 table of the font that ships: sCapHeight 1409, sxHeight 1082. */
    @ParameterizedTest
    @CsvSource({"'', 1, 0", "scale(.5), .5, 0", "rotate(30), 1, 30", "translate(3 4) rotate(-90) scale(2), 2, -90", "scale(3 1), 1, 0", "skewX(20), 1, 0"})
    void the_heights_of_the_font_and_the_base_line_are_told(String transform, double scale, double degrees) {
        TextRun run = Svg.only("<text x='10' y='20' transform='" + transform + "' " + LIBERATION + ">Hx H<tspan dx='5'> </tspan></text>").text().orElseThrow();
        assertEquals(scale * 1409 / 2048 * 100, run.capHeightMm().orElseThrow(), EXACT);
        assertEquals(scale * 1082 / 2048 * 100, run.xHeightMm().orElseThrow(), EXACT);
        LineString base = run.baseLine().orElseThrow();
        assertEquals(Math.toRadians(degrees), Angle.angle(base.getCoordinateN(0), base.getCoordinateN(1)), 1e-6);
        if (transform.isEmpty()) {
            assertEquals(10, base.getCoordinateN(0).x, EXACT);
            assertEquals(20, base.getCoordinateN(0).y, EXACT);
        }
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "<text y='50 60 50' F>HHH</text>", "<text y='50' rotate='10' F>HH</text>",
        "<defs><path id='p' d='M0 50Q50 0 100 50'/></defs><text F><textPath href='#p'>HH</textPath></text>"})
    void text_that_stands_on_no_one_line_has_heights_but_no_base_line(String content) {
        TextRun run = Svg.only(content.replace("F>", "font-family='Liberation Sans' font-size='10'>")).text().orElseThrow();
        assertTrue(run.baseLine().isEmpty());
        assertEquals(1409 / 2048.0 * 10, run.capHeightMm().orElseThrow(), EXACT);
    }

    @Test
    void small_text_under_a_large_scale_keeps_its_precision() {
        Element h = Svg.only("<g transform='scale(1000)'><text x='4' y='.09' font-family='Liberation Sans' font-size='.1'>H</text></g>");
        Envelope box = h.fillArea().getEnvelopeInternal();
        assertEquals(4000 + H_LEFT, box.getMinX(), EXACT);
        assertEquals(4000 + H_RIGHT, box.getMaxX(), EXACT);
        assertEquals(90 - H_HEIGHT, box.getMinY(), EXACT);
        assertEquals(100, h.text().orElseThrow().sizeMm(), 1e-9);
    }

    @Test
    void a_family_that_is_not_installed_is_substituted_and_said() {
        TextRun run = Svg.only("<text y='90' font-family=\"'Nobody Has This', sans-serif\" font-size='20'>A</text>").text().orElseThrow();
        assertEquals("Nobody Has This", run.fontAsked());
        assertEquals("Liberation Sans", run.fontUsed());
        assertTrue(run.substituted());
        assertFalse(Svg.only("<text y='90' font-family='Nobody, Liberation Sans'>A</text>").text().orElseThrow().substituted());
    }

    @Test
    void spans_have_their_own_paint_and_follow_each_other() {
        Proof proof = Svg.read(Svg.in100("<text id='t' y='90' " + LIBERATION + ">H<tspan id='s' fill='red' stroke='blue'>H</tspan></text>"));
        assertEquals(List.of("t", "s"), proof.elements().stream().map(Element::id).toList());
        assertEquals(0xff0000, proof.elements().get(1).fill().rgb());
        assertFalse(proof.elements().get(1).strokeArea().isEmpty());
        assertEquals(H_ADVANCE + H_LEFT, proof.elements().get(1).fillArea().getEnvelopeInternal().getMinX(), EXACT);
        assertEquals(List.of("s", "t"), proof.elements().get(1).idPath());
    }

    @Test
    void anchors_and_spacing_are_followed() {
        assertEquals(50 - H_ADVANCE / 2 + H_LEFT,
                Svg.only("<text x='50' y='90' text-anchor='middle' " + LIBERATION + ">H</text>").fillArea().getEnvelopeInternal().getMinX(), EXACT);
        assertEquals(H_ADVANCE + 7 + H_RIGHT,
                Svg.only("<text y='90' letter-spacing='7' " + LIBERATION + ">HH</text>").fillArea().getEnvelopeInternal().getMaxX(), 0.01);
    }

    @Test
    void text_on_a_path_starts_where_the_path_does() {
        Element h = Svg.only("<defs><path id='p' d='M20 10V90'/></defs><text " + LIBERATION + "><textPath href='#p'>H</textPath></text>");
        Envelope box = h.fillArea().getEnvelopeInternal();
        assertEquals(10 + H_LEFT, box.getMinY(), 0.01); // runs downwards, so its left is up
        assertEquals(20 + H_HEIGHT, box.getMaxX(), 0.01);
    }

    @Test
    void text_clips() {
        Element rect = Svg.only("<clipPath id='c'><text x='10' y='90' " + LIBERATION + ">H</text></clipPath>"
                + "<rect width='100' height='100' clip-path='url(#c)'/>");
        assertEquals(10 + H_LEFT, rect.fillArea().getEnvelopeInternal().getMinX(), EXACT);
    }

    @Test
    void a_character_that_no_font_has_is_said() {
        Proof proof = Svg.read(Svg.in100("<text y='90' " + LIBERATION + ">A&#x10FFFD;</text>"));
        assertTrue(proof.notes().stream().anyMatch(n -> n.message().contains("U+10FFFD")), () -> proof.notes().toString());
    }
}
