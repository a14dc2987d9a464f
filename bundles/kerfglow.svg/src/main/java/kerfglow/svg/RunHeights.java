// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.awt.geom.AffineTransform;
import java.awt.geom.Point2D;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.batik.gvt.font.GVTFont;
import org.apache.batik.gvt.font.GVTGlyphVector;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;

/**
 * How high the font of laid out characters is, and where they stand.
 *
 * @param cap height of the font's H above its base line, enlarged units; NaN where it has none
 * @param x height of the font's x
 * @param from origin of the first glyph
 * @param to end of the last one's advance
 * @param straight true when all glyphs stand upright on the level line between the two
 */
record RunHeights(double cap, double x, Point2D from, Point2D to, boolean straight) {
    /** Positions are single precision, heights some 16384 units: this is one part in a million of the size. */
    private static final double SAME = 0.02;

    static RunHeights of(GVTGlyphVector glyphs) {
        int count = glyphs.getNumGlyphs();
        Point2D from = glyphs.getGlyphPosition(0);
        boolean straight = true;
        for (int i = 0; i < count; i++) {
            AffineTransform turned = glyphs.getGlyphTransform(i);
            straight &= Math.abs(glyphs.getGlyphPosition(i).getY() - from.getY()) <= SAME
                    && (turned == null || turned.getShearX() == 0 && turned.getShearY() == 0 && turned.getScaleY() == 1);
        }
        return new RunHeights(height(glyphs, 'H'), height(glyphs, 'x'), from, glyphs.getGlyphPosition(count), straight);
    }

    private static double height(GVTGlyphVector glyphs, char letter) {
        GVTFont font = glyphs.getFont();
        if (!font.canDisplay(letter)) {
            return Double.NaN;
        }
        GVTGlyphVector one = font.createGlyphVector(glyphs.getFontRenderContext(), new char[] {letter});
        one.performDefaultLayout();
        return -one.getOutline().getBounds2D().getMinY();
    }

    /** The cap height of all of them, mm; empty where their fonts differ in it. */
    static OptionalDouble capMm(List<RunHeights> runs, TextCopy copy, AffineTransform toMm) {
        return mm(runs.stream().mapToDouble(RunHeights::cap).toArray(), copy, toMm);
    }

    /** The x-height of all of them, mm; empty where their fonts differ in it. */
    static OptionalDouble xMm(List<RunHeights> runs, TextCopy copy, AffineTransform toMm) {
        return mm(runs.stream().mapToDouble(RunHeights::x).toArray(), copy, toMm);
    }

    /** At right angles to the base line, which a skew makes lower than the size says. */
    private static OptionalDouble mm(double[] units, TextCopy copy, AffineTransform toMm) {
        for (double each : units) {
            if (!(Math.abs(each - units[0]) <= SAME)) {
                return OptionalDouble.empty();
            }
        }
        double along = Math.hypot(toMm.getScaleX(), toMm.getShearY());
        double height = units.length == 0 ? 0 : copy.size(units[0]) * Math.abs(toMm.getDeterminant()) / along;
        return height > 0 && Double.isFinite(height) ? OptionalDouble.of(height) : OptionalDouble.empty();
    }

    /** The one line that all of them stand on, mm; empty where there is none. */
    static Optional<LineString> baseLine(List<RunHeights> runs, TextCopy copy, AffineTransform toMm, GeometryFactory factory) {
        if (runs.isEmpty() || runs.stream().anyMatch(run -> !run.straight || Math.abs(run.from.getY() - runs.get(0).from.getY()) > SAME)) {
            return Optional.empty();
        }
        double y = copy.y(runs.get(0).from.getY());
        Coordinate from = Areas.point(copy.x(runs.stream().mapToDouble(run -> run.from.getX()).min().orElseThrow()), y, toMm);
        Coordinate to = Areas.point(copy.x(runs.stream().mapToDouble(run -> run.to.getX()).max().orElseThrow()), y, toMm);
        return from.distance(to) > 0 ? Optional.of(factory.createLineString(new Coordinate[] {from, to})) : Optional.empty();
    }
}
