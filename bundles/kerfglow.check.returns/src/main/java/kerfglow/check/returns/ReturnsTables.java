// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.returns;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfglow.api.Quantity;
import kerfglow.api.Table;
import kerfglow.api.TableInfo;
import kerfglow.api.TableInfo.Column;
import org.locationtech.jts.geom.GeometryFactory;

/** What the bender needs: the strips, their bends, and the coil that they take. */
final class ReturnsTables {
    static final TableInfo STRIPS = new TableInfo("strips", "Return strips", List.of(
            Column.text("part", "Part"),
            Column.number("contour", "Contour", Quantity.COUNT),
            Column.text("kind", "Outline or counter"),
            Column.number("length", "Developed length", Quantity.LENGTH),
            Column.number("line", "Length of the line", Quantity.LENGTH),
            Column.number("bends", "Curves and folds", Quantity.COUNT),
            Column.number("residual", "Farthest that an arc lies from the outline", Quantity.LENGTH),
            Column.text("joint-on", "The joint lies on a"),
            Column.geometry("joint", "Joint"),
            Column.number("depth", "Depth", Quantity.LENGTH),
            Column.number("thickness", "Thickness", Quantity.LENGTH)));
    static final TableInfo BENDS = new TableInfo("bends", "Bends along each strip, from its joint with the can on the left as drawn with y up", List.of(
            Column.text("part", "Part"),
            Column.number("contour", "Contour", Quantity.COUNT),
            Column.number("bend", "Bend", Quantity.COUNT),
            Column.text("kind", "Kind"),
            Column.number("position", "Where it begins on the flat strip", Quantity.LENGTH),
            Column.number("allowance", "Its length on the flat strip", Quantity.LENGTH),
            Column.number("angle", "Angle", Quantity.ANGLE),
            Column.number("radius", "Inside radius", Quantity.LENGTH),
            Column.text("direction", "Towards the can or away from it"),
            Column.number("residual", "Farthest that the arc lies from the outline", Quantity.LENGTH),
            Column.geometry("at", "Place")));
    static final TableInfo COILS = new TableInfo("coils", "Coil used", List.of(
            Column.text("material", "Material"),
            Column.number("thickness", "Thickness", Quantity.LENGTH),
            Column.number("depth", "Depth", Quantity.LENGTH),
            Column.number("strips", "Strips", Quantity.COUNT),
            Column.number("length", "Total length", Quantity.LENGTH),
            Column.text("coil", "Coil"),
            Column.number("coils", "How many of it, without waste at the ends", Quantity.COUNT)));
    static final List<TableInfo> ALL = List.of(STRIPS, BENDS, COILS);

    private ReturnsTables() {
    }

    static List<Table> of(List<Strip> strips, List<Coil> coils) {
        GeometryFactory points = new GeometryFactory();
        List<List<Object>> lengths = new ArrayList<>();
        List<List<Object>> bends = new ArrayList<>();
        Map<List<Object>, List<Strip>> alike = new LinkedHashMap<>();
        for (Strip strip : strips) {
            Contour contour = strip.contour();
            List<Strip.Bend> own = strip.bends();
            lengths.add(List.of(contour.part().id(), (double) contour.number(), contour.words(), strip.lengthMm(), contour.ring().getLength(),
                    (double) own.size(), strip.steps().stream().mapToDouble(Step::residualMm).max().orElse(0), strip.jointOn(),
                    points.createPoint(strip.joint()), strip.tooling().depthMm(), strip.tooling().thicknessMm()));
            for (int i = 0; i < own.size(); i++) {
                Strip.Bend bend = own.get(i);
                bends.add(List.of(contour.part().id(), (double) contour.number(), i + 1.0, word(bend.step().kind()), bend.startMm(),
                        bend.allowanceMm(), bend.step().degrees(), bend.insideRadiusMm(), bend.step().convex() ? "towards" : "away",
                        bend.step().residualMm(), points.createPoint(bend.step().middle())));
            }
            alike.computeIfAbsent(List.of(strip.tooling().material(), strip.tooling().thicknessMm(), strip.tooling().depthMm()),
                    key -> new ArrayList<>()).add(strip);
        }
        List<List<Object>> used = new ArrayList<>();
        alike.forEach((key, own) -> {
            Optional<Coil> coil = Coil.narrowest(coils, own.get(0).tooling());
            List<Double> each = own.stream().map(Strip::lengthMm).toList();
            used.add(Arrays.asList(key.get(0), key.get(1), key.get(2), (double) own.size(), each.stream().mapToDouble(Double::doubleValue).sum(),
                    coil.map(Coil::name).orElse(null), coil.map(c -> (double) c.count(each)).orElse(null)));
        });
        return List.of(new Table(STRIPS, lengths), new Table(BENDS, bends), new Table(COILS, used));
    }

    static String word(Step.Kind kind) {
        return switch (kind) {
            case STRAIGHT -> "straight";
            case CURVE -> "curve";
            case FOLD -> "fold";
            case MEETING -> "seam in a corner";
        };
    }
}
