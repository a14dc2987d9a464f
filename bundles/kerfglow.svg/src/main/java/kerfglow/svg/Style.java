// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.util.HashMap;
import java.util.Map;
import java.util.Set;

/** The properties that hold for one element, as text. Immutable. */
final class Style {
    /** Properties that children take over: SVG 2, appendix L "Property Index", and the font properties of CSS. */
    private static final Set<String> INHERITED = Set.of("clip-rule", "color", "cursor", "direction", "dominant-baseline", "fill",
            "fill-opacity", "fill-rule", "font", "font-family", "font-size", "font-size-adjust", "font-stretch", "font-style",
            "font-variant", "font-weight", "glyph-orientation-vertical", "image-rendering", "kerning", "letter-spacing", "line-height",
            "marker-end", "marker-mid", "marker-start", "paint-order", "pointer-events", "shape-rendering", "stroke", "stroke-dasharray",
            "stroke-dashoffset", "stroke-linecap", "stroke-linejoin", "stroke-miterlimit", "stroke-opacity", "stroke-width",
            "text-anchor", "text-rendering", "visibility", "white-space", "word-spacing", "writing-mode");

    private final Map<String, String> inherited;
    private final Map<String, String> own;
    private final double fontSize;

    private Style(Map<String, String> inherited, Map<String, String> own, double fontSize) {
        this.inherited = inherited;
        this.own = own;
        this.fontSize = fontSize;
    }

    static Style initial(double fontSize) {
        return new Style(Map.of(), Map.of(), fontSize);
    }

    static boolean isInherited(String property) {
        return property.startsWith("--") || INHERITED.contains(property);
    }

    /** The style of a child that sets {@code specified}; "inherit" and the like are settled already. */
    Style child(Map<String, String> specified, double childFontSize) {
        Map<String, String> down = inherited;
        Map<String, String> here = Map.of();
        for (Map.Entry<String, String> entry : specified.entrySet()) {
            if (isInherited(entry.getKey())) {
                if (down == inherited) {
                    down = new HashMap<>(inherited);
                }
                down.put(entry.getKey(), entry.getValue());
            } else {
                if (here.isEmpty()) {
                    here = new HashMap<>();
                }
                here.put(entry.getKey(), entry.getValue());
            }
        }
        return new Style(down, here, childFontSize);
    }

    /** The value, or {@code initial} where nothing sets it. */
    String get(String property, String initial) {
        String value = own.get(property);
        if (value == null) {
            value = inherited.get(property);
        }
        return value == null ? initial : value;
    }

    boolean sets(String property) {
        return own.containsKey(property) || inherited.containsKey(property);
    }

    double fontSize() {
        return fontSize;
    }
}
