// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * A first estimate of the sheets that parts take: their bounding rectangles packed by maximal rectangles with best short side fit, the
 * largest first, one sheet after the other (J. Jylänki, A Thousand Ways to Pack the Bin, 2010). No part is laid into the
 * counter or bay of another, so nesting on the machine needs no more sheets than this and often fewer; by area alone it can never need fewer
 * than {@link #bound}.
 */
final class Packing {
    /** Rounding of coordinates, mm. */
    private static final double RESOLUTION_MM = 1e-6;

    /**
     * A rectangle to be placed.
     *
     * @param widthMm its width, mm
     * @param heightMm its height, mm
     * @param turns true when it may lie a quarter turned
     * @param areaMm2 of the part in it
     */
    record Item(double widthMm, double heightMm, boolean turns, double areaMm2) {
        double longSideMm() {
            return Math.max(widthMm, heightMm);
        }
    }

    private record Box(double x, double y, double width, double height) {
        boolean holds(double w, double h) {
            return w <= width + RESOLUTION_MM && h <= height + RESOLUTION_MM;
        }

        boolean contains(Box other) {
            return other.x >= x - RESOLUTION_MM && other.y >= y - RESOLUTION_MM && other.x + other.width <= x + width + RESOLUTION_MM
                    && other.y + other.height <= y + height + RESOLUTION_MM;
        }

        boolean overlaps(Box other) {
            return other.x < x + width - RESOLUTION_MM && x < other.x + other.width - RESOLUTION_MM && other.y < y + height - RESOLUTION_MM
                    && y < other.y + other.height - RESOLUTION_MM;
        }

        /** What is left of it beside another, as rectangles that may overlap. */
        List<Box> without(Box other) {
            List<Box> left = new ArrayList<>();
            add(left, x, y, other.x - x, height);
            add(left, other.x + other.width, y, x + width - other.x - other.width, height);
            add(left, x, y, width, other.y - y);
            add(left, x, other.y + other.height, width, y + height - other.y - other.height);
            return left;
        }

        private static void add(List<Box> boxes, double x, double y, double width, double height) {
            if (width > RESOLUTION_MM && height > RESOLUTION_MM) {
                boxes.add(new Box(x, y, width, height));
            }
        }
    }

    private Packing() {
    }

    /**
     * How many sheets the items take.
     *
     * @param items each fits the sheet by itself
     * @param widthMm usable width of a sheet, mm
     * @param heightMm usable height of a sheet, mm
     * @param spacingMm between items, mm; none is needed at the sheet's own margin
     * @param pulse called often
     */
    static int count(List<Item> items, double widthMm, double heightMm, double spacingMm, Runnable pulse) {
        List<Item> left = new ArrayList<>(items);
        left.sort(Comparator.comparingDouble(Item::longSideMm).thenComparingDouble(item -> item.widthMm() * item.heightMm()).reversed());
        int sheets = 0;
        while (!left.isEmpty()) {
            List<Item> rest = new ArrayList<>();
            List<Box> free = new ArrayList<>(List.of(new Box(0, 0, widthMm + spacingMm, heightMm + spacingMm)));
            for (Item item : left) {
                pulse.run();
                if (!place(item, free, spacingMm)) {
                    rest.add(item);
                }
            }
            if (rest.size() == left.size()) {
                throw new IllegalArgumentException("an item is larger than the sheet: " + rest.get(0));
            }
            left = rest;
            sheets++;
        }
        return sheets;
    }

    /** No packing of any kind takes fewer sheets: their usable area is at least that of the parts. */
    static int bound(List<Item> items, double widthMm, double heightMm) {
        double area = items.stream().mapToDouble(Item::areaMm2).sum();
        return (int) Math.ceil(area / (widthMm * heightMm) - RESOLUTION_MM);
    }

    private static boolean place(Item item, List<Box> free, double spacingMm) {
        Box best = null;
        double bestScore = Double.POSITIVE_INFINITY;
        double w = item.widthMm() + spacingMm;
        double h = item.heightMm() + spacingMm;
        for (Box box : free) {
            for (int turned = 0; turned < (item.turns() ? 2 : 1); turned++) {
                double width = turned == 0 ? w : h;
                double height = turned == 0 ? h : w;
                double score = Math.min(box.width - width, box.height - height);
                if (box.holds(width, height) && score < bestScore) {
                    best = new Box(box.x, box.y, width, height);
                    bestScore = score;
                }
            }
        }
        if (best == null) {
            return false;
        }
        take(best, free);
        return true;
    }

    private static void take(Box taken, List<Box> free) {
        List<Box> cut = new ArrayList<>();
        for (int i = free.size() - 1; i >= 0; i--) {
            if (free.get(i).overlaps(taken)) {
                cut.addAll(free.remove(i).without(taken));
            }
        }
        for (int i = 0; i < cut.size(); i++) {
            Box box = cut.get(i);
            boolean needless = free.stream().anyMatch(other -> other.contains(box));
            for (int j = 0; j < cut.size() && !needless; j++) {
                // of two equal boxes the first stays
                needless = j != i && cut.get(j).contains(box) && (j < i || !box.contains(cut.get(j)));
            }
            if (!needless) {
                free.add(box);
            }
        }
    }
}
