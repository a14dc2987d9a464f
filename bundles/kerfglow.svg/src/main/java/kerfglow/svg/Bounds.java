// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.w3c.dom.Element;

/** The box around an element in its own user units, without strokes and clips: SVG 2, 8.10 "Bounding boxes". */
final class Bounds {
    private final Drawing drawing;
    private final TextOutlines texts;
    private final List<Coordinate> corners = new ArrayList<>();

    Bounds(Drawing drawing, TextOutlines texts) {
        this.drawing = drawing;
        this.texts = texts;
    }

    /** Corner points of everything drawn, as a MultiPoint in the element's own user units. */
    Geometry of(Element element, Place place) {
        try {
            java.awt.geom.AffineTransform back = place.toMm().createInverse();
            content(element, place);
            corners.replaceAll(corner -> Areas.point(corner.x, corner.y, back));
        } catch (java.awt.geom.NoninvertibleTransformException e) {
            corners.clear(); // flattened to a line: nothing is painted, so nothing is clipped
        }
        return drawing.factory().createMultiPointFromCoords(corners.toArray(Coordinate[]::new));
    }

    private void content(Element element, Place place) {
        drawing.budget().element(place.nesting());
        switch (element.getLocalName()) {
            case "text" -> texts.spans(element, place).forEach(span -> add(span.path(), span.place()));
            case "use" -> {
                String href = Names.href(element);
                Element target = href.startsWith("#") ? drawing.source().byId().get(href.substring(1)) : null;
                if (target != null) {
                    child(target, place.moved(java.awt.geom.AffineTransform.getTranslateInstance(
                            drawing.shapes().place(element, place.style(), "x", place.lengths(), Lengths.Axis.X),
                            drawing.shapes().place(element, place.style(), "y", place.lengths(), Lengths.Axis.Y))));
                }
            }
            case "g", "a", "switch" -> {
                for (Element child : Names.children(element)) {
                    if (Names.isSvg(child)) {
                        child(child, place);
                    }
                }
            }
            case "image" -> add(new DrawnPath().moveTo(length(element, place, "x", Lengths.Axis.X), length(element, place, "y", Lengths.Axis.Y))
                    .lineTo(length(element, place, "x", Lengths.Axis.X) + length(element, place, "width", Lengths.Axis.X),
                            length(element, place, "y", Lengths.Axis.Y) + length(element, place, "height", Lengths.Axis.Y)), place);
            default -> {
                if (Shapes.isShape(element)) {
                    drawing.shapes().path(element, place.style(), place.lengths()).ifPresent(path -> add(path, place));
                }
            }
        }
    }

    private double length(Element element, Place place, String name, Lengths.Axis axis) {
        return drawing.shapes().place(element, place.style(), name, place.lengths(), axis);
    }

    private void child(Element child, Place around) {
        Place styled = around.styled(drawing.cascade().of(child, around.style()));
        if (!styled.style().get("display", "inline").equals("none")) {
            content(child, Transforms.applied(child, styled, drawing).below("", ""));
        }
    }

    private void add(DrawnPath path, Place place) {
        for (Subpath subpath : Flattener.flatten(path, place.toMm(), drawing.options().chordErrorMm(), drawing.budget())) {
            corners.addAll(List.of(Areas.toMm(subpath, place.toMm())));
        }
    }
}
