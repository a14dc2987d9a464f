// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.sheet;

import java.util.Optional;
import kerfglow.api.StockItem;
import kerfglow.geometry.RectangleFit;

/**
 * A sheet that is stocked.
 *
 * @param name what the shop calls it
 * @param widthMm its width, mm
 * @param heightMm its height, mm
 * @param material its material; empty for any
 * @param thicknessMm its thickness, mm; 0 for any
 * @param grain none, along (its longer side) or across
 */
record StockSheet(String name, double widthMm, double heightMm, String material, double thicknessMm, String grain) {
    /** Nominal thicknesses nearer than this, mm, are one sheet: 1/8 in is sold as 3 and as 3.2 mm, and those are not. */
    private static final double SAME_THICKNESS_MM = 0.1;
    private static final double QUARTER = 90;

    static StockSheet of(StockItem item) {
        return new StockSheet(item.name(), item.get(SheetSettings.WIDTH), item.get(SheetSettings.HEIGHT), item.get(SheetSettings.MATERIAL).strip(),
                item.get(SheetSettings.THICKNESS), item.get(SheetSettings.SHEET_GRAIN));
    }

    /** True when a part of a material and thickness (NaN when not known) can be cut from it. */
    boolean isFor(String partMaterial, double partThicknessMm) {
        return (material.isEmpty() || material.equalsIgnoreCase(partMaterial))
                && (thicknessMm == 0 || Double.isNaN(partThicknessMm) || Math.abs(thicknessMm - partThicknessMm) <= SAME_THICKNESS_MM);
    }

    double areaMm2() {
        return widthMm * heightMm;
    }

    /** What is left inside a margin. */
    Usable less(double marginMm, String grainOfPart) {
        boolean turns = grain.equals(SheetSettings.NO_GRAIN) || grainOfPart.equals("any");
        boolean grainAlongWidth = grain.equals(SheetSettings.ALONG) == (widthMm >= heightMm);
        double degrees = grainAlongWidth == grainOfPart.equals(SheetSettings.HORIZONTAL) ? 0 : QUARTER;
        return new Usable(this, widthMm - 2 * marginMm, heightMm - 2 * marginMm, turns, degrees);
    }

    /**
     * What can be cut from a sheet.
     *
     * @param sheet the sheet
     * @param widthMm its width less margins, mm; can be 0 or below
     * @param heightMm its height less margins, mm; can be 0 or below
     * @param turns true when parts may lie at any angle
     * @param degrees the only angle where they may not, 0 or 90
     */
    record Usable(StockSheet sheet, double widthMm, double heightMm, boolean turns, double degrees) {
        /** Rounding of coordinates, mm. */
        private static final double RESOLUTION_MM = 1e-6;

        Optional<RectangleFit.Turned> fit(RectangleFit shape) {
            if (widthMm <= 0 || heightMm <= 0) {
                return Optional.empty();
            }
            return turns ? shape.into(widthMm, heightMm) : Optional.of(shape.at(degrees)).filter(this::holds);
        }

        boolean holds(RectangleFit.Turned turned) {
            return turned.widthMm() <= widthMm + RESOLUTION_MM && turned.heightMm() <= heightMm + RESOLUTION_MM;
        }

        double longSideMm() {
            return Math.max(widthMm, heightMm);
        }

        double shortSideMm() {
            return Math.min(widthMm, heightMm);
        }
    }
}
