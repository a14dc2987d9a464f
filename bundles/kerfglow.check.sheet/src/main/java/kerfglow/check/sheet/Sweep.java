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
    private final List<Coordinate> corners = new ArrayList<>();
    private final List<Envelope> necks = new ArrayList<>();
    private final List<Geometry> keepOuts = new ArrayList<>();
    private final List<Seam> seams = new ArrayList<>();

    /**
     * @param part valid, mm
     * @param degrees direction of the seams, 0 for upright
     * @param limits what seams keep away from
     * @param chordErrorMm of the part's outline
     */
    Sweep(Polygon part, double degrees, Limits limits, double chordErrorMm, Runnable pulse) {
        AffineTransformation turn = AffineTransformation.rotationInstance(-Math.toRadians(degrees));
        this.back = AffineTransformation.rotationInstance(Math.toRadians(degrees));
        this.shape = (Polygon) turn.transform(part);
        this.clearanceMm = limits.clearanceMm();
        for (int i = -1; i < shape.getNumInteriorRing(); i++) {
            LinearRing ring = i < 0 ? shape.getExteriorRing() : shape.getInteriorRingN(i);
            for (OutlinePiece piece : OutlinePieces.of(ring, chordErrorMm, chordErrorMm)) {
                if (piece.kind() == OutlinePiece.Kind.CORNER && piece.degrees() > CORNER_DEGREES) {
                    corners.add(piece.line().getCoordinate());
                }
            }
        }
        for (Stretch stretch : LocalWidth.narrowerThan(shape, limits.neckMm(), LEAST_FACING_DEGREES, pulse)) {
            necks.add(stretch.axis().getEnvelopeInternal());
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
        for (Coordinate corner : corners) {
            at.add(corner.x - clearanceMm - NUDGE_MM);
            at.add(corner.x + clearanceMm + NUDGE_MM);
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
        LineSegment[] lines = new LineSegment[chords.length / 2];
        for (int i = 0; i < lines.length; i++) {
            lines[i] = new LineSegment(x, chords[2 * i], x, chords[2 * i + 1]);
        }
        if (keepOuts.stream().anyMatch(area -> Arrays.stream(lines).anyMatch(line -> area.intersects(line.toGeometry(area.getFactory()))))) {
            near.add(Obstacle.KEEP_OUT);
        }
        if (necks.stream().anyMatch(neck -> isNear(neck, x))) {
            near.add(Obstacle.NECK);
        }
        for (int i = 0; i < shape.getNumInteriorRing(); i++) {
            if (isNear(shape.getInteriorRingN(i).getEnvelopeInternal(), x)) {
                near.add(Obstacle.COUNTER);
                break;
            }
        }
        if (corners.stream().anyMatch(corner -> Math.abs(corner.x - x) < clearanceMm
                && Arrays.stream(lines).anyMatch(line -> line.distance(corner) < clearanceMm))) {
            near.add(Obstacle.CORNER);
        }
        return new Seam(x, chords, near);
    }

    private boolean isNear(Envelope box, double x) {
        return x > box.getMinX() - clearanceMm && x < box.getMaxX() + clearanceMm;
    }

    /** Where an upright line enters and leaves the material; just beside vertices that it would pass through. */
    private double[] chords(double x) {
        List<Double> crossings = new ArrayList<>();
        for (int i = -1; i < shape.getNumInteriorRing(); i++) {
            LinearRing ring = i < 0 ? shape.getExteriorRing() : shape.getInteriorRingN(i);
            for (int j = 1; j < ring.getNumPoints(); j++) {
                Coordinate a = ring.getCoordinateN(j - 1);
                Coordinate b = ring.getCoordinateN(j);
                if (a.x < x != b.x < x) {
                    crossings.add(a.y + (x - a.x) / (b.x - a.x) * (b.y - a.y));
                }
            }
        }
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
        LineString[] lines = new LineString[seam.chords().length / 2];
        for (int i = 0; i < lines.length; i++) {
            lines[i] = shape.getFactory().createLineString(new Coordinate[] {new Coordinate(seam.x(), seam.chords()[2 * i]),
                new Coordinate(seam.x(), seam.chords()[2 * i + 1])});
        }
        return back.transform(lines.length == 1 ? lines[0] : shape.getFactory().createMultiLineString(lines));
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
