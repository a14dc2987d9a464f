// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.util.AffineTransformation;

/**
 * The best rigid alignment of two revisions: the motion (shift and turn, no mirroring, no change of size) that makes the mean distance
 * of points along the old outlines from the new outlines least, where a distance above 5 mm counts as 5 mm. That way what was redrawn
 * does not pull at what was not.
 *
 * <p>Candidates are the motions that take pairs of old parts onto pairs of new ones of the same area and length of outline, and the motion of
 * centre and main axis of everything; the best few are refined by least squares on the points that lie within 5 mm. Where leaving everything in
 * its place is as good, within a hundredth of a millimetre, it stays. A search of this kind can miss the best motion when every part was redrawn
 * and everything was moved far at once; then findings count as new, never as waived.
 */
public final class Alignment {
    /** Farther than this a place is another place (requirement on waivers). */
    public static final double NEAR_MM = 5;
    /** Better by less than this is no reason to move: the flattening error is of this size. */
    private static final double WORTH_MOVING_MM = 0.01;
    /** Two outlines whose area and length differ by a smaller share may be the same part; flattening changes them by less. */
    private static final double ALIKE_SHARE = 2e-3;
    /** Pairs are taken from the largest parts, which tell most; all pairs of twelve are few enough to try. */
    private static final int PARTS_TRIED = 12;
    /** Parts alike with one part, for instance twenty stud holes: more than this tell nothing. */
    private static final int MOST_ALIKE = 6;
    /** Points along all outlines together while candidates are sorted out. */
    private static final int ROUGH_POINTS = 300;
    /** Points along all outlines together while the best few are refined. */
    private static final int FINE_POINTS = 1500;
    private static final int REFINED = 4;
    /** Each least-squares step takes most of what is left; a closed form is reached in a few. */
    private static final int STEPS = 12;
    /** Turns closer than this are one candidate, radians: 0.1 mm on a sign of 1 m. */
    private static final double SAME_TURN = 1e-4;
    private static final double SAME_SHIFT_MM = 0.1;

    private final Snapshot from;
    private final List<Snapshot.Outline> toOutlines;
    private final Edges to;

    private Alignment(Snapshot from, Snapshot to) {
        this.from = from;
        this.toOutlines = to.outlines();
        this.to = Edges.of(to.outlines());
    }

    /** A motion and how well it fits. */
    private record Scored(AffineTransformation motion, double meanMm) {
    }

    /**
     * The motion that takes the old revision onto the new one; none (identity) when either shows nothing.
     *
     * @param from the old one
     * @param to the new one
     */
    public static AffineTransformation best(Snapshot from, Snapshot to) {
        if (from.outlines().isEmpty() || to.outlines().isEmpty()) {
            return new AffineTransformation();
        }
        return new Alignment(from, to).find();
    }

    private AffineTransformation find() {
        List<Coordinate> fine = thinned(FINE_POINTS);
        Scored stay = scored(new AffineTransformation(), fine);
        if (stay.meanMm() <= WORTH_MOVING_MM) {
            return stay.motion();
        }
        List<Coordinate> rough = thinned(ROUGH_POINTS);
        List<Scored> candidates = new ArrayList<>();
        candidates().forEach(motion -> candidates.add(scored(motion, rough)));
        candidates.sort(Comparator.comparingDouble(Scored::meanMm));
        Scored best = refined(stay, fine);
        for (Scored each : candidates.subList(0, Math.min(REFINED, candidates.size()))) {
            Scored refined = refined(scored(each.motion(), fine), fine);
            best = refined.meanMm() < best.meanMm() ? refined : best;
        }
        return best.meanMm() < stay.meanMm() - WORTH_MOVING_MM ? best.motion() : stay.motion();
    }

    /** No more than so many points, spread over all outlines, also where there are more outlines than points. */
    private List<Coordinate> thinned(int count) {
        List<Coordinate> points = Edges.points(from.outlines(), count);
        double step = Math.max(1, points.size() / (double) count);
        List<Coordinate> some = new ArrayList<>();
        for (double at = 0; at < points.size(); at += step) {
            some.add(points.get((int) at));
        }
        return some;
    }

    private Scored scored(AffineTransformation motion, List<Coordinate> points) {
        double sum = 0;
        for (Coordinate point : points) {
            sum += Math.min(NEAR_MM, to.distance(motion.transform(point, new Coordinate()), NEAR_MM));
        }
        return new Scored(motion, sum / points.size());
    }

    /** Least squares on the points that are near, again and again as long as it helps. */
    private Scored refined(Scored start, List<Coordinate> points) {
        Scored best = start;
        for (int i = 0; i < STEPS; i++) {
            RigidFit fit = new RigidFit();
            for (Coordinate point : points) {
                Coordinate moved = best.motion().transform(point, new Coordinate());
                to.nearest(moved, NEAR_MM).ifPresent(near -> fit.add(moved, near));
            }
            if (fit.count() < 2) {
                return best;
            }
            Scored next = scored(new AffineTransformation(best.motion()).compose(fit.motion()), points);
            if (next.meanMm() >= best.meanMm() - WORTH_MOVING_MM * WORTH_MOVING_MM) {
                return best;
            }
            best = next;
        }
        return best;
    }

    private List<AffineTransformation> candidates() {
        List<Centre> old = Centre.of(from.outlines());
        List<Centre> young = Centre.of(toOutlines);
        Map<Centre, List<Centre>> alike = new HashMap<>();
        for (Centre each : old) {
            List<Centre> partners = young.stream().filter(each::isAlike).toList();
            if (!partners.isEmpty() && partners.size() <= MOST_ALIKE) {
                alike.put(each, partners);
            }
        }
        List<Centre> tried = old.stream().filter(alike::containsKey).sorted(Comparator.comparingInt((Centre each) -> alike.get(each).size())
                .thenComparing(Comparator.comparingDouble(Centre::area).reversed())).limit(PARTS_TRIED).toList();
        List<AffineTransformation> motions = new ArrayList<>(byAxes());
        for (Centre a : tried) {
            alike.get(a).forEach(partner -> add(motions, AffineTransformation.translationInstance(partner.at().x - a.at().x, partner.at().y - a.at().y)));
            for (Centre b : tried) {
                if (a != b) {
                    pairs(a, b, alike, motions);
                }
            }
        }
        return motions;
    }

    private static void pairs(Centre a, Centre b, Map<Centre, List<Centre>> alike, List<AffineTransformation> motions) {
        double distance = a.at().distance(b.at());
        for (Centre onA : alike.get(a)) {
            for (Centre onB : alike.get(b)) {
                if (distance > NEAR_MM && Math.abs(onA.at().distance(onB.at()) - distance) <= SAME_SHIFT_MM) {
                    double turn = Math.atan2(onB.at().y - onA.at().y, onB.at().x - onA.at().x) - Math.atan2(b.at().y - a.at().y, b.at().x - a.at().x);
                    add(motions, AffineTransformation.translationInstance(-a.at().x, -a.at().y).rotate(turn).translate(onA.at().x, onA.at().y));
                }
            }
        }
    }

    private static void add(List<AffineTransformation> motions, AffineTransformation motion) {
        double[] own = motion.getMatrixEntries();
        boolean known = motions.stream().anyMatch(other -> {
            double[] its = other.getMatrixEntries();
            return Math.abs(own[0] - its[0]) < SAME_TURN && Math.abs(own[1] - its[1]) < SAME_TURN && Math.abs(own[2] - its[2]) < SAME_SHIFT_MM
                    && Math.abs(own[5] - its[5]) < SAME_SHIFT_MM;
        });
        if (!known) {
            motions.add(motion);
        }
    }

    /** Centre onto centre, as it lies, and with the main axes on each other both ways round. */
    private List<AffineTransformation> byAxes() {
        Axis old = Axis.of(from.outlines());
        Axis young = Axis.of(toOutlines);
        List<AffineTransformation> motions = new ArrayList<>();
        for (double turn : new double[] {0, young.angle() - old.angle(), young.angle() - old.angle() + Math.PI}) {
            motions.add(AffineTransformation.translationInstance(-old.at().x, -old.at().y).rotate(turn).translate(young.at().x, young.at().y));
        }
        return motions;
    }

    /** Where a part is, and what a motion does not change of it. */
    private record Centre(Coordinate at, double area, double length) {
        static List<Centre> of(List<Snapshot.Outline> outlines) {
            return outlines.stream().map(each -> new Centre(each.shape().getCentroid().getCoordinate(), each.shape().getArea(), each.shape().getLength())).toList();
        }

        boolean isAlike(Centre other) {
            return Math.abs(area - other.area) <= ALIKE_SHARE * Math.max(area, other.area) && Math.abs(length - other.length) <= ALIKE_SHARE * Math.max(length, other.length);
        }
    }

    /** Centre and main direction of points along all outlines. */
    private record Axis(Coordinate at, double angle) {
        static Axis of(List<Snapshot.Outline> outlines) {
            List<Coordinate> points = Edges.points(outlines, FINE_POINTS);
            double x = points.stream().mapToDouble(Coordinate::getX).average().orElse(0);
            double y = points.stream().mapToDouble(Coordinate::getY).average().orElse(0);
            double xx = 0;
            double yy = 0;
            double xy = 0;
            for (Coordinate point : points) {
                xx += (point.x - x) * (point.x - x);
                yy += (point.y - y) * (point.y - y);
                xy += (point.x - x) * (point.y - y);
            }
            return new Axis(new Coordinate(x, y), Math.atan2(2 * xy, xx - yy) / 2);
        }
    }

    /** The rigid motion that takes points onto others best in the sense of least squares; closed form in the plane. */
    private static final class RigidFit {
        private int count;
        private double x;
        private double y;
        private double toX;
        private double toY;
        private double dot;
        private double cross;

        void add(Coordinate from, Coordinate to) {
            count++;
            x += from.x;
            y += from.y;
            toX += to.x;
            toY += to.y;
            dot += from.x * to.x + from.y * to.y;
            cross += from.x * to.y - from.y * to.x;
        }

        int count() {
            return count;
        }

        AffineTransformation motion() {
            double meanX = x / count;
            double meanY = y / count;
            double meanToX = toX / count;
            double meanToY = toY / count;
            double turn = Math.atan2(cross - count * (meanX * meanToY - meanY * meanToX), dot - count * (meanX * meanToX + meanY * meanToY));
            return AffineTransformation.translationInstance(-meanX, -meanY).rotate(turn).translate(meanToX, meanToY);
        }
    }
}
