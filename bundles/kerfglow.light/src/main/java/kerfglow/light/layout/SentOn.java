// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import java.util.List;
import kerfglow.light.Accuracy;
import kerfglow.light.Can;
import kerfglow.light.Cavity;
import kerfglow.light.DirectLight;
import kerfglow.light.Grid;
import kerfglow.light.LightMap;
import kerfglow.light.LightModule;
import org.locationtech.jts.geom.Coordinate;

/** The part of the light that back, walls and face send on, on a map coarser than the lit cells that it is read at: it is smooth. */
final class SentOn {
    private static final int CORNERS = 4;

    private final Can can;
    private final Cavity cavity;
    private final Runnable pulse;
    private final int cells;
    /** Four coarse cells for each lit cell, and their shares. */
    private final int[] from;
    private final float[] share;

    /** @param centres of the lit cells, mm */
    SentOn(Can can, Accuracy accuracy, List<Coordinate> centres, Runnable pulse) {
        this.can = new Can(can.inside(), can.depthMm(), can.finish());
        this.pulse = pulse;
        cavity = Cavity.of(this.can, accuracy, pulse);
        cells = centres.size();
        from = new int[CORNERS * cells];
        share = new float[CORNERS * cells];
        LightMap inside = cavity.light(List.of(), pulse);
        for (int i = 0; i < cells; i++) {
            between(centres.get(i), inside, i);
        }
    }

    /** Bilinear between the centres of coarse cells that lie inside; the nearest such cell where none of the four does. */
    private void between(Coordinate at, LightMap inside, int cell) {
        Grid grid = cavity.grid();
        double i = (at.x - grid.leftMm()) / grid.cellMm() - 0.5;
        double j = (at.y - grid.topMm()) / grid.cellMm() - 0.5;
        int left = (int) Math.floor(i);
        int top = (int) Math.floor(j);
        double sum = 0;
        for (int corner = 0; corner < CORNERS; corner++) {
            int column = left + corner % 2;
            int row = top + corner / 2;
            boolean counts = column >= 0 && row >= 0 && column < grid.columns() && row < grid.rows() && inside.isLit(row * grid.columns() + column);
            double weight = counts ? (1 - Math.abs(column - i)) * (1 - Math.abs(row - j)) : 0;
            from[CORNERS * cell + corner] = counts ? row * grid.columns() + column : 0;
            share[CORNERS * cell + corner] = (float) weight;
            sum += weight;
        }
        if (sum > 0) {
            for (int corner = 0; corner < CORNERS; corner++) {
                share[CORNERS * cell + corner] /= (float) sum;
            }
        } else {
            from[CORNERS * cell] = nearest(at, inside);
            share[CORNERS * cell] = 1;
        }
    }

    private int nearest(Coordinate at, LightMap inside) {
        int best = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int cell = 0; cell < cavity.grid().size(); cell++) {
            double distance = inside.isLit(cell) ? cavity.grid().at(cell).distance(at) : Double.POSITIVE_INFINITY;
            if (distance < least) {
                least = distance;
                best = cell;
            }
        }
        return best;
    }

    /** Luminance on the coarse map from what modules make surfaces send on. */
    float[] of(List<LightModule> modules) {
        double[] lux = cavity.light(modules, pulse).lux();
        double[] straight = new double[lux.length];
        DirectLight direct = new DirectLight(can.inside(), can.depthMm(), cavity.grid().cellMm());
        modules.forEach(module -> direct.add(module, 1, straight));
        float[] sent = new float[lux.length];
        for (int i = 0; i < lux.length; i++) {
            sent[i] = (float) ((lux[i] - straight[i]) * can.finish().faceTransmittance() / Math.PI);
        }
        return sent;
    }

    /** Adds a share of a coarse map to the lit cells. */
    void add(float[] coarse, double weight, float[] luminance) {
        for (int i = 0; i < cells; i++) {
            float sum = 0;
            for (int corner = CORNERS * i; corner < CORNERS * (i + 1); corner++) {
                sum += share[corner] * coarse[from[corner]];
            }
            luminance[i] += (float) (weight * sum);
        }
    }
}
