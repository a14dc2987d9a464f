// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.artwork;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;

/**
 * Outlines that are cut in one run and are the same: exact copies found here, others told by {@link #join}. Exact copies are set
 * aside before outlines are compared pair by pair, since a shape pasted a thousand times would make half a million pairs.
 */
final class Copies {
    private final List<Contour> contours;
    private final List<Contour> originals = new ArrayList<>();
    /** Each outline that has copies points at an earlier one of its set, the first at itself. */
    private final Map<Integer, Integer> copyOf = new HashMap<>();

    private record Key(String run, List<Coordinate> points) {
    }

    Copies(List<Contour> contours) {
        this.contours = contours;
        Map<Key, Contour> first = new HashMap<>();
        for (Contour contour : contours) {
            Contour original = first.putIfAbsent(new Key(contour.run(), Arrays.asList(contour.points())), contour);
            if (original == null) {
                originals.add(contour);
            } else {
                join(original, contour);
            }
        }
    }

    /** All outlines without exact copies of earlier ones. */
    List<Contour> originals() {
        return originals;
    }

    /** Says that two outlines are the same; copies of copies are copies. */
    void join(Contour one, Contour two) {
        int first = Math.min(root(one.index()), root(two.index()));
        int second = Math.max(root(one.index()), root(two.index()));
        copyOf.put(first, first);
        copyOf.put(second, first);
    }

    private int root(int index) {
        int at = index;
        while (copyOf.getOrDefault(at, at) != at) {
            at = copyOf.get(at);
        }
        return at;
    }

    /** The sets of two or more outlines that are the same, in the order of their first. */
    List<List<Contour>> sets() {
        Map<Integer, List<Contour>> sets = new LinkedHashMap<>();
        for (Contour contour : contours) {
            if (copyOf.containsKey(contour.index())) {
                sets.computeIfAbsent(root(contour.index()), any -> new ArrayList<>()).add(contour);
            }
        }
        return List.copyOf(sets.values());
    }
}
