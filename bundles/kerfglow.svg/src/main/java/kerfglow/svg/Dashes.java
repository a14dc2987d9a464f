// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Cuts a subpath into its dashes: SVG 2, 13.5.6 "Dashing strokes". */
final class Dashes {
    private static final int[] NO_NODES = {};
    private final List<Subpath> pieces = new ArrayList<>();
    private double[] xs = new double[16];
    private double[] ys = new double[16];
    private boolean[] corners = new boolean[16];
    private int size;

    private Dashes() {
    }

    /** How many dashes a subpath has, before cutting it. */
    static double count(Subpath subpath, double[] dashes) {
        return length(subpath) / Arrays.stream(dashes).sum() * dashes.length;
    }

    /** Along the subpath and, when it is closed, home again. */
    static double length(Subpath subpath) {
        double length = 0;
        for (int i = 1; i < subpath.size() + (subpath.closed() ? 1 : 0); i++) {
            int to = i % subpath.size();
            length += Math.hypot(subpath.xs()[to] - subpath.xs()[i - 1], subpath.ys()[to] - subpath.ys()[i - 1]);
        }
        return length;
    }

    static List<Subpath> cut(Subpath subpath, double[] dashes, double offset) {
        return new Dashes().run(subpath, dashes, offset);
    }

    private List<Subpath> run(Subpath p, double[] dashes, double offset) {
        double sum = Arrays.stream(dashes).sum();
        double into = offset % sum;
        if (into < 0) {
            into += sum;
        }
        int index = 0;
        while (into >= dashes[index]) {
            into -= dashes[index];
            index = (index + 1) % dashes.length;
        }
        double left = dashes[index] - into;
        boolean startsOn = (index & 1) == 0;
        add(p.xs()[0], p.ys()[0], p.corners()[0]);
        int last = p.size() + (p.closed() ? 1 : 0);
        for (int i = 1; i < last; i++) {
            int to = i % p.size();
            double x = p.xs()[i - 1];
            double y = p.ys()[i - 1];
            double length = Math.hypot(p.xs()[to] - x, p.ys()[to] - y);
            double done = 0;
            while (length - done > left) {
                done += left;
                double t = done / length;
                turn((index & 1) == 0, x + t * (p.xs()[to] - x), y + t * (p.ys()[to] - y));
                index = (index + 1) % dashes.length;
                left = dashes[index];
            }
            left -= length - done;
            add(p.xs()[to], p.ys()[to], p.corners()[to]);
        }
        boolean endsOn = (index & 1) == 0;
        boolean isWhole = pieces.isEmpty() && startsOn && endsOn;
        if (isWhole) {
            return List.of(p);
        }
        if (endsOn) {
            finish();
        }
        if (p.closed() && startsOn && endsOn) {
            joinEnds();
        }
        return pieces;
    }

    /** On a closed subpath the dash that ends at the start goes on in the one that begins there. */
    private void joinEnds() {
        Subpath first = pieces.remove(0);
        Subpath end = pieces.remove(pieces.size() - 1);
        double[] x = Arrays.copyOf(end.xs(), end.size() + first.size() - 1);
        double[] y = Arrays.copyOf(end.ys(), x.length);
        System.arraycopy(first.xs(), 1, x, end.size(), first.size() - 1);
        System.arraycopy(first.ys(), 1, y, end.size(), first.size() - 1);
        boolean[] c = Arrays.copyOf(end.corners(), x.length);
        System.arraycopy(first.corners(), 1, c, end.size(), first.size() - 1);
        pieces.add(new Subpath(x, y, NO_NODES, c, false));
    }

    private void turn(boolean wasOn, double x, double y) {
        if (wasOn) {
            add(x, y, false);
            finish();
        }
        size = 0;
        add(x, y, false);
    }

    private void finish() {
        pieces.add(new Subpath(Arrays.copyOf(xs, size), Arrays.copyOf(ys, size), NO_NODES, Arrays.copyOf(corners, size), false));
    }

    private void add(double x, double y, boolean corner) {
        if (size == xs.length) {
            xs = Arrays.copyOf(xs, size * 2);
            ys = Arrays.copyOf(ys, size * 2);
            corners = Arrays.copyOf(corners, size * 2);
        }
        corners[size] = corner;
        xs[size] = x;
        ys[size] = y;
        size++;
    }
}
