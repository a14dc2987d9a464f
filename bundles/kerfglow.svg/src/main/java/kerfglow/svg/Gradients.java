// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.awt.geom.AffineTransform;
import java.awt.geom.NoninvertibleTransformException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import kerfglow.api.proof.Gradient;
import kerfglow.api.proof.Gradient.Scale;
import kerfglow.api.proof.Gradient.Shade;
import kerfglow.api.proof.Gradient.Stop;
import org.locationtech.jts.geom.Envelope;
import org.w3c.dom.Element;

/** Where on the sign a linear or radial gradient has which colour: SVG 2, 14.2 "Gradients". */
final class Gradients {
    private final Drawing drawing;

    Gradients(Drawing drawing) {
        this.drawing = drawing;
    }

    /**
     * The course of a paint's gradient.
     *
     * @param painted from the shape that is painted
     * @param subpaths of the shape in user units; their box is the one that gradients in units of a box refer to. For live text it is
     *     the box of the outlines, where SVG takes the box of the font's cells
     * @return empty for other paints, and for gradients without a course: no extent, or a shape without width or height
     */
    Optional<Gradient> of(Paints.Painted painted, List<Subpath> subpaths, Place place) {
        if (painted.server().isEmpty() || painted.stops().size() < 2) {
            return Optional.empty();
        }
        Element server = painted.server().get();
        boolean radial = server.getLocalName().equals("radialGradient");
        boolean own = drawing.paints().inherited(server, "gradientUnits").equals("userSpaceOnUse");
        try {
            AffineTransform all = new AffineTransform(place.toMm());
            if (!own) {
                Envelope box = box(subpaths);
                all.concatenate(new AffineTransform(box.getWidth(), 0, 0, box.getHeight(), box.getMinX(), box.getMinY()));
            }
            Lengths lengths = own ? place.lengths() : place.lengths().within(1, 1);
            all.concatenate(transform(server, lengths));
            return Optional.of(radial ? radial(server, all, lengths, painted) : linear(server, all, lengths, painted));
        } catch (NoninvertibleTransformException e) {
            return Optional.empty(); // flattened to a line or to nothing; its colours are told all the same
        }
    }

    private static Envelope box(List<Subpath> subpaths) {
        Envelope box = new Envelope();
        for (Subpath subpath : subpaths) {
            for (int i = 0; i < subpath.size(); i++) {
                box.expandToInclude(subpath.xs()[i], subpath.ys()[i]);
            }
        }
        return box;
    }

    private AffineTransform transform(Element server, Lengths lengths) {
        try {
            return TransformList.parse(drawing.paints().inherited(server, "gradientTransform"), lengths);
        } catch (BadValueException e) {
            drawing.report().badValue(server, "gradientTransform", e.getMessage(), "the transform is left out");
            return new AffineTransform();
        }
    }

    private Gradient linear(Element server, AffineTransform all, Lengths lengths, Paints.Painted painted) throws NoninvertibleTransformException {
        double x1 = length(server, "x1", "0%", lengths, Lengths.Axis.X);
        double y1 = length(server, "y1", "0%", lengths, Lengths.Axis.Y);
        double dx = length(server, "x2", "100%", lengths, Lengths.Axis.X) - x1;
        double dy = length(server, "y2", "0%", lengths, Lengths.Axis.Y) - y1;
        all.concatenate(new AffineTransform(dx, dy, -dy, dx, x1, y1));
        return gradient(Gradient.Kind.LINEAR, server, all.createInverse(), 0, 0, 0, painted);
    }

    private Gradient radial(Element server, AffineTransform all, Lengths lengths, Paints.Painted painted) throws NoninvertibleTransformException {
        double x = length(server, "cx", "50%", lengths, Lengths.Axis.X);
        double y = length(server, "cy", "50%", lengths, Lengths.Axis.Y);
        double radius = length(server, "r", "50%", lengths, Lengths.Axis.DIAGONAL);
        all.concatenate(new AffineTransform(radius, 0, 0, radius, x, y));
        AffineTransform back = all.createInverse();
        double focusX = drawing.paints().inherited(server, "fx").isEmpty() ? x : length(server, "fx", "50%", lengths, Lengths.Axis.X);
        double focusY = drawing.paints().inherited(server, "fy").isEmpty() ? y : length(server, "fy", "50%", lengths, Lengths.Axis.Y);
        double focusRadius = length(server, "fr", "0%", lengths, Lengths.Axis.DIAGONAL);
        return gradient(Gradient.Kind.RADIAL, server, back, (focusX - x) / radius, (focusY - y) / radius, Math.max(0, Math.min(1, focusRadius / radius)), painted);
    }

    private Gradient gradient(Gradient.Kind kind, Element server, AffineTransform back, double focusU, double focusV, double focusRadius, Paints.Painted painted) {
        Gradient.Spread spread = switch (drawing.paints().inherited(server, "spreadMethod")) {
            case "reflect" -> Gradient.Spread.REFLECT;
            case "repeat" -> Gradient.Spread.REPEAT;
            default -> Gradient.Spread.PAD;
        };
        List<Stop> stops = new ArrayList<>();
        for (Paints.ColourStop stop : painted.stops()) {
            stops.add(new Stop(stop.offset(), new Shade(stop.colour().rgb(), stop.colour().alpha() * painted.opacity())));
        }
        return new Gradient(kind, spread, new Scale(back.getScaleX(), back.getShearX(), back.getTranslateX()),
                new Scale(back.getShearY(), back.getScaleY(), back.getTranslateY()), focusU, focusV, focusRadius, stops);
    }

    private double length(Element server, String name, String initial, Lengths lengths, Lengths.Axis axis) {
        String text = drawing.paints().inherited(server, name);
        try {
            return lengths.parse(text.isEmpty() ? initial : text, axis);
        } catch (BadValueException e) {
            drawing.report().badValue(server, name, e.getMessage(), initial + " is used");
            return length(initial, lengths, axis);
        }
    }

    private static double length(String initial, Lengths lengths, Lengths.Axis axis) {
        try {
            return lengths.parse(initial, axis);
        } catch (BadValueException e) {
            throw new IllegalStateException(e); // the initial values above are lengths
        }
    }
}
