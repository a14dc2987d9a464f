// SPDX-License-Identifier: Apache-2.0
package kerfglow.light;

import org.locationtech.jts.geom.Coordinate;

/**
 * The light on a face: illuminance of its inner side in lux, and its luminance in cd/m² as seen from in front, {@code L = E tau / pi} of an
 * ideal diffuser, blurred by the face's spread. Immutable, provided that nobody changes an array.
 */
public final class LightMap {
    static final double MM2_PER_M2 = 1e6;

    private final Grid grid;
    private final boolean[] inside;
    private final boolean[] lit;
    private final double litAreaMm2;
    private final double[] lux;
    private final double[] luminance;
    private final double directShare;
    private final Balance balance;

    /**
     * Where the light of the modules ends, lumen. What the map finds on the face is measured on the map, what back and walls take is
     * reckoned patch by patch, so that the sum tells how well the two agree.
     *
     * @param emitted what the emitters that stand inside the can give
     * @param back what the back absorbs
     * @param walls what the walls absorb
     * @param faceLost what the face absorbs
     * @param through what leaves through the face, trim lips included
     */
    public record Balance(double emitted, double back, double walls, double faceLost, double through) {
        /** What is not accounted for, as a share of what is emitted; 0 in the dark. */
        public double error() {
            return emitted > 0 ? (back + walls + faceLost + through) / emitted - 1 : 0;
        }
    }

    LightMap(Grid grid, boolean[] inside, boolean[] lit, double litAreaMm2, double[] lux, double[] luminance, double directShare, Balance balance) {
        this.grid = grid;
        this.inside = inside;
        this.lit = lit;
        this.litAreaMm2 = litAreaMm2;
        this.lux = lux;
        this.luminance = luminance;
        this.directShare = directShare;
        this.balance = balance;
    }

    /** The same light elsewhere, moved by so much, mm. */
    public LightMap moved(double dx, double dy) {
        return new LightMap(grid.moved(dx, dy), inside, lit, litAreaMm2, lux, luminance, directShare, balance);
    }

    /** Its cells. */
    public Grid grid() {
        return grid;
    }

    /** True when a cell's centre lies on the lit face, and not quite at a wall: such a cell is judged. */
    public boolean isLit(int cell) {
        return lit[cell];
    }

    /**
     * The luminance as a blurred eye sees it, cd/m²: a further Gaussian along the face, within its outline.
     *
     * @param sigmaMm of the Gaussian, mm; 0 changes nothing
     */
    public double[] seen(double sigmaMm) {
        return Smoothing.gaussian(grid, inside, luminance, sigmaMm / grid.cellMm()).clone();
    }

    /** Area of the lit face by cells, those at walls included, mm². */
    public double litAreaMm2() {
        return litAreaMm2;
    }

    /** How many cells are judged. */
    public int litCells() {
        int cells = 0;
        for (boolean each : lit) {
            cells += each ? 1 : 0;
        }
        return cells;
    }

    /** Illuminance in each cell, lux; 0 outside the can. Not to be changed. */
    public double[] lux() {
        return lux;
    }

    /** Luminance in each cell, cd/m²; 0 outside the can. Not to be changed. */
    public double[] luminance() {
        return luminance;
    }

    /** Illuminance of the cell that holds a point, lux. */
    public double luxAt(Coordinate point) {
        return lux[grid.cell(point.x, point.y)];
    }

    /** Luminance of the cell that holds a point, cd/m². */
    public double luminanceAt(Coordinate point) {
        return luminance[grid.cell(point.x, point.y)];
    }

    /**
     * Least, mean and greatest illuminance of the lit face, lux.
     *
     * @throws IllegalStateException when no cell is lit
     */
    public Levels luxLevels() {
        return Levels.of(grid, lit, lux);
    }

    /**
     * Least, mean and greatest luminance of the lit face, cd/m².
     *
     * @throws IllegalStateException when no cell is lit
     */
    public Levels luminanceLevels() {
        return Levels.of(grid, lit, luminance);
    }

    /** Which share of the light on the face came straight from a module; 0 in the dark. */
    public double directShare() {
        return directShare;
    }

    /** Where the light ends. */
    public Balance balance() {
        return balance;
    }
}
