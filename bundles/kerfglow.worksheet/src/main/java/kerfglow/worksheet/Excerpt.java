// SPDX-License-Identifier: Apache-2.0
package kerfglow.worksheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import kerfglow.api.Table;
import kerfglow.api.TableInfo;
import kerfglow.host.Result;
import kerfglow.outlines.ResultRow;

/**
 * Some columns of a table that a check measured, as they stand in the result.
 *
 * @param check the check
 * @param table the table
 * @param title over it on the worksheet
 * @param columns ids of columns, in order; those that the table does not have are left out
 */
record Excerpt(String check, String table, String title, List<String> columns) {
    static Excerpt of(String check, String table, String title, String columns) {
        return new Excerpt(check, table, title, List.of(columns.split(" ")));
    }

    /** All rows; empty where the check or the table is not there, or has no rows. */
    Optional<Table> from(Result result) {
        return from(result, row -> true);
    }

    /** The rows that are wanted. */
    Optional<Table> from(Result result, Predicate<ResultRow> wanted) {
        Optional<Table> found = ResultRow.table(result, check, table);
        if (found.isEmpty()) {
            return Optional.empty();
        }
        List<TableInfo.Column> all = found.get().info().columns();
        List<String> ids = all.stream().map(TableInfo.Column::id).toList();
        List<Integer> kept = columns.stream().map(ids::indexOf).filter(index -> index >= 0).toList();
        List<List<Object>> rows = new ArrayList<>();
        for (List<Object> row : found.get().rows()) {
            if (wanted.test(new ResultRow(ids, row))) {
                List<Object> cells = new ArrayList<>();
                kept.forEach(index -> cells.add(row.get(index)));
                rows.add(cells);
            }
        }
        return rows.isEmpty() ? Optional.empty() : Optional.of(new Table(new TableInfo(check + "." + table, title, kept.stream().map(all::get).toList()), rows));
    }
}
