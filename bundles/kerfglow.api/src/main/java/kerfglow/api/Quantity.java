// SPDX-License-Identifier: Apache-2.0
package kerfglow.api;

/** What a number measures, and so the unit that it is kept in. */
public enum Quantity {
    /** Millimetres. */
    LENGTH("mm"),
    /** Square millimetres. */
    AREA("mm²"),
    /** Degrees. */
    ANGLE("deg"),
    /** Millimetres per user unit and other plain ratios; no unit. */
    RATIO(""),
    /** A whole number. */
    COUNT(""),
    /** Seconds. */
    TIME("s"),
    /** Degrees Celsius. */
    TEMPERATURE("°C"),
    /** Kilograms. */
    MASS("kg"),
    /** Lumen. */
    LUMINOUS_FLUX("lm"),
    /** Candela per square metre. */
    LUMINANCE("cd/m²"),
    /** Watt. */
    POWER("W"),
    /** Volt. */
    VOLTAGE("V"),
    /** Pascal. */
    PRESSURE("Pa"),
    /** Lux. */
    ILLUMINANCE("lx"),
    /** Ampere. */
    CURRENT("A"),
    /** Ohm. */
    RESISTANCE("Ω"),
    /** Kilowatt-hours. */
    ENERGY("kWh"),
    /** Newton. */
    FORCE("N");

    private final String unit;

    Quantity(String unit) {
        this.unit = unit;
    }

    /** The symbol of the unit that values are kept in and that JSON uses; empty for plain numbers. */
    public String unit() {
        return unit;
    }
}
