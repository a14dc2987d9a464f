// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.print;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Polygon;

/**
 * How far a printed area reaches beyond a contour that is cut.
 *
 * <p>Looked at from places along the contour, at right angles to it: print that is there one bleed inside the contour must still be
 * there one bleed outside. Where it is not, the place is bare, and the bleed there is how far the print reaches, negative when it
 * ends inside. Print that ends across the contour, as a picture in the corner of a panel may, is bare nowhere but within a bleed of
 * that end; so stretches shorter than {@value #LEAST_STRETCH} bleeds are left out. An empty area or a bleed of nought is never bare.
 */
final class BleedMeasure {
    /** Assumed: print that ends across the contour at 20 degrees or more leaves a bare stretch of less than six bleeds. */
    private static final int LEAST_STRETCH = 6;
    /** Looked at twice in each bleed, so that no bare stretch that counts is stepped over. */
    private static final double STEP_SHARE = 0.5;
    /** Enough to see every side of a large panel; only bounds the work. */
    private static final int MOST_PLACES = 4000;
    /** Coordinates are right to this (import); print that ends there ends at the bleed. */
    private static final double RESOLUTION_MM = 0.001;

    /**
     * The bare stretches of one contour.
     *
     * @param leastMm the least bleed there, mm; negative when the print ends inside the contour
     * @param stretches the parts of the contour that are bare, mm
     */
    record Bare(double leastMm, Geometry stretches) {
        boolean isEmpty() {
            return stretches.isEmpty();
        }
    }

    private final Geometry print;
    private final IndexedPointInAreaLocator inPrint;
    private final double bleedMm;
    private final GeometryFactory factory;
    private final List<LineString> bare = new ArrayList<>();
    private double leastMm;

    private BleedMeasure(Geometry print, double bleedMm) {
        this.print = print;
        this.inPrint = new IndexedPointInAreaLocator(print);
        this.bleedMm = bleedMm;
        this.leastMm = bleedMm;
        this.factory = print.getFactory();
    }

    /** Measures along the outer contour of a shape. */
    static Bare of(Geometry print, Polygon cut, double bleedMm, Runnable pulse) {
        BleedMeasure measure = new BleedMeasure(print, bleedMm);
        if (bleedMm > 0 && !print.isEmpty() && print.getEnvelopeInternal().distance(cut.getEnvelopeInternal()) <= 0) {
            measure.walk(cut.getExteriorRing().getCoordinates(), pulse);
        }
        return new Bare(measure.leastMm, measure.factory.buildGeometry(measure.bare));
    }

    private void walk(Coordinate[] ring, Runnable pulse) {
        double side = Orientation.isCCW(ring) ? 1 : -1;
        double perimeter = factory.createLineString(ring).getLength();
        double step = Math.max(bleedMm * STEP_SHARE, perimeter / MOST_PLACES);
        List<Coordinate> run = new ArrayList<>();
        double runLeast = bleedMm;
        for (int i = 1; i < ring.length; i++) {
            pulse.run();
            double length = ring[i - 1].distance(ring[i]);
            if (length == 0) {
                continue;
            }
            double nx = side * (ring[i].y - ring[i - 1].y) / length;
            double ny = -side * (ring[i].x - ring[i - 1].x) / length;
            int places = (int) Math.ceil(length / step);
            for (int k = 0; k <= places; k++) {
                double share = (double) k / places;
                Coordinate at = new Coordinate(ring[i - 1].x + share * (ring[i].x - ring[i - 1].x),
                        ring[i - 1].y + share * (ring[i].y - ring[i - 1].y));
                double reach = reachMm(at, nx, ny);
                if (reach < bleedMm - RESOLUTION_MM) {
                    run.add(at);
                    runLeast = Math.min(runLeast, reach);
                } else {
                    end(run, runLeast);
                    runLeast = bleedMm;
                }
            }
        }
        end(run, runLeast);
    }

    private void end(List<Coordinate> run, double runLeastMm) {
        if (run.size() > 1) {
            LineString line = factory.createLineString(run.toArray(new Coordinate[0]));
            if (line.getLength() >= LEAST_STRETCH * bleedMm) {
                bare.add(line);
                leastMm = Math.min(leastMm, runLeastMm);
            }
        }
        run.clear();
    }

    /** How far outside the contour the print reaches at a place, mm, up to the bleed; the bleed also where there is no print to cut. */
    private double reachMm(Coordinate at, double nx, double ny) {
        Coordinate inside = new Coordinate(at.x - bleedMm * nx, at.y - bleedMm * ny);
        double out = bleedMm - RESOLUTION_MM;
        Coordinate outside = new Coordinate(at.x + out * nx, at.y + out * ny);
        if (inPrint.locate(inside) == Location.EXTERIOR || inPrint.locate(outside) != Location.EXTERIOR) {
            return bleedMm;
        }
        Geometry within = factory.createLineString(new Coordinate[] {inside, outside}).intersection(print);
        double reach = 0;
        for (int i = 0; i < within.getNumGeometries(); i++) {
            Geometry piece = within.getGeometryN(i);
            if (piece.distance(factory.createPoint(inside)) <= RESOLUTION_MM) {
                reach = Math.max(reach, piece.getLength());
            }
        }
        return reach - bleedMm;
    }
}
