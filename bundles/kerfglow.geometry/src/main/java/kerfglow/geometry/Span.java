// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * An unbroken stretch of one edge or corner from which the shape is narrower than the limit, with the inscribed discs along it.
 * Discs stand at the ends, at every change of feature, at every least width, and half way between each two of these, so that a
 * disc with an even index has its neighbours' feature on each side.
 */
final class Span {
    /** Ends nearer than this (mm or radians) are one; above the rounding of two formulas for one place. */
    private static final double JOIN = 1e-6;
    /** Steps between discs: share of the limit on edges; on corners radians (10 degrees). Only the drawn axis depends on them. */
    static final double EDGE_STEP = 0.25;
    /** Assumed: a taper of 15 m beside a limit of 6 mm; on a longer one, which no sign has, discs lie farther apart, and memory is not filled with them. */
    private static final int MOST_STEPS = 10_000;
    private static final double CORNER_STEP = Math.PI / 18;

    final int site;
    final double from;
    final double to;
    final List<Disc> discs;
    /** What follows along the ring without a break, or null. */
    Span next;
    Span previous;
    Run run;

    private Span(int site, double from, double to, List<Disc> discs) {
        this.site = site;
        this.from = from;
        this.to = to;
        this.discs = discs;
    }

    Disc first() {
        return discs.get(0);
    }

    Disc last() {
        return discs.get(discs.size() - 1);
    }

    boolean holds(double place) {
        return place >= from - JOIN && place <= to + JOIN;
    }

    /** How far a place lies off the span. */
    double misses(double place) {
        return Math.max(0, Math.max(from - place, place - to));
    }

    boolean startsAt(double place) {
        return from <= place + JOIN;
    }

    boolean endsAt(double place) {
        return to >= place - JOIN;
    }

    /** The spans of one wall with its contacts in order of their starts; walls are opposite from {@code leastFacing} radians. */
    static List<Span> of(Walls walls, int site, List<Contact> sorted, double limitMm, double leastFacing) {
        if (sorted.isEmpty()) {
            return List.of();
        }
        List<Span> spans = new ArrayList<>();
        int first = 0;
        double to = sorted.get(0).to;
        for (int i = 1; i <= sorted.size(); i++) {
            if (i < sorted.size() && sorted.get(i).from <= to + JOIN) {
                to = Math.max(to, sorted.get(i).to);
                continue;
            }
            spans.add(sampled(walls, site, sorted.subList(first, i), to, limitMm, leastFacing));
            if (i < sorted.size()) {
                first = i;
                to = sorted.get(i).to;
            }
        }
        return spans;
    }

    private static Span sampled(Walls walls, int site, List<Contact> contacts, double to, double limitMm,
            double leastFacing) {
        double from = contacts.get(0).from;
        double[] places = places(contacts, leastFacing);
        double step = site % 2 == 1 ? limitMm * EDGE_STEP : CORNER_STEP;
        Sweep sweep = new Sweep(contacts);
        List<Disc> discs = new ArrayList<>();
        sweep.enter(from, places.length > 1 ? places[1] : from);
        discs.add(disc(walls, site, from, sweep.lowestAt(from)));
        for (int i = 1; i < places.length; i++) {
            sweep.enter(places[i - 1], places[i]);
            double[] changes = sweep.changes(places[i - 1], places[i]);
            for (int c = 1; c < changes.length; c++) {
                double gap = changes[c] - changes[c - 1];
                // between parallel walls more discs would all be the same, and a lattice has millions of them
                boolean level = sweep.lowestAt(changes[c - 1] + gap / 2).isLevel();
                int steps = level ? 1 : Math.max(1, (int) Math.min(MOST_STEPS, Math.ceil(gap / step)));
                for (int s = 1; s <= 2 * steps; s++) {
                    double place = s == 2 * steps ? changes[c] : changes[c - 1] + gap * s / (2 * steps);
                    discs.add(disc(walls, site, place, sweep.lowestAt(place)));
                }
            }
        }
        return new Span(site, from, to, discs);
    }

    /** Ends of contacts, least widths, and where walls stop being opposite: in order, each once. */
    private static double[] places(List<Contact> contacts, double leastFacing) {
        double[] all = new double[5 * contacts.size()];
        int count = 0;
        for (Contact contact : contacts) {
            all[count++] = contact.from;
            all[count++] = contact.to;
            double least = contact.leastAt();
            double reach = contact.reachOf(leastFacing);
            for (double place : new double[] {least - reach, least, least + reach}) {
                if (place > contact.from && place < contact.to) {
                    all[count++] = place;
                }
            }
        }
        Arrays.sort(all, 0, count);
        int kept = 1;
        for (int i = 1; i < count; i++) {
            if (all[i] - all[kept - 1] > JOIN) {
                all[kept++] = all[i];
            }
        }
        return Arrays.copyOf(all, kept);
    }

    private static Disc disc(Walls walls, int site, double place, Contact contact) {
        double within = Math.max(contact.from, Math.min(contact.to, place));
        double radius = Math.max(0, contact.radius(within));
        int k = site / 2;
        double normalX = walls.normalX(k);
        double normalY = walls.normalY(k);
        double touchX = walls.x[k];
        double touchY = walls.y[k];
        if (site % 2 == 1) {
            touchX += walls.dx[k] * within;
            touchY += walls.dy[k] * within;
        } else {
            normalX = Math.cos(walls.fanStart[k] - within);
            normalY = Math.sin(walls.fanStart[k] - within);
        }
        return new Disc(site, within, radius, touchX + radius * normalX, touchY + radius * normalY, touchX, touchY, contact.feature,
                contact.placeOnFeature(within), contact.separation(within));
    }
}
