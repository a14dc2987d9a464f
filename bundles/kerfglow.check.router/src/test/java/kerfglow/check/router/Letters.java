// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.router;

import java.awt.Font;
import java.awt.GraphicsEnvironment;
import java.awt.font.FontRenderContext;
import java.awt.geom.PathIterator;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;

/** Outlined letters of an open serif font, Debian package fonts-dejavu-core. */
final class Letters {
    private static final String FONT = "DejaVu Serif";
    private static final String PACKAGE = "fonts-dejavu-core";
    /** Capitals of the font are this share of its size high; read off its capital H. */
    private static final double CAPITAL_SHARE = 0.729;
    private static final double CHORD_ERROR_MM = 0.02;
    private static final GeometryFactory FACTORY = new GeometryFactory();

    private Letters() {
    }

    /**
     * The pieces of one letter, y down.
     *
     * @param capitalMm height of its capitals
     * @throws IllegalStateException when the font is not there; the message names the package
     */
    static List<Polygon> of(char letter, double capitalMm) {
        if (!Arrays.asList(GraphicsEnvironment.getLocalGraphicsEnvironment().getAvailableFontFamilyNames()).contains(FONT)) {
            throw new IllegalStateException("the font " + FONT + " is not installed: package " + PACKAGE);
        }
        // outlines are single precision: take them large and scale down
        double taken = 1000;
        Font font = new Font(FONT, Font.PLAIN, (int) taken);
        PathIterator path = font.createGlyphVector(new FontRenderContext(null, true, true), String.valueOf(letter)).getOutline()
                .getPathIterator(null, CHORD_ERROR_MM * taken * CAPITAL_SHARE / capitalMm);
        double scale = capitalMm / (taken * CAPITAL_SHARE);
        // glyph outlines of this font are drawn without overlaps, so that the rings can be exclusive-ored
        Geometry all = FACTORY.createPolygon();
        List<Coordinate> ring = new ArrayList<>();
        double[] at = new double[6];
        for (; !path.isDone(); path.next()) {
            int kind = path.currentSegment(at);
            if (kind == PathIterator.SEG_CLOSE) {
                ring.add(ring.get(0).copy());
                if (ring.size() > 3) {
                    all = all.symDifference(FACTORY.createPolygon(ring.toArray(new Coordinate[0])).buffer(0));
                }
                ring.clear();
            } else {
                ring.add(new Coordinate(at[0], at[1]));
            }
        }
        List<Polygon> pieces = new ArrayList<>();
        Geometry scaled = AffineTransformation.scaleInstance(scale, scale).transform(all);
        for (int i = 0; i < scaled.getNumGeometries(); i++) {
            if (!scaled.getGeometryN(i).isEmpty()) {
                pieces.add((Polygon) scaled.getGeometryN(i));
            }
        }
        return pieces;
    }
}
