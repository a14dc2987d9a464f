// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.batik.anim.dom.SVGDOMImplementation;
import org.w3c.dom.DOMException;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.xml.sax.Attributes;
import org.xml.sax.InputSource;
import org.xml.sax.Locator;
import org.xml.sax.SAXException;
import org.xml.sax.SAXParseException;
import org.xml.sax.ext.DefaultHandler2;

/** Builds Batik's document out of the stream, counting against the limits as it goes. */
final class SourceHandler extends DefaultHandler2 {
    /** Why the file is refused; line and column are the locator's. */
    static final class Refusal extends SAXException {
        private static final long serialVersionUID = 1L;

        Refusal(String message) {
            super(message);
        }
    }

    private final Limits limits;
    private final Map<String, Element> byId = new HashMap<>();
    private final SourceLines lines = new SourceLines();
    private final List<String> styleSheetReferences = new ArrayList<>();
    private Locator locator;
    private Document document;
    private Node at;
    private int nesting;
    private int elements;
    private int entities;

    SourceHandler(Limits limits) {
        this.limits = limits;
    }

    SvgSource source() {
        return new SvgSource(document.getDocumentElement(), byId, lines, styleSheetReferences);
    }

    int line() {
        return locator == null ? 0 : Math.max(0, locator.getLineNumber());
    }

    int column() {
        return locator == null ? 0 : Math.max(0, locator.getColumnNumber());
    }

    @Override
    public void setDocumentLocator(Locator value) {
        locator = value;
    }

    @Override
    public void startElement(String namespace, String localName, String qName, Attributes attributes) throws SAXException {
        if (++nesting > limits.nesting()) {
            throw new Refusal("elements are nested more than " + limits.nesting() + " deep (limit on nesting); ungroup the artwork");
        }
        if (++elements > limits.elements()) {
            throw new Refusal("the file has more than " + limits.elements() + " elements (limit on elements); split the proof");
        }
        if (document == null) {
            start(namespace, localName);
        }
        Element element = nesting == 1 ? document.getDocumentElement() : element(namespace, localName, qName);
        for (int i = 0; i < attributes.getLength(); i++) {
            String value = attributes.getValue(i);
            if (value.length() > limits.attributeCharacters()) {
                throw new Refusal("attribute " + attributes.getQName(i) + " has " + value.length() + " characters, more than "
                        + limits.attributeCharacters() + " (limit on attribute length)");
            }
            String space = attributes.getURI(i);
            if (!attributes.getQName(i).startsWith("xmlns")) {
                element.setAttributeNS(space.isEmpty() ? null : space, attributes.getQName(i), value);
            }
        }
        String id = element.getAttributeNS(null, "id");
        if (!id.isEmpty()) {
            byId.putIfAbsent(id, element);
        }
        lines.put(element, line());
        if (nesting > 1) {
            at.appendChild(element);
        }
        at = element;
    }

    /** Batik makes no SVG element that SVG 1.1 does not know; such a one stands in a namespace of its own until it is reported. */
    private Element element(String namespace, String localName, String qName) {
        try {
            return document.createElementNS(namespace.isEmpty() ? null : namespace, qName);
        } catch (DOMException e) {
            return document.createElementNS(Names.UNKNOWN_SVG, localName);
        }
    }

    private void start(String namespace, String localName) throws Refusal {
        if (!localName.equals("svg")) {
            throw new Refusal("this is no SVG file: its root element is " + localName + " instead of svg");
        }
        if (!namespace.equals(Names.SVG)) {
            throw new Refusal("the root element svg lacks xmlns=\"" + Names.SVG + "\"; export the proof again as SVG");
        }
        document = SVGDOMImplementation.getDOMImplementation().createDocument(Names.SVG, "svg", null);
    }

    @Override
    public void endElement(String namespace, String localName, String qName) {
        nesting--;
        at = at.getParentNode();
    }

    @Override
    public void characters(char[] text, int start, int length) {
        if (at != null) {
            at.appendChild(document.createTextNode(new String(text, start, length)));
        }
    }

    @Override
    public void processingInstruction(String target, String data) {
        if (target.equals("xml-stylesheet")) {
            styleSheetReferences.add(data);
        }
    }

    /**
     * Design programs declare the names of namespaces as entities; these alone are taken, because a name that cannot hold another
     * entity cannot grow.
     */
    @Override
    public void internalEntityDecl(String name, String value) throws SAXException {
        boolean isNamespaceName = value.startsWith("http://") || value.startsWith("https://");
        if (!isNamespaceName || value.length() > limits.entityCharacters() || value.matches(".*[&%<].*")) {
            throw new Refusal("the file declares the entity " + name + "; only names of namespaces may be entities. "
                    + "Save the proof without entities");
        }
        if (++entities > limits.entities()) {
            throw new Refusal("the file declares more than " + limits.entities() + " entities (limit on entities)");
        }
    }

    @Override
    public void externalEntityDecl(String name, String publicId, String systemId) throws SAXException {
        throw new Refusal("the file declares the entity " + name + " outside itself; save the proof without entities");
    }

    @Override
    public void attributeDecl(String element, String attribute, String type, String mode, String value) throws SAXException {
        if (value != null && value.length() > limits.entityCharacters()) {
            throw new Refusal("the file gives attribute " + attribute + " a default longer than " + limits.entityCharacters()
                    + " characters (limit on entities)");
        }
    }

    @Override
    public InputSource resolveEntity(String name, String publicId, String baseUri, String systemId) {
        return new InputSource(new StringReader(""));
    }

    @Override
    public void error(SAXParseException e) {
        // Errors of validity: the file is not validated.
    }

    @Override
    public void fatalError(SAXParseException e) throws SAXException {
        throw e;
    }
}
