// SPDX-License-Identifier: Apache-2.0
package kerfglow.light;

/** Refuses values outside their range, by name. */
final class Ranges {
    private Ranges() {
    }

    static void require(String name, double value, double least, double most, String range) {
        if (!(value >= least && value <= most)) {
            throw new IllegalArgumentException(name + " must be " + range + ", not " + value);
        }
    }
}
