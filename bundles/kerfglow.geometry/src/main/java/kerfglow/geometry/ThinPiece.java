// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One connected piece of the medial axis of a shape along which the shape is narrower than a limit, known by the two or more
 * sides (runs of walls) that its discs touch.
 */
final class ThinPiece {
    /** How far a contact may miss the span that it belongs to (mm or radians) where two limits meet. */
    private static final double NEAR = 1e-3;

    /** Rounding of an angle (radians) that two formulas give for one pair of walls. */
    private static final double ANGLE_SLACK = 1e-7;
    /** Larger than that, so that a corner whose walls count as opposite is always a tip. */
    private static final double TIP_SLACK = 1e-4;
    /** Walls that turn from each other by less (radians) are parallel. */
    private static final double PARALLEL = 1e-3;

    /** How many walls are looked at between two calls of the pulse. */
    private static final int PULSE_EVERY = 128;
    /** Widths (mm) that differ by less are those of parallel walls, but for rounding. */
    private static final double EQUAL_MM = 1e-6;

    final Walls walls;
    final List<Run> runs = new ArrayList<>();
    private final double limitMm;
    private final double leastFacing;

    private ThinPiece(Walls walls, double limitMm, double leastFacing) {
        this.walls = walls;
        this.limitMm = limitMm;
        this.leastFacing = leastFacing;
    }

    /**
     * Every such piece.
     *
     * @param leastFacing the least angle between a disc's contacts at which its walls count as opposite, radians
     */
    static List<ThinPiece> of(Walls walls, double limitMm, double leastFacing, Runnable pulse) {
        List<List<Contact>> contacts = Contacts.of(walls, limitMm, pulse);
        List<List<Span>> spans = new ArrayList<>(contacts.size());
        for (int site = 0; site < contacts.size(); site++) {
            if (site % PULSE_EVERY == 0) {
                pulse.run();
            }
            spans.add(Span.of(walls, site, contacts.get(site), limitMm, leastFacing));
        }
        link(walls, spans);
        Map<Run, ThinPiece> pieces = new LinkedHashMap<>();
        for (Run run : joined(spans, pulse)) {
            pieces.computeIfAbsent(run.root(), root -> new ThinPiece(walls, limitMm, leastFacing)).runs.add(run);
        }
        return List.copyOf(pieces.values());
    }

    private static void link(Walls walls, List<List<Span>> spans) {
        for (int k = 0; k < walls.size; k++) {
            List<Span> onEdge = spans.get(Contacts.edge(k));
            int after = walls.next[k];
            List<Span> onCorner = spans.get(Contacts.corner(after));
            List<Span> onNext = spans.get(Contacts.edge(after));
            if (!onCorner.isEmpty()) {
                Span lastOnCorner = onCorner.get(onCorner.size() - 1);
                link(onEdge, walls.length[k], onCorner);
                if (lastOnCorner.endsAt(-walls.turn[after])) {
                    link(onCorner, -walls.turn[after], onNext);
                }
            } else if (!walls.isReflex(after)) {
                link(onEdge, walls.length[k], onNext);
            }
        }
    }

    private static void link(List<Span> before, double end, List<Span> after) {
        if (before.isEmpty() || after.isEmpty()) {
            return;
        }
        Span last = before.get(before.size() - 1);
        Span first = after.get(0);
        if (last.endsAt(end) && first.startsAt(0)) {
            last.next = first;
            first.previous = last;
        }
    }

    private static List<Run> joined(List<List<Span>> spans, Runnable pulse) {
        List<Run> runs = new ArrayList<>();
        for (List<Span> onSite : spans) {
            for (Span span : onSite) {
                if (span.run == null) {
                    runs.add(new Run(span));
                }
            }
        }
        for (int site = 0; site < spans.size(); site++) {
            if (site % PULSE_EVERY == 0) {
                pulse.run();
            }
            for (Span span : spans.get(site)) {
                for (Disc disc : span.discs) {
                    Span mate = mate(spans.get(disc.feature()), disc.featurePlace());
                    if (mate != null) {
                        span.run.join(mate.run);
                    }
                }
            }
        }
        return runs;
    }

    /** The span that a place belongs to, the first of equally near ones, or null. Asked for each disc, so without a stream. */
    private static Span mate(List<Span> candidates, double place) {
        Span mate = null;
        double least = NEAR;
        for (Span span : candidates) {
            double misses = span.misses(place);
            if (misses < least) {
                least = misses;
                mate = span;
            }
        }
        return mate;
    }

    boolean faces(Disc disc) {
        return disc.separation() >= leastFacing - ANGLE_SLACK;
    }

    /** True when parallel walls of it stand just as far apart as the limit, so that rounding alone makes them narrow. */
    boolean isMarginal(double resolutionMm) {
        for (Run run : runs) {
            for (Span span : run.spans) {
                for (Disc disc : span.discs) {
                    if (disc.separation() >= Math.PI - PARALLEL && disc.widthMm() >= limitMm - resolutionMm) {
                        return true;
                    }
                }
            }
        }
        return false;
    }

    /** How many of its ends open into a place that is wide enough. Each such end is the end of two runs. */
    int wideEnds() {
        return (int) runs.stream().filter(run -> !run.closed).count();
    }

    /** Corners, sharp enough to count as opposite walls, in which it runs out to nothing. */
    List<Integer> tips() {
        List<Integer> tips = new ArrayList<>();
        for (Run run : runs) {
            for (Span span : run.spans) {
                if (span.site % 2 == 1 && span.next != null && span.next.site % 2 == 1) {
                    int corner = span.next.site / 2;
                    if (walls.turn[corner] >= leastFacing - TIP_SLACK) {
                        tips.add(corner);
                    }
                }
            }
        }
        return tips;
    }

    /** The inside angle of a corner, radians. */
    double angle(int corner) {
        return Math.PI - walls.turn[corner];
    }

    /** The narrowest disc between opposite walls, those in the point of a tip left out; empty when no walls lie opposite. */
    Optional<Disc> narrowest() {
        List<Integer> tips = tips();
        Optional<Disc> clear = least(tips);
        return clear.isPresent() ? clear : least(List.of());
    }

    /** Of equal ones, along parallel walls, that in the middle: a marker there is where a person looks. */
    private Optional<Disc> least(List<Integer> tips) {
        List<Disc> facing = new ArrayList<>();
        double least = Double.POSITIVE_INFINITY;
        for (Run run : runs) {
            for (Span span : run.spans) {
                for (Disc disc : span.discs) {
                    if (faces(disc) && disc.widthMm() <= least + EQUAL_MM && !isInTip(disc, tips)) {
                        facing.add(disc);
                        least = Math.min(least, disc.widthMm());
                    }
                }
            }
        }
        double most = least + EQUAL_MM;
        facing.removeIf(disc -> disc.widthMm() > most);
        double x = facing.stream().mapToDouble(Disc::centreX).average().orElse(0);
        double y = facing.stream().mapToDouble(Disc::centreY).average().orElse(0);
        return facing.stream().min(Comparator.comparingDouble(disc -> disc.distanceTo(x, y)));
    }

    /** True where even the straight walls of the tip, prolonged, would stand no farther apart than the limit. */
    private boolean isInTip(Disc disc, List<Integer> tips) {
        for (int tip : tips) {
            if (disc.distanceTo(walls.x[tip], walls.y[tip]) <= (limitMm + EQUAL_MM) / 2 / Math.sin(angle(tip) / 2)) { // where such a tip ends they stand as far apart, but for rounding
                return true;
            }
        }
        return false;
    }
}
