// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.awt.geom.AffineTransform;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiFunction;
import kerfglow.api.proof.ImportNote.Kind;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.w3c.dom.Element;

/** Works out clip paths as areas in mm: CSS Masking 1, section 5, for references to clipPath elements. */
final class Clips {
    /** Assumed: a proof uses few clips at a time; the oldest is forgotten. */
    private static final int REMEMBERED = 256;
    private final Drawing drawing;
    private final TextOutlines texts;
    private final List<Element> underWay = new ArrayList<>();
    private final Map<Key, Geometry> known = new LinkedHashMap<>() {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Key, Geometry> eldest) {
            return size() > REMEMBERED;
        }
    };

    private record Key(Element clipPath, AffineTransform toMm, Lengths lengths) {
    }

    Clips(Drawing drawing, TextOutlines texts) {
        this.drawing = drawing;
        this.texts = texts;
    }

    /**
     * The place with the element's own clip path applied.
     *
     * @param bounds gives the element's corner points in its user units, for clips in units of its box
     */
    Place clipped(Element element, Place place, BiFunction<Element, Place, Geometry> bounds) {
        String text = place.style().get("clip-path", "none");
        if (text.equals("none")) {
            return place;
        }
        Reference reference = Reference.find(text);
        if (reference == null) {
            drawing.report().add(Kind.UNSUPPORTED, element, "clip-path: " + text + " is not understood; nothing is clipped");
            return place;
        }
        Element clipPath = reference.isOutside() ? null : drawing.source().byId().get(reference.id());
        if (clipPath == null || !Names.isSvg(clipPath, "clipPath")) {
            if (reference.isOutside()) {
                drawing.report().add(Kind.REFUSED_REFERENCE, element,
                        "clip-path refers to " + reference.quoted() + " outside the file, which is not fetched; nothing is clipped");
            } else {
                drawing.report().badValue(element, "clip-path", "refers to " + reference.quoted() + ", which is no clip path in this file",
                        "nothing is clipped");
            }
            return place;
        }
        return place.clipped(place.clip().and(area(clipPath, element, place, bounds)));
    }

    private Geometry area(Element clipPath, Element element, Place place, BiFunction<Element, Place, Geometry> bounds) {
        if (underWay.contains(clipPath)) {
            drawing.report().badValue(clipPath, "clip-path", "leads back to itself", "everything is clipped away");
            return drawing.factory().createPolygon();
        }
        Place inside = new Place(place.toMm(), drawing.cascade().inDocument(clipPath), place.lengths(), Clip.NONE, java.util.Set.of(),
                true, false, "", "", List.of(), place.nesting() + 1);
        if (clipPath.getAttributeNS(null, "clipPathUnits").strip().equals("objectBoundingBox")) {
            Envelope box = bounds.apply(element, place).getEnvelopeInternal();
            if (box.isNull() || box.getWidth() == 0 || box.getHeight() == 0) {
                return drawing.factory().createPolygon();
            }
            inside = inside.moved(new AffineTransform(box.getWidth(), 0, 0, box.getHeight(), box.getMinX(), box.getMinY()));
            inside = inside.within(inside.lengths().within(1, 1));
        }
        Key key = new Key(clipPath, inside.toMm(), inside.lengths());
        Geometry found = known.get(key);
        if (found == null) {
            underWay.add(clipPath);
            found = worked(clipPath, inside.styled(inside.style()), bounds);
            underWay.remove(clipPath);
            known.put(key, found);
        }
        return found;
    }

    /** The union of its children, within the clip path's own clip. */
    private Geometry worked(Element clipPath, Place inside, BiFunction<Element, Place, Geometry> bounds) {
        Place own = clipped(clipPath, Transforms.applied(clipPath, inside, drawing), bounds);
        List<Geometry> areas = new ArrayList<>();
        for (Element child : Names.children(clipPath)) {
            if (Names.isSvg(child)) {
                child(child, own.clipped(Clip.NONE), areas, bounds, false);
            }
        }
        return own.clip().of(Areas.union(areas, drawing.factory()));
    }

    private void child(Element child, Place around, List<Geometry> areas, BiFunction<Element, Place, Geometry> bounds, boolean used) {
        drawing.budget().clipShape();
        Place styled = around.styled(drawing.cascade().of(child, around.style())).below("", "");
        Style style = styled.style();
        boolean isShape = Shapes.isShape(child);
        boolean isText = child.getLocalName().equals("text");
        boolean isUse = child.getLocalName().equals("use") && !used;
        if (style.get("display", "inline").equals("none") || !(isShape || isText || isUse)) {
            return;
        }
        Place place = clipped(child, Transforms.applied(child, styled, drawing), bounds);
        if (isUse) {
            String href = Names.href(child);
            Element target = href.startsWith("#") ? drawing.source().byId().get(href.substring(1)) : null;
            if (target != null) {
                child(target, place.moved(AffineTransform.getTranslateInstance(
                        drawing.shapes().place(child, style, "x", place.lengths(), Lengths.Axis.X),
                        drawing.shapes().place(child, style, "y", place.lengths(), Lengths.Axis.Y))), areas, bounds, true);
            }
            return;
        }
        if (!style.get("visibility", "visible").equals("visible")) {
            return;
        }
        if (isText) {
            texts.spans(child, place).forEach(span -> add(span.path(), span.place(), areas));
        } else {
            drawing.shapes().path(child, style, place.lengths()).ifPresent(path -> add(path, place, areas));
        }
    }

    private void add(DrawnPath path, Place place, List<Geometry> areas) {
        List<Subpath> subpaths = Flattener.flatten(path, place.toMm(), drawing.options().chordErrorMm(), drawing.budget());
        areas.add(place.clip().of(Areas.filled(subpaths, place.toMm(), Painter.rule(place.style(), "clip-rule"), drawing.factory())));
    }
}
