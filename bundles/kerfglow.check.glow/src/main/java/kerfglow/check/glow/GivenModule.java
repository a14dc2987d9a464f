// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.glow;

import java.util.ArrayList;
import java.util.List;
import kerfglow.api.Inspection;
import kerfglow.api.PlacedModule;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.light.LightModule;
import kerfglow.light.LightModuleType;
import org.locationtech.jts.algorithm.MinimumAreaRectangle;
import org.locationtech.jts.geom.Coordinate;

/**
 * A module that is drawn or was placed by hand.
 *
 * @param xMm its centre, mm
 * @param yMm its centre, mm
 * @param turnDegrees direction of its long side, degrees, 0 up to 180
 * @param how {@code drawn} or {@code placed}
 * @param string that a person gave it; empty for none
 * @param name the part that it is drawn as, or its number in the job sheet's list
 */
record GivenModule(double xMm, double yMm, double turnDegrees, String how, String string, String name) {
    static final String DRAWN = "drawn";
    static final String PLACED = "placed";
    private static final double HALF_TURN_DEGREES = 180;

    /** All of a job, those drawn first. */
    static List<GivenModule> of(Inspection inspection) {
        List<GivenModule> all = new ArrayList<>();
        for (Part part : inspection.parts(Role.MODULE)) {
            all.add(drawn(part));
        }
        int number = 0;
        for (PlacedModule placed : inspection.placedModules()) {
            all.add(new GivenModule(placed.xMm(), placed.yMm(), placed.turnDegrees(), PLACED, placed.string(), "module " + ++number + " of the job sheet"));
        }
        return all;
    }

    /** By the least rectangle about what is drawn: its centre and its longer side. */
    private static GivenModule drawn(Part part) {
        Coordinate[] corners = MinimumAreaRectangle.getMinimumRectangle(part.shape()).getCoordinates();
        Coordinate from = corners[0];
        boolean firstIsLong = corners[0].distance(corners[1]) >= corners[1].distance(corners[2]);
        Coordinate a = firstIsLong ? corners[0] : corners[1];
        Coordinate b = firstIsLong ? corners[1] : corners[2];
        double turn = Math.toDegrees(Math.atan2(b.y - a.y, b.x - a.x));
        double within = ((turn % HALF_TURN_DEGREES) + HALF_TURN_DEGREES) % HALF_TURN_DEGREES;
        return new GivenModule((from.x + corners[2].x) / 2, (from.y + corners[2].y) / 2, within, DRAWN, "", "module " + part.id());
    }

    LightModule as(LightModuleType type) {
        return new LightModule(xMm, yMm, turnDegrees, type);
    }
}
