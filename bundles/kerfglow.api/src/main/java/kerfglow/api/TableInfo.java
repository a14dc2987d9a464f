// SPDX-License-Identifier: Apache-2.0
package kerfglow.api;

import java.util.List;

/**
 * The schema of numbers that a check measures beyond its findings.
 *
 * @param id lower case with hyphens, unique in the check
 * @param title what it is
 * @param columns in order
 */
public record TableInfo(String id, String title, List<Column> columns) {
    /** What stands in a column. */
    public enum Type {
        /** A finite double in the unit of the quantity. */
        NUMBER,
        /** A string. */
        TEXT,
        /** A boolean. */
        FLAG,
        /** A JTS geometry, mm; WKT in JSON. */
        GEOMETRY
    }

    /**
     * A column.
     *
     * @param id lower case with hyphens, unique in the table
     * @param title what it is
     * @param type what its cells hold; a cell may also be null, for "not known"
     * @param quantity what its numbers measure; null for other types
     */
    public record Column(String id, String title, Type type, Quantity quantity) {
        /** A column of numbers. */
        public static Column number(String id, String title, Quantity quantity) {
            return new Column(id, title, Type.NUMBER, quantity);
        }

        /** A column of texts. */
        public static Column text(String id, String title) {
            return new Column(id, title, Type.TEXT, null);
        }

        /** A column of yes and no. */
        public static Column flag(String id, String title) {
            return new Column(id, title, Type.FLAG, null);
        }

        /** A column of shapes. */
        public static Column geometry(String id, String title) {
            return new Column(id, title, Type.GEOMETRY, null);
        }
    }

    public TableInfo {
        columns = List.copyOf(columns);
    }
}
