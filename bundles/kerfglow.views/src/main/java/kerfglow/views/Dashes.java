// SPDX-License-Identifier: Apache-2.0
package kerfglow.views;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineSegment;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.util.LinearComponentExtracter;

/** Cuts lines, or the edges of polygons, into dashes, so that every canvas draws the same ones. */
final class Dashes {
    private final Geometry from;
    private final double length;
    private final List<LineString> dashes = new ArrayList<>();
    private final List<Coordinate> dash = new ArrayList<>();

    private Dashes(Geometry from, double length) {
        this.from = from;
        this.length = length;
    }

    /**
     * The dashes; each line begins with one and goes round corners with them.
     *
     * @param lines in units of the canvas; points have none
     * @param length of a dash and of a gap, over 0
     */
    static Geometry of(Geometry lines, double length) {
        Dashes all = new Dashes(lines, length);
        for (Object line : LinearComponentExtracter.getLines(lines)) {
            all.cut(((LineString) line).getCoordinates());
        }
        return lines.getFactory().createMultiLineString(all.dashes.toArray(new LineString[0]));
    }

    private void cut(Coordinate[] line) {
        boolean drawn = true;
        double left = length;
        dash.add(line[0]);
        for (int i = 1; i < line.length; i++) {
            LineSegment edge = new LineSegment(line[i - 1], line[i]);
            double edgeLength = edge.getLength();
            double done = 0;
            while (edgeLength - done > left) {
                done += left;
                turn(drawn, edge.pointAlong(done / edgeLength));
                drawn = !drawn;
                left = length;
            }
            left -= edgeLength - done;
            if (drawn) {
                dash.add(line[i]);
            }
        }
        end();
    }

    private void turn(boolean drawn, Coordinate at) {
        dash.add(at);
        if (drawn) {
            end();
        }
    }

    private void end() {
        if (dash.size() > 1) {
            dashes.add(from.getFactory().createLineString(dash.toArray(new Coordinate[0])));
        }
        dash.clear();
    }
}
