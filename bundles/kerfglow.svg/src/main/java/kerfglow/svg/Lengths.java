// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.util.Locale;

/**
 * Turns lengths as the file writes them into user units. Units by CSS Values and Units 4, section 6.
 *
 * @param unitsPerInch user units (px) in an inch
 * @param width width of the nearest viewport, user units; what a horizontal percentage refers to
 * @param height height of the nearest viewport, user units
 * @param fontSize font size, user units
 */
record Lengths(double unitsPerInch, double width, double height, double fontSize) {
    /** What a percentage is of. */
    enum Axis { X, Y, DIAGONAL }

    private static final double MM_PER_INCH = 25.4;
    private static final double POINTS_PER_INCH = 72;
    private static final double PICAS_PER_INCH = 6;
    private static final double QUARTER_MM_PER_INCH = 101.6;
    private static final double PERCENT = 100;
    /** CSS Values and Units 4, 6.1.1: where the x-height is not known it is half an em. */
    private static final double EX_IN_EM = 0.5;

    Lengths withFontSize(double size) {
        return new Lengths(unitsPerInch, width, height, size);
    }

    Lengths within(double viewportWidth, double viewportHeight) {
        return new Lengths(unitsPerInch, viewportWidth, viewportHeight, fontSize);
    }

    /** A whole length, with surrounding space allowed. */
    double parse(String text, Axis axis) throws BadValueException {
        NumberScanner in = new NumberScanner(text.strip());
        double length = next(in, axis);
        if (!in.isAtEnd()) {
            throw new BadValueException("has \"" + text.strip() + "\", which is no length");
        }
        return length;
    }

    /** The length at the scanner. */
    double next(NumberScanner in, Axis axis) throws BadValueException {
        double number = in.number();
        String unit = in.word().toLowerCase(Locale.ROOT);
        double length = switch (unit) {
            case "", "px" -> number;
            case "mm" -> number * unitsPerInch / MM_PER_INCH;
            case "cm" -> number * unitsPerInch / MM_PER_INCH * 10;
            case "in" -> number * unitsPerInch;
            case "pt" -> number * unitsPerInch / POINTS_PER_INCH;
            case "pc" -> number * unitsPerInch / PICAS_PER_INCH;
            case "q" -> number * unitsPerInch / QUARTER_MM_PER_INCH;
            case "em", "rem" -> number * fontSize;
            case "ex", "ch" -> number * fontSize * EX_IN_EM;
            case "%" -> number / PERCENT * reference(axis);
            case "vw" -> number / PERCENT * width;
            case "vh" -> number / PERCENT * height;
            default -> throw new BadValueException("has the unit \"" + unit + "\", which is not understood");
        };
        if (!Double.isFinite(length)) {
            throw new BadValueException("is too large");
        }
        return length;
    }

    /** SVG 2, 8.9 "Units": other percentages refer to the diagonal divided by the root of two. */
    private double reference(Axis axis) {
        return switch (axis) {
            case X -> width;
            case Y -> height;
            case DIAGONAL -> Math.sqrt((width * width + height * height) / 2);
        };
    }
}
