// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.vinyl;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import kerfglow.geometry.RectangleFit;
import org.locationtech.jts.geom.Geometry;

/**
 * How much of a roll the pieces of one colour take: each by the rectangle around it, as small as turning makes it, in shelves across the roll, longest first.
 *
 * @param roll the roll
 * @param lengthMm of it that is used, leader included, mm
 * @param leastMm of it that is used at least, by area and leader, mm
 * @param pieces how many pieces lie on it
 */
record Layout(Roll roll, double lengthMm, double leastMm, int pieces) {
    /** Long enough for any angle. */
    private static final double ENDLESS_MM = 1e9;
    /** Sizes are compared to this, mm: rounding of coordinates. */
    private static final double RESOLUTION_MM = 1e-6;

    /** A piece as it lies: across the roll and along it, mm. */
    private record Lying(double acrossMm, double alongMm) {
    }

    private static final class Shelf {
        private final double alongMm;
        private double usedMm;

        Shelf(double alongMm) {
            this.alongMm = alongMm;
        }
    }

    /** Area of roll used, mm². */
    double areaMm2() {
        return roll.widthMm() * lengthMm;
    }

    /** How many rolls. */
    int rolls() {
        return (int) Math.max(1, Math.ceil(lengthMm / roll.lengthMm()));
    }

    /** Whether a piece can lie on a width at some angle. */
    static boolean fits(Geometry piece, double usableMm) {
        return new RectangleFit(piece).leastExtentMm() <= usableMm + RESOLUTION_MM;
    }

    /**
     * Lays pieces out.
     *
     * @param pieces what is cut, mm; not empty
     * @param usableMm width between the margins
     * @param spacingMm distance between pieces
     * @param leaderMm lost at both ends
     * @return empty when one fits at no angle
     */
    static Optional<Layout> of(List<Geometry> pieces, Roll roll, double usableMm, double spacingMm, double leaderMm) {
        List<Lying> lying = new ArrayList<>();
        for (Geometry piece : pieces) {
            Optional<Lying> own = lying(piece, usableMm);
            if (own.isEmpty()) {
                return Optional.empty();
            }
            lying.add(own.get());
        }
        lying.sort(Comparator.comparingDouble(Lying::alongMm).reversed().thenComparing(Comparator.comparingDouble(Lying::acrossMm).reversed()));
        List<Shelf> shelves = new ArrayList<>();
        for (Lying each : lying) {
            Shelf shelf = shelves.stream().filter(open -> open.usedMm + spacingMm + each.acrossMm() <= usableMm + RESOLUTION_MM).findFirst().orElse(null);
            if (shelf == null) {
                shelf = new Shelf(each.alongMm());
                shelf.usedMm = -spacingMm;
                shelves.add(shelf);
            }
            shelf.usedMm += spacingMm + each.acrossMm();
        }
        double length = leaderMm + shelves.stream().mapToDouble(shelf -> shelf.alongMm + spacingMm).sum() - spacingMm;
        double area = pieces.stream().mapToDouble(Geometry::getArea).sum();
        return Optional.of(new Layout(roll, length, leaderMm + area / usableMm, pieces.size()));
    }

    private static Optional<Lying> lying(Geometry piece, double usableMm) {
        RectangleFit fit = new RectangleFit(piece);
        RectangleFit.Turned smallest = fit.smallestRectangle();
        double longSide = Math.max(smallest.widthMm(), smallest.heightMm());
        double shortSide = Math.min(smallest.widthMm(), smallest.heightMm());
        if (longSide <= usableMm + RESOLUTION_MM) {
            return Optional.of(new Lying(longSide, shortSide));
        }
        if (shortSide <= usableMm + RESOLUTION_MM) {
            return Optional.of(new Lying(shortSide, longSide));
        }
        return usableMm <= 0 ? Optional.empty() : fit.into(usableMm, ENDLESS_MM).map(turned -> new Lying(turned.widthMm(), turned.heightMm()));
    }
}
