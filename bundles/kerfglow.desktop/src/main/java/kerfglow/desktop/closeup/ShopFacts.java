// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.closeup;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import kerfglow.api.Table;
import kerfglow.api.TableInfo;
import kerfglow.host.Result;

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
