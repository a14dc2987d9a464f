// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.awt.geom.AffineTransform;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Reads transforms at double precision, as the attribute writes them and as the CSS property does (CSS Transforms 1, sections 8
 * and 9; three-dimensional functions are refused).
 */
final class TransformList {
    private static final double GRADIANS_IN_TURN = 400;
    private static final double DEGREES_IN_TURN = 360;

    private TransformList() {
    }

    /** The product of all functions in the list; nothing for "none" or an empty text. */
    static AffineTransform parse(String text, Lengths lengths) throws BadValueException {
        AffineTransform all = new AffineTransform();
        String list = text.strip();
        if (list.isEmpty() || list.equals("none")) {
            return all;
        }
        NumberScanner in = new NumberScanner(list);
        while (!in.isAtEnd()) {
            String name = in.word().toLowerCase(Locale.ROOT);
            in.skipSpace();
            if (name.isEmpty() || in.peek() != '(') {
                throw new BadValueException("has \"" + in.quote() + "\" at character " + in.position() + " where a transform is expected");
            }
            in.next();
            all.concatenate(function(name, in, lengths));
            in.skipSeparator();
        }
        if (!Linear.isFinite(all)) {
            throw new BadValueException("is too large");
        }
        return all;
    }

    private static AffineTransform function(String name, NumberScanner in, Lengths lengths) throws BadValueException {
        List<Double> v = new ArrayList<>();
        in.skipSpace();
        while (in.peek() != ')') {
            v.add(argument(name, v.size(), in, lengths));
            in.skipSeparator();
        }
        in.next();
        int n = v.size();
        return switch (name) {
            case "matrix" -> {
                expect(name, n == 6, n);
                yield new AffineTransform(v.get(0), v.get(1), v.get(2), v.get(3), v.get(4), v.get(5));
            }
            case "translate" -> {
                expect(name, n == 1 || n == 2, n);
                yield AffineTransform.getTranslateInstance(v.get(0), n == 2 ? v.get(1) : 0);
            }
            case "translatex" -> {
                expect(name, n == 1, n);
                yield AffineTransform.getTranslateInstance(v.get(0), 0);
            }
            case "translatey" -> {
                expect(name, n == 1, n);
                yield AffineTransform.getTranslateInstance(0, v.get(0));
            }
            case "scale" -> {
                expect(name, n == 1 || n == 2, n);
                yield AffineTransform.getScaleInstance(v.get(0), v.get(n - 1));
            }
            case "scalex" -> {
                expect(name, n == 1, n);
                yield AffineTransform.getScaleInstance(v.get(0), 1);
            }
            case "scaley" -> {
                expect(name, n == 1, n);
                yield AffineTransform.getScaleInstance(1, v.get(0));
            }
            case "rotate" -> {
                expect(name, n == 1 || n == 3, n);
                yield n == 1 ? rotation(v.get(0)) : about(rotation(v.get(0)), v.get(1), v.get(2));
            }
            case "skewx" -> {
                expect(name, n == 1, n);
                yield AffineTransform.getShearInstance(Math.tan(Math.toRadians(v.get(0))), 0);
            }
            case "skewy" -> {
                expect(name, n == 1, n);
                yield AffineTransform.getShearInstance(0, Math.tan(Math.toRadians(v.get(0))));
            }
            case "skew" -> {
                expect(name, n == 1 || n == 2, n);
                yield AffineTransform.getShearInstance(Math.tan(Math.toRadians(v.get(0))),
                        n == 2 ? Math.tan(Math.toRadians(v.get(1))) : 0);
            }
            default -> throw new BadValueException("has the function " + name + ", which is not understood");
        };
    }

    /** Quarter turns come out exact, so that upright rectangles stay upright. */
    static AffineTransform rotation(double degrees) {
        double quarters = degrees / 90;
        if (quarters == Math.rint(quarters)) {
            return AffineTransform.getQuadrantRotateInstance((int) (quarters % 4));
        }
        return AffineTransform.getRotateInstance(Math.toRadians(degrees));
    }

    static AffineTransform about(AffineTransform turn, double x, double y) {
        AffineTransform all = AffineTransform.getTranslateInstance(x, y);
        all.concatenate(turn);
        all.translate(-x, -y);
        return all;
    }

    private static double argument(String name, int index, NumberScanner in, Lengths lengths) throws BadValueException {
        if (name.startsWith("translate") || name.equals("rotate") && index > 0) {
            return lengths.next(in, index == 0 && !name.equals("translatey") ? Lengths.Axis.X : Lengths.Axis.Y);
        }
        double number = in.number();
        String unit = in.word().toLowerCase(Locale.ROOT);
        boolean isAngle = name.startsWith("rotate") || name.startsWith("skew");
        if (unit.isEmpty() || isAngle && unit.equals("deg")) {
            return number;
        }
        if (isAngle) {
            switch (unit) {
                case "rad":
                    return Math.toDegrees(number);
                case "grad":
                    return number * DEGREES_IN_TURN / GRADIANS_IN_TURN;
                case "turn":
                    return number * DEGREES_IN_TURN;
                default:
            }
        }
        if (name.startsWith("scale") && unit.equals("%")) {
            return number / 100;
        }
        throw new BadValueException("has the unit \"" + unit + "\" in " + name + ", which is not understood");
    }

    private static void expect(String name, boolean holds, int count) throws BadValueException {
        if (!holds) {
            throw new BadValueException("has " + count + " numbers in " + name);
        }
    }
}
