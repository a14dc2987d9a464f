// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.util.Locale;
import java.util.Set;
import kerfglow.api.proof.ImportNote.Kind;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/** Looks once at every element for what is not taken over, whether it is drawn, used or neither. */
final class Survey {
    private static final Set<String> KNOWN = Set.of("svg", "g", "defs", "symbol", "use", "switch", "a", "path", "rect", "circle", "ellipse",
            "line", "polyline", "polygon", "image", "text", "tspan", "textPath", "linearGradient", "radialGradient", "meshgradient",
            "meshrow", "meshpatch", "stop", "pattern", "hatch", "hatchpath", "solidcolor", "clipPath", "mask", "marker", "filter", "title",
            "desc", "metadata", "style", "view", "cursor", "color-profile");
    private static final Set<String> ANIMATION = Set.of("animate", "animateColor", "animateMotion", "animateTransform", "set", "mpath", "discard");
    private static final Set<String> SVG_FONT = Set.of("font", "glyph", "missing-glyph", "hkern", "vkern", "font-face", "font-face-src",
            "font-face-uri", "font-face-name", "font-face-format", "altGlyph", "altGlyphDef", "altGlyphItem", "glyphRef");
    /** Elements whose reference brings something into the picture; the reference of a link brings nothing. */
    private static final Set<String> BRINGS_IN = Set.of("use", "image", "tref", "textPath", "linearGradient", "radialGradient", "pattern",
            "filter", "feImage", "script", "color-profile", "cursor", "font-face-uri", "mpath");
    private static final int LONGEST_QUOTE = 60;
    private final Report report;
    private long count;

    private Survey(Report report) {
        this.report = report;
    }

    /** Reports, and counts the elements. */
    static long of(SvgSource source, Report report) {
        Survey survey = new Survey(report);
        for (String data : source.styleSheetReferences()) {
            report.add(Kind.REFUSED_REFERENCE, "svg", 0, "the style sheet in " + data + " is not fetched; its rules do not hold");
        }
        survey.look(source.root());
        return survey.count;
    }

    private void look(Element element) {
        count++;
        if (Names.UNKNOWN_SVG.equals(element.getNamespaceURI())) {
            tag(element, element.getLocalName());
        }
        if (Names.isSvg(element)) {
            tag(element, element.getLocalName());
            attributes(element);
            reference(element);
            if (element.getLocalName().equals("foreignObject")) {
                return;
            }
        }
        for (Element child : Names.children(element)) {
            look(child);
        }
    }

    private void tag(Element element, String tag) {
        if (KNOWN.contains(tag) || tag.startsWith("fe")) {
            return;
        }
        if (tag.equals("script") || tag.equals("handler")) {
            report.add(Kind.SCRIPT, element, "a script is not run");
        } else if (ANIMATION.contains(tag)) {
            report.add(Kind.ANIMATION, element, "the animation " + tag + " is left out; the still state is used");
        } else if (SVG_FONT.contains(tag)) {
            report.add(Kind.UNSUPPORTED, element, "a font that comes with the file (" + tag + ") is not used; text in it is substituted");
        } else if (tag.equals("foreignObject")) {
            report.add(Kind.UNSUPPORTED, element, "foreignObject holds something other than SVG; it is left out");
        } else {
            report.add(Kind.UNSUPPORTED, element, "the element " + tag + " is not understood; it is left out with all that is in it");
        }
    }

    private void attributes(Element element) {
        for (int i = 0; i < element.getAttributes().getLength(); i++) {
            Node attribute = element.getAttributes().item(i);
            String name = attribute.getNodeName().toLowerCase(Locale.ROOT);
            if (attribute.getNamespaceURI() == null && name.startsWith("on") && name.length() > 2) {
                report.add(Kind.SCRIPT, element, "the event handler " + name + " is not run");
            }
        }
    }

    private void reference(Element element) {
        String href = Names.href(element);
        if (!BRINGS_IN.contains(element.getLocalName()) || href.isEmpty() || href.startsWith("#") || Images.isEmbedded(href)) {
            if (element.getLocalName().equals("use") && Images.isEmbedded(href)) {
                report.add(Kind.REFUSED_REFERENCE, element, "use of a document inside a data URI is not followed");
            }
            return;
        }
        String quoted = href.length() > LONGEST_QUOTE ? href.substring(0, LONGEST_QUOTE) + "..." : href;
        report.add(Kind.REFUSED_REFERENCE, element, element.getLocalName() + " refers to \"" + quoted + "\" outside the file, which is not fetched");
    }
}
