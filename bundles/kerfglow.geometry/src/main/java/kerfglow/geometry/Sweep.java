// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import java.util.ArrayList;
import java.util.List;

/**
 * Which contact has the smallest disc, along one wall from its start to its end. Between two neighbouring ends of contacts the
 * same contacts compete, so a long wall opposite many short ones stays cheap.
 */
final class Sweep {
    /** Contacts that overlap an interval by less (mm or radians) do not take part. */
    private static final double SLIVER = 5e-7;
    /** How far inside an interval its ends are asked, as a share of it, so that ties at the very end do not decide. */
    private static final double INSIDE = 1e-4;
    /** Halvings to find where two discs are equal: to 2^-40 of the interval. */
    private static final int HALVINGS = 40;
    /** Changes of the smallest disc within one interval; more than a few never happen, the bound only ends the search. */
    private static final int MOST_CHANGES = 32;

    private final List<Contact> waiting;
    private final List<Contact> active = new ArrayList<>();
    private int upcoming;
    /** What ended last: holds within a crack between two contacts. */
    private Contact ended;

    /** @param byStart contacts of one wall in the order of their starts; not empty */
    Sweep(List<Contact> byStart) {
        waiting = byStart;
        ended = byStart.get(0);
    }

    /** Goes on to the interval between two neighbouring ends of contacts; intervals must come in order. */
    void enter(double from, double to) {
        while (upcoming < waiting.size() && waiting.get(upcoming).from <= from + SLIVER) {
            active.add(waiting.get(upcoming++));
        }
        double needed = Math.max(from, to - SLIVER);
        for (int i = active.size() - 1; i >= 0; i--) {
            Contact contact = active.get(i);
            if (contact.to < needed) {
                ended = contact.to >= ended.to ? contact : ended;
                active.set(i, active.get(active.size() - 1));
                active.remove(active.size() - 1);
            }
        }
    }

    /** The contact with the smallest disc at a place of the interval. */
    Contact lowestAt(double place) {
        Contact best = ended;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < active.size(); i++) {
            double radius = radius(active.get(i), place);
            if (radius < least) {
                least = radius;
                best = active.get(i);
            }
        }
        return best;
    }

    /** The interval's ends and, between them, where the smallest disc passes from one contact to another. */
    double[] changes(double from, double to) {
        if (active.size() < 2) {
            return new double[] {from, to};
        }
        List<Double> found = new ArrayList<>();
        double inset = (to - from) * INSIDE;
        split(from + inset, lowestAt(from + inset), to - inset, lowestAt(to - inset), found);
        double[] all = new double[found.size() + 2];
        all[0] = from;
        for (int i = 0; i < found.size(); i++) {
            all[i + 1] = found.get(i);
        }
        all[all.length - 1] = to;
        return all;
    }

    private void split(double from, Contact first, double to, Contact last, List<Double> found) {
        if (first == last || found.size() >= MOST_CHANGES) {
            return;
        }
        double low = from;
        double high = to;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (low + high) / 2;
            if (radius(first, middle) <= radius(last, middle)) {
                low = middle;
            } else {
                high = middle;
            }
        }
        Contact between = lowestAt(low);
        if (between == first || between == last || radius(between, low) >= radius(first, low)) {
            found.add(low);
            return;
        }
        split(from, first, low, between, found);
        split(low, between, to, last, found);
    }

    private static double radius(Contact contact, double place) {
        return contact.radius(Math.max(contact.from, Math.min(contact.to, place)));
    }
}
