// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * A mark's shape as an SVG selector (Web Annotation Data Model, W3C Recommendation of 23 February 2017, 4.2.7) and back. The user unit
 * is 1 mm at the real size of the sign; the view box is the proof's viewport.
 */
final class SvgSelector {
    /** The SVG of a note needs some extent to be seen; a millimetre at real size. Reading uses the centre alone. */
    private static final double NOTE_RADIUS_MM = 1;
    /** A ten-thousandth of a millimetre: below the 0.001 mm of the import. */
    private static final String NUMBER = "%.4f";

    private SvgSelector() {
    }

    static String write(MarkShape shape, ProofRef proof) {
        String box = proof.widthMm() > 0 && proof.heightMm() > 0 ? " viewBox=\"0 0 " + number(proof.widthMm()) + " " + number(proof.heightMm()) + "\"" : "";
        return "<svg xmlns=\"http://www.w3.org/2000/svg\"" + box + ">" + element(shape) + "</svg>";
    }

    private static String element(MarkShape shape) {
        if (shape instanceof MarkShape.Note note) {
            return tag("circle", "cx", note.at().xMm(), "cy", note.at().yMm(), "r", NOTE_RADIUS_MM);
        }
        if (shape instanceof MarkShape.Arrow arrow) {
            return line(arrow.from(), arrow.tip());
        }
        if (shape instanceof MarkShape.Dimension dimension) {
            return line(dimension.from(), dimension.to());
        }
        if (shape instanceof MarkShape.Ring ring) {
            return tag("ellipse", "cx", ring.centre().xMm(), "cy", ring.centre().yMm(), "rx", ring.radiusXMm(), "ry", ring.radiusYMm());
        }
        if (shape instanceof MarkShape.Box box) {
            return tag("rect", "x", box.topLeft().xMm(), "y", box.topLeft().yMm(), "width", box.widthMm(), "height", box.heightMm());
        }
        StringBuilder points = new StringBuilder();
        ((MarkShape.Line) shape).points().forEach(point -> points.append(points.length() == 0 ? "" : " ").append(number(point.xMm())).append(',').append(number(point.yMm())));
        return "<polyline fill=\"none\" stroke=\"black\" points=\"" + points + "\"/>";
    }

    private static String line(PointMm from, PointMm to) {
        return tag("line", "x1", from.xMm(), "y1", from.yMm(), "x2", to.xMm(), "y2", to.yMm());
    }

    private static String tag(String name, Object... attributes) {
        StringBuilder tag = new StringBuilder("<").append(name).append(" fill=\"none\" stroke=\"black\"");
        for (int i = 0; i < attributes.length; i += 2) {
            tag.append(' ').append(attributes[i]).append("=\"").append(number((Double) attributes[i + 1])).append('"');
        }
        return tag.append("/>").toString();
    }

    private static String number(double value) {
        String text = String.format(Locale.ROOT, NUMBER, value).replaceFirst("0+$", "").replaceFirst("\\.$", "");
        return text.equals("-0") ? "0" : text;
    }

    /**
     * Reads a shape.
     *
     * @param kind the word of the shape ({@link MarkShape#word()}); when it is absent, as from another program, the SVG element decides
     * @throws IllegalArgumentException when it is no SVG, or none of the shapes that there are
     */
    static MarkShape read(String svg, Optional<String> kind) {
        XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false); // a job file may come from anybody: no entities, nothing from outside
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        try {
            XMLStreamReader reader = factory.createXMLStreamReader(new StringReader(svg));
            Optional<MarkShape> found = Optional.empty();
            while (reader.hasNext()) { // to the end, so that what is not well-formed is refused
                if (reader.next() == XMLStreamConstants.START_ELEMENT && found.isEmpty()) {
                    found = shape(reader, kind);
                }
            }
            return found.orElseThrow(() -> new IllegalArgumentException("the SVG selector holds no circle, ellipse, line, polyline or rect"));
        } catch (XMLStreamException broken) {
            throw new IllegalArgumentException("the SVG selector is not well-formed: " + broken.getMessage(), broken);
        }
    }

    private static Optional<MarkShape> shape(XMLStreamReader reader, Optional<String> kind) {
        return switch (reader.getLocalName()) {
            case "circle" -> Optional.of(kind.orElse("ring").equals("note") ? new MarkShape.Note(point(reader, "cx", "cy"))
                    : new MarkShape.Ring(point(reader, "cx", "cy"), number(reader, "r"), number(reader, "r")));
            case "ellipse" -> Optional.of(new MarkShape.Ring(point(reader, "cx", "cy"), number(reader, "rx"), number(reader, "ry")));
            case "rect" -> Optional.of(new MarkShape.Box(point(reader, "x", "y"), number(reader, "width"), number(reader, "height")));
            case "line" -> Optional.of(kind.orElse("arrow").equals("dimension") ? new MarkShape.Dimension(point(reader, "x1", "y1"), point(reader, "x2", "y2"))
                    : new MarkShape.Arrow(point(reader, "x1", "y1"), point(reader, "x2", "y2")));
            case "polyline" -> Optional.of(new MarkShape.Line(points(reader)));
            default -> Optional.empty();
        };
    }

    private static List<PointMm> points(XMLStreamReader reader) {
        List<PointMm> points = new ArrayList<>();
        String[] numbers = attribute(reader, "points").strip().split("[\\s,]+");
        for (int i = 0; i + 1 < numbers.length; i += 2) {
            points.add(new PointMm(number(numbers[i]), number(numbers[i + 1])));
        }
        return points;
    }

    private static PointMm point(XMLStreamReader reader, String x, String y) {
        return new PointMm(number(reader, x), number(reader, y));
    }

    private static double number(XMLStreamReader reader, String name) {
        return number(attribute(reader, name));
    }

    private static double number(String text) {
        try {
            return Double.parseDouble(text);
        } catch (NumberFormatException wrong) {
            throw new IllegalArgumentException("the SVG selector has a number that cannot be read: " + text, wrong);
        }
    }

    private static String attribute(XMLStreamReader reader, String name) {
        String value = reader.getAttributeValue(null, name);
        if (value == null) {
            throw new IllegalArgumentException("the SVG selector lacks " + name + " on its " + reader.getLocalName());
        }
        return value;
    }
}
