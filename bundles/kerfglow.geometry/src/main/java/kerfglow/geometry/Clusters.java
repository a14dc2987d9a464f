// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.strtree.STRtree;

/** Things whose boxes meet, directly or through others. */
public final class Clusters {
    private Clusters() {
    }

    /**
     * The clusters in the order of their first members, members in the order given. Time grows with things times the logarithm of things.
     *
     * @param box the box of a thing, mm; boxes that touch meet
     */
    public static <T> List<List<T>> of(List<T> things, Function<T, Envelope> box) {
        int[] parent = new int[things.size()];
        STRtree index = new STRtree();
        for (int i = 0; i < things.size(); i++) {
            parent[i] = i;
            index.insert(box.apply(things.get(i)), i);
        }
        for (int i = 0; i < things.size(); i++) {
            for (Object other : index.query(box.apply(things.get(i)))) {
                int a = root(parent, i);
                int b = root(parent, (Integer) other);
                parent[Math.max(a, b)] = Math.min(a, b);
            }
        }
        Map<Integer, List<T>> clusters = new LinkedHashMap<>();
        for (int i = 0; i < things.size(); i++) {
            clusters.computeIfAbsent(root(parent, i), root -> new ArrayList<>()).add(things.get(i));
        }
        return List.copyOf(clusters.values());
    }

    private static int root(int[] parent, int i) {
        int at = i;
        while (parent[at] != at) {
            parent[at] = parent[parent[at]];
            at = parent[at];
        }
        return at;
    }
}
