// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.mount;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import kerfglow.api.Check;
import kerfglow.api.CheckInfo;
import kerfglow.api.Finding;
import kerfglow.api.Inspection;
import kerfglow.api.Outcome;
import kerfglow.api.OverlayLayer;
import kerfglow.api.Setting;
import kerfglow.api.SharedSettings;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import org.locationtech.jts.geom.GeometryFactory;
import org.osgi.service.component.annotations.Component;

/**
 * Estimates what a sign weighs, where its centre of mass lies, how large it is and what the wind presses on it with.
 *
 * <p>Cost: that of one union of all sheets.
 */
@Component
public final class MountCheck implements Check {
    private final CheckInfo info = new CheckInfo("mount", "Weight, area and wind, as estimates", MountRules.ALL, settings(), List.of(MountSettings.MODULES), MountTables.ALL,
            CheckInfo.page(MountCheck.class, "page.md"));

    private static List<Setting<?>> settings() {
        List<Setting<?>> settings = MountSettings.all();
        settings.add(SharedSettings.RETURN_DEPTH);
        return settings;
    }

    @Override
    public CheckInfo info() {
        return info;
    }

    @Override
    public List<String> reads() {
        return List.of(Loads.FIT, Loads.RETURNS, Loads.GLOW);
    }

    @Override
    public Outcome inspect(Inspection inspection) {
        if (inspection.parts(Role.FACE, Role.BACK, Role.PANEL, Role.PUSH_THROUGH).isEmpty()) {
            return Outcome.notMeasured("No part of this proof is cut from sheet.");
        }
        Set<String> missing = new LinkedHashSet<>();
        List<Load> loads = Loads.of(inspection, missing);
        List<Holes> holes = Holes.of(inspection);
        inspection.checkpoint(0.5);
        Estimate estimate = Estimate.of(loads, SignSize.of(inspection), inspection.settings());
        if (estimate.wind().isEmpty()) {
            missing.add("Neither the pressure nor the speed of the wind is given (mount.wind-pressure, mount.wind-speed), so its force was not estimated.");
        }
        noteDrains(inspection, holes, missing);
        MountFindings writer = new MountFindings(inspection);
        List<Finding> findings = new ArrayList<>();
        writer.weight(loads, estimate, holes).ifPresent(findings::add);
        writer.wind(estimate).ifPresent(findings::add);
        inspection.checkpoint(1);
        List<OverlayLayer.Item> centres = estimate.centre().map(centre -> new OverlayLayer.Item(new GeometryFactory().createPoint(centre), Double.NaN, "centre of mass")).stream().toList();
        return Outcome.of(findings).withTables(MountTables.of(loads, estimate, holes)).withLayers(List.of(new OverlayLayer("centre", "Centre of mass", centres)))
                .withMissing(List.copyOf(missing));
    }

    /** A closed can collects water, and nothing on a drawing says so. */
    private static void noteDrains(Inspection inspection, List<Holes> holes, Set<String> missing) {
        boolean cans = inspection.parts(Role.FACE).stream().filter(Part::isAssigned).anyMatch(face -> inspection.settings().given(SharedSettings.RETURN_DEPTH, face).isPresent());
        if (cans && holes.stream().noneMatch(hole -> hole.kind() == Holes.Kind.DRAIN)) {
            missing.add("There are cans with returns and no drain hole is drawn (a hole on a layer or with an id that says drain), so none was counted.");
        }
    }
}
