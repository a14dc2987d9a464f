// SPDX-License-Identifier: Apache-2.0
package kerfglow.fuzz;

import com.code_intelligence.jazzer.api.FuzzedDataProvider;
import java.util.List;

/** Makes a drawing that is SVG in form and anything in value. Small, so that thousands are tried in a minute. */
final class SvgGrammar {
    private static final int MOST_ELEMENTS = 10;
    private static final int MOST_DEPTH = 4;
    private static final List<String> IDS = List.of("a", "b", "c", "a1", "\u0085", "x y", "\u202e", "../a", "%n", "=1+1", "&lt;b&gt;", "&#10;", "\u00e9", "]]&gt;");
    private static final List<String> NUMBERS = List.of("0", "1", "5", "10", "20", "33.3", "50", "100", "-1", "-10", "1e-9", "1e9", "1e300", "1e999", "NaN", "-0", ".5", "1e-300", "0.0001", "9999999999999999", "", "x", "1e", "+", "Infinity");
    private static final List<String> UNITS = List.of("", "", "", "mm", "in", "px", "%", "em", "ex", "pt", "Q", "vw", "furlong");
    private static final List<String> COLOURS = List.of("black", "none", "#123", "#fff", "red", "url(#a)", "url(#c) red", "currentColor", "rgb(1,2,3)", "rgba(0,0,0,.5)", "hsl(1e9,1%,1%)", "inherit", "var(--a)", "octarine", "url(http://127.0.0.1/)");
    private static final List<String> SHAPES = List.of("rect", "circle", "ellipse", "line", "polyline", "polygon", "path", "use", "text", "image");
    private static final List<String> GROUPS = List.of("g", "svg", "symbol", "a", "switch", "defs", "clipPath", "mask", "pattern", "marker", "foreignObject", "linearGradient", "style", "tspan");

    private final FuzzedDataProvider data;
    private int left = MOST_ELEMENTS;

    SvgGrammar(FuzzedDataProvider data) {
        this.data = data;
    }

    String drawing() {
        StringBuilder svg = new StringBuilder();
        if (data.consumeInt(0, 15) == 15) {
            svg.append("<?xml version='1.1'?>"); // lets control characters through as references
        }
        svg.append("<svg xmlns='http://www.w3.org/2000/svg' xmlns:xlink='http://www.w3.org/1999/xlink' xmlns:inkscape='urn:i' ");
        svg.append(data.consumeInt(0, 3) > 0 ? "width='100mm' height='100mm' viewBox='0 0 100 100'" : attribute("width", length()) + attribute("height", length()) + attribute("viewBox", numbers(4)));
        svg.append('>');
        while (left > 0 && data.remainingBytes() > 0) {
            element(svg, 0);
        }
        return svg.append("</svg>").toString();
    }

    private void element(StringBuilder svg, int depth) {
        left--;
        if (depth < MOST_DEPTH && data.consumeInt(0, 3) == 0) {
            String tag = data.pickValue(GROUPS);
            open(svg, tag);
            svg.append('>');
            if (tag.equals("style")) {
                svg.append(".a,#b,g rect:not(#c){").append(css()).append("}@media all{*{").append(css()).append("}}");
            }
            for (int i = data.consumeInt(0, 3); i > 0 && left > 0; i--) {
                element(svg, depth + 1);
            }
            svg.append("</").append(tag).append('>');
            return;
        }
        String tag = data.pickValue(SHAPES);
        open(svg, tag);
        svg.append(geometry(tag));
        svg.append(tag.equals("text") ? ">" + data.pickValue(List.of("A", "Ag\u05d0", "", "\u202eB", "i\u0301", " ")) + "</text>" : "/>");
    }

    private void open(StringBuilder svg, String tag) {
        svg.append('<').append(tag);
        if (data.consumeBoolean()) {
            svg.append(attribute(data.pickValue(List.of("id", "id", "class", "inkscape:label", "aria-label", "data-part", "data-name")), data.pickValue(IDS)));
        }
        for (int i = data.consumeInt(0, 3); i > 0; i--) {
            svg.append(switch (data.consumeInt(0, 9)) {
                case 0 -> attribute("fill", data.pickValue(COLOURS));
                case 1 -> attribute("stroke", data.pickValue(COLOURS)) + attribute("stroke-width", length());
                case 2 -> attribute("transform", transform());
                case 3 -> attribute("style", css());
                case 4 -> attribute("clip-path", "url(#" + data.pickValue(IDS) + ")");
                case 5 -> attribute("stroke-dasharray", numbers(data.consumeInt(1, 4))) + attribute("stroke-dashoffset", length());
                case 6 -> attribute("stroke-linejoin", data.pickValue(List.of("round", "bevel", "miter", "arcs"))) + attribute("stroke-miterlimit", number());
                case 7 -> attribute("stroke-linecap", data.pickValue(List.of("round", "square", "butt"))) + attribute("pathLength", number());
                case 8 -> attribute("fill-rule", "evenodd") + attribute("clipPathUnits", "objectBoundingBox") + attribute("font-size", length());
                default -> attribute("viewBox", numbers(4)) + attribute("preserveAspectRatio", data.pickValue(List.of("none", "xMidYMid slice", "defer xMinYMax", "")));
            });
        }
    }

    private String geometry(String tag) {
        return switch (tag) {
            case "rect", "image" -> attribute("x", length()) + attribute("y", length()) + attribute("width", length()) + attribute("height", length()) + (data.consumeBoolean() ? attribute("rx", length()) : "")
                    + (tag.equals("image") ? attribute("href", data.pickValue(List.of("data:image/png;base64,iVBORw0KGgo=", "file:///etc/hostname", "data:,", "http://127.0.0.1/a.png"))) : "");
            case "circle" -> attribute("cx", length()) + attribute("cy", length()) + attribute("r", length());
            case "ellipse" -> attribute("cx", length()) + attribute("cy", length()) + attribute("rx", length()) + attribute("ry", length());
            case "line" -> attribute("x1", length()) + attribute("y1", length()) + attribute("x2", length()) + attribute("y2", length());
            case "polyline", "polygon" -> attribute("points", numbers(data.consumeInt(0, 12)));
            case "path" -> attribute("d", path());
            case "use" -> attribute(data.pickValue(List.of("href", "xlink:href")), data.pickValue(List.of("#a", "#b", "#c", "#a1", "", "#", "other.svg#a"))) + attribute("x", length());
            default -> attribute("x", length()) + attribute("y", length()) + attribute("dx", numbers(2)) + attribute("rotate", number());
        };
    }

    private String path() {
        StringBuilder path = new StringBuilder("M10 10");
        for (int i = data.consumeInt(0, 10); i > 0; i--) {
            String command = data.pickValue(List.of("M", "L", "l", "H", "v", "C", "c", "S", "q", "T", "A", "a", "Z", "z", "B"));
            path.append(command).append(numbers("Zz".contains(command) ? 0 : "Aa".contains(command) ? 7 : "Cc".contains(command) ? 6 : "Sq".contains(command) ? 4 : "Hv".contains(command) ? 1 : 2));
        }
        return path.toString();
    }

    private String transform() {
        StringBuilder transform = new StringBuilder();
        for (int i = data.consumeInt(1, 3); i > 0; i--) {
            transform.append(data.pickValue(List.of("translate", "scale", "rotate", "skewX", "matrix", "skewY", "scale3d"))).append('(').append(numbers(data.consumeInt(0, 6))).append(") ");
        }
        return transform.toString();
    }

    private String css() {
        StringBuilder css = new StringBuilder();
        for (int i = data.consumeInt(0, 4); i > 0; i--) {
            css.append(data.pickValue(List.of("fill", "stroke", "stroke-width", "x", "r", "width", "d", "transform", "transform-origin", "--a", "font", "opacity", "display", "clip-path", "stroke-dasharray"))).append(':')
                    .append(data.consumeBoolean() ? length() : data.pickValue(List.of("red", "none", "inherit", "var(--a)", "path('M0 0h9v9z')", "rotate(1e9deg)", "scale(1e308)", "calc(1px + 1e999mm)", "url(#a)", "bold 1e9px x", "unset !important")))
                    .append(';');
        }
        return css.toString();
    }

    private String numbers(int count) {
        StringBuilder numbers = new StringBuilder();
        for (int i = 0; i < count; i++) {
            numbers.append(i == 0 ? "" : " ").append(number());
        }
        return numbers.toString();
    }

    private String length() {
        return number() + data.pickValue(UNITS);
    }

    private String number() {
        return data.consumeInt(0, 2) == 0 ? data.pickValue(NUMBERS) : Integer.toString(data.consumeInt(-20, 120));
    }

    private static String attribute(String name, String value) {
        return " " + name + "=\"" + value + "\"";
    }
}
