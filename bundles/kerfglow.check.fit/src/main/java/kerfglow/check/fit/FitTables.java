// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import kerfglow.api.Quantity;
import kerfglow.api.SharedSettings;
import kerfglow.api.Table;
import kerfglow.api.TableInfo;
import kerfglow.api.TableInfo.Column;
import kerfglow.api.proof.Part;
import org.locationtech.jts.geom.Geometry;

/** The numbers and shapes that the fit check measures and makes beyond its findings. */
final class FitTables {
    static final TableInfo PAIRS = new TableInfo("pairs", "Clearance of pairs", List.of(
            Column.text("inner", "Back or push-through"),
            Column.text("outer", "Face or opening"),
            Column.number("clearance", "Clearance wanted on a side", Quantity.LENGTH),
            Column.number("total", "Allowance in total", Quantity.LENGTH),
            Column.text("stated", "How the allowance is stated"),
            Column.number("tolerance", "Tolerance on a side", Quantity.LENGTH),
            Column.number("least", "Least clearance", Quantity.LENGTH),
            Column.number("greatest", "Greatest clearance", Quantity.LENGTH),
            Column.number("mean", "Mean clearance", Quantity.LENGTH),
            Column.number("edge", "Length of edge measured", Quantity.LENGTH),
            Column.number("departs", "Length that departs", Quantity.LENGTH),
            Column.geometry("stretches", "Where it departs")));
    static final TableInfo BACKS = new TableInfo("made-backs", "Backs made from faces", List.of(
            Column.text("face", "Face"),
            Column.text("layer", "Layer of the face"),
            Column.number("clearance", "Smaller on a side", Quantity.LENGTH),
            Column.number("total", "Smaller in total", Quantity.LENGTH),
            Column.text("stated", "How the allowance is stated"),
            Column.number("pieces", "Pieces", Quantity.COUNT),
            Column.number("area", "Area", Quantity.AREA),
            Column.number("edge", "Length of edge", Quantity.LENGTH),
            Column.geometry("shape", "Shape")));
    static final TableInfo THERMAL = new TableInfo("thermal", "Thermal movement of faces against the can", List.of(
            Column.text("face", "Face"),
            Column.text("material", "Material"),
            Column.number("length", "Length", Quantity.LENGTH),
            Column.number("face-expansion", "Expansion of the face, per kelvin", Quantity.RATIO),
            Column.number("can-expansion", "Expansion of the can, per kelvin", Quantity.RATIO),
            Column.number("cold-kelvin", "Below assembly, kelvin", Quantity.RATIO),
            Column.number("hot-kelvin", "Above assembly, kelvin", Quantity.RATIO),
            Column.number("cold", "Movement in the cold", Quantity.LENGTH),
            Column.number("hot", "Movement in the heat", Quantity.LENGTH),
            Column.text("binds", "When it binds"),
            Column.number("total", "Allowance in total", Quantity.LENGTH),
            Column.number("walls", "Two walls", Quantity.LENGTH),
            Column.number("legs", "Two legs", Quantity.LENGTH),
            Column.number("left", "Left for movement", Quantity.LENGTH),
            Column.flag("fits", "Fits")));
    static final List<TableInfo> ALL = List.of(PAIRS, BACKS, THERMAL);

    private FitTables() {
    }

    static List<Table> of(List<PairResult> pairs, List<MadeBack> backs, List<Thermal> thermals) {
        List<List<Object>> pairRows = new ArrayList<>();
        for (PairResult pair : pairs) {
            pairRows.add(Arrays.asList(ids(pair.pair().inners()), ids(pair.pair().outers()), pair.allowance().sideMm(),
                    pair.allowance().totalMm(), stated(pair.allowance()), pair.allowance().toleranceMm(), pair.leastMm(), pair.greatestMm(),
                    pair.meanMm(), pair.lengthMm(), pair.departingMm(), stretches(pair)));
        }
        List<List<Object>> backRows = new ArrayList<>();
        for (MadeBack back : backs) {
            backRows.add(Arrays.asList(back.face().id(), back.face().layer(), back.allowance().sideMm(), back.allowance().totalMm(),
                    stated(back.allowance()), (double) (back.shape().isEmpty() ? 0 : back.shape().getNumGeometries()), back.shape().getArea(),
                    back.shape().getLength(), back.shape()));
        }
        List<List<Object>> thermalRows = new ArrayList<>();
        for (Thermal each : thermals) {
            thermalRows.add(Arrays.asList(each.face().id(), each.material(), each.lengthMm(), each.faceExpansion(), each.canExpansion(),
                    each.coldKelvin(), each.hotKelvin(), each.coldMm(), each.hotMm(), each.bindsInCold() ? "in the cold" : "in the heat",
                    each.totalMm(), each.wallsMm(), each.legsMm(), each.leftMm(), each.fits()));
        }
        return List.of(new Table(PAIRS, pairRows), new Table(BACKS, backRows), new Table(THERMAL, thermalRows));
    }

    private static String ids(List<Part> parts) {
        return String.join(" ", parts.stream().map(Part::id).toList());
    }

    private static String stated(Allowance allowance) {
        return allowance.inTotal() ? SharedSettings.IN_TOTAL : SharedSettings.PER_SIDE;
    }

    private static Geometry stretches(PairResult pair) {
        return pair.pair().outers().get(0).shape().getFactory()
                .buildGeometry(pair.departures().stream().map(Departure::place).toList());
    }
}
