// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.font.FontRenderContext;
import java.awt.geom.AffineTransform;
import java.awt.geom.PathIterator;
import java.io.File;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;

/** Shapes for tests: WKT, and outlined lettering of an open font (Debian's package fonts-dejavu-core). */
final class Letters {
    private static final String FOLDER = "/usr/share/fonts/truetype/dejavu/";
    private static final double CHORD_ERROR_MM = 0.02;
    private static final GeometryFactory FACTORY = new GeometryFactory();

    private Letters() {
    }

    static Polygon wkt(String text) {
        try {
            return (Polygon) new WKTReader().read(text);
        } catch (ParseException wrong) {
            throw new IllegalArgumentException(text, wrong);
        }
    }

    static Polygon bar(double length, double width) {
        return wkt("POLYGON ((0 0, %1$s 0, %1$s %2$s, 0 %2$s, 0 0))".formatted(length, width));
    }

    static Polygon letter(String font, String text, double sizeMm) {
        return letters(font, text, sizeMm).get(0);
    }

    static List<Polygon> letters(String font, String text, double sizeMm) {
        PathIterator path = font(font).createGlyphVector(new FontRenderContext(null, true, true), text).getOutline()
                .getPathIterator(AffineTransform.getScaleInstance(sizeMm / 1000, sizeMm / 1000), CHORD_ERROR_MM);
        Geometry drawn = FACTORY.createPolygon();
        List<Coordinate> points = new ArrayList<>();
        double[] at = new double[6];
        for (; !path.isDone(); path.next()) {
            switch (path.currentSegment(at)) {
                case PathIterator.SEG_MOVETO -> {
                    points.clear();
                    points.add(new Coordinate(at[0], at[1]));
                }
                case PathIterator.SEG_LINETO -> points.add(new Coordinate(at[0], at[1]));
                default -> {
                    points.add(points.get(0).copy());
                    drawn = drawn.symDifference(FACTORY.createPolygon(points.toArray(new Coordinate[0])));
                }
            }
        }
        List<Polygon> pieces = new ArrayList<>();
        for (int i = 0; i < drawn.getNumGeometries(); i++) {
            pieces.add((Polygon) drawn.getGeometryN(i));
        }
        return pieces;
    }

    private static Font font(String name) {
        File file = new File(FOLDER + name + ".ttf");
        if (!file.exists()) {
            throw new AssertionError("this test needs Debian's package fonts-dejavu-core");
        }
        try {
            return Font.createFont(Font.TRUETYPE_FONT, file).deriveFont(1000f);
        } catch (FontFormatException | IOException wrong) {
            throw new AssertionError(wrong);
        }
    }
}
