// SPDX-License-Identifier: Apache-2.0
package kerfglow.light;

import java.util.HashMap;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Polygon;

/**
 * What comes from modules to the face without touching anything: inverse square, cosine of incidence, walls and counters in the way.
 * A module's light is added to a map, or taken away with the share -1, so that a search need not begin anew for each module that it moves.
 * For use by one thread at a time.
 */
public final class DirectLight {
    private final Outline outline;
    private final Grid grid;
    private final double depthMm;
    private final Map<LightModuleType, Falloff> falloffs = new HashMap<>();

    /**
     * On the face of a can.
     *
     * @param inside its inner outline, mm
     * @param depthMm from the back to the face's inner side, mm
     * @param cellMm cell of the map, mm
     */
    public DirectLight(Polygon inside, double depthMm, double cellMm) {
        this(new Outline(inside), Grid.over(inside.getEnvelopeInternal(), cellMm), depthMm);
    }

    /** On the cells of a grid. */
    public DirectLight(Polygon inside, double depthMm, Grid grid) {
        this(new Outline(inside), grid, depthMm);
    }

    DirectLight(Outline outline, Grid grid, double depthMm) {
        this.outline = outline;
        this.grid = grid;
        this.depthMm = depthMm;
    }

    /** The cells of its maps. */
    public Grid grid() {
        return grid;
    }

    /**
     * Adds the light of a module to a map. An emitter that does not stand inside the can adds nothing.
     *
     * @param module the module
     * @param share 1 to add, -1 to take away, or anything between for a dimmed one
     * @param lux one value for each cell of the grid, changed
     * @throws IllegalArgumentException when its emitters stand at or beyond the face
     */
    public void add(LightModule module, double share, double[] lux) {
        Falloff falloff = falloffs.computeIfAbsent(module.type(), type -> new Falloff(type.fluxLm() / type.emitters(), type.exponent(),
                height(type, depthMm)));
        for (Coordinate emitter : module.emitters()) {
            new SeenFrom(outline, emitter.x, emitter.y).runs(grid, (row, from, to) -> {
                double dy2 = (grid.y(row) - emitter.y) * (grid.y(row) - emitter.y);
                for (int column = from; column < to; column++) {
                    double dx = grid.x(column) - emitter.x;
                    lux[row * grid.columns() + column] += share * falloff.at(dx * dx + dy2);
                }
            });
        }
    }

    /** How far the face is from the emitters of a type, mm. */
    static double height(LightModuleType type, double depthMm) {
        if (type.heightMm() >= depthMm) {
            throw new IllegalArgumentException("emitter height must be below the depth of " + depthMm + " mm, not " + type.heightMm());
        }
        return depthMm - type.heightMm();
    }
}
