// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.imageio.ImageIO;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.Gradient;
import kerfglow.api.proof.Paint;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;

/** Colours of gradients: SVG 2, 14.2, and against what rsvg-convert paints. */
class GradientTest {
    private static final String RECT = "<rect x='20' y='10' width='60' height='80' fill='url(#g)'/>";
    private static final String STOPS = "<stop stop-color='#ff0000'/><stop offset='25%' stop-color='#ffff00'/><stop offset='1' stop-color='#000080'/>";
    /** Steps of one channel out of 255: the renderer works in fixed point, which drifts by half a per cent of a steep gradient's length. */
    private static final int NEAR = 6;

    private static Element rect(String gradient) {
        return Svg.only(gradient + RECT);
    }

    @Test
    void all_stops_are_told_in_order() {
        Paint paint = rect("<linearGradient id='g'>" + STOPS + "</linearGradient>").fill();
        assertEquals(Paint.Kind.GRADIENT, paint.kind());
        assertEquals(0xff0000, paint.rgb());
        assertEquals(List.of(0xff0000, 0xffff00, 0x000080), paint.colours());
        assertEquals(paint, rect("<radialGradient id='a'>" + STOPS + "</radialGradient><linearGradient id='g' href='#a'/>").fill());
    }

    @Test
    void flat_paints_have_one_colour_and_patterns_none() {
        assertEquals(List.of(0x112233), Svg.only("<rect width='1' height='1' fill='#112233'/>").fill().colours());
        assertEquals(Paint.colour(0x00ff00), rect("<linearGradient id='g'><stop stop-color='#0f0'/></linearGradient>").fill());
        assertEquals(List.of(), rect("<pattern id='g'/>").fill().colours());
        assertTrue(rect("<pattern id='g'/>").fillGradient().isEmpty());
    }

    /** Closed forms: half way between two stops is their mean, and the box of the shape is the unit. */
    @ParameterizedTest
    @CsvSource({"20, 50, ff0000", "35, 50, ffff00", "27.5, 50, ff8000", "80, 50, 000080", "57.5, 50, 808040", "0, 0, ff0000", "99, 0, 000080"})
    void a_level_gradient_goes_from_side_to_side_of_the_box(double x, double y, String rgb) {
        Gradient gradient = rect("<linearGradient id='g'>" + STOPS + "</linearGradient>").fillGradient().orElseThrow();
        assertEquals(rgb, String.format("%06x", gradient.at(new Coordinate(x, y)).rgb()));
    }

    @Test
    void opacity_of_stops_and_of_the_fill_is_kept_and_lets_through_what_lies_below() {
        Gradient.Shade shade = Svg.only("<linearGradient id='g'><stop stop-color='#fff' stop-opacity='.5'/><stop offset='1' stop-color='#fff'/></linearGradient>"
                + "<rect width='100' height='100' fill-opacity='.5' fill='url(#g)'/>").fillGradient().orElseThrow().at(new Coordinate(50, 50));
        assertEquals(0.375, shade.opacity(), 1e-9);
        assertEquals(0x606060, shade.over(0), "0.375 of 255 is 96");
    }

    @Test
    void a_stroke_has_its_own() {
        Element line = Svg.only("<linearGradient id='g' gradientUnits='userSpaceOnUse' x2='100'>" + STOPS + "</linearGradient>"
                + "<path d='M0 50H100' fill='none' stroke='url(#g)' stroke-width='9'/>");
        assertTrue(line.fillGradient().isEmpty());
        assertEquals(0xffff00, line.strokeGradient().orElseThrow().at(new Coordinate(25, 50)).rgb());
    }

    @Test
    void a_gradient_without_extent_has_colours_and_no_course() {
        Element line = Svg.only("<linearGradient id='g'>" + STOPS + "</linearGradient><path d='M0 50H100' stroke='url(#g)' stroke-width='9'/>");
        assertEquals(3, line.stroke().colours().size());
        assertTrue(line.strokeGradient().isEmpty(), "the box of a level line has no height");
    }

    @ParameterizedTest
    @ValueSource(strings = {
        "<linearGradient id='g' x1='10%' y1='20%' x2='.7' y2='.9' spreadMethod='reflect'>STOPS</linearGradient>",
        "<linearGradient id='g' x2='30%' spreadMethod='repeat' gradientTransform='rotate(20)'>STOPS</linearGradient>",
        "<linearGradient id='g' gradientUnits='userSpaceOnUse' x1='30' y1='10' x2='70' y2='60' gradientTransform='skewX(10)'>STOPS</linearGradient>",
        "<radialGradient id='g'>STOPS</radialGradient>",
        "<radialGradient id='g' fx='.3' fy='.35' r='40%'>STOPS</radialGradient>",
        "<radialGradient id='g' gradientUnits='userSpaceOnUse' cx='50' cy='40' r='20' spreadMethod='reflect' gradientTransform='scale(1 1.2)'>STOPS</radialGradient>",
        "<radialGradient id='g' gradientUnits='userSpaceOnUse' cx='50' cy='50' fx='40' fy='50' fr='8' r='45'>STOPS</radialGradient>",
        "<radialGradient id='a' r='.6' spreadMethod='repeat'>STOPS</radialGradient><radialGradient id='g' cy='.4' href='#a'/>"})
    void colours_are_those_that_an_independent_renderer_paints(String gradient) throws IOException, InterruptedException {
        String content = gradient.replace("STOPS", STOPS.replace("#000080", "#0080ff")) + RECT;
        BufferedImage painted = rendered(Svg.in100(content));
        Gradient course = Svg.only(content).fillGradient().orElseThrow();
        int off = 0;
        int looked = 0;
        for (int x = 22; x < 79; x += 3) {
            for (int y = 12; y < 89; y += 3) {
                int there = painted.getRGB(x * 10 + 5, y * 10 + 5);
                int here = course.at(new Coordinate(x + 0.55, y + 0.55)).rgb();
                boolean near = true;
                for (int shift = 0; shift <= 16; shift += 8) {
                    near &= Math.abs((there >> shift & 0xFF) - (here >> shift & 0xFF)) <= NEAR;
                }
                looked++;
                off += near ? 0 : 1;
            }
        }
        // where it repeats it jumps from one colour to another, and a place may fall on either side
        assertTrue(off <= (gradient.contains("repeat") ? 0.02 * looked : 0), off + " of " + looked + " places differ: " + gradient);
    }

    private static BufferedImage rendered(String svg) throws IOException, InterruptedException {
        Path in = Files.createTempFile("gradient", ".svg");
        Path out = Files.createTempFile("gradient", ".png");
        try {
            Files.writeString(in, svg);
            Process process = new ProcessBuilder("rsvg-convert", "-w", "1000", "-h", "1000", "-o", out.toString(), in.toString()).inheritIO().start();
            assertEquals(0, process.waitFor());
            return ImageIO.read(out.toFile());
        } finally {
            Files.delete(in);
            Files.delete(out);
        }
    }
}
