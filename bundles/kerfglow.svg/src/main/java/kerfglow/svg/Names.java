// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/** Names in the document, and the few ways in which an element is asked for its own. */
final class Names {
    static final String SVG = "http://www.w3.org/2000/svg";
    /** For elements in the namespace of SVG that Batik does not know. */
    static final String UNKNOWN_SVG = "urn:kerfglow:unknown-svg";
    static final String XLINK = "http://www.w3.org/1999/xlink";

    private Names() {
    }

    static boolean isSvg(Element element) {
        return SVG.equals(element.getNamespaceURI());
    }

    static boolean isSvg(Element element, String localName) {
        return isSvg(element) && localName.equals(element.getLocalName());
    }

    /** The reference of use, image and the like: SVG 2 writes it plain, SVG 1.1 with the xlink prefix; plain wins. */
    static String href(Element element) {
        return element.hasAttributeNS(null, "href") ? element.getAttributeNS(null, "href").strip()
                : element.getAttributeNS(XLINK, "href").strip();
    }

    /** Child elements in order. */
    static Iterable<Element> children(Node parent) {
        return () -> new Iterator<>() {
            private Element next = firstFrom(parent.getFirstChild());

            @Override
            public boolean hasNext() {
                return next != null;
            }

            @Override
            public Element next() {
                Element now = next;
                next = firstFrom(now.getNextSibling());
                return now;
            }
        };
    }

    /** The text between the tags of the first child title, or empty. */
    static String title(Element element) {
        for (Element child : children(element)) {
            if (isSvg(child, "title")) {
                return child.getTextContent().strip().replaceAll("\\s+", " ");
            }
        }
        return "";
    }

    /**
     * The label that its author gave it: an attribute with the local name "label" in any namespace, aria-label, data-name, or a
     * title; empty when there is none.
     */
    static String label(Element element) {
        List<String> found = new ArrayList<>();
        for (int i = 0; i < element.getAttributes().getLength(); i++) {
            Node attribute = element.getAttributes().item(i);
            if (attribute.getNamespaceURI() != null && "label".equals(attribute.getLocalName())) {
                found.add(attribute.getNodeValue().strip());
            }
        }
        found.add(element.getAttributeNS(null, "label").strip());
        found.add(element.getAttributeNS(null, "aria-label").strip());
        found.add(element.getAttributeNS(null, "data-name").strip());
        found.add(title(element));
        return found.stream().filter(text -> !text.isEmpty()).findFirst().orElse("");
    }

    /** Its label, else its id, else empty. */
    static String layerName(Element element) {
        String label = label(element);
        return label.isEmpty() ? element.getAttributeNS(null, "id").strip() : label;
    }

    private static Element firstFrom(Node node) {
        Node at = node;
        while (at != null && !(at instanceof Element)) {
            at = at.getNextSibling();
        }
        return (Element) at;
    }
}
