// SPDX-License-Identifier: Apache-2.0
package kerfglow.api;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.locationtech.jts.geom.Geometry;

/**
 * Numbers that a check measured.
 *
 * @param info the schema, one that the check declares
 * @param rows one cell for each column, of the column's type or null
 */
public record Table(TableInfo info, List<List<Object>> rows) {
    public Table {
        List<List<Object>> copy = new ArrayList<>(rows.size());
        for (List<Object> row : rows) {
            requireFits(info, row);
            copy.add(Collections.unmodifiableList(new ArrayList<>(row))); // List.copyOf refuses null
        }
        rows = Collections.unmodifiableList(copy);
    }

    private static void requireFits(TableInfo info, List<Object> row) {
        if (row.size() != info.columns().size()) {
            throw new IllegalArgumentException("table " + info.id() + " has " + info.columns().size() + " columns, not " + row.size());
        }
        for (int i = 0; i < row.size(); i++) {
            TableInfo.Column column = info.columns().get(i);
            Object cell = row.get(i);
            boolean fits = cell == null || switch (column.type()) {
                case NUMBER -> cell instanceof Double number && Double.isFinite(number);
                case TEXT -> cell instanceof String;
                case FLAG -> cell instanceof Boolean;
                case GEOMETRY -> cell instanceof Geometry;
            };
            if (!fits) {
                throw new IllegalArgumentException("table " + info.id() + ", column " + column.id() + " cannot hold " + cell);
            }
        }
    }
}
