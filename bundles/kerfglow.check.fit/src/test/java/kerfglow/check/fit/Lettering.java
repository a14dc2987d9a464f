// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.fit;

import java.awt.Font;
import java.awt.Shape;
import java.awt.font.FontRenderContext;
import java.awt.geom.AffineTransform;
import java.awt.geom.PathIterator;
import java.io.File;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Assertions;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

/** Outlined lettering from an open font. */
final class Lettering {
    private static final File SERIF = new File("/usr/share/fonts/truetype/dejavu/DejaVuSerif.ttf");

    private Lettering() {
    }

    /** The pieces of a letter, flattened, so many millimetres high. */
    static List<Polygon> letter(char letter, double heightMm, double flatnessMm) throws Exception {
        Assertions.assertTrue(SERIF.exists(), "this test needs " + SERIF + " of Debian's package fonts-dejavu-core; install it");
        Font font = Font.createFont(Font.TRUETYPE_FONT, SERIF).deriveFont(1000f);
        Shape outline = font.createGlyphVector(new FontRenderContext(null, true, true), String.valueOf(letter)).getOutline();
        double scale = heightMm / outline.getBounds2D().getHeight();
        Geometry area = Drawings.FACTORY.createPolygon();
        List<Coordinate> ring = new ArrayList<>();
        double[] at = new double[6];
        for (PathIterator path = outline.getPathIterator(AffineTransform.getScaleInstance(scale, scale), flatnessMm); !path.isDone(); path.next()) {
            int segment = path.currentSegment(at);
            if (segment == PathIterator.SEG_CLOSE) {
                ring.add(ring.get(0).copy());
                area = area.symDifference(Drawings.FACTORY.createPolygon(ring.toArray(new Coordinate[0])));
                ring.clear();
            } else if (ring.isEmpty() || ring.get(ring.size() - 1).distance(new Coordinate(at[0], at[1])) > 1e-3) {
                ring.add(new Coordinate(at[0], at[1]));
            }
        }
        List<Polygon> pieces = new ArrayList<>();
        for (int i = 0; i < area.getNumGeometries(); i++) {
            pieces.add((Polygon) area.getGeometryN(i));
        }
        return pieces;
    }
}
