// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.locationtech.jts.index.strtree.STRtree;

/** Takes pieces together that stand side by side, or one under the other, about as large and about as near as letters. */
final class Rows {
    // Assumed, in heights of the larger piece: what letters of one line have in common whatever the face.
    /** Word spaces are a third of the letters' size, in typewriter faces all of it. */
    static final double MOST_GAP = 1.5;
    private static final double LEAST_RATIO = 0.4;
    private static final double LEAST_OVERLAP = 0.5;
    /** Italic letters and pairs such as AV overlap, but not by more than this share of the narrower. */
    private static final double MOST_SHARED = 0.6;
    /** Letters in a stack are capitals of one height; round ones are a little higher. */
    private static final double STACK_RATIO = 0.92;
    private static final double STACK_GAP = 0.9;

    private final List<Piece> pieces;
    private final List<Envelope> boxes = new ArrayList<>();
    private final int[] parent;
    private final Runnable pulse;

    private Rows(List<Piece> pieces, double angle, Runnable pulse) {
        this.pieces = pieces;
        this.pulse = pulse;
        this.parent = new int[pieces.size()];
        for (int i = 0; i < parent.length; i++) {
            parent[i] = i;
            AffineTransformation up = Frame.straight(angle).upright(pieces.get(i));
            boxes.add(up.transform(pieces.get(i).shape()).getEnvelopeInternal());
        }
    }

    /** Rows along a direction, those of the largest pieces first; single pieces are rows of one. */
    static List<List<Piece>> along(List<Piece> pieces, double angle, Runnable pulse) {
        Rows rows = new Rows(pieces, angle, pulse);
        rows.join(false);
        return rows.groups();
    }

    /** Stacks of upright pieces, largest pieces first; only those of two and more. */
    static List<List<Piece>> stacks(List<Piece> pieces, Runnable pulse) {
        Rows rows = new Rows(pieces, 0, pulse);
        rows.join(true);
        return rows.groups().stream().filter(group -> group.size() > 1).toList();
    }

    private void join(boolean stacks) {
        STRtree tree = new STRtree();
        for (int i = 0; i < boxes.size(); i++) {
            tree.insert(boxes.get(i), i);
        }
        for (int i = 0; i < boxes.size(); i++) {
            pulse.run();
            Envelope around = new Envelope(boxes.get(i));
            double reach = MOST_GAP * around.getHeight() / LEAST_RATIO;
            around.expandBy(reach, reach);
            for (Object found : tree.query(around)) {
                int k = (Integer) found;
                if (k > i && (stacks ? isStacked(boxes.get(i), boxes.get(k)) : isBeside(boxes.get(i), boxes.get(k)))) {
                    parent[root(i)] = root(k);
                }
            }
        }
    }

    private static boolean isBeside(Envelope a, Envelope b) {
        double large = Math.max(a.getHeight(), b.getHeight());
        double small = Math.min(a.getHeight(), b.getHeight());
        double shared = Math.min(a.getMaxY(), b.getMaxY()) - Math.max(a.getMinY(), b.getMinY());
        double gap = Math.max(a.getMinX(), b.getMinX()) - Math.min(a.getMaxX(), b.getMaxX());
        return small >= LEAST_RATIO * large && shared >= LEAST_OVERLAP * small && gap <= MOST_GAP * large
                && -gap <= MOST_SHARED * Math.min(a.getWidth(), b.getWidth());
    }

    private static boolean isStacked(Envelope a, Envelope b) {
        double large = Math.max(a.getHeight(), b.getHeight());
        double small = Math.min(a.getHeight(), b.getHeight());
        double gap = Math.max(a.getMinY(), b.getMinY()) - Math.min(a.getMaxY(), b.getMaxY());
        double apart = Math.abs(a.centre().x - b.centre().x);
        return small >= STACK_RATIO * large && gap >= 0 && gap <= STACK_GAP * large && apart <= small / 2;
    }

    private int root(int i) {
        int root = i;
        while (parent[root] != root) {
            parent[root] = parent[parent[root]];
            root = parent[root];
        }
        return root;
    }

    private List<List<Piece>> groups() {
        Map<Integer, List<Integer>> byRoot = new TreeMap<>();
        for (int i = 0; i < parent.length; i++) {
            byRoot.computeIfAbsent(root(i), any -> new ArrayList<>()).add(i);
        }
        List<List<Integer>> groups = new ArrayList<>(byRoot.values());
        groups.sort(Comparator.comparingDouble((List<Integer> group) -> -heightOf(group)));
        return groups.stream().map(group -> group.stream().map(pieces::get).toList()).toList();
    }

    private double heightOf(List<Integer> group) {
        return group.stream().mapToDouble(i -> boxes.get(i).getHeight()).average().orElse(0);
    }
}
