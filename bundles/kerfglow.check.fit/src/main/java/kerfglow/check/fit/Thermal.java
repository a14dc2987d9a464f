// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.fit;

import java.util.Optional;
import java.util.Set;
import kerfglow.api.Inspection;
import kerfglow.api.Quantity;
import kerfglow.api.Setting;
import kerfglow.api.Settings;
import kerfglow.api.UnitSystem;
import kerfglow.api.Units;
import kerfglow.api.proof.Part;
import org.locationtech.jts.algorithm.MinimumAreaRectangle;
import org.locationtech.jts.geom.Coordinate;

/**
 * How far a face moves against its can, and how much play is left for it.
 *
 * <p>The movement is {@code |face - can| * length * change of temperature}, from assembly to the coldest and to the hottest, with the
 * length of the longer side of the smallest rectangle about the face. Left is the total allowance without two walls of the can and
 * two legs of the moulding.
 *
 * @param face the face
 * @param material what it is made of
 * @param lengthMm its greatest length, mm
 * @param faceExpansion per kelvin
 * @param canExpansion per kelvin
 * @param coldKelvin how much colder than at assembly it can become, 0 or more
 * @param hotKelvin how much hotter, 0 or more
 * @param totalMm the total allowance, mm
 * @param wallsMm both walls, mm
 * @param legsMm both legs, mm
 * @param over true when the face goes over the can, false when it sits inside a frame
 */
record Thermal(Part face, String material, double lengthMm, double faceExpansion, double canExpansion, double coldKelvin, double hotKelvin,
        double totalMm, double wallsMm, double legsMm, boolean over) {
    private static final double MILLIONTH = 1e-6;

    double coldMm() {
        return Math.abs(faceExpansion - canExpansion) * lengthMm * coldKelvin;
    }

    double hotMm() {
        return Math.abs(faceExpansion - canExpansion) * lengthMm * hotKelvin;
    }

    double leftMm() {
        return totalMm - wallsMm - legsMm;
    }

    /** The greater movement. */
    double movementMm() {
        return Math.max(coldMm(), hotMm());
    }

    boolean fits() {
        return leftMm() >= 0 && movementMm() <= leftMm();
    }

    /** True when it binds in the cold: a face over the can that shrinks more, or one inside a frame that shrinks less. */
    boolean bindsInCold() {
        return over == faceExpansion > canExpansion;
    }

    /** What becomes of a face that moves too far: it binds where that happens in the season in which it binds, else it works loose. */
    String fails() {
        boolean binds = (bindsInCold() ? coldMm() : hotMm()) > leftMm();
        return (binds ? "binds in the " : "works loose in the ") + (binds == bindsInCold() ? "cold" : "heat");
    }

    /**
     * Measures one face.
     *
     * @param missing told what is not known
     */
    static Optional<Thermal> of(Inspection inspection, Part face, Allowance allowance, Set<String> missing) {
        Settings settings = inspection.settings();
        String material = face.sheetMaterial().orElse("");
        String canMaterial = settings.get(ThermalSettings.CAN_MATERIAL, face);
        Optional<Double> own = expansion(settings, face, ThermalSettings.EXPANSION, material);
        Optional<Double> can = expansion(settings, face, ThermalSettings.CAN_EXPANSION, canMaterial);
        if (own.isEmpty()) {
            missing.add(material.isBlank() ? "The material of some faces is not given, so thermal movement was not measured for them."
                    : "How much \"" + material + "\" expands is not known (fit.expansion), so thermal movement was not measured for it.");
        }
        if (can.isEmpty()) {
            missing.add("How much the can's material \"" + canMaterial
                    + "\" expands is not known (fit.can-expansion), so thermal movement was not measured.");
        }
        if (own.isEmpty() || can.isEmpty()) {
            return Optional.empty();
        }
        double assembly = settings.get(ThermalSettings.ASSEMBLY, face);
        return Optional.of(new Thermal(face, material, longerSide(face), own.get() * MILLIONTH, can.get() * MILLIONTH,
                Math.max(0, assembly - settings.get(ThermalSettings.COLDEST, face)),
                Math.max(0, settings.get(ThermalSettings.HOTTEST, face) - assembly),
                allowance.totalMm(), 2 * settings.get(ThermalSettings.WALL, face), 2 * settings.get(ThermalSettings.LEG, face),
                settings.get(ThermalSettings.FACE_SITS, face).equals(ThermalSettings.OVER)));
    }

    private static Optional<Double> expansion(Settings settings, Part face, Setting<Double> given, String material) {
        double number = settings.get(given, face);
        return number > 0 ? Optional.of(number) : Materials.coefficient(material).map(setting -> settings.get(setting, face));
    }

    private static double longerSide(Part face) {
        Coordinate[] corners = MinimumAreaRectangle.getMinimumRectangle(face.shape().getExteriorRing()).getCoordinates();
        return Math.max(corners[0].distance(corners[1]), corners[1].distance(corners[2]));
    }

    /** The whole sum, for people. */
    String sum(Inspection inspection) {
        return "with a length of " + inspection.length(lengthMm) + ", " + millionths(faceExpansion) + " against " + millionths(canExpansion)
                + " millionths per kelvin, it moves " + inspection.length(coldMm()) + " in the cold (" + kelvin(coldKelvin) + " below assembly) and "
                + inspection.length(hotMm()) + " in the heat (" + kelvin(hotKelvin) + " above); of " + inspection.length(totalMm) + " in total "
                + inspection.length(leftMm()) + " are left after two walls (" + inspection.length(wallsMm) + ") and two legs ("
                + inspection.length(legsMm) + ")";
    }

    private static String millionths(double perKelvin) {
        return Units.format(perKelvin / MILLIONTH, Quantity.RATIO, UnitSystem.METRIC);
    }

    private static String kelvin(double difference) {
        return Units.format(difference, Quantity.RATIO, UnitSystem.METRIC) + " K";
    }
}
