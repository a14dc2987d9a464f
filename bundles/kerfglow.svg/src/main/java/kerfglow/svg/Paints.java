// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import kerfglow.api.proof.ImportNote.Kind;
import kerfglow.api.proof.Paint;
import org.w3c.dom.Element;

/** What a shape is filled or stroked with: SVG 2, 13.2 "Specifying paint". */
final class Paints {
    /**
     * A paint with its own opacity.
     *
     * @param opacity 0 (clear) to 1, the colour's times the property's; of a gradient the property's alone
     * @param server the gradient
     * @param stops of the gradient
     */
    record Painted(Paint paint, double opacity, Optional<Element> server, List<ColourStop> stops) {
        Painted(Paint paint, double opacity) {
            this(paint, opacity, Optional.empty(), List.of());
        }

        static final Painted NOTHING = new Painted(Paint.NONE, 0);

        boolean isSeen() {
            return paint.isPainted() && opacity > 0;
        }
    }

    /** A stop; offsets are settled, so that none is less than the one before. */
    record ColourStop(double offset, Colours.Colour colour) {
    }

    private static final int LONGEST_CHAIN = 16;
    private final SvgSource source;
    private final Cascade cascade;
    private final Report report;
    private final Colours colours = new Colours();
    private final Map<Element, List<ColourStop>> known = new HashMap<>();

    Paints(SvgSource source, Cascade cascade, Report report) {
        this.source = source;
        this.cascade = cascade;
        this.report = report;
    }

    Painted fill(Element element, Style style) {
        return of(element, style, "fill", "black");
    }

    Painted stroke(Element element, Style style) {
        return of(element, style, "stroke", "none");
    }

    private Painted of(Element element, Style style, String property, String initial) {
        String text = style.get(property, initial);
        double opacity = opacity(element, style, property + "-opacity");
        Reference reference = Reference.find(text);
        if (reference == null) {
            return flat(element, style, property, text, opacity);
        }
        if (reference.isOutside()) {
            report.add(Kind.REFUSED_REFERENCE, element, property + " refers to " + reference.quoted() + " outside the file, which is not fetched");
        }
        Element server = reference.isOutside() ? null : source.byId().get(reference.id());
        Painted found = server == null ? null : server(server, opacity);
        if (found != null) {
            return found;
        }
        String fallback = reference.rest();
        if (!reference.isOutside()) {
            report.badValue(element, property, "refers to " + reference.quoted() + ", which is no paint in this file",
                    fallback.isEmpty() ? "nothing is painted" : "its second choice is used");
        }
        return fallback.isEmpty() ? Painted.NOTHING : flat(element, style, property, fallback, opacity);
    }

    private Painted flat(Element element, Style style, String property, String text, double opacity) {
        String word = text.strip();
        if (word.equals("none")) {
            return Painted.NOTHING;
        }
        try {
            Colours.Colour colour = colour(word, style);
            return new Painted(Paint.colour(colour.rgb()), colour.alpha() * opacity);
        } catch (BadValueException e) {
            boolean isFill = property.equals("fill");
            report.badValue(element, property, e.getMessage(), isFill ? "black is used" : "nothing is painted");
            return isFill ? new Painted(Paint.colour(0), opacity) : Painted.NOTHING;
        }
    }

    private Colours.Colour colour(String word, Style style) throws BadValueException {
        if (!word.equalsIgnoreCase("currentColor")) {
            return colours.parse(word);
        }
        String current = style.get("color", "black");
        return colours.parse(current.equalsIgnoreCase("currentColor") ? "black" : current);
    }

    /** A gradient with one stop is a flat colour; one without paints nothing. */
    private Painted server(Element server, double opacity) {
        switch (server.getLocalName()) {
            case "pattern", "hatch":
                return new Painted(new Paint(Paint.Kind.PATTERN, 0), opacity);
            case "linearGradient", "radialGradient", "meshgradient":
                break;
            default:
                return null;
        }
        if (server.getLocalName().equals("meshgradient")) {
            return new Painted(new Paint(Paint.Kind.GRADIENT, 0), opacity);
        }
        List<ColourStop> stops = stopHolder(server).map(holder -> known.computeIfAbsent(holder, this::stops)).orElse(List.of());
        if (stops.isEmpty()) {
            return Painted.NOTHING;
        }
        Colours.Colour first = stops.get(0).colour();
        if (stops.size() == 1) {
            return new Painted(Paint.colour(first.rgb()), first.alpha() * opacity);
        }
        boolean allClear = stops.stream().allMatch(stop -> stop.colour().alpha() == 0);
        List<Integer> all = stops.stream().map(stop -> stop.colour().rgb()).toList();
        return new Painted(new Paint(Paint.Kind.GRADIENT, first.rgb(), all), allClear ? 0 : opacity, Optional.of(server), stops);
    }

    private List<ColourStop> stops(Element holder) {
        List<ColourStop> stops = new ArrayList<>();
        double least = 0;
        for (Element child : Names.children(holder)) {
            if (Names.isSvg(child, "stop")) {
                double offset = child.hasAttributeNS(null, "offset") ? share(child, child.getAttributeNS(null, "offset"), "offset", 0) : 0;
                least = Math.max(least, offset);
                stops.add(new ColourStop(least, stop(child)));
            }
        }
        return stops;
    }

    private Optional<Element> stopHolder(Element gradient) {
        return holder(gradient, at -> {
            for (Element child : Names.children(at)) {
                if (Names.isSvg(child, "stop")) {
                    return true;
                }
            }
            return false;
        });
    }

    /** An attribute of a gradient, or of the nearest one that it refers to and that has it; empty where none has. */
    String inherited(Element gradient, String attribute) {
        return holder(gradient, at -> at.hasAttributeNS(null, attribute)).map(at -> at.getAttributeNS(null, attribute).strip()).orElse("");
    }

    private Optional<Element> holder(Element gradient, Predicate<Element> has) {
        Element at = gradient;
        for (int i = 0; i < LONGEST_CHAIN && at != null; i++) {
            if (has.test(at)) {
                return Optional.of(at);
            }
            String href = Names.href(at);
            at = href.startsWith("#") ? source.byId().get(href.substring(1)) : null;
        }
        return Optional.empty();
    }

    private Colours.Colour stop(Element stop) {
        Style style = cascade.inDocument(stop);
        try {
            Colours.Colour colour = colour(style.get("stop-color", "black"), style);
            return new Colours.Colour(colour.rgb(), colour.alpha() * opacity(stop, style, "stop-opacity"));
        } catch (BadValueException e) {
            report.badValue(stop, "stop-color", e.getMessage(), "black is used");
            return new Colours.Colour(0, 1);
        }
    }

    /** A property from 0 to 1, as a number or a percentage. */
    double opacity(Element element, Style style, String property) {
        return share(element, style.get(property, "1"), property, 1);
    }

    private double share(Element element, String text, String name, int initial) {
        try {
            NumberScanner in = new NumberScanner(text.strip());
            double number = in.number();
            if (in.peek() == '%') {
                number /= 100;
            }
            return Math.max(0, Math.min(1, number));
        } catch (BadValueException e) {
            report.badValue(element, name, e.getMessage(), initial + " is used");
            return initial;
        }
    }
}
