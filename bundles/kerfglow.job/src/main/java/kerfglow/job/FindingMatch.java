// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.util.PointExtracter;
import org.locationtech.jts.index.strtree.STRtree;

/**
 * Knows findings of one run again in another. Two places are the same when rule and roles are equal, no point of either lies farther
 * than 5 mm from the other after the best rigid alignment, and neither has another candidate that is nearer. Findings without a place
 * are the same when rule, roles and elements are equal.
 */
final class FindingMatch {
    /** The resolution of the import: places this near are one place. */
    private static final double SAME_MM = 0.001;

    private final Map<Spot, Spot> newToOld = new HashMap<>();
    private final Map<Spot, Spot> oldToNew = new HashMap<>();

    /** One place of one finding; the place is -1 for a finding that concerns the whole proof. */
    record Spot(int finding, int place) {
    }

    private record Kind(String rule, Set<String> roles, List<String> elements) {
        static Kind of(SeenFinding finding) {
            return new Kind(finding.rule(), Set.copyOf(finding.roles()), finding.places().isEmpty() ? finding.elements() : List.of());
        }
    }

    private record Pair(Spot old, Spot young, double distanceMm) {
    }

    private FindingMatch() {
    }

    /**
     * Matches.
     *
     * @param old the findings of the old run, moved by the alignment
     * @param young those of the new run
     */
    static FindingMatch of(List<SeenFinding> old, List<SeenFinding> young) {
        FindingMatch match = new FindingMatch();
        List<Pair> pairs = pairs(old, young);
        pairs.sort(Comparator.comparingDouble(Pair::distanceMm));
        Map<Spot, Double> nearestOld = new HashMap<>();
        Map<Spot, Double> nearestYoung = new HashMap<>();
        for (Pair pair : pairs) {
            nearestOld.putIfAbsent(pair.young(), pair.distanceMm());
            nearestYoung.putIfAbsent(pair.old(), pair.distanceMm());
        }
        for (Pair pair : pairs) { // nearest first; a pair counts only when each is the other's nearest
            if (pair.distanceMm() <= nearestOld.get(pair.young()) && pair.distanceMm() <= nearestYoung.get(pair.old())
                    && !match.newToOld.containsKey(pair.young()) && !match.oldToNew.containsKey(pair.old())) {
                match.newToOld.put(pair.young(), pair.old());
                match.oldToNew.put(pair.old(), pair.young());
            }
        }
        return match;
    }

    /** The place of the old run that a place of the new run is. */
    Optional<Spot> old(Spot young) {
        return Optional.ofNullable(newToOld.get(young));
    }

    /** The place of the new run that a place of the old run is. */
    Optional<Spot> young(Spot old) {
        return Optional.ofNullable(oldToNew.get(old));
    }

    /** Every place of a finding, or the one spot of a finding without place. */
    static List<Spot> spots(int finding, SeenFinding of) {
        if (of.places().isEmpty()) {
            return List.of(new Spot(finding, -1));
        }
        List<Spot> spots = new ArrayList<>();
        for (int i = 0; i < of.places().size(); i++) {
            spots.add(new Spot(finding, i));
        }
        return spots;
    }

    private static List<Pair> pairs(List<SeenFinding> old, List<SeenFinding> young) {
        Map<Kind, STRtree> placed = new HashMap<>();
        Map<Kind, Spot> placeless = new HashMap<>();
        for (int i = 0; i < young.size(); i++) {
            Kind kind = Kind.of(young.get(i));
            for (Spot spot : spots(i, young.get(i))) {
                if (spot.place() < 0) {
                    placeless.putIfAbsent(kind, spot);
                } else {
                    placed.computeIfAbsent(kind, each -> new STRtree()).insert(young.get(i).places().get(spot.place()).shape().getEnvelopeInternal(), spot);
                }
            }
        }
        List<Pair> pairs = new ArrayList<>();
        Set<Kind> used = new HashSet<>();
        for (int i = 0; i < old.size(); i++) {
            Kind kind = Kind.of(old.get(i));
            for (Spot spot : spots(i, old.get(i))) {
                if (spot.place() >= 0 && placed.containsKey(kind)) {
                    near(old, young, spot, placed.get(kind), pairs);
                } else if (spot.place() < 0 && placeless.containsKey(kind) && used.add(kind)) {
                    pairs.add(new Pair(spot, placeless.get(kind), 0));
                }
            }
        }
        return pairs;
    }

    private static void near(List<SeenFinding> old, List<SeenFinding> young, Spot spot, STRtree index, List<Pair> pairs) {
        Geometry shape = old.get(spot.finding()).places().get(spot.place()).shape();
        Envelope around = new Envelope(shape.getEnvelopeInternal());
        around.expandBy(Alignment.NEAR_MM);
        for (Object found : index.query(around)) {
            Spot other = (Spot) found;
            double distance = apart(shape, young.get(other.finding()).places().get(other.place()).shape());
            if (distance <= Alignment.NEAR_MM) {
                pairs.add(new Pair(spot, other, distance));
            }
        }
    }

    /**
     * How far two places are apart: the greatest distance of a vertex of either from the points and lines of the other (Hausdorff, over
     * vertices). Infinite when that is above 5 mm.
     */
    static double apart(Geometry a, Geometry b) {
        if (a.equalsExact(b, SAME_MM)) { // by far the most, since hardly anything changes from run to run
            return 0;
        }
        Envelope boxA = a.getEnvelopeInternal();
        Envelope boxB = b.getEnvelopeInternal();
        boolean near = Math.abs(boxA.getMinX() - boxB.getMinX()) <= Alignment.NEAR_MM && Math.abs(boxA.getMaxX() - boxB.getMaxX()) <= Alignment.NEAR_MM
                && Math.abs(boxA.getMinY() - boxB.getMinY()) <= Alignment.NEAR_MM && Math.abs(boxA.getMaxY() - boxB.getMaxY()) <= Alignment.NEAR_MM;
        double apart = near ? Math.max(farthest(a, b), farthest(b, a)) : Double.POSITIVE_INFINITY;
        return apart <= Alignment.NEAR_MM ? apart : Double.POSITIVE_INFINITY;
    }

    private static double farthest(Geometry from, Geometry to) {
        Edges edges = Edges.ofShapes(List.of(to));
        List<Coordinate> points = new ArrayList<>();
        for (Object point : PointExtracter.getPoints(to)) {
            points.add(((Point) point).getCoordinate());
        }
        double farthest = 0;
        for (Coordinate point : from.getCoordinates()) {
            double nearest = edges.distance(point, Alignment.NEAR_MM);
            for (Coordinate other : points) {
                nearest = Math.min(nearest, other.distance(point));
            }
            farthest = Math.max(farthest, nearest);
        }
        return farthest;
    }
}
