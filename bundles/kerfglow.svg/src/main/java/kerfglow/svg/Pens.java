// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.awt.geom.AffineTransform;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import kerfglow.api.proof.ImportNote.Kind;
import kerfglow.geometry.FillRule;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.w3c.dom.Element;

/** Reads the stroke properties of a shape. */
final class Pens {
    private static final double DEFAULT_MITER_LIMIT = 4;
    private static final double MM_PER_INCH = 25.4;

    private Pens() {
    }

    /**
     * A pen and the space that it is round in.
     *
     * @param pen lengths in the units of {@code space}
     * @param space from the pen's units to mm
     * @param isFixed true when the pen keeps its width whatever the transform (vector-effect: non-scaling-stroke)
     */
    record Pen(StrokeArea.Pen pen, AffineTransform space, boolean isFixed) {
        /** For a skewed stroke the mean of both axes. */
        double widthMm() {
            return pen.width() * (Linear.largestStretch(space) + Linear.smallestStretch(space)) / 2;
        }

        Geometry area(Element element, List<Subpath> subpaths, AffineTransform toMm, Drawing drawing) {
            List<Subpath> drawn = isFixed ? inMm(subpaths, toMm) : subpaths;
            StrokeArea.Pen used = pathLength(element, drawn, drawing);
            double[] dashes = used.dashes();
            if (dashes.length > 0
                    && !drawing.budget().allowsDashes(drawn.stream().mapToDouble(s -> Dashes.count(s, dashes)).sum())) {
                drawing.report().badValue(element, "stroke-dasharray", "makes too many dashes (limit on dashes)", "a whole line is drawn");
                used = new StrokeArea.Pen(pen.width(), pen.cap(), pen.join(), pen.miterLimit(), new double[0], 0);
            }
            double radiusMm = pen.width() / 2 * Linear.largestStretch(space);
            if (!(radiusMm > 0 && radiusMm <= Areas.FARTHEST_MM)) {
                if (radiusMm != 0) {
                    drawing.report().badValue(element, "stroke-width", "is larger than 1000 km on the sign", "no stroke is drawn");
                }
                return drawing.factory().createPolygon();
            }
            int inTurn = Flattener.arcSteps(radiusMm, 2 * Math.PI, drawing.options().chordErrorMm(), drawing.budget());
            List<Coordinate[]> rings = StrokeArea.rings(drawn, used, 2 * Math.PI / inTurn);
            rings.forEach(ring -> drawing.budget().steps(ring.length));
            return FillRule.NONZERO.area(Areas.toMm(rings, space), drawing.factory());
        }

        /** SVG 2, 9.6.1: dashes count in parts of pathLength where the file gives one. */
        private StrokeArea.Pen pathLength(Element element, List<Subpath> subpaths, Drawing drawing) {
            String text = element.getAttributeNS(null, "pathLength").strip();
            if (pen.dashes().length == 0 || text.isEmpty()) {
                return pen;
            }
            try {
                double stated = new NumberScanner(text).number();
                if (!(stated > 0)) {
                    throw new BadValueException("is not above 0");
                }
                double factor = subpaths.stream().mapToDouble(Dashes::length).sum() / stated;
                double[] dashes = java.util.Arrays.stream(pen.dashes()).map(dash -> dash * factor).toArray();
                return new StrokeArea.Pen(pen.width(), pen.cap(), pen.join(), pen.miterLimit(), factor > 0 ? dashes : new double[0],
                        pen.offset() * factor);
            } catch (BadValueException e) {
                drawing.report().badValue(element, "pathLength", e.getMessage(), "it is left out");
                return pen;
            }
        }

        private static List<Subpath> inMm(List<Subpath> subpaths, AffineTransform toMm) {
            List<Subpath> moved = new ArrayList<>(subpaths.size());
            for (Subpath s : subpaths) {
                Coordinate[] points = Areas.toMm(s, toMm);
                double[] xs = new double[points.length];
                double[] ys = new double[points.length];
                for (int i = 0; i < points.length; i++) {
                    xs[i] = points[i].x;
                    ys[i] = points[i].y;
                }
                moved.add(new Subpath(xs, ys, s.nodes(), s.corners(), s.closed()));
            }
            return moved;
        }
    }

    /** The pen, or nothing when its width is 0 or cannot be read. */
    static Optional<Pen> of(Element element, Place place, Drawing drawing) {
        Style style = place.style();
        double width = length(element, style, "stroke-width", "1", place, drawing);
        if (!(width > 0)) {
            if (width < 0) {
                drawing.report().badValue(element, "stroke-width", "is negative", "no stroke is drawn");
            }
            return Optional.empty();
        }
        boolean isFixed = style.get("vector-effect", "none").contains("non-scaling-stroke");
        double pixel = MM_PER_INCH / drawing.options().unitsPerInch() * drawing.options().scale();
        AffineTransform space = place.toMm();
        double toPen = 1;
        if (isFixed) {
            space = new AffineTransform();
            toPen = pixel;
        }
        double[] dashes = dashes(element, place, drawing);
        for (int i = 0; i < dashes.length; i++) {
            dashes[i] *= toPen;
        }
        String join = style.get("stroke-linejoin", "miter");
        if (join.equals("miter-clip") || join.equals("arcs")) {
            drawing.report().add(Kind.UNSUPPORTED, element, "stroke-linejoin: " + join + " is drawn as miter");
        }
        StrokeArea.Pen pen = new StrokeArea.Pen(width * toPen, cap(style.get("stroke-linecap", "butt")),
                join(join), miterLimit(element, style, drawing), dashes,
                dashes.length == 0 ? 0 : toPen * length(element, style, "stroke-dashoffset", "0", place, drawing));
        return Optional.of(new Pen(pen, space, isFixed));
    }

    private static StrokeArea.Cap cap(String word) {
        return switch (word) {
            case "round" -> StrokeArea.Cap.ROUND;
            case "square" -> StrokeArea.Cap.SQUARE;
            default -> StrokeArea.Cap.BUTT;
        };
    }

    private static StrokeArea.Join join(String word) {
        return switch (word) {
            case "round" -> StrokeArea.Join.ROUND;
            case "bevel" -> StrokeArea.Join.BEVEL;
            default -> StrokeArea.Join.MITER;
        };
    }

    private static double miterLimit(Element element, Style style, Drawing drawing) {
        String text = style.get("stroke-miterlimit", "4");
        try {
            double limit = new NumberScanner(text.strip()).number();
            if (limit >= 1) {
                return limit;
            }
            drawing.report().badValue(element, "stroke-miterlimit", "is below 1", "4 is used");
        } catch (BadValueException e) {
            drawing.report().badValue(element, "stroke-miterlimit", e.getMessage(), "4 is used");
        }
        return DEFAULT_MITER_LIMIT;
    }

    /** An odd list is repeated once; a list of noughts or with a negative length is a whole line. */
    private static double[] dashes(Element element, Place place, Drawing drawing) {
        String text = place.style().get("stroke-dasharray", "none").strip();
        if (text.isEmpty() || text.equals("none")) {
            return new double[0];
        }
        List<Double> list = new ArrayList<>();
        double sum = 0;
        try {
            NumberScanner in = new NumberScanner(text);
            while (!in.isAtEnd()) {
                double dash = place.lengths().next(in, Lengths.Axis.DIAGONAL);
                if (dash < 0) {
                    throw new BadValueException("has a negative length");
                }
                sum += dash;
                list.add(dash);
                in.skipSeparator();
            }
        } catch (BadValueException e) {
            drawing.report().badValue(element, "stroke-dasharray", e.getMessage(), "a whole line is drawn");
            return new double[0];
        }
        if (sum == 0) {
            return new double[0];
        }
        if ((list.size() & 1) != 0) {
            list.addAll(List.copyOf(list));
        }
        return list.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private static double length(Element element, Style style, String property, String initial, Place place, Drawing drawing) {
        try {
            return place.lengths().parse(style.get(property, initial), Lengths.Axis.DIAGONAL);
        } catch (BadValueException e) {
            drawing.report().badValue(element, property, e.getMessage(), initial + " is used");
            return Double.parseDouble(initial);
        }
    }
}
