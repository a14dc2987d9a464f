// SPDX-License-Identifier: Apache-2.0
package kerfglow.api;

import java.util.Objects;

/**
 * A number and what it measures.
 *
 * @param value in the unit of the quantity
 * @param quantity what it measures
 */
public record Measure(double value, Quantity quantity) {
    public Measure {
        Objects.requireNonNull(quantity, "quantity");
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("a measure must be finite: " + value);
        }
    }

    /** A length, mm. */
    public static Measure mm(double value) {
        return new Measure(value, Quantity.LENGTH);
    }

    /** A number of things. */
    public static Measure count(long value) {
        return new Measure(value, Quantity.COUNT);
    }
}
