// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.mount;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import kerfglow.api.Quantity;
import kerfglow.api.Table;
import kerfglow.api.TableInfo;
import kerfglow.api.TableInfo.Column;
import kerfglow.api.proof.Part;

/** The numbers that the check of mounting estimates. */
final class MountTables {
    private static final String ESTIMATE = " (estimate; the local building code governs, a licensed engineer decides)";

    static final TableInfo WEIGHTS = new TableInfo("weights", "Weight by part" + ESTIMATE, List.of(
            Column.text("part", "Part"),
            Column.text("what", "What"),
            Column.text("material", "Material"),
            Column.number("mass", "Mass", Quantity.MASS),
            Column.number("x", "Centre of mass from the left", Quantity.LENGTH),
            Column.number("y", "Centre of mass from the top", Quantity.LENGTH)));
    static final TableInfo MATERIALS = new TableInfo("materials", "Weight by what and material" + ESTIMATE, List.of(
            Column.text("what", "What"),
            Column.text("material", "Material"),
            Column.number("mass", "Mass", Quantity.MASS)));
    static final TableInfo SIGN = new TableInfo("sign", "The sign in all" + ESTIMATE, List.of(
            Column.number("mass", "Mass", Quantity.MASS),
            Column.number("x", "Centre of mass from the left", Quantity.LENGTH),
            Column.number("y", "Centre of mass from the top", Quantity.LENGTH),
            Column.number("width", "Width", Quantity.LENGTH),
            Column.number("height", "Height", Quantity.LENGTH),
            Column.number("area-outline", "Area by outline", Quantity.AREA),
            Column.number("area-rectangle", "Area by enclosing rectangle", Quantity.AREA),
            Column.number("studs", "Stud holes", Quantity.COUNT),
            Column.number("wires", "Wire holes", Quantity.COUNT),
            Column.number("drains", "Drain holes", Quantity.COUNT)));
    static final TableInfo WIND = new TableInfo("wind", "Wind" + ESTIMATE, List.of(
            Column.text("how", "Pressure found by"),
            Column.number("pressure", "Velocity pressure", Quantity.PRESSURE),
            Column.number("factor", "Factors of the load beside it", Quantity.RATIO),
            Column.number("coefficient", "Force coefficient", Quantity.RATIO),
            Column.text("area-by", "Area by"),
            Column.number("area", "Area", Quantity.AREA),
            Column.number("force", "Force", Quantity.FORCE),
            Column.number("eccentricity", "Off the middle by, a quarter of the width", Quantity.LENGTH)));
    static final TableInfo HOLES = new TableInfo("holes", "Holes", List.of(
            Column.text("hole", "Hole"),
            Column.text("kind", "Kind"),
            Column.text("part", "Drilled into"),
            Column.number("diameter", "Diameter", Quantity.LENGTH),
            Column.number("x", "Centre from the left", Quantity.LENGTH),
            Column.number("y", "Centre from the top", Quantity.LENGTH)));
    static final List<TableInfo> ALL = List.of(WEIGHTS, MATERIALS, SIGN, WIND, HOLES);

    private MountTables() {
    }

    static List<Table> of(List<Load> loads, Estimate estimate, List<Holes> holes) {
        List<List<Object>> weights = new ArrayList<>();
        Map<List<String>, Double> byMaterial = new LinkedHashMap<>();
        for (Load load : loads) {
            weights.add(List.of(load.part(), load.what(), load.material(), load.massKg(), load.centre().x, load.centre().y));
            byMaterial.merge(List.of(load.what(), load.material()), load.massKg(), Double::sum);
        }
        List<List<Object>> materials = new ArrayList<>();
        byMaterial.forEach((key, mass) -> materials.add(List.of(key.get(0), key.get(1), mass)));
        List<List<Object>> bored = new ArrayList<>();
        holes.forEach(hole -> bored.add(Arrays.<Object>asList(hole.hole().id(), hole.words(), hole.in().map(Part::id).orElse(null), hole.diameterMm(), hole.centre().x, hole.centre().y)));
        SignSize size = estimate.size();
        List<Object> sign = Arrays.<Object>asList(estimate.massKg(), estimate.centre().map(centre -> centre.x).orElse(null), estimate.centre().map(centre -> centre.y).orElse(null),
                size.box().getWidth(), size.box().getHeight(), size.outlineMm2(), size.rectangleMm2(), count(holes, Holes.Kind.STUD), count(holes, Holes.Kind.WIRE),
                count(holes, Holes.Kind.DRAIN));
        return List.of(new Table(WEIGHTS, weights), new Table(MATERIALS, materials), new Table(SIGN, List.of(sign)), new Table(WIND, wind(estimate)), new Table(HOLES, bored));
    }

    private static double count(List<Holes> holes, Holes.Kind kind) {
        return holes.stream().filter(hole -> hole.kind() == kind).count();
    }

    private static List<List<Object>> wind(Estimate estimate) {
        return estimate.wind().map(wind -> List.<Object>of(wind.how(), wind.pressurePa(), wind.loadFactor(), estimate.coefficient(), estimate.areaBy(), estimate.areaMm2(),
                estimate.forceN(wind), estimate.eccentricityMm())).map(List::of).orElse(List.of());
    }
}
