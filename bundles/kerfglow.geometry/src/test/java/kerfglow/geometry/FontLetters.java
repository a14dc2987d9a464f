// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.font.FontRenderContext;
import java.awt.geom.AffineTransform;
import java.awt.geom.PathIterator;
import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;

/** Outlined lettering of an open font (Debian's package fonts-dejavu-core), for the tests of every bundle. */
public final class FontLetters {
    public static final String SERIF = "DejaVuSerif";
    private static final String FOLDER = "/usr/share/fonts/truetype/dejavu/";
    private static final double CHORD_ERROR_MM = 0.02;
    private static final float UNIT_SIZE = 1000;
    private static final GeometryFactory FACTORY = new GeometryFactory();

    private FontLetters() {
    }

    /** The pieces of a text on the base line y = 0, y down; em in mm. */
    public static List<Polygon> of(String font, String text, double emMm) {
        PathIterator path = font(font).createGlyphVector(new FontRenderContext(null, true, true), text).getOutline()
                .getPathIterator(AffineTransform.getScaleInstance(emMm / UNIT_SIZE, emMm / UNIT_SIZE), CHORD_ERROR_MM);
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
            return Font.createFont(Font.TRUETYPE_FONT, file).deriveFont(UNIT_SIZE);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        } catch (FontFormatException damaged) {
            throw new IllegalStateException(damaged);
        }
    }
}
