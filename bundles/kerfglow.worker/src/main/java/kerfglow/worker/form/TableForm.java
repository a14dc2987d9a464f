// SPDX-License-Identifier: Apache-2.0
package kerfglow.worker.form;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import kerfglow.api.Table;
import kerfglow.api.TableInfo;

/** A table: its schema and its rows, whose cells are read by the schema. */
final class TableForm {
    private TableForm() {
    }

    static Map<String, Object> fields(Table table) {
        return Map.of("info", table.info(), "rows", table.rows());
    }

    static Table read(FormNode node) {
        TableInfo info = node.value("info", TableInfo.class);
        List<List<Object>> rows = new ArrayList<>();
        for (Object each : node.list("rows")) {
            List<Object> row = new ArrayList<>();
            for (Object cell : (List<?>) each) {
                row.add(cell == null || row.size() >= info.columns().size() ? cell : cell(info.columns().get(row.size()), cell, node.name()));
            }
            rows.add(row);
        }
        try {
            return new Table(info, rows);
        } catch (IllegalArgumentException wrong) {
            throw new FormException(wrong.getMessage(), wrong);
        }
    }

    private static Object cell(TableInfo.Column column, Object cell, String name) {
        return switch (column.type()) {
            case NUMBER -> (Object) FormNode.numberOf(name + "." + column.id(), cell);
            case GEOMETRY -> FormNode.geometryOf(name + "." + column.id(), cell);
            case TEXT, FLAG -> cell;
        };
    }
}
