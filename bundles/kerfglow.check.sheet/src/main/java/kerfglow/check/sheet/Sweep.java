// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.sheet;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import kerfglow.geometry.LocalWidth;
import kerfglow.geometry.OutlinePiece;
import kerfglow.geometry.OutlinePieces;
import kerfglow.geometry.Stretch;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineSegment;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.locationtech.jts.index.intervalrtree.SortedPackedIntervalRTree;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/** A part turned so that seams of one direction stand upright, and every upright seam that is worth a look. */
final class Sweep {
    /** Seams looked at across a part, besides those beside its corners. Assumed: a hundredth of its extent is fine enough for a seam. */
    private static final int STEPS = 100;
    /** Of an outline of tens of thousands of corners no more seams than these are looked at, each of which meets all of its edges. Assumed: no saw is set finer. */
    private static final int MOST_SEAMS = 1000;
    /** Vertices that turn more, degrees, are corners to keep away from. Assumed. */
    private static final double CORNER_DEGREES = 20;
    /** As in the router's check. Assumed: between serif tips and corners of capitals. */
    private static final double LEAST_FACING_DEGREES = 150;
    /** Lines that pass through a vertex are nudged by this, mm. */
    private static final double NUDGE_MM = 1e-4;

    /** What a seam had better not cross, worst first. */
    enum Obstacle {
        KEEP_OUT("a keep-out"), NECK("a neck"), COUNTER("a counter"), CORNER("a corner");

        private final String words;

        Obstacle(String words) {
            this.words = words;
        }

        String words() {
            return words;
        }

        /** One of these weighs more than all the lesser ones together. */
        int weight() {
            return 1 << (values().length - ordinal());
        }
    }

    /**
     * An upright seam.
     *
     * @param x where it stands
     * @param chords pairs of y where it enters and leaves the material
     * @param near what it crosses or comes too close to
     */
    record Seam(double x, double[] chords, List<Obstacle> near) {
        double lengthMm() {
            double sum = 0;
            for (int i = 0; i + 1 < chords.length; i += 2) {
                sum += chords[i + 1] - chords[i];
            }
            return sum;
        }

        int penalty() {
            return near.stream().mapToInt(Obstacle::weight).sum();
        }
    }

    private final Polygon shape;
    private final AffineTransformation back;
    private final double clearanceMm;
    /** By x. */
    private final TreeMap<Double, List<Coordinate>> corners = new TreeMap<>();
    private final SortedPackedIntervalRTree necks = new SortedPackedIntervalRTree();
    private final SortedPackedIntervalRTree counters = new SortedPackedIntervalRTree();
    private final SortedPackedIntervalRTree edges = new SortedPackedIntervalRTree();
    private final List<Geometry> keepOuts = new ArrayList<>();
    private final List<Seam> seams = new ArrayList<>();

    /**
     * What seams of every direction keep away from in a part.
     *
     * @param necks their middle lines
     * @param corners sharp ones
     */
    record Traits(List<Geometry> necks, List<Coordinate> corners) {
        /** @param chordErrorMm of the part's outline */
        static Traits of(Polygon part, Limits limits, double chordErrorMm, Runnable pulse) {
            List<Coordinate> corners = new ArrayList<>();
            for (int i = -1; i < part.getNumInteriorRing(); i++) {
                for (OutlinePiece piece : OutlinePieces.of(i < 0 ? part.getExteriorRing() : part.getInteriorRingN(i), chordErrorMm, chordErrorMm)) {
                    if (piece.kind() == OutlinePiece.Kind.CORNER && piece.degrees() > CORNER_DEGREES) {
                        corners.add(piece.line().getCoordinate());
                    }
                }
                pulse.run();
            }
            return new Traits(LocalWidth.narrowerThan(part, limits.neckMm(), LEAST_FACING_DEGREES, pulse).stream().map(Stretch::axis).toList(), corners);
        }
    }

    /**
     * @param part valid, mm
     * @param traits its own
     * @param degrees direction of the seams, 0 for upright
     * @param limits what seams keep away from
     */
    Sweep(Polygon part, Traits traits, double degrees, Limits limits, Runnable pulse) {
        AffineTransformation turn = AffineTransformation.rotationInstance(-Math.toRadians(degrees));
        this.back = AffineTransformation.rotationInstance(Math.toRadians(degrees));
        this.shape = (Polygon) turn.transform(part);
        this.clearanceMm = limits.clearanceMm();
        for (int i = -1; i < shape.getNumInteriorRing(); i++) {
            LinearRing ring = i < 0 ? shape.getExteriorRing() : shape.getInteriorRingN(i);
            Coordinate[] points = ring.getCoordinates();
            for (int j = 1; j < points.length; j++) {
                edges.insert(Math.min(points[j - 1].x, points[j].x), Math.max(points[j - 1].x, points[j].x), new LineSegment(points[j - 1], points[j]));
            }
            if (i >= 0) {
                add(counters, ring.getEnvelopeInternal());
            }
            pulse.run();
        }
        for (Coordinate corner : traits.corners()) {
            Coordinate turned = turn.transform(corner, new Coordinate());
            corners.computeIfAbsent(turned.x, at -> new ArrayList<>()).add(turned);
        }
        for (Geometry neck : traits.necks()) {
            add(necks, turn.transform(neck).getEnvelopeInternal());
        }
        for (Geometry keepOut : limits.keepOuts()) {
            if (keepOut.getEnvelopeInternal().intersects(part.getEnvelopeInternal())) {
                keepOuts.add(turn.transform(keepOut));
            }
        }
        Envelope around = shape.getEnvelopeInternal();
        TreeSet<Double> at = new TreeSet<>();
        for (int i = 1; i < STEPS; i++) {
            at.add(around.getMinX() + around.getWidth() * i / STEPS);
        }
        for (double x : corners.keySet()) {
            at.add(x - clearanceMm - NUDGE_MM);
            at.add(x + clearanceMm + NUDGE_MM);
        }
        for (double x : thinned(at.subSet(around.getMinX(), false, around.getMaxX(), false), around)) {
            pulse.run();
            seams.add(seam(x));
        }
    }

    /** All of them where they are few, else one in each of as many equal bands as may be looked at. */
    private static Collection<Double> thinned(SortedSet<Double> places, Envelope around) {
        if (places.size() <= MOST_SEAMS) {
            return places;
        }
        Map<Integer, Double> byBand = new TreeMap<>();
        places.forEach(x -> byBand.putIfAbsent((int) ((x - around.getMinX()) / around.getWidth() * MOST_SEAMS), x));
        return byBand.values();
    }

    /** What seams keep away from: a distance, the width below which a stroke is a neck (both mm), and areas without seams. */
    record Limits(double clearanceMm, double neckMm, List<Geometry> keepOuts) {
    }

    /** From left to right. */
    List<Seam> seams() {
        return seams;
    }

    private Seam seam(double x) {
        double[] chords = chords(x);
        List<Obstacle> near = new ArrayList<>();
        if (!keepOuts.isEmpty() && keepOuts.stream().anyMatch(area -> area.intersects(lines(x, chords)))) {
            near.add(Obstacle.KEEP_OUT);
        }
        if (isAny(necks, x)) {
            near.add(Obstacle.NECK);
        }
        if (isAny(counters, x)) {
            near.add(Obstacle.COUNTER);
        }
        if (corners.subMap(x - clearanceMm, false, x + clearanceMm, false).values().stream().flatMap(List::stream).anyMatch(corner -> isNear(corner, x, chords))) {
            near.add(Obstacle.CORNER);
        }
        return new Seam(x, chords, near);
    }

    private Geometry lines(double x, double[] chords) {
        LineString[] lines = new LineString[chords.length / 2];
        for (int i = 0; i < lines.length; i++) {
            lines[i] = shape.getFactory().createLineString(new Coordinate[] {new Coordinate(x, chords[2 * i]), new Coordinate(x, chords[2 * i + 1])});
        }
        return shape.getFactory().createMultiLineString(lines);
    }

    /** True when a corner lies nearer to the seam's way through the material than the clearance. */
    private boolean isNear(Coordinate corner, double x, double[] chords) {
        int at = Arrays.binarySearch(chords, corner.y);
        int after = at < 0 ? -at - 1 : at;
        if (at >= 0 || after % 2 == 1) {
            return true; // beside material, and nearer along x than the clearance
        }
        return after > 0 && Math.hypot(corner.x - x, corner.y - chords[after - 1]) < clearanceMm
                || after < chords.length && Math.hypot(corner.x - x, corner.y - chords[after]) < clearanceMm;
    }

    /** Boxes from one x to another, each wider by the clearance on both sides. */
    private void add(SortedPackedIntervalRTree to, Envelope box) {
        to.insert(box.getMinX() - clearanceMm, box.getMaxX() + clearanceMm, box);
    }

    private boolean isAny(SortedPackedIntervalRTree boxes, double x) {
        boolean[] any = {false};
        boxes.query(x, x, item -> {
            Envelope box = (Envelope) item;
            any[0] |= x > box.getMinX() - clearanceMm && x < box.getMaxX() + clearanceMm;
        });
        return any[0];
    }

    /** Where an upright line enters and leaves the material; just beside vertices that it would pass through. */
    private double[] chords(double x) {
        List<Double> crossings = new ArrayList<>();
        edges.query(x, x, item -> {
            LineSegment edge = (LineSegment) item;
            if (edge.p0.x < x != edge.p1.x < x) {
                crossings.add(edge.p0.y + (x - edge.p0.x) / (edge.p1.x - edge.p0.x) * (edge.p1.y - edge.p0.y));
            }
        });
        return crossings.stream().mapToDouble(Double::doubleValue).sorted().toArray();
    }

    /** What stands at the left end of the part, as a seam that cuts nothing. */
    Seam start() {
        return new Seam(shape.getEnvelopeInternal().getMinX() - 1, new double[0], List.of());
    }

    /** What stands at its right end. */
    Seam end() {
        return new Seam(shape.getEnvelopeInternal().getMaxX() + 1, new double[0], List.of());
    }

    /** The points that decide what fits between two seams, as the part is drawn. */
    Geometry between(Seam left, Seam right) {
        List<Coordinate> points = new ArrayList<>();
        for (Coordinate p : shape.getExteriorRing().getCoordinates()) {
            if (p.x >= left.x() && p.x <= right.x()) {
                points.add(back.transform(p, new Coordinate()));
            }
        }
        for (Seam seam : new Seam[] {left, right}) {
            for (double y : seam.chords()) {
                points.add(back.transform(new Coordinate(seam.x(), y), new Coordinate()));
            }
        }
        return shape.getFactory().createMultiPointFromCoords(points.toArray(new Coordinate[0]));
    }

    /** Where a seam runs through the material, as the part is drawn. */
    Geometry line(Seam seam) {
        Geometry lines = lines(seam.x(), seam.chords());
        return back.transform(lines.getNumGeometries() == 1 ? lines.getGeometryN(0) : lines);
    }

    /** The pieces between neighbouring seams, as the part is drawn. */
    List<Polygon> pieces(List<Seam> cuts) {
        List<Polygon> pieces = new ArrayList<>();
        Envelope around = shape.getEnvelopeInternal();
        for (int i = 0; i <= cuts.size(); i++) {
            double from = i == 0 ? around.getMinX() - 1 : cuts.get(i - 1).x();
            double to = i == cuts.size() ? around.getMaxX() + 1 : cuts.get(i).x();
            Geometry band = shape.getFactory().toGeometry(new Envelope(from, to, around.getMinY() - 1, around.getMaxY() + 1));
            Geometry inside = back.transform(OverlayNGRobust.overlay(shape, band, OverlayNG.INTERSECTION));
            for (int j = 0; j < inside.getNumGeometries(); j++) {
                if (inside.getGeometryN(j) instanceof Polygon piece && !piece.isEmpty()) {
                    pieces.add(piece);
                }
            }
        }
        return pieces;
    }
}
