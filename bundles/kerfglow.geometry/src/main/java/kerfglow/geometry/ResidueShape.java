// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;

/** The polygon of a residue: the walls out of reach, closed by the bit where it is stuck. */
final class ResidueShape {
    /** Arcs of the bit are drawn within this of the true arc; a tenth of the usual chord error of a drawing. */
    private static final double CHORD_ERROR_MM = 0.002;
    /** Two walls' ends belong to one position of the bit when their centres agree within this (mm). */
    private static final double SAME_CENTRE_MM = 1e-3;
    /** Points nearer than this (mm) are one. */
    private static final double SAME_POINT_MM = 1e-9;
    /** What is left of an overlay and smaller than this (mm²) is rounding. */
    private static final double SPECK_MM2 = 1e-6;

    private final ThinPiece piece;
    private final GeometryFactory factory;
    private final Geometry area;

    ResidueShape(ThinPiece piece, GeometryFactory factory) {
        this.piece = piece;
        this.factory = factory;
        Geometry direct = polygon(true);
        this.area = piece.wideEnds() < 2 && direct.isValid() ? direct : withoutBits(polygon(false));
    }

    Geometry area() {
        return area;
    }

    /** The general way: what lies between the walls, less every position in which the bit is stuck. */
    private Geometry withoutBits(Geometry between) {
        Geometry left = between.isValid() ? between : between.buffer(0);
        for (Run run : piece.runs) {
            if (!run.closed && run.end().radiusMm() > SAME_POINT_MM) { // where two walls touch in a point the disc between them is a point and takes nothing
                Geometry bit = factory.createPoint(run.end().centre())
                        .buffer(run.end().radiusMm(), Opening.quadrantSegments(run.end().radiusMm(), CHORD_ERROR_MM));
                left = Opening.difference(left, bit);
            }
        }
        List<Polygon> kept = new ArrayList<>();
        for (int i = 0; i < left.getNumGeometries(); i++) {
            if (left.getGeometryN(i) instanceof Polygon polygon && polygon.getArea() > SPECK_MM2) {
                kept.add(polygon);
            }
        }
        return kept.isEmpty() ? factory.createPolygon() : factory.buildGeometry(kept);
    }

    private Geometry polygon(boolean arcs) {
        List<LinearRing> shells = new ArrayList<>();
        List<LinearRing> holes = new ArrayList<>();
        Set<Run> used = new HashSet<>();
        for (Run run : piece.runs) {
            if (!used.contains(run)) {
                Coordinate[] ring = ring(run, arcs, used);
                if (ring.length > 3) {
                    (Orientation.isCCW(ring) ? shells : holes).add(factory.createLinearRing(ring));
                }
            }
        }
        if (shells.isEmpty()) {
            return factory.createPolygon();
        }
        if (shells.size() == 1) {
            return factory.createPolygon(shells.get(0), holes.toArray(new LinearRing[0]));
        }
        Geometry union = factory.createMultiPolygon(shells.stream().map(factory::createPolygon).toArray(Polygon[]::new)).buffer(0);
        for (LinearRing hole : holes) {
            union = Opening.difference(union, factory.createPolygon(hole));
        }
        return union;
    }

    /** Follows walls and bits, the residue on the left, until it is back where it began. */
    private Coordinate[] ring(Run first, boolean arcs, Set<Run> used) {
        List<Coordinate> points = new ArrayList<>();
        Run run = first;
        do {
            used.add(run);
            for (Span span : run.spans) {
                add(points, span.first().touch());
                add(points, span.last().touch());
            }
            if (run.closed) {
                break;
            }
            Disc stuck = run.end();
            Run following = following(stuck, used, first);
            if (arcs) {
                addArc(points, stuck, following.start().touch());
            }
            run = following;
        } while (run != first);
        if (points.size() > 2 && points.get(0).distance(points.get(points.size() - 1)) <= SAME_POINT_MM) {
            points.remove(points.size() - 1);
        }
        points.add(points.get(0).copy());
        return points.toArray(new Coordinate[0]);
    }

    /** The run that starts at the bit's position; back to the first when none is free, which closes the ring with a straight line. */
    private Run following(Disc stuck, Set<Run> used, Run first) {
        Run best = first;
        double nearest = first.start().distanceTo(stuck.centreX(), stuck.centreY());
        for (Run run : piece.runs) {
            double distance = run.start().distanceTo(stuck.centreX(), stuck.centreY());
            if (!run.closed && !used.contains(run) && distance < Math.min(nearest, SAME_CENTRE_MM)) {
                best = run;
                nearest = distance;
            }
        }
        return best;
    }

    /** Clockwise about the bit, which lies to the right. */
    private void addArc(List<Coordinate> points, Disc bit, Coordinate to) {
        double start = Math.atan2(bit.touchY() - bit.centreY(), bit.touchX() - bit.centreX());
        double end = Math.atan2(to.y - bit.centreY(), to.x - bit.centreX());
        double radiusMm = bit.radiusMm();
        double sweep = start - end;
        if (sweep < 0) {
            sweep += 2 * Math.PI;
        }
        int steps = Math.max(1, (int) Math.ceil(sweep / (2 * Math.acos(Math.max(0, 1 - CHORD_ERROR_MM / radiusMm)))));
        for (int i = 1; i < steps; i++) {
            double angle = start - sweep * i / steps;
            add(points, new Coordinate(bit.centreX() + radiusMm * Math.cos(angle), bit.centreY() + radiusMm * Math.sin(angle)));
        }
    }

    private static void add(List<Coordinate> points, Coordinate point) {
        if (points.isEmpty() || points.get(points.size() - 1).distance(point) > SAME_POINT_MM) {
            points.add(point);
        }
    }
}
