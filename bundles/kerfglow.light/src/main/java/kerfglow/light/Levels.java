// SPDX-License-Identifier: Apache-2.0
package kerfglow.light;

import org.locationtech.jts.geom.Coordinate;

/**
 * Least, mean and greatest of a map over the lit face.
 *
 * @param least the least level
 * @param leastAt where it is, mm
 * @param mean the mean over the lit area
 * @param greatest the greatest level
 * @param greatestAt where it is, mm
 */
public record Levels(double least, Coordinate leastAt, double mean, double greatest, Coordinate greatestAt) {
    /** Least over mean, the overall uniformity of lighting practice; 0 where there is no light. */
    public double uniformity() {
        return mean > 0 ? least / mean : 0;
    }

    /** Least over greatest; 0 where there is no light. */
    public double leastToGreatest() {
        return greatest > 0 ? least / greatest : 0;
    }

    static Levels of(Grid grid, boolean[] lit, double[] values) {
        int least = -1;
        int greatest = -1;
        double sum = 0;
        int cells = 0;
        for (int i = 0; i < values.length; i++) {
            if (lit[i]) {
                least = least < 0 || values[i] < values[least] ? i : least;
                greatest = greatest < 0 || values[i] > values[greatest] ? i : greatest;
                sum += values[i];
                cells++;
            }
        }
        if (cells == 0) {
            throw new IllegalStateException("no cell of the map is lit");
        }
        return new Levels(values[least], grid.at(least), sum / cells, values[greatest], grid.at(greatest));
    }
}
