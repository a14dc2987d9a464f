// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.fit;

import java.util.ArrayList;
import java.util.List;
import kerfglow.api.Inspection;
import kerfglow.api.proof.Part;
import kerfglow.geometry.DistancePiece;
import kerfglow.geometry.EdgeDistance;
import kerfglow.geometry.Inset;
import kerfglow.geometry.Stretch;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.util.LinearComponentExtracter;

/**
 * Finds stretches of the outer part's edge that have no inner part near them.
 *
 * <p>"Near" is the allowance and its tolerance, times the square root of 2 for corners: that far off a right corner's point is from
 * the corner of its back. Sharper corners stand off farther still, so each stretch is held against the inset that the outer part
 * would have, together with the middle lines of strokes too narrow for one; a corner is as far from that as from what is drawn.
 */
final class MissedStrokes {
    private static final double RIGHT_CORNER = Math.sqrt(2);
    /** Points are tried this often along a stretch in question, in clearances. */
    private static final double STEP_CLEARANCES = 0.5;
    private static final double LEAST_STEP_MM = 0.5;
    private static final double CHORD_ERROR_MM = 0.02;
    /** Rounding of one point by two formulas. */
    private static final double SAME_POINT_MM = 1e-6;

    private final Pair pair;
    private final Allowance allowance;
    private final double missedLengthMm;
    private final double nearMm;
    private final ThinFace thin;

    MissedStrokes(Inspection inspection, Pair pair, Allowance allowance) {
        this.pair = pair;
        this.allowance = allowance;
        Part outer = pair.outers().get(0);
        missedLengthMm = inspection.settings().get(FitSettings.MISSED_LENGTH, outer);
        nearMm = RIGHT_CORNER * (allowance.sideMm() + allowance.toleranceMm());
        thin = ThinFace.of(inspection, outer);
    }

    List<PairResult.Missed> find(Geometry outer, Runnable pulse) {
        Geometry inner = pair.inners().get(0).shape().getFactory().buildGeometry(pair.inners().stream().map(Part::shape).toList());
        EdgeDistance toInner = new EdgeDistance(inner);
        List<LineString> far = new ArrayList<>();
        for (int i = 0; i < outer.getNumGeometries(); i++) {
            for (LinearRing ring : rings(outer.getGeometryN(i))) {
                if (toInner.isWithin(ring, nearMm, pulse)) {
                    continue;
                }
                Far runs = new Far(outer.getFactory());
                toInner.along(ring, runs::add, pulse);
                far.addAll(runs.lines());
            }
        }
        far.removeIf(line -> line.getLength() < missedLengthMm);
        if (far.isEmpty()) {
            return List.of();
        }
        EdgeDistance toBest = new EdgeDistance(best(outer, pulse));
        Sides sides = new Sides(inner);
        List<PairResult.Missed> missed = new ArrayList<>();
        for (LineString line : far) {
            missed(line, sides, toInner, toBest, missed, pulse);
        }
        return missed;
    }

    private static List<LinearRing> rings(Geometry polygon) {
        List<LinearRing> rings = new ArrayList<>();
        for (Object line : LinearComponentExtracter.getLines(polygon)) {
            rings.add((LinearRing) line);
        }
        return rings;
    }

    /** The inset that may just be drawn, where there is one, and the middle lines of strokes that are too narrow for it. */
    private Geometry best(Geometry outer, Runnable pulse) {
        double most = allowance.sideMm() + allowance.toleranceMm();
        List<Geometry> best = new ArrayList<>();
        best.add(Inset.of(outer, most, Inset.Join.ROUND, 1, CHORD_ERROR_MM).getBoundary());
        for (Stretch stretch : thin.stretches(outer, most, pulse)) {
            if (stretch.axis().getDimension() == 1) {
                best.add(stretch.axis());
            }
        }
        best.removeIf(Geometry::isEmpty);
        return best.isEmpty() ? outer.getBoundary() : outer.getFactory().buildGeometry(best);
    }

    private void missed(LineString line, Sides inner, EdgeDistance toInner, EdgeDistance toBest, List<PairResult.Missed> missed,
            Runnable pulse) {
        List<Coordinate> run = new ArrayList<>();
        double[] most = {0};
        Coordinate[] at = {line.getCoordinateN(0)};
        double step = Math.max(LEAST_STEP_MM, STEP_CLEARANCES * allowance.sideMm());
        for (Coordinate point : points(line, step)) {
            pulse.run();
            double distance = toInner.of(point);
            boolean lacks = distance > toBest.of(point) + allowance.toleranceMm() && !inner.isInside(point);
            if (lacks) {
                run.add(point);
                if (distance > most[0]) {
                    most[0] = distance;
                    at[0] = point;
                }
            } else {
                finish(run, most[0], at[0], line.getFactory(), missed);
                run.clear();
                most[0] = 0;
            }
        }
        finish(run, most[0], at[0], line.getFactory(), missed);
    }

    private void finish(List<Coordinate> run, double distance, Coordinate at, GeometryFactory factory, List<PairResult.Missed> missed) {
        if (run.size() < 2) {
            return;
        }
        LineString place = factory.createLineString(run.toArray(new Coordinate[0]));
        if (place.getLength() >= missedLengthMm) {
            missed.add(new PairResult.Missed(place, distance, at, nearest(at)));
        }
    }

    private Part nearest(Coordinate at) {
        Part nearest = pair.outers().get(0);
        if (pair.outers().size() > 1) {
            double least = Double.POSITIVE_INFINITY;
            for (Part outer : pair.outers()) {
                double distance = outer.shape().distance(outer.shape().getFactory().createPoint(at));
                if (distance < least) {
                    least = distance;
                    nearest = outer;
                }
            }
        }
        return nearest;
    }

    private static List<Coordinate> points(LineString line, double step) {
        List<Coordinate> points = new ArrayList<>();
        Coordinate[] nodes = line.getCoordinates();
        points.add(nodes[0]);
        for (int i = 1; i < nodes.length; i++) {
            int steps = Math.max(1, (int) Math.ceil(nodes[i].distance(nodes[i - 1]) / step));
            for (int s = 1; s <= steps; s++) {
                double share = (double) s / steps;
                points.add(new Coordinate(nodes[i - 1].x + (nodes[i].x - nodes[i - 1].x) * share,
                        nodes[i - 1].y + (nodes[i].y - nodes[i - 1].y) * share));
            }
        }
        return points;
    }

    /** Collects the stretches of a ring that are farther from the inner part than near; one that runs over the ring's start is joined. */
    private final class Far {
        private final GeometryFactory factory;
        private final List<List<Coordinate>> runs = new ArrayList<>();
        private Coordinate end = new Coordinate(Double.NaN, Double.NaN);
        private Coordinate start;

        Far(GeometryFactory factory) {
            this.factory = factory;
        }

        void add(DistancePiece piece) {
            if (start == null) {
                start = piece.from();
            }
            if (piece.greatestMm() <= nearMm) {
                return;
            }
            double[] cuts = piece.crossings(nearMm);
            double from = 0;
            for (int i = 0; i <= cuts.length; i++) {
                double to = i < cuts.length ? cuts[i] : piece.lengthMm();
                if (to > from && piece.at((from + to) / 2) > nearMm) {
                    append(piece.point(from), piece.point(to));
                }
                from = to;
            }
        }

        private void append(Coordinate from, Coordinate to) {
            if (!(from.distance(end) <= SAME_POINT_MM)) { // also true before the first
                List<Coordinate> run = new ArrayList<>();
                run.add(from);
                runs.add(run);
            }
            runs.get(runs.size() - 1).add(to);
            end = to;
        }

        List<LineString> lines() {
            if (runs.size() > 1 && runs.get(0).get(0).distance(start) <= SAME_POINT_MM && end.distance(start) <= SAME_POINT_MM) {
                List<Coordinate> last = runs.remove(runs.size() - 1);
                last.addAll(runs.get(0).subList(1, runs.get(0).size()));
                runs.set(0, last);
            }
            List<LineString> lines = new ArrayList<>();
            runs.forEach(run -> lines.add(factory.createLineString(run.toArray(new Coordinate[0]))));
            return lines;
        }
    }
}
