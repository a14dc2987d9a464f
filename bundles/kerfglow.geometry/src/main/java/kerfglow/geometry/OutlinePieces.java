// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;

/**
 * Finds straights, arcs and corners again in an outline whose curves were flattened to chords.
 *
 * <p>A vertex is a corner when no curve within the chord error could turn so far between chords as long as those beside it, or
 * when it turns by more than 20 degrees and far more than the vertices beside it. Between corners neighbouring stretches are joined,
 * the best pair first, while the arc with their length and turn passes within the tolerance of all their vertices: bottom-up, so that a curve
 * ends up in arcs of balanced fit however its chords lie. The turns of all pieces of a simple ring add up to a full turn.
 *
 * <p>Cost: n log n for outlines as people draw them.
 */
public final class OutlinePieces {
    /** A stretch within the tolerance of a straight line that turns less, radians (2 degrees), is straight to a bender. Assumed. */
    private static final double STRAIGHT_TURN = Math.toRadians(2);
    private final double chordErrorMm;
    private final double toleranceMm;
    private final GeometryFactory factory;
    private final RingVertices ring;
    private final Coordinate[] points;
    private final double[] turns;
    private final boolean[] corners;

    private OutlinePieces(LinearRing outline, double chordErrorMm, double toleranceMm) {
        this.chordErrorMm = chordErrorMm;
        this.toleranceMm = toleranceMm;
        this.factory = outline.getFactory();
        this.ring = new RingVertices(outline, chordErrorMm);
        this.points = ring.points;
        this.turns = ring.turns;
        this.corners = ring.corners;
    }

    /**
     * The pieces of a ring in its own direction. They start at a corner where there is one.
     *
     * @param ring simple, mm; not changed
     * @param chordErrorMm how far its chords may lie from the true curve, above 0
     * @param toleranceMm how far a vertex may lie from the arc that describes it, above 0
     */
    public static List<OutlinePiece> of(LinearRing ring, double chordErrorMm, double toleranceMm) {
        if (!(chordErrorMm > 0 && toleranceMm > 0)) {
            throw new IllegalArgumentException("chord error and tolerance must be above 0: " + chordErrorMm + " mm, " + toleranceMm + " mm");
        }
        OutlinePieces outline = new OutlinePieces(ring, chordErrorMm, toleranceMm);
        return outline.points.length < 3 ? List.of() : outline.pieces();
    }

    /** A run of chords: those that start at vertices from, from + 1, ... */
    private final class Stretch {
        final int from;
        int edges;
        Stretch before;
        Stretch after;
        int changes;

        Stretch(int from, int edges) {
            this.from = from;
            this.edges = edges;
        }

        boolean isClosed() {
            return edges == points.length && !corners[from];
        }

        double innerTurn() {
            double sum = isClosed() ? turns[from] : 0;
            for (int i = 1; i < edges; i++) {
                sum += turns[(from + i) % points.length];
            }
            return sum;
        }

        double chords() {
            double sum = 0;
            for (int i = 0; i < edges; i++) {
                sum += ring.point(from + i).distance(ring.point(from + i + 1));
            }
            return sum;
        }

        double chordMm(int number) {
            return ring.point(from + number).distance(ring.point(from + number + 1));
        }

        ArcFit fit() {
            return new ArcFit(ring, from, edges, chordErrorMm);
        }

        double residual(double turn) {
            return fit().residualMm(turn == 0 ? Double.POSITIVE_INFINITY : chords() / Math.abs(turn));
        }

        /** How an end chord leans against the arc: half of what a chord turns, by number or by length, whichever describes the vertices better. */
        double lean(int chord) {
            double inner = innerTurn();
            double all = chords();
            double middle = all - (chordMm(0) + chordMm(edges - 1)) / 2;
            boolean byLength = residual(inner * all / middle) < residual(inner * edges / (edges - 1));
            return byLength ? inner * chordMm(chord) / middle / 2 : inner / (edges - 1) / 2;
        }

        /**
         * The turn of the arc that the chords stand for: of its inner vertices and of its ends. A chord that ends in a corner may have
         * been cut there, and leans otherwise: then the circle that fits the vertices says it where that fits better.
         */
        double arcTurn() {
            double inner = innerTurn();
            if (isClosed() || edges == 1) {
                return inner;
            }
            double turn = inner + lean(0) + lean(edges - 1);
            double radius = fit().radiusMm();
            if (!corners[from] && !corners[(from + edges) % points.length] || turn == 0 || Double.isInfinite(radius)
                    || fit().residualMm(radius) >= residual(turn)) {
                return turn;
            }
            double fitted = 0;
            for (int i = 0; i < edges; i++) {
                fitted += 2 * Math.asin(Math.min(1, chordMm(i) / (2 * radius)));
            }
            return Math.copySign(fitted, inner);
        }

        double sagitta() {
            double most = 0;
            Coordinate a = ring.point(from);
            Coordinate b = ring.point(from + edges);
            double chord = a.distance(b);
            for (int i = 1; i < edges; i++) {
                Coordinate p = ring.point(from + i);
                double off = chord == 0 ? p.distance(a) : Math.abs((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / chord;
                most = Math.max(most, off);
            }
            return most;
        }

        boolean isStraight() {
            return edges == 1 || !isClosed() && Math.abs(innerTurn()) <= STRAIGHT_TURN && sagitta() <= toleranceMm;
        }
    }

    /** Two neighbours that might be one. */
    private record Join(Stretch first, Stretch second, int firstChanges, int secondChanges, double residualMm, int edges) {
        boolean isCurrent() {
            return first.changes == firstChanges && second.changes == secondChanges && first.after == second;
        }
    }

    private List<OutlinePiece> pieces() {
        int start = 0;
        while (start < points.length - 1 && !corners[start]) {
            start++;
        }
        start = corners[start] ? start : 0;
        Stretch head = joined(start);
        List<OutlinePiece> pieces = new ArrayList<>();
        Stretch stretch = head;
        do {
            if (corners[stretch.from]) {
                double turn = turns[stretch.from] - cornerLean(stretch.before, 0) - cornerLean(stretch, stretch.edges - 1);
                pieces.add(corner(stretch.from, turn));
            } else if (stretch.before != stretch && stretch.isStraight() && stretch.before.isStraight()) {
                pieces.add(corner(stretch.from, turns[stretch.from])); // a slight bend that no arc takes in
            }
            pieces.add(piece(stretch));
            stretch = stretch.after;
        } while (stretch != head);
        return pieces;
    }

    private OutlinePiece corner(int vertex, double turn) {
        return new OutlinePiece(OutlinePiece.Kind.CORNER, factory.createPoint(ring.point(vertex).copy()), 0, turn, 0, 0);
    }

    private Stretch joined(int start) {
        Stretch head = new Stretch(start, 1);
        Stretch last = head;
        for (int i = 1; i < points.length; i++) {
            Stretch next = new Stretch((start + i) % points.length, 1);
            last.after = next;
            next.before = last;
            last = next;
        }
        last.after = head;
        head.before = last;
        PriorityQueue<Join> joins = new PriorityQueue<>(Comparator.comparingDouble(Join::residualMm).thenComparingInt(Join::edges)
                .thenComparingInt(join -> join.first().from));
        Stretch each = head;
        do {
            offer(each, joins);
            each = each.after;
        } while (each != head);
        for (Join join = joins.poll(); join != null; join = joins.poll()) {
            if (join.isCurrent()) {
                Stretch kept = join.first();
                head = join.second() == head ? kept : head;
                kept.edges += join.second().edges;
                kept.after = join.second().after;
                kept.after.before = kept;
                kept.changes++;
                join.second().changes++;
                if (kept.after != kept) {
                    offer(kept, joins);
                    offer(kept.before, joins);
                }
            }
        }
        return head;
    }

    private void offer(Stretch first, PriorityQueue<Join> joins) {
        Stretch second = first.after;
        if (second == first || corners[second.from]) {
            return;
        }
        Stretch both = new Stretch(first.from, first.edges + second.edges);
        double residual = both.residual(both.arcTurn());
        if (residual <= toleranceMm) {
            joins.add(new Join(first, second, first.changes, second.changes, residual, first.edges + second.edges));
        }
    }

    /** What an arc turns at a corner, beyond its inner vertices and its other end; 0 for a straight. */
    private double cornerLean(Stretch arc, int otherChord) {
        if (arc.isStraight()) {
            return 0;
        }
        double beyond = arc.arcTurn() - arc.innerTurn();
        return corners[arc.from] && corners[arc.after.from] ? beyond / 2 : beyond - arc.lean(otherChord);
    }

    private double turnOf(Stretch arc) {
        if (arc.isClosed() || arc.isStraight()) {
            return arc.innerTurn();
        }
        Stretch before = arc.before;
        Stretch after = arc.after;
        int last = arc.edges - 1;
        double start = corners[arc.from] ? cornerLean(arc, last)
                : before.isStraight() ? turns[arc.from] : shared(turns[arc.from], arc.lean(0), before.lean(before.edges - 1));
        double end = corners[after.from] ? cornerLean(arc, 0)
                : after.isStraight() ? turns[after.from] : shared(turns[after.from], arc.lean(last), after.lean(0));
        return arc.innerTurn() + start + end;
    }

    /** What turns where two arcs meet without a corner: each its lean, and what is over is shared. */
    private static double shared(double turn, double own, double other) {
        return own + (turn - own - other) / 2;
    }

    private OutlinePiece piece(Stretch stretch) {
        Coordinate[] line = new Coordinate[stretch.edges + 1];
        for (int i = 0; i <= stretch.edges; i++) {
            line[i] = ring.point(stretch.from + i).copy();
        }
        double turn = turnOf(stretch);
        double chords = stretch.chords();
        if (stretch.isStraight()) {
            return new OutlinePiece(OutlinePiece.Kind.STRAIGHT, factory.createLineString(line), chords, turn, Double.POSITIVE_INFINITY,
                    stretch.sagitta());
        }
        double half = Math.abs(turn) / stretch.edges / 2;
        double length = half > 0 && half < Math.PI / 2 ? chords * half / Math.sin(half) : chords;
        double radius = turn == 0 ? Double.POSITIVE_INFINITY : length / Math.abs(turn);
        double residual = stretch.fit().residualMm(radius);
        return new OutlinePiece(OutlinePiece.Kind.ARC, factory.createLineString(line), length, turn, radius, residual);
    }
}
