// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.mount;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import kerfglow.api.Inspection;
import kerfglow.api.StockItem;
import kerfglow.api.Table;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.index.strtree.GeometryItemDistance;
import org.locationtech.jts.index.strtree.STRtree;

/** Collects what hangs on the wall: sheets from the parts, made backs, strips and modules from the tables of the checks that measured them. */
final class Loads {
    static final String FIT = "fit";
    static final String RETURNS = "returns";
    static final String GLOW = "glow";

    private static final double MM2_PER_M2 = 1e6;
    /** Thicknesses and depths of one coil, mm: equal but for rounding. */
    private static final double SAME_MM = 1e-6;

    private final Inspection inspection;
    private final Set<String> missing;
    private final List<Load> loads = new ArrayList<>();
    private final Map<String, Part> parts = new LinkedHashMap<>();
    /** The rings of the parts that strips stand on, by part: a perforated face has a strip for every hole. */
    private final Map<String, STRtree> rings = new HashMap<>();

    private Loads(Inspection inspection, Set<String> missing) {
        this.inspection = inspection;
        this.missing = missing;
        inspection.parts().forEach(part -> parts.put(part.id(), part));
    }

    /**
     * Everything that is known.
     *
     * @param missing told of what could not be weighed
     */
    static List<Load> of(Inspection inspection, Set<String> missing) {
        Loads loads = new Loads(inspection, missing);
        inspection.parts(Role.FACE, Role.BACK, Role.PANEL, Role.PUSH_THROUGH).forEach(loads::sheet);
        loads.madeBacks();
        loads.strips();
        loads.modules();
        return loads.loads;
    }

    private void sheet(Part part) {
        inspection.checkpoint(0);
        String material = part.sheetMaterial().orElse("");
        if (part.thicknessMm().isEmpty()) {
            missing.add("The job sheet gives no material and thickness for " + part.role().word() + " parts" + layer(part) + ", so they were not weighed.");
            return;
        }
        double thickness = part.thicknessMm().getAsDouble();
        double given = inspection.settings().get(MountSettings.DENSITY, part);
        OptionalDouble perM2 = given > 0 ? OptionalDouble.of(given * thickness) : Density.kgPerM2(material, thickness, inspection.settings());
        add(part.id(), part.role().word(), material, part.material(), perM2);
    }

    private static String layer(Part part) {
        return part.layer().isBlank() ? "" : " on layer \"" + part.layer() + "\"";
    }

    private void add(String part, String what, String material, Geometry area, OptionalDouble perM2) {
        if (perM2.isEmpty()) {
            missing.add("The density of \"" + material + "\" is not known, so what is made of it was not weighed; give mount.density for it.");
        } else if (!area.isEmpty()) {
            loads.add(new Load(part, what, material, perM2.getAsDouble() * area.getArea() / MM2_PER_M2, area.getCentroid().getCoordinate()));
        }
    }

    private void madeBacks() {
        for (Row row : rows(FIT, "made-backs")) {
            if (row.cell("shape") instanceof Geometry shape && row.cell("face") instanceof String face && parts.containsKey(face)) {
                String material = inspection.settings().get(MountSettings.BACK_MATERIAL, parts.get(face));
                double thickness = inspection.settings().get(MountSettings.BACK_THICKNESS, parts.get(face));
                add(face, "made back", material, shape, Density.kgPerM2(material, thickness, inspection.settings()));
            }
        }
    }

    private void strips() {
        List<Row> coils = rows(RETURNS, "coils");
        for (Row row : rows(RETURNS, "strips")) {
            if (row.cell("part") instanceof String id && parts.containsKey(id) && row.cell("length") instanceof Double length && row.cell("depth") instanceof Double depth
                    && row.cell("thickness") instanceof Double thickness && row.cell("joint") instanceof Geometry joint) {
                List<String> materials = coils.stream().filter(coil -> same(coil.cell("thickness"), thickness) && same(coil.cell("depth"), depth))
                        .map(coil -> String.valueOf(coil.cell("material"))).distinct().toList();
                if (materials.size() != 1) {
                    missing.add("Strips of one thickness and depth come in several materials, so they were not weighed.");
                    continue;
                }
                OptionalDouble perM2 = Density.kgPerM2(materials.get(0), thickness, inspection.settings());
                if (perM2.isEmpty()) {
                    missing.add("The density of \"" + materials.get(0) + "\" is not known, so strips of it were not weighed.");
                } else {
                    loads.add(new Load(id, "return strip", materials.get(0), perM2.getAsDouble() * length * depth / MM2_PER_M2, nearestRing(parts.get(id), joint).getCentroid().getCoordinate()));
                }
            }
        }
    }

    private static boolean same(Object cell, double value) {
        return cell instanceof Double number && Math.abs(number - value) <= SAME_MM;
    }

    /** The outline or counter that a strip stands on is the one nearest to its joint. */
    private LinearRing nearestRing(Part part, Geometry joint) {
        STRtree boxes = rings.computeIfAbsent(part.id(), id -> rings(part));
        return (LinearRing) boxes.nearestNeighbour(joint.getEnvelopeInternal(), joint, new GeometryItemDistance());
    }

    private static STRtree rings(Part part) {
        STRtree boxes = new STRtree();
        for (int i = -1; i < part.shape().getNumInteriorRing(); i++) {
            LinearRing ring = i < 0 ? part.shape().getExteriorRing() : part.shape().getInteriorRingN(i);
            boxes.insert(ring.getEnvelopeInternal(), ring);
        }
        return boxes;
    }

    private void modules() {
        List<StockItem> stock = inspection.stock(MountSettings.MODULES);
        Map<List<String>, List<Coordinate>> alike = new LinkedHashMap<>();
        for (Row row : rows(GLOW, "modules")) {
            if (row.cell("x") instanceof Double x && row.cell("y") instanceof Double y) {
                alike.computeIfAbsent(List.of(text(row.cell("part")), text(row.cell("type"))), key -> new ArrayList<>()).add(new Coordinate(x, y));
            }
        }
        alike.forEach((key, places) -> {
            Optional<StockItem> item = stock.stream().filter(each -> each.name().equals(key.get(1))).findFirst();
            double each = item.map(found -> found.get(MountSettings.MODULE_MASS)).orElse(0.0);
            if (each == 0) {
                missing.add("The shop sheet gives no mass for light module \"" + key.get(1) + "\", so those were not weighed.");
            } else {
                double x = places.stream().mapToDouble(Coordinate::getX).average().orElseThrow();
                double y = places.stream().mapToDouble(Coordinate::getY).average().orElseThrow();
                loads.add(new Load(key.get(0), "modules", key.get(1), each * places.size(), new Coordinate(x, y)));
            }
        });
    }

    private static String text(Object cell) {
        return cell instanceof String text ? text : "";
    }

    /** A row of another check's table by the ids of its columns; a column that is not there is null. */
    private record Row(List<String> columns, List<Object> cells) {
        Object cell(String column) {
            int index = columns.indexOf(column);
            return index < 0 ? null : cells.get(index);
        }
    }

    private List<Row> rows(String check, String id) {
        Optional<Table> table = inspection.table(check, id);
        return table.map(found -> {
            List<String> columns = found.info().columns().stream().map(column -> column.id()).toList();
            return found.rows().stream().map(row -> new Row(columns, row)).toList();
        }).orElse(List.of());
    }
}
