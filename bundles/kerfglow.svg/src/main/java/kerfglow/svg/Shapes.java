// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.util.Optional;
import java.util.Set;
import kerfglow.api.proof.ImportNote.Kind;
import org.w3c.dom.Element;

/** The path of each basic shape: SVG 2, chapters 9 and 10. */
final class Shapes {
    private static final Set<String> TAGS = Set.of("path", "rect", "circle", "ellipse", "line", "polyline", "polygon");
    private final Report report;

    Shapes(Report report) {
        this.report = report;
    }

    static boolean isShape(Element element) {
        return TAGS.contains(element.getLocalName());
    }

    /** The path in user units; nothing when the shape draws nothing, which a note says. */
    Optional<DrawnPath> path(Element element, Style style, Lengths lengths) {
        DrawnPath path = switch (element.getLocalName()) {
            case "path" -> pathData(element, style);
            case "rect" -> rect(element, style, lengths);
            case "circle" -> {
                double r = size(element, style, "r", lengths, Lengths.Axis.DIAGONAL);
                yield ellipse(element, style, lengths, r, r);
            }
            case "ellipse" -> {
                double rx = autoSize(element, style, "rx", lengths, Lengths.Axis.X);
                double ry = autoSize(element, style, "ry", lengths, Lengths.Axis.Y);
                yield ellipse(element, style, lengths, Double.isNaN(rx) ? ry : rx, Double.isNaN(ry) ? rx : ry);
            }
            case "line" -> new DrawnPath()
                    .moveTo(place(element, style, "x1", lengths, Lengths.Axis.X), place(element, style, "y1", lengths, Lengths.Axis.Y))
                    .lineTo(place(element, style, "x2", lengths, Lengths.Axis.X), place(element, style, "y2", lengths, Lengths.Axis.Y));
            default -> points(element);
        };
        if (path.size() == 0) {
            report.add(Kind.BAD_VALUE, element, "this " + element.getLocalName() + " has no size and draws nothing; it is left out");
            return Optional.empty();
        }
        return Optional.of(path);
    }

    /** A coordinate; 0 where it is not given or cannot be read. */
    double place(Element element, Style style, String name, Lengths lengths, Lengths.Axis axis) {
        String text = value(element, style, name);
        if (text.isEmpty() || text.equals("auto")) {
            return 0;
        }
        try {
            return lengths.parse(text, axis);
        } catch (BadValueException e) {
            report.badValue(element, name, e.getMessage(), "0 is used");
            return 0;
        }
    }

    /** A size; 0, which draws nothing, where it is not given, negative or cannot be read. */
    double size(Element element, Style style, String name, Lengths lengths, Lengths.Axis axis) {
        double size = autoSize(element, style, name, lengths, axis);
        return Double.isNaN(size) ? 0 : size;
    }

    /** As {@link #size}, but not a number where it is not given or "auto". */
    double autoSize(Element element, Style style, String name, Lengths lengths, Lengths.Axis axis) {
        String text = value(element, style, name);
        if (text.isEmpty() || text.equals("auto")) {
            return Double.NaN;
        }
        try {
            double size = lengths.parse(text, axis);
            if (size < 0) {
                throw new BadValueException("is negative (" + text + ")");
            }
            return size;
        } catch (BadValueException e) {
            report.badValue(element, name, e.getMessage(), "0 is used");
            return 0;
        }
    }

    /** Geometry properties of CSS win over the attributes: SVG 2, 6.6. */
    private static String value(Element element, Style style, String name) {
        return style.get(name, element.getAttributeNS(null, name)).strip();
    }

    private DrawnPath pathData(Element element, Style style) {
        String text = element.getAttributeNS(null, "d");
        String css = style.get("d", "").strip();
        if (css.startsWith("path(") && css.endsWith(")")) {
            text = css.substring("path(".length(), css.length() - 1).strip().replaceAll("^[\"']|[\"']$", "");
        } else if (css.equals("none")) {
            text = "";
        }
        PathData.Reading reading = PathData.read(text);
        if (!reading.error().isEmpty()) {
            report.badValue(element, "d", reading.error(), "the path is drawn up to there");
        }
        return reading.path();
    }

    private DrawnPath rect(Element element, Style style, Lengths lengths) {
        double x = place(element, style, "x", lengths, Lengths.Axis.X);
        double y = place(element, style, "y", lengths, Lengths.Axis.Y);
        double width = size(element, style, "width", lengths, Lengths.Axis.X);
        double height = size(element, style, "height", lengths, Lengths.Axis.Y);
        DrawnPath path = new DrawnPath();
        if (width == 0 || height == 0) {
            return path;
        }
        double rx = autoSize(element, style, "rx", lengths, Lengths.Axis.X);
        double ry = autoSize(element, style, "ry", lengths, Lengths.Axis.Y);
        double cornerX = Math.min(Double.isNaN(rx) ? Double.isNaN(ry) ? 0 : ry : rx, width / 2);
        double cornerY = Math.min(Double.isNaN(ry) ? Double.isNaN(rx) ? 0 : rx : ry, height / 2);
        if (cornerX == 0 || cornerY == 0) {
            return path.moveTo(x, y).lineTo(x + width, y).lineTo(x + width, y + height).lineTo(x, y + height).close();
        }
        double right = x + width;
        double bottom = y + height;
        boolean straightX = width > 2 * cornerX;
        boolean straightY = height > 2 * cornerY;
        path.moveTo(x + cornerX, y);
        if (straightX) {
            path.lineTo(right - cornerX, y);
        }
        path.arcTo(cornerX, cornerY, 0, false, true, right, y + cornerY);
        if (straightY) {
            path.lineTo(right, bottom - cornerY);
        }
        path.arcTo(cornerX, cornerY, 0, false, true, right - cornerX, bottom);
        if (straightX) {
            path.lineTo(x + cornerX, bottom);
        }
        path.arcTo(cornerX, cornerY, 0, false, true, x, bottom - cornerY);
        if (straightY) {
            path.lineTo(x, y + cornerY);
        }
        return path.arcTo(cornerX, cornerY, 0, false, true, x + cornerX, y).close();
    }

    private DrawnPath ellipse(Element element, Style style, Lengths lengths, double rx, double ry) {
        double cx = place(element, style, "cx", lengths, Lengths.Axis.X);
        double cy = place(element, style, "cy", lengths, Lengths.Axis.Y);
        DrawnPath path = new DrawnPath();
        if (!(rx > 0 && ry > 0)) {
            return path;
        }
        return path.moveTo(cx + rx, cy).arcTo(rx, ry, 0, false, true, cx, cy + ry).arcTo(rx, ry, 0, false, true, cx - rx, cy)
                .arcTo(rx, ry, 0, false, true, cx, cy - ry).arcTo(rx, ry, 0, false, true, cx + rx, cy).close();
    }

    private DrawnPath points(Element element) {
        DrawnPath path = new DrawnPath();
        NumberScanner in = new NumberScanner(element.getAttributeNS(null, "points"));
        try {
            in.skipSpace();
            while (!in.isAtEnd()) {
                double x = in.number();
                in.skipSeparator();
                double y = in.number();
                in.skipSeparator();
                if (path.size() == 0) {
                    path.moveTo(x, y);
                } else {
                    path.lineTo(x, y);
                }
            }
        } catch (BadValueException e) {
            report.badValue(element, "points", e.getMessage(), "the outline is drawn up to there");
        }
        return element.getLocalName().equals("polygon") ? path.close() : path;
    }
}
