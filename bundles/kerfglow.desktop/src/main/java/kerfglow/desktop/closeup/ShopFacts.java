// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.closeup;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import kerfglow.api.OverlayLayer;
import kerfglow.api.Table;
import kerfglow.api.TableInfo;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.host.Result;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;

/** What a result says of the tools: settings in force, and what the router's tables say of the bit that cuts a part. */
final class ShopFacts {
    private static final String ALL = "all";

    private final Result result;

    ShopFacts(Result result) {
        this.result = result;
    }

    /** A number that holds for everything, in the unit of its setting. */
    OptionalDouble setting(String key) {
        return result.settings().stream().filter(used -> used.key().equals(key) && used.scope().equals(ALL) && used.value() instanceof Number)
                .mapToDouble(used -> ((Number) used.value()).doubleValue()).findFirst();
    }

    /** The diameter of the bit that the router check took for a part, mm. */
    OptionalDouble bitMm(String part) {
        Optional<String> bit = rows("router", "parts").stream().filter(row -> part.equals(row.get("part"))).map(row -> row.get("used-bit"))
                .filter(String.class::isInstance).map(String.class::cast).findFirst();
        return rows("router", "bits").stream().filter(row -> bit.isPresent() && bit.get().equals(row.get("bit")) && row.get("diameter") instanceof Double)
                .mapToDouble(row -> (Double) row.get("diameter")).findFirst();
    }

    /**
     * A light module where it lies.
     *
     * @param part the part that it lights
     * @param turnDegrees of its long side
     */
    record Module(String part, ModuleSize size, Coordinate at, double turnDegrees) {
    }

    /** Every light module that a check says the place of: a table "modules" with part, x, y, turn and type. */
    List<Module> modules() {
        List<Module> modules = new ArrayList<>();
        for (Result.CheckRow check : result.checks()) {
            for (Row row : rows(check.check(), "modules")) {
                if (row.get("x") instanceof Double x && row.get("y") instanceof Double y && row.get("turn") instanceof Double turn) {
                    ModuleSize.of(result, String.valueOf(row.get("type"))).ifPresent(size -> modules.add(new Module(String.valueOf(row.get("part")), size, new Coordinate(x, y), turn)));
                }
            }
        }
        return modules;
    }

    /** What a check shows in one of its layers. */
    List<Geometry> layer(String check, String layer) {
        return result.checks().stream().filter(row -> row.check().equals(check)).flatMap(row -> row.layers().stream()).filter(each -> each.id().equals(layer))
                .flatMap(each -> each.items().stream()).map(OverlayLayer.Item::shape).toList();
    }

    List<Part> parts(Role role) {
        return result.parts().stream().filter(part -> part.role() == role).toList();
    }

    private List<Row> rows(String check, String table) {
        return result.checks().stream().filter(row -> row.check().equals(check)).flatMap(row -> row.tables().stream()).filter(each -> each.info().id().equals(table))
                .flatMap(each -> each.rows().stream().map(cells -> new Row(each, cells))).toList();
    }

    private record Row(Table table, List<Object> cells) {
        /** A cell, null when the table has no such column or knows nothing. */
        Object get(String column) {
            List<TableInfo.Column> columns = table.info().columns();
            for (int i = 0; i < columns.size(); i++) {
                if (columns.get(i).id().equals(column)) {
                    return cells.get(i);
                }
            }
            return null;
        }
    }
}
