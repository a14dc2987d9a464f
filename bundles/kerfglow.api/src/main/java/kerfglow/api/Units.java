// SPDX-License-Identifier: Apache-2.0
package kerfglow.api;

import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads and writes numbers with units. Lengths are typed in mm, cm, m, in (or {@code "}), ft (or {@code '}) and fractional
 * inches such as {@code 3/16 in} and {@code 1-1/2"}; feet and inches may stand together ({@code 8 ft 6 in}).
 */
public final class Units {
    /** Exact by definition of the international inch (1959). */
    public static final double MM_PER_INCH = 25.4;
    /** Exact: 12 inches. */
    public static final double MM_PER_FOOT = 304.8;

    private static final double MM_PER_CM = 10;
    private static final double MM_PER_M = 1000;
    /** Tape measures and bit catalogues go down to 1/64 in. */
    private static final int FINEST_FRACTION = 64;
    /** A length this near to a fraction of an inch is shown as that fraction. */
    private static final double FRACTION_TOLERANCE_MM = 0.0005;
    /** Below the resolution of other lengths. */
    private static final double FINE_MM = 0.01;

    /** Assumed: longer than any number with its unit. */
    private static final int MOST_QUOTED = 60;

    /** From 10 m on (33 ft) a length is a distance or a roll, not a size on a sign, and is shown in metres or feet. */
    private static final double FAR_MM = 10_000;

    private static final Map<String, Double> LENGTH_UNITS_MM = Map.of("mm", 1.0, "cm", MM_PER_CM, "m", MM_PER_M, "in", MM_PER_INCH,
            "\"", MM_PER_INCH, "ft", MM_PER_FOOT, "'", MM_PER_FOOT);
    /** One term: a number, a fraction, or a whole and a fraction joined by a hyphen or a space; then a unit. */
    private static final Pattern TERM = Pattern.compile(
            "\\s*(?:(?<whole>\\d+)(?:\\s*-\\s*|\\s+))?(?:(?<over>\\d+)\\s*/\\s*(?<under>\\d+)|(?<number>\\d+(?:\\.\\d+)?|\\.\\d+))\\s*(?<unit>mm|cm|m|in|ft|\"|')");
    private static final Pattern NUMBER_THEN_UNIT = Pattern.compile("([+-]?(?:\\d+(?:\\.\\d+)?|\\.\\d+)(?:[eE][+-]?\\d+)?)\\s*(.*)");

    private Units() {
    }

    /**
     * Reads a length with its unit.
     *
     * @param text for instance {@code 12.7 mm}, {@code 1/2 in}, {@code 1-1/2"}, {@code 8 ft 6 in}, {@code -2 mm}
     * @return millimetres
     * @throws IllegalArgumentException when it cannot be read; the message says what would be right
     */
    public static double lengthMm(String text) {
        String rest = text.strip();
        boolean negative = rest.startsWith("-");
        rest = negative || rest.startsWith("+") ? rest.substring(1) : rest;
        double sum = 0;
        Matcher term = TERM.matcher(rest);
        int at = 0;
        while (at < rest.length()) {
            if (!term.region(at, rest.length()).lookingAt()) { // find would look on to the end, again for each place
                throw notALength(text);
            }
            sum += number(term, text) * LENGTH_UNITS_MM.get(term.group("unit"));
            at = term.end();
        }
        if (at == 0 || !Double.isFinite(sum)) {
            throw notALength(text);
        }
        return negative ? -sum : sum;
    }

    private static double number(Matcher term, String text) {
        String whole = term.group("whole");
        if (term.group("over") == null) {
            if (whole != null) {
                throw notALength(text);
            }
            return Double.parseDouble(term.group("number"));
        }
        double under = Double.parseDouble(term.group("under"));
        if (under == 0) {
            throw notALength(text);
        }
        return (whole == null ? 0 : Double.parseDouble(whole)) + Double.parseDouble(term.group("over")) / under;
    }

    /** A complaint needs no more of a long text than this. */
    private static String quoted(String text) {
        return text.length() <= MOST_QUOTED ? text : text.substring(0, MOST_QUOTED) + "...";
    }

    private static IllegalArgumentException notALength(String text) {
        return new IllegalArgumentException("\"" + quoted(text) + "\" is not a length: write a number with its unit, for instance "
                + "12.7 mm, 1.2 m, 1/2 in, 1-1/2 in or 8 ft 6 in");
    }

    /**
     * Reads a number of a quantity. Lengths and areas need a unit; others may leave theirs out.
     *
     * @return the value in the quantity's unit ({@link Quantity#unit()})
     * @throws IllegalArgumentException when it cannot be read
     */
    public static double parse(String text, Quantity quantity) {
        if (quantity == Quantity.LENGTH) {
            return lengthMm(text);
        }
        Matcher parts = NUMBER_THEN_UNIT.matcher(text.strip());
        if (!parts.matches()) {
            throw new IllegalArgumentException("\"" + quoted(text) + "\" is not a number" + withUnit(quantity));
        }
        double number = Double.parseDouble(parts.group(1));
        String unit = parts.group(2).strip();
        double value = switch (quantity) {
            case AREA -> number * areaUnitMm2(unit, text);
            case ANGLE -> number * oneOf(unit, text, quantity, "", "deg", "°");
            case TIME -> number * oneOf(unit, text, quantity, "", "s");
            case TEMPERATURE -> celsius(number, unit, text);
            case RATIO -> unit.equals("%") ? number / 100 : number * oneOf(unit, text, quantity, "");
            case COUNT -> {
                if (number != Math.rint(number)) {
                    throw new IllegalArgumentException("\"" + quoted(text) + "\" must be a whole number");
                }
                yield number * oneOf(unit, text, quantity, "");
            }
            default -> number * oneOf(unit, text, quantity, "", quantity.unit());
        };
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("\"" + quoted(text) + "\" is too large a number");
        }
        return value;
    }

    private static double areaUnitMm2(String unit, String text) {
        return switch (unit.replace("²", "2").replace("^2", "2").replace("sq ", "").toLowerCase(Locale.ROOT)) {
            case "mm2" -> 1;
            case "cm2" -> MM_PER_CM * MM_PER_CM;
            case "m2" -> MM_PER_M * MM_PER_M;
            case "in2", "in" -> MM_PER_INCH * MM_PER_INCH;
            case "ft2", "ft" -> MM_PER_FOOT * MM_PER_FOOT;
            default -> throw new IllegalArgumentException("\"" + quoted(text) + "\" is not an area: write a number with mm2, cm2, m2, in2 or ft2");
        };
    }

    private static double celsius(double number, String unit, String text) {
        return switch (unit) {
            case "", "C", "°C" -> number;
            case "F", "°F" -> (number - 32) * 5 / 9;
            default -> throw new IllegalArgumentException("\"" + quoted(text) + "\" is not a temperature: write a number with C or F");
        };
    }

    private static double oneOf(String unit, String text, Quantity quantity, String... allowed) {
        for (String each : allowed) {
            if (each.equalsIgnoreCase(unit)) {
                return 1;
            }
        }
        throw new IllegalArgumentException("\"" + quoted(text) + "\" is not a number" + withUnit(quantity));
    }

    private static String withUnit(Quantity quantity) {
        return quantity.unit().isEmpty() ? "" : " in " + quantity.unit();
    }

    /** Writes a value for a person, to the resolution that decides: lengths to 0.01 mm (to 0.0001 mm below that), or as a fraction where one fits. */
    public static String format(double value, Quantity quantity, UnitSystem system) {
        if (Double.isNaN(value)) {
            return "?";
        }
        return switch (quantity) {
            case LENGTH -> system == UnitSystem.INCH ? inches(value)
                    : Math.abs(value) >= FAR_MM ? trimmed(value / MM_PER_M, 2) + " m" : trimmed(value, isFine(value) ? 4 : 2) + " mm";
            case AREA -> system == UnitSystem.INCH ? trimmed(value / (MM_PER_INCH * MM_PER_INCH), 4) + " in²"
                    : Math.abs(value) >= 1e5 ? trimmed(value / (MM_PER_M * MM_PER_M), 3) + " m²" : trimmed(value, 1) + " mm²";
            case COUNT -> String.format(Locale.ROOT, "%.0f", value);
            case ANGLE -> trimmed(value, 1) + "°";
            case RATIO -> trimmed(value, 4);
            default -> trimmed(value, 2) + " " + quantity.unit();
        };
    }

    /** Tolerances such as 0.001 mm must not read as none. */
    private static boolean isFine(double mm) {
        return Math.abs(mm) < FINE_MM;
    }

    private static String inches(double mm) {
        double size = Math.abs(mm);
        if (size >= FAR_MM) {
            return trimmed(mm / MM_PER_FOOT, 1) + " ft";
        }
        for (int under = 1; under <= FINEST_FRACTION; under *= 2) {
            long over = Math.round(size / MM_PER_INCH * under);
            if (over > 0 && Math.abs(over * MM_PER_INCH / under - size) <= FRACTION_TOLERANCE_MM) {
                long whole = over / under;
                long rest = over % under;
                String fraction = rest == 0 ? "" : rest + "/" + under;
                String text = whole == 0 ? fraction : rest == 0 ? Long.toString(whole) : whole + "-" + fraction;
                return (mm < 0 ? "-" : "") + text + " in";
            }
        }
        return trimmed(mm / MM_PER_INCH, isFine(mm) ? 5 : 3) + " in";
    }

    private static String trimmed(double value, int digits) {
        String text = String.format(Locale.ROOT, "%." + digits + "f", value);
        if (text.indexOf('.') >= 0) {
            text = text.replaceAll("0+$", "").replaceAll("\\.$", "");
        }
        return text.equals("-0") ? "0" : text;
    }
}
