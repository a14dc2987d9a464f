// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import kerfglow.api.proof.ImportNote.Kind;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/** Works out the properties of an element from its attributes, the style sheets and its style attribute. */
final class Cascade {
    private static final int LONGEST_CHAIN = 16;
    private static final int LONGEST_VALUE = 100_000;
    /** CSS Fonts 4, section 2.5: medium as browsers set it, and the steps around it. */
    private static final double MEDIUM = 16;
    private static final Map<String, Double> FONT_SIZES = Map.of("xx-small", 9 / MEDIUM, "x-small", 10 / MEDIUM, "small", 13 / MEDIUM,
            "medium", 1.0, "large", 18 / MEDIUM, "x-large", 24 / MEDIUM, "xx-large", 32 / MEDIUM);
    /** Attributes that are properties: SVG 2, 6.6 "Presentation attributes". Geometry attributes are read where they are used. */
    private static final Set<String> PRESENTATION = Set.of("alignment-baseline", "baseline-shift", "clip", "clip-path", "clip-rule",
            "color", "direction", "display", "dominant-baseline", "fill", "fill-opacity", "fill-rule", "filter", "font", "font-family",
            "font-size", "font-size-adjust", "font-stretch", "font-style", "font-variant", "font-weight", "kerning", "letter-spacing",
            "marker", "marker-end", "marker-mid", "marker-start", "mask", "mix-blend-mode", "opacity", "overflow", "stop-color",
            "stop-opacity", "stroke", "stroke-dasharray", "stroke-dashoffset", "stroke-linecap", "stroke-linejoin",
            "stroke-miterlimit", "stroke-opacity", "stroke-width", "text-anchor", "text-decoration", "transform", "transform-origin",
            "transform-box", "unicode-bidi", "vector-effect", "visibility", "white-space", "word-spacing", "writing-mode");
    /** Properties of CSS that would move or bend a shape and are not followed. */
    private static final Set<String> NOT_FOLLOWED = Set.of("translate", "rotate", "scale", "offset", "offset-path", "zoom",
            "perspective", "clip", "shape-inside", "inline-size", "stroke-alignment", "all");

    private final StyleSheet sheet;
    private final Report report;
    private final double unitsPerInch;

    Cascade(SvgSource source, Report report, Budget budget, double unitsPerInch) {
        this.sheet = new StyleSheet(source, report, budget);
        this.report = report;
        this.unitsPerInch = unitsPerInch;
    }

    Style initial() {
        return Style.initial(MEDIUM * unitsPerInch / kerfglow.api.proof.ImportOptions.CSS_UNITS_PER_INCH);
    }

    /** The style of an element below one with the style {@code parent}. */
    Style of(Element element, Style parent) {
        Map<String, String> specified = new LinkedHashMap<>();
        for (int i = 0; i < element.getAttributes().getLength(); i++) {
            Node attribute = element.getAttributes().item(i);
            if (attribute.getNamespaceURI() == null && PRESENTATION.contains(attribute.getNodeName())) {
                put(specified, attribute.getNodeName(), attribute.getNodeValue().strip());
            }
        }
        List<StyleSheet.Declaration> rules = sheet.of(element);
        List<StyleSheet.Declaration> inline = StyleSheet.declarations(element.getAttributeNS(null, "style"));
        for (boolean important : new boolean[] {false, true}) {
            for (List<StyleSheet.Declaration> source : List.of(rules, inline)) {
                for (StyleSheet.Declaration d : source) {
                    if (d.important() == important) {
                        put(specified, d.property(), d.value());
                    }
                }
            }
        }
        if (specified.isEmpty()) {
            return parent.child(Map.of(), parent.fontSize());
        }
        settle(element, specified, parent);
        return parent.child(specified, fontSize(element, specified, parent));
    }

    /** The style where the element stands in the file, for what is only referred to. */
    Style inDocument(Element element) {
        Node parent = element.getParentNode();
        return of(element, parent instanceof Element above ? inDocument(above) : initial());
    }

    private static void put(Map<String, String> specified, String property, String value) {
        if (property.equals("marker")) {
            specified.put("marker-start", value);
            specified.put("marker-mid", value);
            specified.put("marker-end", value);
        } else if (property.equals("font")) {
            FontShorthand.expand(value, specified);
        } else {
            specified.put(property, value);
        }
    }

    /** Variables first, then the words that stand for another value. */
    private void settle(Element element, Map<String, String> specified, Style parent) {
        specified.entrySet().removeIf(entry -> {
            String value = entry.getValue();
            if (value.contains("var(") && !entry.getKey().startsWith("--")) {
                value = substituted(value, specified, parent, 0);
                if (value == null) {
                    report.badValue(element, entry.getKey(), "has \"" + entry.getValue() + "\", whose variable is not set", "it is left out");
                    return true;
                }
                entry.setValue(value);
            }
            if (NOT_FOLLOWED.contains(entry.getKey()) && !Set.of("none", "auto", "1", "initial").contains(value)) {
                report.add(Kind.UNSUPPORTED, element, "the property " + entry.getKey() + ": " + value + " is not followed");
            }
            if (entry.getKey().startsWith("animation") && !value.equals("none")) {
                report.add(Kind.ANIMATION, element, "the property " + entry.getKey() + " is left out; the still state is used");
            }
            switch (value.toLowerCase(Locale.ROOT)) {
                case "inherit":
                    entry.setValue(parent.get(entry.getKey(), "initial"));
                    return entry.getValue().equals("initial");
                case "unset", "revert":
                    return !keepsInitial(entry, parent, Style.isInherited(entry.getKey()));
                case "initial":
                    return !keepsInitial(entry, parent, false);
                default:
                    return false;
            }
        });
    }

    /** Sets "initial" over an inherited value; true when the entry is still needed. */
    private static boolean keepsInitial(Map.Entry<String, String> entry, Style parent, boolean inherits) {
        if (inherits || !parent.sets(entry.getKey())) {
            return false;
        }
        entry.setValue(initialOf(entry.getKey()));
        return true;
    }

    private static String initialOf(String property) {
        return switch (property) {
            case "fill", "color" -> "black";
            case "fill-rule", "clip-rule" -> "nonzero";
            case "stroke-width", "fill-opacity", "stroke-opacity" -> "1";
            case "stroke-miterlimit" -> "4";
            case "stroke-dashoffset" -> "0";
            case "stroke-linecap" -> "butt";
            case "stroke-linejoin" -> "miter";
            case "visibility" -> "visible";
            case "text-anchor" -> "start";
            case "font-size" -> "medium";
            case "font-family" -> "sans-serif";
            case "font-style", "font-weight", "font-stretch", "font-variant", "letter-spacing", "word-spacing" -> "normal";
            default -> "none";
        };
    }

    private static String substituted(String text, Map<String, String> own, Style parent, int chain) {
        int start = text.indexOf("var(");
        if (start < 0) {
            return text;
        }
        int end = CssText.find(text, start + 4, ")");
        List<String> parts = CssText.split(text.substring(start + 4, Math.min(end, text.length())), ',');
        String name = parts.get(0).strip();
        String value = own.containsKey(name) ? own.get(name) : parent.get(name, null);
        if (value == null && parts.size() > 1) {
            value = String.join(",", parts.subList(1, parts.size())).strip();
        }
        if (value == null || chain > LONGEST_CHAIN || value.length() > LONGEST_VALUE) {
            return null;
        }
        return substituted(text.substring(0, start) + value + text.substring(Math.min(end + 1, text.length())), own, parent, chain + 1);
    }

    private double fontSize(Element element, Map<String, String> specified, Style parent) {
        String text = specified.get("font-size");
        if (text == null) {
            return parent.fontSize();
        }
        String word = text.toLowerCase(Locale.ROOT);
        if (FONT_SIZES.containsKey(word)) {
            return FONT_SIZES.get(word) * initial().fontSize();
        }
        if (word.equals("larger") || word.equals("smaller")) {
            return word.equals("larger") ? parent.fontSize() * 1.2 : parent.fontSize() / 1.2;
        }
        try {
            double size = new Lengths(unitsPerInch, parent.fontSize(), parent.fontSize(), parent.fontSize()).parse(text, Lengths.Axis.X);
            if (size >= 0) {
                return size;
            }
            report.badValue(element, "font-size", "is negative", "the size around it is used");
        } catch (BadValueException e) {
            report.badValue(element, "font-size", e.getMessage(), "the size around it is used");
        }
        return parent.fontSize();
    }
}
