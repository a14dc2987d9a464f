// SPDX-License-Identifier: Apache-2.0
package kerfglow.api;

/** The units that a person reads. Files and JSON always hold millimetres. */
public enum UnitSystem {
    METRIC, INCH
}
