// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.glow;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import kerfglow.light.Grid;
import kerfglow.light.LightMap;
import kerfglow.light.Spots;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.LinearComponentExtracter;
import org.locationtech.jts.linearref.LengthIndexedLine;

/**
 * Bright spots of a halo, along the line that runs round a back at an even distance. Across the line a halo falls off steeply, so that
 * cells beside one another would show the steps of the map as spots.
 */
final class HaloSpots {
    private HaloSpots() {
    }

    /**
     * The spots of each closed line by itself.
     *
     * @param values of the cells of the map
     * @param around closed lines on lit cells, mm
     * @param limit contrasts up to this are no spots
     */
    static List<Spots.Spot> of(LightMap map, double[] values, Geometry around, double limit) {
        List<Spots.Spot> spots = new ArrayList<>();
        for (Object each : LinearComponentExtracter.getLines(around)) {
            Geometry ring = (Geometry) each;
            LengthIndexedLine line = new LengthIndexedLine(ring);
            int count = (int) Math.ceil(ring.getLength() / map.grid().cellMm());
            Coordinate[] places = new Coordinate[count];
            double[] profile = new double[count];
            int least = 0;
            for (int i = 0; i < count; i++) {
                places[i] = line.extractPoint(ring.getLength() * i / count);
                profile[i] = between(map, values, places[i]);
                least = profile[i] < profile[least] ? i : least;
            }
            int start = least; // no way to a higher peak leads over the least of all, so the ring may be cut there
            double[] cut = new double[count];
            Arrays.setAll(cut, i -> profile[(start + i) % count]);
            boolean[] lit = new boolean[count];
            Arrays.fill(lit, true);
            Grid row = new Grid(0, 0, 1, count, 1);
            for (Spots.Spot spot : Spots.of(row, lit, cut, limit)) {
                spots.add(new Spots.Spot(places[(start + row.column(spot.at().x)) % count], places[(start + row.column(spot.pass().x)) % count], spot.contrast()));
            }
        }
        return spots;
    }

    /** Between the four cells about a place, by their distance; those that are not lit do not count. */
    private static double between(LightMap map, double[] values, Coordinate at) {
        Grid grid = map.grid();
        double x = (at.x - grid.leftMm()) / grid.cellMm() - 1.0 / 2;
        double y = (at.y - grid.topMm()) / grid.cellMm() - 1.0 / 2;
        int column = (int) Math.floor(x);
        int row = (int) Math.floor(y);
        double sum = 0;
        double weights = 0;
        for (int corner = 0; corner < 2 * 2; corner++) {
            int nextColumn = column + corner % 2;
            int nextRow = row + corner / 2;
            int cell = nextRow * grid.columns() + nextColumn;
            if (nextColumn < 0 || nextRow < 0 || nextColumn >= grid.columns() || nextRow >= grid.rows() || !map.isLit(cell)) {
                continue;
            }
            double weight = (1 - Math.abs(x - nextColumn)) * (1 - Math.abs(y - nextRow));
            sum += weight * values[cell];
            weights += weight;
        }
        return weights > 0 ? sum / weights : 0;
    }
}
