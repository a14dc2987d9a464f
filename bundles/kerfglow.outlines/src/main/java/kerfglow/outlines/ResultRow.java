// SPDX-License-Identifier: Apache-2.0
package kerfglow.outlines;

import java.util.List;
import java.util.Optional;
import kerfglow.api.Table;
import kerfglow.host.Result;
import org.locationtech.jts.geom.Geometry;

/**
 * A row of a table of a result, read by the ids of its columns, so that a check that is not installed, or has other columns, leaves gaps and
 * nothing else.
 *
 * @param columns ids, in order
 * @param cells in the same order
 */
public record ResultRow(List<String> columns, List<Object> cells) {
    /** The rows of one table; none where the check or the table is not there. */
    public static List<ResultRow> of(Result result, String check, String table) {
        return table(result, check, table).map(found -> {
            List<String> columns = found.info().columns().stream().map(column -> column.id()).toList();
            return found.rows().stream().map(row -> new ResultRow(columns, row)).toList();
        }).orElse(List.of());
    }

    /** A table of a result. */
    public static Optional<Table> table(Result result, String check, String id) {
        return result.checks().stream().filter(row -> row.check().equals(check)).flatMap(row -> row.tables().stream()).filter(each -> each.info().id().equals(id)).findFirst();
    }

    private Object cell(String column) {
        int index = columns.indexOf(column);
        return index < 0 ? null : cells.get(index);
    }

    /** A number; NaN where there is none. */
    public double number(String column) {
        return cell(column) instanceof Double number ? number : Double.NaN;
    }

    /** Text; empty where there is none. */
    public String text(String column) {
        return cell(column) instanceof String text ? text : "";
    }

    /** A geometry. */
    public Optional<Geometry> geometry(String column) {
        return cell(column) instanceof Geometry geometry ? Optional.of(geometry) : Optional.empty();
    }
}
