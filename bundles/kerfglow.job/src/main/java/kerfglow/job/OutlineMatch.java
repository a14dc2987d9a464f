// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiPredicate;
import kerfglow.geometry.Congruence;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.locationtech.jts.index.strtree.STRtree;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/**
 * Which outline of the new revision is which of the old one. First those of one role and layer that share some of their area, best first, then
 * those that share at least half of it whatever their role, then those of one role that are congruent elsewhere.
 */
final class OutlineMatch {
    /** An outline of another role or layer is the same one when half of what the two cover is covered by both. */
    private static final double HALF = 0.5;
    /** Less than this is a touch, not the same outline. */
    private static final double LEAST_SHARE = 0.1;
    /** The search for the nearest piece of outline begins this near and goes on from there. */
    private static final double FIRST_REACH_MM = 1;
    private static final double REACH_GROWTH = 4;

    private final List<Snapshot.Outline> old;
    private final List<Snapshot.Outline> young;
    private final double sameMm;
    private final Set<Integer> oldLeft = new LinkedHashSet<>();
    private final Set<Integer> youngLeft = new LinkedHashSet<>();
    private final List<OutlineChange> changes = new ArrayList<>();

    private record Pair(int old, int young, double share) {
    }

    /**
     * Compares.
     *
     * @param before the old revision, moved by the alignment
     * @param now the new revision
     */
    OutlineMatch(Snapshot before, Snapshot now) {
        old = before.outlines();
        young = now.outlines();
        sameMm = OutlineChange.SAME_MM + before.resolutionMm() + now.resolutionMm();
        for (int i = 0; i < old.size(); i++) {
            oldLeft.add(i);
        }
        for (int i = 0; i < young.size(); i++) {
            youngLeft.add(i);
        }
    }

    /** What changed; what did not is left out. */
    List<OutlineChange> changes() {
        List<Pair> pairs = sharing();
        take(pairs, (a, b) -> a.role().equals(b.role()) && a.layer().equals(b.layer()), LEAST_SHARE);
        take(pairs, (a, b) -> true, HALF);
        takeCongruent();
        for (int i : oldLeft) {
            Snapshot.Outline gone = old.get(i);
            changes.add(new OutlineChange(OutlineChange.Kind.REMOVED, Optional.of(gone.part()), Optional.empty(), gone.role(), gone.shape().getArea(), 0, gone.shape()));
        }
        for (int i : youngLeft) {
            Snapshot.Outline come = young.get(i);
            changes.add(new OutlineChange(OutlineChange.Kind.ADDED, Optional.empty(), Optional.of(come.part()), come.role(), come.shape().getArea(), 0, come.shape()));
        }
        return changes;
    }

    private List<Pair> sharing() {
        STRtree index = new STRtree();
        for (int i = 0; i < young.size(); i++) {
            index.insert(young.get(i).shape().getEnvelopeInternal(), i);
        }
        List<Pair> pairs = new ArrayList<>();
        for (int i = 0; i < old.size(); i++) {
            Geometry shape = old.get(i).shape();
            for (Object found : index.query(shape.getEnvelopeInternal())) {
                Geometry other = young.get((Integer) found).shape();
                double most = Math.min(shape.getArea(), other.getArea()) / Math.max(shape.getArea(), other.getArea());
                double share = most < LEAST_SHARE ? 0 : isSame(shape, other) ? 1 : share(shape, other);
                if (share >= LEAST_SHARE) {
                    pairs.add(new Pair(i, (Integer) found, share));
                }
            }
        }
        pairs.sort(Comparator.comparingDouble(Pair::share).reversed());
        return pairs;
    }

    /** What hardly any revision changes; far cheaper than an overlay. */
    private boolean isSame(Geometry a, Geometry b) {
        Envelope boxA = a.getEnvelopeInternal();
        Envelope boxB = b.getEnvelopeInternal();
        return Math.abs(boxA.getMinX() - boxB.getMinX()) <= sameMm && Math.abs(boxA.getMaxX() - boxB.getMaxX()) <= sameMm
                && Math.abs(boxA.getMinY() - boxB.getMinY()) <= sameMm && Math.abs(boxA.getMaxY() - boxB.getMaxY()) <= sameMm && apart(a, b) <= sameMm;
    }

    /** Area that both cover, as a share of what either covers. */
    private static double share(Geometry a, Geometry b) {
        double both = OverlayNGRobust.overlay(a, b, OverlayNG.INTERSECTION).getArea();
        return both / (a.getArea() + b.getArea() - both);
    }

    private static double apart(Geometry a, Geometry b) {
        return Math.max(farthest(a, b), farthest(b, a));
    }

    private void take(List<Pair> pairs, BiPredicate<Snapshot.Outline, Snapshot.Outline> fits, double leastShare) {
        for (Pair pair : pairs) {
            if (pair.share() >= leastShare && oldLeft.contains(pair.old()) && youngLeft.contains(pair.young()) && fits.test(old.get(pair.old()), young.get(pair.young()))) {
                oldLeft.remove(pair.old());
                youngLeft.remove(pair.young());
                changed(old.get(pair.old()), young.get(pair.young())).ifPresent(changes::add);
            }
        }
    }

    private Optional<OutlineChange> changed(Snapshot.Outline before, Snapshot.Outline after) {
        double apart = apart(before.shape(), after.shape());
        if (apart <= sameMm) {
            return Optional.empty();
        }
        Geometry where = difference(before, after);
        double moved = moved(before, after);
        boolean shifted = apart(shifted(before, after), after.shape()) <= sameMm;
        boolean same = shifted || Congruence.of(before.shape()).matches(Congruence.of(after.shape()), sameMm);
        return Optional.of(new OutlineChange(same ? OutlineChange.Kind.MOVED : OutlineChange.Kind.CHANGED, Optional.of(before.part()), Optional.of(after.part()), after.role(),
                where.getArea(), shifted ? moved : apart, where));
    }

    /** The old shape with its centre where the new one has it. */
    private static Geometry shifted(Snapshot.Outline before, Snapshot.Outline after) {
        Coordinate from = before.shape().getCentroid().getCoordinate();
        Coordinate to = after.shape().getCentroid().getCoordinate();
        return AffineTransformation.translationInstance(to.x - from.x, to.y - from.y).transform(before.shape());
    }

    private static Geometry difference(Snapshot.Outline before, Snapshot.Outline after) {
        return OverlayNGRobust.overlay(before.shape(), after.shape(), OverlayNG.SYMDIFFERENCE);
    }

    /** How far a vertex of the one is from the other's outline at most. */
    private static double farthest(Geometry from, Geometry to) {
        Edges edges = Edges.ofShapes(List.of(to));
        return Arrays.stream(from.getCoordinates()).mapToDouble(point -> distance(edges, point)).max().orElse(0);
    }

    private static double distance(Edges edges, Coordinate point) {
        double reach = FIRST_REACH_MM;
        Optional<Coordinate> near = edges.nearest(point, reach);
        while (near.isEmpty()) { // an outline is never empty, so that this ends
            reach *= REACH_GROWTH;
            near = edges.nearest(point, reach);
        }
        return near.get().distance(point);
    }

    private void takeCongruent() {
        for (int i : List.copyOf(oldLeft)) {
            Snapshot.Outline before = old.get(i);
            Congruence shape = Congruence.of(before.shape());
            Optional<Integer> same = youngLeft.stream().filter(j -> young.get(j).role().equals(before.role()) && shape.matches(Congruence.of(young.get(j).shape()), sameMm))
                    .min(Comparator.comparingDouble(j -> moved(before, young.get(j))));
            same.ifPresent(j -> {
                oldLeft.remove(i);
                youngLeft.remove(j);
                Geometry where = difference(before, young.get(j));
                changes.add(new OutlineChange(OutlineChange.Kind.MOVED, Optional.of(before.part()), Optional.of(young.get(j).part()), before.role(), where.getArea(),
                        moved(before, young.get(j)), where));
            });
        }
    }

    private static double moved(Snapshot.Outline before, Snapshot.Outline after) {
        return before.shape().getCentroid().getCoordinate().distance(after.shape().getCentroid().getCoordinate());
    }
}
