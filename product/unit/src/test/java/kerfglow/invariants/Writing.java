// SPDX-License-Identifier: Apache-2.0
package kerfglow.invariants;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Collectors;
import org.locationtech.jts.geom.util.AffineTransformation;

/** The ways in which one drawing can be written as SVG. Each gives the same shapes, ids and layers. */
enum Writing {
    /** Paths with attributes, under one transform. */
    PATHS,
    /** The transform worked into the numbers. */
    NUMBERS,
    /** Rectangles, circles and polygons where they are such. */
    BASIC_SHAPES,
    /** Style sheet and style attributes for presentation attributes. */
    STYLES,
    /** Every shape defined apart and used. */
    USED,
    /** Every shape a symbol. */
    SYMBOLS,
    /** A nested svg element with a view box of its own, in tenths. */
    NESTED,
    /** Shapes of each layer parted into groups, some with transforms that cancel. */
    GROUPS,
    /** Shapes of each layer in another order; those of one paint alone, for the order of paints is part of a drawing. */
    REORDERED,
    /** Every closed outline the other way round, begun elsewhere. */
    REVERSED;

    /** The page in mm and what is drawn on it, mapped. */
    String svg(Sample sample, AffineTransformation map, double widthMm, double heightMm) {
        String layers = sample.layers().entrySet().stream().map(entry -> layer(sample, entry.getKey(), entry.getValue(), map)).collect(Collectors.joining());
        String body = switch (this) {
            case NUMBERS -> layers;
            case NESTED -> String.format("<svg overflow=\"visible\" x=\"0\" y=\"0\" width=\"%1$s\" height=\"%2$s\" viewBox=\"0 0 %3$s %4$s\"><g transform=\"scale(10)\"><g transform=\"%5$s\">%6$s</g></g></svg>",
                    Figure.number(widthMm), Figure.number(heightMm), Figure.number(10 * widthMm), Figure.number(10 * heightMm), matrix(map), layers);
            default -> "<g transform=\"" + matrix(map) + "\">" + layers + "</g>";
        };
        return String.format("<svg xmlns=\"http://www.w3.org/2000/svg\" xmlns:xlink=\"http://www.w3.org/1999/xlink\" width=\"%1$smm\" height=\"%2$smm\" viewBox=\"0 0 %1$s %2$s\">%3$s%4$s</svg>",
                Figure.number(widthMm), Figure.number(heightMm), this == STYLES ? style(sample) : "", body);
    }

    static String matrix(AffineTransformation map) {
        double[] m = map.getMatrixEntries();
        return "matrix(" + m[0] + " " + m[3] + " " + m[1] + " " + m[4] + " " + m[2] + " " + m[5] + ")";
    }

    private static String style(Sample sample) {
        return sample.layers().values().stream().flatMap(List::stream).map(Figure::paint).distinct()
                .map(paint -> ".c" + paint.substring(1) + "{fill:" + paint + "}").collect(Collectors.joining("", "<style>path{fill-rule:evenodd}", "</style>"));
    }

    private String layer(Sample sample, String name, List<Figure> figures, AffineTransformation map) {
        List<Figure> order = figures;
        if (this == REORDERED && figures.stream().map(Figure::paint).distinct().count() == 1) {
            order = new ArrayList<>(figures);
            Collections.shuffle(order, new Random(5));
        }
        StringBuilder text = new StringBuilder("<g id=\"" + name + "\">");
        for (int i = 0; i < order.size(); i++) {
            String shape = shape(order.get(i), map);
            if (this == GROUPS && i % 3 == 0) {
                shape = "<g transform=\"translate(31.25 -7.5)\"><g transform=\"translate(-31.25 7.5)\">" + shape + "</g></g>";
            } else if (this == GROUPS && i % 3 == 1) {
                shape = "<g><a>" + shape + "</a></g>";
            }
            text.append(shape).append('\n');
        }
        String beside = sample.beside().getOrDefault(name, "");
        text.append(this == NUMBERS && !beside.isEmpty() ? "<g transform=\"" + matrix(map) + "\">" + beside + "</g>" : beside);
        return text.append("</g>").toString();
    }

    private String shape(Figure figure, AffineTransformation map) {
        AffineTransformation none = new AffineTransformation();
        String id = " id=\"" + figure.id() + "\"";
        String paint = " fill=\"" + figure.paint() + "\" fill-rule=\"evenodd\"";
        return switch (this) {
            case NUMBERS -> "<path" + id + paint + " d=\"" + figure.data(map) + "\"/>";
            case STYLES -> "<path" + id + " class=\"c" + figure.paint().substring(1) + "\" fill=\"#123456\" d=\"" + figure.data(none) + "\"/>";
            case BASIC_SHAPES -> basic(figure, id, paint);
            case USED -> "<defs><path id=\"of-" + figure.id() + "\" fill-rule=\"evenodd\" d=\"" + figure.data(none) + "\"/></defs><use" + id
                    + " xlink:href=\"#of-" + figure.id() + "\" x=\"0\" y=\"0\" fill=\"" + figure.paint() + "\"/>";
            case SYMBOLS -> "<symbol overflow=\"visible\" id=\"of-" + figure.id() + "\"><path" + id + " fill-rule=\"evenodd\" d=\"" + figure.data(none) + "\"/></symbol><use"
                    + " href=\"#of-" + figure.id() + "\" fill=\"" + figure.paint() + "\"/>";
            case REVERSED -> "<path" + id + paint + " d=\"" + figure.turned(1).data(none) + "\"/>";
            default -> "<path" + id + paint + " d=\"" + figure.data(none) + "\"/>";
        };
    }

    private static String basic(Figure figure, String id, String paint) {
        Figure.Contour contour = figure.contours().get(0);
        double[] from = contour.start();
        return switch (figure.kind()) {
            case RECTANGLE -> "<rect" + id + paint + " x=\"" + from[0] + "\" y=\"" + from[1] + "\" width=\"" + (contour.pieces().get(1)[0] - from[0])
                    + "\" height=\"" + (contour.pieces().get(1)[1] - from[1]) + "\"/>";
            case CIRCLE -> {
                double radius = contour.pieces().get(0)[0];
                yield "<circle" + id + paint + " cx=\"" + (from[0] - radius) + "\" cy=\"" + from[1] + "\" r=\"" + radius + "\"/>";
            }
            case POLYGON -> "<polygon" + id + paint + " points=\"" + from[0] + "," + from[1] + " "
                    + contour.pieces().stream().map(piece -> piece[0] + "," + piece[1]).collect(Collectors.joining(" ")) + "\"/>";
            case PATH -> "<path" + id + paint + " d=\"" + figure.data(new AffineTransformation()) + "\"/>";
        };
    }
}
