// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.vinyl;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.LineSegment;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Location;

/**
 * Where the edge of a piece of film meets a piece of another colour that is laid over it.
 *
 * <p>The lower edge is walked in steps of half a millimetre at most. At each step the upper piece either covers the edge (the overlap is
 * the distance to its edge that runs the other way, inside the lower piece), or begins beyond a gap, or ends in the same edge, on the
 * same side. Edges that lean from each other by more than the limit cross, and do not meet. A place that a third film covers does not
 * count: nothing shows through there.
 *
 * <p>Cost: n log n in vertices and steps near each other.
 */
final class Meetings {
    /** Steps along an edge, mm: a fifth of the least overlap that shops use (1/32 in) and finer than a film is laid. */
    private static final double STEP_MM = 0.5;
    /** Which side of an edge is looked at this far from it, mm: above rounding, below anything that is laid. */
    private static final double PROBE_MM = 0.005;
    /** Lengths are compared to this, mm: rounding of coordinates. */
    private static final double RESOLUTION_MM = 0.001;
    /** Edges between two calls of the pulse. */
    private static final int PULSE_EVERY = 64;
    private static final double NONE = Double.POSITIVE_INFINITY;

    /**
     * What counts as meeting; mm and degrees.
     *
     * @param overlapMm least overlap
     * @param gapMm greatest gap that is meant to be none
     * @param registrationMm how far edges must stand apart that are not to be one
     * @param leanDegrees how far edges may lean from each other
     * @param leastMm shorter stretches do not count
     */
    record Limits(double overlapMm, double gapMm, double registrationMm, double leanDegrees, double leastMm) {
        double reachMm() {
            return Math.max(overlapMm, Math.max(gapMm, registrationMm)) + RESOLUTION_MM;
        }
    }

    /** A third piece of film and whether it lies over the upper one. */
    record Cover(FilmPiece piece, boolean above) {
        boolean hides(Coordinate p) {
            return piece.box().contains(p) && piece.area().locate(p) != Location.EXTERIOR;
        }
    }

    private record Step(Meeting.Kind kind, double measuredMm) {
    }

    private final FilmPiece lower;
    private final FilmPiece upper;
    private final Limits limits;
    private final List<Cover> covers;
    private final Envelope reach;
    private final double leastCosine;
    private final Runnable pulse;
    private final List<Meeting> found = new ArrayList<>();
    private final List<Coordinate> run = new ArrayList<>();
    private Step last;
    private double leastMm;

    private Meetings(FilmPiece lower, FilmPiece upper, Limits limits, List<Cover> covers, Runnable pulse) {
        this.lower = lower;
        this.upper = upper;
        this.limits = limits;
        this.covers = covers;
        this.pulse = pulse;
        this.leastCosine = Math.cos(Math.toRadians(limits.leanDegrees()));
        this.reach = new Envelope(upper.box());
        reach.expandBy(limits.reachMm());
    }

    /** The stretches of one pair, along the rings of the lower piece. */
    static List<Meeting> of(FilmPiece lower, FilmPiece upper, Limits limits, List<Cover> covers, Runnable pulse) {
        Meetings meetings = new Meetings(lower, upper, limits, covers, pulse);
        lower.rings().forEach(meetings::walk);
        return meetings.found;
    }

    private void walk(LinearRing ring) {
        int before = found.size();
        Coordinate[] points = ring.getCoordinates();
        for (int i = 1; i < points.length; i++) {
            if (i % PULSE_EVERY == 0) {
                pulse.run();
            }
            edge(points[i - 1], points[i]);
        }
        boolean closes = last != null;
        end();
        if (closes && found.size() > before + 1) {
            joinAcrossStart(before, points[0]);
        }
        found.subList(before, found.size()).removeIf(meeting -> meeting.line().getLength() < limits.leastMm());
    }

    private void edge(Coordinate from, Coordinate to) {
        Envelope near = new Envelope(from, to);
        near.expandBy(limits.reachMm());
        if (!reach.intersects(from, to) || upper.edges().query(near).isEmpty()) {
            end();
            return;
        }
        int steps = Math.max(1, (int) Math.ceil(from.distance(to) / STEP_MM));
        Coordinate a = from;
        for (int i = 1; i <= steps; i++) {
            Coordinate b = i == steps ? to : new Coordinate(from.x + (to.x - from.x) * i / steps, from.y + (to.y - from.y) * i / steps);
            Optional<Step> step = step(a, b);
            if (step.isEmpty() || last != null && step.get().kind() != last.kind()) {
                end();
            }
            if (step.isPresent()) {
                add(step.get(), a, b);
            }
            a = b;
        }
    }

    private void add(Step step, Coordinate start, Coordinate end) {
        if (run.isEmpty()) {
            run.add(start);
            leastMm = NONE;
        }
        run.add(end);
        leastMm = Math.min(leastMm, step.measuredMm());
        last = step;
    }

    private void end() {
        if (run.size() > 1) {
            found.add(new Meeting(last.kind(), lower.part(), upper.part(), leastMm, lower.part().shape().getFactory().createLineString(run.toArray(new Coordinate[0]))));
        }
        run.clear();
        last = null;
    }

    /** A stretch that runs over the first vertex of a ring was walked in two. */
    private void joinAcrossStart(int index, Coordinate start) {
        Meeting first = found.get(index);
        Meeting end = found.get(found.size() - 1);
        if (first.kind() == end.kind() && first.line().getCoordinateN(0).equals2D(start)) {
            List<Coordinate> joined = new ArrayList<>(List.of(end.line().getCoordinates()));
            joined.addAll(List.of(first.line().getCoordinates()).subList(1, first.line().getNumPoints()));
            found.remove(found.size() - 1);
            found.set(index, new Meeting(first.kind(), lower.part(), upper.part(), Math.min(first.measuredMm(), end.measuredMm()),
                    first.line().getFactory().createLineString(joined.toArray(new Coordinate[0]))));
        }
    }

    private Optional<Step> step(Coordinate a, Coordinate b) {
        double length = a.distance(b);
        if (length == 0) {
            return Optional.empty();
        }
        Coordinate middle = new Coordinate((a.x + b.x) / 2, (a.y + b.y) / 2);
        Coordinate along = new Coordinate((b.x - a.x) / length, (b.y - a.y) / length);
        Coordinate outward = new Coordinate(-along.y, along.x); // the film lies on the right
        boolean coversOutside = inUpper(middle, outward, PROBE_MM);
        boolean coversInside = inUpper(middle, outward, -PROBE_MM);
        Step step = null;
        if (coversOutside) {
            double overlap = coversInside ? nearest(middle, along, outward, -1, -1) : 0;
            if (overlap < limits.overlapMm() - RESOLUTION_MM) {
                step = new Step(Meeting.Kind.SHORT, overlap);
            }
        } else if (!coversInside) {
            double gap = nearest(middle, along, outward, -1, 1);
            if (gap <= limits.gapMm() + RESOLUTION_MM) {
                step = new Step(Meeting.Kind.GAP, -gap);
            }
        }
        if (step == null && limits.registrationMm() > 0) {
            double apart = coversInside && !coversOutside ? 0
                    : Math.min(nearest(middle, along, outward, 1, 1), nearest(middle, along, outward, 1, -1));
            if (apart < limits.registrationMm() - RESOLUTION_MM) {
                step = new Step(Meeting.Kind.REPEAT, apart);
            }
        }
        return Optional.ofNullable(step).filter(each -> !isHidden(middle, each.kind()));
    }

    private boolean inUpper(Coordinate p, Coordinate direction, double byMm) {
        return upper.area().locate(new Coordinate(p.x + direction.x * byMm, p.y + direction.y * byMm)) == Location.INTERIOR;
    }

    /**
     * How far it is to an edge of the upper piece, infinite when none is in reach.
     *
     * @param sameWay 1 for edges that run along with the lower one, -1 for those that run the other way
     * @param side 1 for those outside the lower piece, -1 for those within it
     */
    private double nearest(Coordinate p, Coordinate along, Coordinate outward, int sameWay, int side) {
        Envelope near = new Envelope(p);
        near.expandBy(limits.reachMm());
        double least = NONE;
        for (Object each : upper.edges().query(near)) {
            LineSegment edge = (LineSegment) each;
            double cosine = ((edge.p1.x - edge.p0.x) * along.x + (edge.p1.y - edge.p0.y) * along.y) / edge.getLength();
            double from = (edge.p0.x - p.x) * along.x + (edge.p0.y - p.y) * along.y;
            double to = (edge.p1.x - p.x) * along.x + (edge.p1.y - p.y) * along.y;
            if (cosine * sameWay < leastCosine || from * to > 0) { // leans too much, or ends before it is beside this place
                continue;
            }
            Coordinate q = edge.closestPoint(p);
            double off = (q.x - p.x) * outward.x + (q.y - p.y) * outward.y;
            if (off * side >= -RESOLUTION_MM) {
                least = Math.min(least, p.distance(q));
            }
        }
        return least;
    }

    /** A third film hides a gap wherever it lies, and a repeated edge when it lies over both. */
    private boolean isHidden(Coordinate p, Meeting.Kind kind) {
        return covers.stream().anyMatch(cover -> (kind != Meeting.Kind.REPEAT || cover.above()) && cover.hides(p));
    }
}
