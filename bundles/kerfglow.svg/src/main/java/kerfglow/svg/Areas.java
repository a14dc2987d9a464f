// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.awt.geom.AffineTransform;
import java.util.ArrayList;
import java.util.List;
import kerfglow.geometry.FillRule;
import kerfglow.geometry.Union;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.PolygonExtracter;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/** From flattened subpaths in user units to areas in mm, and what is done with areas. */
final class Areas {
    /** Assumed: 1,000 km. Farther out doubles no longer hold a micrometre, and no sign is there. */
    static final double FARTHEST_MM = 1e9;

    private Areas() {
    }

    /** Empty when a point lies out of reach. */
    static Geometry filled(List<Subpath> subpaths, AffineTransform toMm, FillRule rule, GeometryFactory factory) {
        List<Coordinate[]> rings = new ArrayList<>(subpaths.size());
        for (Subpath subpath : subpaths) {
            if (subpath.size() > 2) {
                Coordinate[] ring = toMm(subpath, toMm);
                if (!areNear(ring)) {
                    return factory.createPolygon();
                }
                rings.add(ring);
            }
        }
        return rule.area(rings, factory);
    }

    /** False when a coordinate is farther out than {@link #FARTHEST_MM} or no number. */
    static boolean areNear(Coordinate[] points) {
        for (Coordinate point : points) {
            if (!(Math.abs(point.x) <= FARTHEST_MM && Math.abs(point.y) <= FARTHEST_MM)) { // also refuses NaN
                return false;
            }
        }
        return true;
    }

    static Coordinate[] toMm(Subpath subpath, AffineTransform toMm) {
        Coordinate[] points = new Coordinate[subpath.size()];
        for (int i = 0; i < points.length; i++) {
            points[i] = point(subpath.xs()[i], subpath.ys()[i], toMm);
        }
        return points;
    }

    static Coordinate point(double x, double y, AffineTransform t) {
        return new Coordinate(t.getScaleX() * x + t.getShearX() * y + t.getTranslateX(),
                t.getShearY() * x + t.getScaleY() * y + t.getTranslateY());
    }

    static List<Coordinate[]> toMm(List<Coordinate[]> rings, AffineTransform toMm) {
        List<Coordinate[]> moved = new ArrayList<>(rings.size());
        for (Coordinate[] ring : rings) {
            Coordinate[] points = new Coordinate[ring.length];
            for (int i = 0; i < points.length; i++) {
                points[i] = point(ring[i].x, ring[i].y, toMm);
            }
            moved.add(points);
        }
        return moved;
    }

    /** A rectangle in user units as an area in mm; empty when the transform flattens it or moves it out of reach. */
    static Geometry rectangle(double x, double y, double width, double height, AffineTransform toMm, GeometryFactory factory) {
        List<Coordinate[]> ring = List.<Coordinate[]>of(new Coordinate[] {point(x, y, toMm), point(x + width, y, toMm),
            point(x + width, y + height, toMm), point(x, y + height, toMm)});
        return areNear(ring.get(0)) ? FillRule.NONZERO.area(ring, factory) : factory.createPolygon();
    }

    static Geometry common(Geometry a, Geometry b) {
        return polygonal(OverlayNGRobust.overlay(a, b, OverlayNG.INTERSECTION));
    }

    static Geometry union(List<Geometry> areas, GeometryFactory factory) {
        return areas.isEmpty() ? factory.createPolygon() : polygonal(Union.of(areas));
    }

    /** Touching areas meet in points and lines, which paint nothing. */
    private static Geometry polygonal(Geometry geometry) {
        if (geometry instanceof Polygon) {
            return geometry;
        }
        List<?> polygons = PolygonExtracter.getPolygons(geometry);
        return polygons.isEmpty() ? geometry.getFactory().createPolygon() : geometry.getFactory().buildGeometry(polygons);
    }
}
