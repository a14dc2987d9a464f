// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.artwork;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateArrays;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;

/** Stretches of one outline, as distances from its start, mm. */
final class Stretches {
    private static final GeometryFactory FACTORY = new GeometryFactory();

    private final List<double[]> fromTo = new ArrayList<>();

    void add(double fromMm, double toMm) {
        fromTo.add(new double[] {fromMm, toMm});
    }

    /**
     * Those that are long enough, joined where they follow each other.
     *
     * @param bridgeMm gaps up to this are joined
     * @param leastMm shorter ones are left out after joining
     */
    List<double[]> joined(double bridgeMm, double leastMm) {
        List<double[]> sorted = new ArrayList<>(fromTo);
        sorted.sort(Comparator.comparingDouble(stretch -> stretch[0]));
        List<double[]> joined = new ArrayList<>();
        double[] last = null;
        for (double[] stretch : sorted) {
            if (last != null && stretch[0] <= last[1] + bridgeMm) {
                last[1] = Math.max(last[1], stretch[1]);
            } else {
                last = stretch.clone();
                joined.add(last);
            }
        }
        joined.removeIf(stretch -> stretch[1] - stretch[0] < leastMm);
        return joined;
    }

    static double totalMm(List<double[]> stretches) {
        return stretches.stream().mapToDouble(stretch -> stretch[1] - stretch[0]).sum();
    }

    /** The stretch of an outline between two of its stations. */
    static LineString line(Contour contour, double[] stations, double[] stretch) {
        List<Coordinate> points = new ArrayList<>();
        points.add(at(contour, stations, stretch[0]));
        int after = Arrays.binarySearch(stations, stretch[0]);
        for (int i = after >= 0 ? after + 1 : -after - 1; i < stations.length && stations[i] < stretch[1]; i++) {
            points.add(contour.points()[i]);
        }
        points.add(at(contour, stations, stretch[1]));
        return FACTORY.createLineString(CoordinateArrays.toCoordinateArray(points));
    }

    /** The point of an outline at a station; ends beyond the outline are its ends. */
    static Coordinate at(Contour contour, double[] stations, double mm) {
        int found = Arrays.binarySearch(stations, mm);
        int after = found >= 0 ? found : -found - 1;
        Coordinate[] points = contour.points();
        if (after == 0 || after >= points.length) {
            return points[Math.min(after, points.length - 1)].copy();
        }
        double share = (mm - stations[after - 1]) / (stations[after] - stations[after - 1]);
        Coordinate from = points[after - 1];
        Coordinate to = points[after];
        return new Coordinate(from.x + share * (to.x - from.x), from.y + share * (to.y - from.y));
    }
}
