// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.returns;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import kerfglow.api.Check;
import kerfglow.api.CheckInfo;
import kerfglow.api.Finding;
import kerfglow.api.Inspection;
import kerfglow.api.Outcome;
import kerfglow.api.OverlayLayer;
import kerfglow.api.Setting;
import kerfglow.api.SharedSettings;
import kerfglow.api.StockKind;
import kerfglow.api.Workers;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import org.locationtech.jts.geom.GeometryFactory;
import org.osgi.service.component.annotations.Component;

/**
 * Lays the strip of every return flat and finds what a bender cannot form.
 *
 * <p>Measured are parts whose role somebody gave: drawn return outlines, and faces that have a depth and no return outline of
 * their own. Where the strip runs is in {@link Lines}, how it is developed in {@link Tooling}, how an outline is read back into straights,
 * arcs and corners in {@link kerfglow.geometry.OutlinePieces}.
 *
 * <p>Cost: one inset for each face without a back, and near n log n in the vertices of each contour.
 */
@Component
public final class ReturnsCheck implements Check {
    /** The kind of stock that it reads. */
    public static final StockKind COILS = ReturnsSettings.COILS;
    /** Field of {@link #COILS}, mm. */
    public static final Setting<Double> COIL_WIDTH = ReturnsSettings.COIL_WIDTH;
    /** Field of {@link #COILS}, mm. */
    public static final Setting<Double> COIL_LENGTH = ReturnsSettings.COIL_LENGTH;

    private final CheckInfo info = new CheckInfo("returns", "Strips of the returns and what a bender cannot form", ReturnsRules.ALL,
            ReturnsSettings.ALL, List.of(COILS), ReturnsTables.ALL, CheckInfo.page(ReturnsCheck.class, "page.md"));

    /** A part and the settings that hold for its returns. */
    private record Task(Part part, Tooling tooling) {
    }

    /** What was measured on it; empty when there is no line for a strip. */
    private record Measured(Task task, List<Faults> faults) {
    }

    @Override
    public CheckInfo info() {
        return info;
    }

    @Override
    public Outcome inspect(Inspection inspection) {
        List<Task> tasks = new ArrayList<>();
        Lines lines = new Lines(inspection);
        for (Part part : inspection.parts(Role.FACE, Role.RETURN)) {
            Optional<Double> depth = inspection.settings().given(SharedSettings.RETURN_DEPTH, part);
            if (part.isAssigned() && depth.isPresent() && (part.role() == Role.RETURN || lines.isDerived(part))) {
                tasks.add(new Task(part, Tooling.of(depth.get(), part, inspection.settings())));
            }
        }
        Set<String> missing = new LinkedHashSet<>();
        inspection.parts(Role.RETURN).stream().filter(part -> inspection.settings().given(SharedSettings.RETURN_DEPTH, part).isEmpty())
                .forEach(part -> missing.add("No depth is given for " + ReturnsFindings.name(part) + ", so its strip was not measured."));
        if (tasks.isEmpty()) {
            return Outcome.notMeasured(missingDepth(inspection));
        }
        List<Measured> measured = measure(inspection, tasks, lines);
        List<Coil> coils = inspection.stock(COILS).stream().map(Coil::of).toList();
        ReturnsFindings writer = new ReturnsFindings(inspection, coils);
        List<Finding> findings = new ArrayList<>();
        List<Strip> strips = new ArrayList<>();
        for (Measured each : measured) {
            for (Faults faults : each.faults()) {
                findings.addAll(writer.of(faults));
                strips.add(faults.strip());
            }
        }
        return Outcome.of(findings).withTables(ReturnsTables.of(strips, coils)).withLayers(layers(strips))
                .withMissing(missing(missing, measured, coils));
    }

    private static List<Measured> measure(Inspection inspection, List<Task> tasks, Lines lines) {
        Workers workers = new Workers(inspection);
        workers.expect(tasks.size());
        return workers.map(tasks, task -> measure(task, lines, inspection.proof().chordErrorMm(), workers::pulse));
    }

    private static Measured measure(Task task, Lines lines, double chordErrorMm, Runnable pulse) {
        List<Faults> faults = new ArrayList<>();
        for (Contour contour : lines.of(task.part(), task.tooling().insetMm())) {
            pulse.run();
            faults.add(Faults.of(Strip.of(contour, task.tooling(), chordErrorMm), chordErrorMm, pulse));
        }
        return new Measured(task, faults);
    }

    private static List<OverlayLayer> layers(List<Strip> strips) {
        GeometryFactory points = new GeometryFactory();
        List<OverlayLayer.Item> joints = new ArrayList<>();
        List<OverlayLayer.Item> bends = new ArrayList<>();
        for (Strip strip : strips) {
            joints.add(new OverlayLayer.Item(points.createPoint(strip.joint()), Double.NaN, "joint"));
            int number = 0;
            for (Strip.Bend bend : strip.bends()) {
                bends.add(new OverlayLayer.Item(points.createPoint(bend.step().middle()), Double.NaN, Integer.toString(++number)));
            }
        }
        List<OverlayLayer.Item> lines = strips.stream()
                .map(strip -> new OverlayLayer.Item(strip.contour().ring(), Double.NaN, "")).toList();
        return List.of(new OverlayLayer("strips", "Lines of the return strips", lines),
                new OverlayLayer("bends", "Bends, numbered from the joint", bends), new OverlayLayer("joints", "Joints of the strips", joints));
    }

    private static List<String> missing(Set<String> missing, List<Measured> measured, List<Coil> coils) {
        for (Measured each : measured) {
            Tooling tooling = each.task().tooling();
            if (each.faults().isEmpty()) {
                Part part = each.task().part();
                missing.add(part.role() == Role.RETURN ? "The " + ReturnsFindings.name(part) + " is drawn as an open line, so its strip was not measured."
                        : "Nothing is left of " + ReturnsFindings.name(part) + " inside the inset of its back, so its return was not measured.");
            }
            if (coils.isEmpty()) {
                missing.add("The shop sheet lists no coils, so lengths were not compared with a coil.");
            } else if (coils.stream().noneMatch(coil -> coil.isFor(tooling))) {
                missing.add("The shop sheet lists no coil of " + tooling.material() + " as thick as returns.thickness, so lengths were not compared with a coil.");
            }
        }
        return List.copyOf(missing);
    }

    private static String missingDepth(Inspection inspection) {
        return inspection.parts(Role.FACE, Role.RETURN).stream().anyMatch(Part::isAssigned)
                ? "No depth is given for the returns (returns.depth), so none were measured."
                : "No part of this proof was given the role of a face or a return, so there are no returns to measure.";
    }
}
