// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.awt.geom.AffineTransform;
import java.util.ArrayList;
import java.util.List;
import kerfglow.api.proof.ImportNote.Kind;
import org.apache.batik.anim.dom.SVGDOMImplementation;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.Text;

/**
 * A document of its own for one text: only positions, fonts and characters, every length in enlarged units from the text's start, and
 * the fill colour of each element a running number by which its glyphs are found again.
 */
final class TextCopy {
    /** Fonts are drawn on 1000, 1024 or 2048 units; at this size glyphs of the latter two come out without rounding. */
    private static final double LAYOUT_SIZE = 16384;
    private static final String XML = "http://www.w3.org/XML/1998/namespace";
    private static final List<String> COPIED = List.of("font-style", "font-weight", "font-stretch", "text-anchor", "direction",
            "writing-mode", "unicode-bidi", "text-decoration", "dominant-baseline", "alignment-baseline");
    private static final List<String> KEYWORDS_OR_LENGTHS = List.of("letter-spacing", "word-spacing", "kerning", "baseline-shift");

    /** @param mark the fill colour; @param element whose characters; @param place its style; @param font chosen for it */
    record Part(int mark, Element element, Place place, Fonts.Choice font) {
    }

    private final Drawing drawing;
    private final Fonts fonts;
    private final Document document;
    private final List<Part> parts = new ArrayList<>();
    private final double factor;
    private final double originX;
    private final double originY;
    private int paths;

    TextCopy(Drawing drawing, Fonts fonts, Element text, Place place) {
        this.drawing = drawing;
        this.fonts = fonts;
        factor = LAYOUT_SIZE / place.style().fontSize();
        originX = first(text, "x", place.lengths(), Lengths.Axis.X);
        originY = first(text, "y", place.lengths(), Lengths.Axis.Y);
        document = SVGDOMImplementation.getDOMImplementation().createDocument(Names.SVG, "svg", null);
        document.getDocumentElement().setAttributeNS(null, "width", "1000");
        document.getDocumentElement().setAttributeNS(null, "height", "1000");
        document.getDocumentElement().appendChild(copy(text, place, 0));
    }

    Document document() {
        return document;
    }

    List<Part> parts() {
        return parts;
    }

    /** Back from enlarged units. */
    double x(double value) {
        return value / factor + originX;
    }

    double y(double value) {
        return value / factor + originY;
    }

    double size(double value) {
        return value / factor;
    }

    private Element copy(Element from, Place place, int nesting) {
        String tag = nesting == 0 ? "text" : from.getLocalName().equals("textPath") ? "textPath" : "tspan";
        Element to = document.createElementNS(Names.SVG, tag);
        Style style = place.style();
        int mark = parts.size() + 1;
        Fonts.Choice font = fonts.choose(style.get("font-family", "sans-serif"));
        parts.add(new Part(mark, from, place, font));
        set(to, "fill", String.format("#%06x", mark));
        set(to, "font-family", "'" + font.used().replace("'", "") + "', '" + Fonts.FALLBACK + "'");
        set(to, "font-size", number(style.fontSize() * factor));
        for (String property : COPIED) {
            if (style.sets(property)) {
                set(to, property, style.get(property, ""));
            }
        }
        for (String property : KEYWORDS_OR_LENGTHS) {
            spacing(from, to, property, place);
        }
        positions(from, to, place);
        if (from.hasAttributeNS(null, "rotate")) {
            set(to, "rotate", from.getAttributeNS(null, "rotate"));
        }
        if (from.hasAttributeNS(null, "textLength")) {
            set(to, "textLength", lengths(from, "textLength", place.lengths(), Lengths.Axis.X, 0));
            set(to, "lengthAdjust", from.getAttributeNS(null, "lengthAdjust").equals("spacingAndGlyphs") ? "spacingAndGlyphs" : "spacing");
        }
        boolean keepsSpace = style.get("white-space", "normal").startsWith("pre") || "preserve".equals(space(from));
        to.setAttributeNS(XML, "xml:space", keepsSpace ? "preserve" : "default");
        if (tag.equals("textPath")) {
            path(from, to, place);
        }
        children(from, to, place, nesting);
        return to;
    }

    private void children(Element from, Element to, Place place, int nesting) {
        for (Node child = from.getFirstChild(); child != null; child = child.getNextSibling()) {
            if (child instanceof Text characters) {
                to.appendChild(document.createTextNode(characters.getData()));
            } else if (child instanceof Element element && Names.isSvg(element)
                    && List.of("tspan", "textPath", "a").contains(element.getLocalName())) {
                Place inner = place.styled(drawing.cascade().of(element, place.style()))
                        .below(element.getAttributeNS(null, "id"), element.getAttributeNS(null, "data-part").strip());
                if (inner.style().get("display", "inline").equals("none")) {
                    drawing.report().add(Kind.UNSUPPORTED, element, "this part of the text is not displayed and is left out");
                } else {
                    to.appendChild(copy(element, inner, nesting + 1));
                }
            }
        }
    }

    private void positions(Element from, Element to, Place place) {
        for (String name : List.of("x", "y", "dx", "dy")) {
            if (from.hasAttributeNS(null, name) && !from.getLocalName().equals("textPath")) {
                Lengths.Axis axis = name.endsWith("x") ? Lengths.Axis.X : Lengths.Axis.Y;
                double origin = name.equals("x") ? originX : name.equals("y") ? originY : 0;
                set(to, name, lengths(from, name, place.lengths(), axis, origin));
            }
        }
    }

    private void spacing(Element from, Element to, String property, Place place) {
        String text = place.style().get(property, "");
        if (text.isEmpty() || text.equals("normal") || text.equals("auto") || text.equals("none") || text.equals("baseline")) {
            return;
        }
        if (text.equals("sub") || text.equals("super")) {
            set(to, property, text);
            return;
        }
        try {
            Lengths em = place.lengths().within(place.style().fontSize(), place.style().fontSize());
            set(to, property, number(em.parse(text, Lengths.Axis.X) * factor));
        } catch (BadValueException e) {
            drawing.report().badValue(from, property, e.getMessage(), "it is left out");
        }
    }

    /** The path that the text runs along, as a path of the copy. */
    private void path(Element from, Element to, Place place) {
        String href = Names.href(from);
        Element target = href.startsWith("#") ? drawing.source().byId().get(href.substring(1)) : null;
        if (target == null || !Shapes.isShape(target)) {
            drawing.report().badValue(from, "href", "refers to " + href + ", which is no path in this file", "the text on it is left out");
            return;
        }
        Place own = Transforms.applied(target, new Place(new AffineTransform(), drawing.cascade().inDocument(target), place.lengths(),
                Clip.NONE, java.util.Set.of(), true, false, "", "", List.of(), 0), drawing);
        DrawnPath path = drawing.shapes().path(target, own.style(), place.lengths()).orElse(new DrawnPath());
        StringBuilder data = new StringBuilder();
        double chordError = drawing.options().chordErrorMm() / Math.max(Double.MIN_NORMAL, Linear.largestStretch(place.toMm()));
        for (Subpath subpath : Flattener.flatten(path, own.toMm(), chordError, drawing.budget())) {
            org.locationtech.jts.geom.Coordinate[] points = Areas.toMm(subpath, own.toMm());
            for (int i = 0; i < points.length + (subpath.closed() ? 1 : 0); i++) {
                org.locationtech.jts.geom.Coordinate p = points[i % points.length];
                data.append(i == 0 ? 'M' : 'L').append(number((p.x - originX) * factor)).append(' ')
                        .append(number((p.y - originY) * factor));
            }
        }
        Element copy = document.createElementNS(Names.SVG, "path");
        String id = "path" + ++paths;
        set(copy, "id", id);
        set(copy, "d", data.toString());
        Element defs = document.createElementNS(Names.SVG, "defs");
        defs.appendChild(copy);
        document.getDocumentElement().insertBefore(defs, document.getDocumentElement().getFirstChild());
        to.setAttributeNS(Names.XLINK, "xlink:href", "#" + id);
        String offset = from.getAttributeNS(null, "startOffset").strip();
        if (!offset.isEmpty()) {
            set(to, "startOffset", offset.endsWith("%") ? offset : lengths(from, "startOffset", place.lengths(), Lengths.Axis.X, 0));
        }
    }

    private String lengths(Element from, String name, Lengths lengths, Lengths.Axis axis, double origin) {
        StringBuilder list = new StringBuilder();
        try {
            NumberScanner in = new NumberScanner(from.getAttributeNS(null, name).strip());
            while (!in.isAtEnd()) {
                list.append(number((lengths.next(in, axis) - origin) * factor)).append(' ');
                in.skipSeparator();
            }
        } catch (BadValueException e) {
            drawing.report().badValue(from, name, e.getMessage(), "what stands before it is used");
        }
        return list.isEmpty() ? "0" : list.toString().strip();
    }

    private double first(Element text, String name, Lengths lengths, Lengths.Axis axis) {
        try {
            String value = text.getAttributeNS(null, name).strip();
            return value.isEmpty() ? 0 : lengths.next(new NumberScanner(value), axis);
        } catch (BadValueException e) {
            return 0; // told when the list is read
        }
    }

    private static String space(Element element) {
        for (Node at = element; at instanceof Element e; at = at.getParentNode()) {
            if (e.hasAttributeNS(XML, "space")) {
                return e.getAttributeNS(XML, "space");
            }
        }
        return "default";
    }

    /** Plain decimals: Batik's parser takes exponents in some places only. */
    private static String number(double value) {
        return new java.math.BigDecimal(value).setScale(6, java.math.RoundingMode.HALF_EVEN).toPlainString();
    }

    private static void set(Element element, String name, String value) {
        element.setAttributeNS(null, name, value);
    }
}
