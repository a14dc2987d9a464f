// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.glow;

import java.util.ArrayList;
import java.util.List;
import kerfglow.light.Grid;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.operation.linemerge.LineMerger;
import org.locationtech.jts.simplify.DouglasPeuckerSimplifier;

/** Lines of equal level of a map, between the centres of lit cells. */
final class Contours {
    /** A line may leave its true course by this share of a cell. */
    private static final double SMOOTH = 0.25;

    private Contours() {
    }

    /** The lines of one level; empty where it does not occur. */
    static Geometry of(Grid grid, boolean[] lit, double[] values, double level, GeometryFactory factory) {
        LineMerger merger = new LineMerger();
        for (int row = 0; row + 1 < grid.rows(); row++) {
            for (int column = 0; column + 1 < grid.columns(); column++) {
                int cell = row * grid.columns() + column;
                int[] corners = {cell, cell + 1, cell + 1 + grid.columns(), cell + grid.columns()};
                List<Coordinate> crossings = new ArrayList<>();
                boolean whole = true;
                for (int corner : corners) {
                    whole &= lit[corner];
                }
                for (int side = 0; whole && side < corners.length; side++) {
                    int from = Math.min(corners[side], corners[(side + 1) % corners.length]);
                    int to = Math.max(corners[side], corners[(side + 1) % corners.length]);
                    if (values[from] < level != values[to] < level) {
                        double share = (level - values[from]) / (values[to] - values[from]);
                        Coordinate a = grid.at(from);
                        Coordinate b = grid.at(to);
                        crossings.add(new Coordinate(a.x + share * (b.x - a.x), a.y + share * (b.y - a.y)));
                    }
                }
                for (int k = 0; k + 1 < crossings.size(); k += 2) {
                    if (!crossings.get(k).equals2D(crossings.get(k + 1))) {
                        merger.add(factory.createLineString(new Coordinate[] {crossings.get(k), crossings.get(k + 1)}));
                    }
                }
            }
        }
        List<LineString> lines = new ArrayList<>();
        for (Object line : merger.getMergedLineStrings()) {
            lines.add((LineString) DouglasPeuckerSimplifier.simplify((LineString) line, SMOOTH * grid.cellMm()));
        }
        return factory.createMultiLineString(lines.toArray(new LineString[0]));
    }
}
