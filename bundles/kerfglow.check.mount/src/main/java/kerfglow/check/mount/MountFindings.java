// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.mount;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import kerfglow.api.Finding;
import kerfglow.api.Inspection;
import kerfglow.api.Measure;
import kerfglow.api.Quantity;
import kerfglow.api.UnitSystem;
import kerfglow.api.Units;
import org.locationtech.jts.geom.GeometryFactory;

/** Says what was estimated, in the units of the job, with the caution. */
final class MountFindings {
    /** Exact: the international pound. */
    private static final double KG_PER_POUND = 0.45359237;
    /** Exact, by standard gravity. */
    private static final double N_PER_POUND_FORCE = 4.4482216152605;
    private static final double PA_PER_POUND_PER_FT2 = 47.88025898;

    private final Inspection inspection;

    MountFindings(Inspection inspection) {
        this.inspection = inspection;
    }

    Optional<Finding> weight(List<Load> loads, Estimate estimate, List<Holes> holes) {
        if (estimate.centre().isEmpty()) {
            return Optional.empty();
        }
        Map<String, Double> byWhat = new LinkedHashMap<>();
        loads.forEach(load -> byWhat.merge(load.what(), load.massKg(), Double::sum));
        List<String> words = byWhat.entrySet().stream().map(entry -> entry.getKey() + " " + mass(entry.getValue())).toList();
        long studs = holes.stream().filter(hole -> hole.kind() == Holes.Kind.STUD).count();
        String on = studs == 0 ? " No stud hole is drawn." : " " + studs + (studs == 1 ? " stud hole is" : " stud holes are") + " drawn: " + mass(estimate.massKg() / studs) + " each, if they carried alike.";
        double extra = estimate.massKg() - loads.stream().mapToDouble(Load::massKg).sum();
        String added = extra > 0 ? ", and " + mass(extra) + " that the job adds" : "";
        return Optional.of(Finding.of(MountRules.WEIGHT, "The sign weighs about " + mass(estimate.massKg()) + " (" + String.join(", ", words) + added + "); its centre of mass lies "
                + inspection.length(estimate.centre().get().x) + " from the left and " + inspection.length(estimate.centre().get().y) + " from the top." + on + " " + MountRules.CAUTION)
                .place(new GeometryFactory().createPoint(estimate.centre().get())).measured(new Measure(estimate.massKg(), Quantity.MASS)).build());
    }

    Optional<Finding> wind(Estimate estimate) {
        return estimate.wind().map(wind -> {
            double force = estimate.forceN(wind);
            return Finding.of(MountRules.WIND, "The wind may press with about " + force(force) + ": " + pressure(wind.pressurePa()) + " (" + wind.how() + ") by force coefficient "
                    + Units.format(estimate.coefficient(), Quantity.RATIO, inspection.units())
                    + (wind.loadFactor() == 1 ? "" : " by " + Units.format(wind.loadFactor(), Quantity.RATIO, inspection.units()) + " for gusts and direction") + " by "
                    + Units.format(estimate.areaMm2(), Quantity.AREA, inspection.units()) + " (" + estimate.areaBy() + "), up to " + inspection.length(estimate.eccentricityMm())
                    + " off the middle. " + MountRules.CAUTION).measured(new Measure(force, Quantity.FORCE)).build();
        });
    }

    private boolean inch() {
        return inspection.units() == UnitSystem.INCH;
    }

    private String mass(double kg) {
        return inch() ? String.format(Locale.ROOT, "%.2f lb", kg / KG_PER_POUND) : Units.format(kg, Quantity.MASS, UnitSystem.METRIC);
    }

    private String force(double newtons) {
        return inch() ? Math.round(newtons / N_PER_POUND_FORCE) + " lbf" : Math.round(newtons) + " N";
    }

    private String pressure(double pa) {
        return inch() ? String.format(Locale.ROOT, "%.2f lb/ft²", pa / PA_PER_POUND_PER_FT2) : Math.round(pa) + " Pa";
    }
}
