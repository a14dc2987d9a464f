// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.awt.geom.AffineTransform;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import kerfglow.api.proof.Effect;
import kerfglow.api.proof.Element.Builder;
import kerfglow.api.proof.Element.Origin;
import kerfglow.api.proof.ImportNote.Kind;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.TopologyException;
import org.w3c.dom.Element;

/** Walks the document in paint order, follows use, and collects the elements. One per import. */
final class Walker {
    /** Assumed: often enough for a progress bar, seldom enough to cost nothing. */
    private static final int ELEMENTS_PER_REPORT = 64;
    private final Drawing drawing;
    private final Layers layers;
    private final Ids ids;
    private final Painter painter;
    private final Pictures pictures;
    private final Clips clips;
    private final TextOutlines texts;
    private final long expected;
    private final List<kerfglow.api.proof.Element> elements = new ArrayList<>();
    private long walked;

    Walker(Drawing drawing, long expected) {
        this.drawing = drawing;
        this.expected = Math.max(1, expected);
        layers = new Layers(drawing.source().root());
        ids = new Ids(drawing.source().byId().keySet());
        painter = new Painter(drawing);
        pictures = new Pictures(drawing);
        texts = new TextOutlines(drawing);
        clips = new Clips(drawing, texts);
    }

    List<kerfglow.api.proof.Element> walk(Place root, AffineTransform fit) {
        Element svg = drawing.source().root();
        Place inside = entered(svg, root.styled(drawing.cascade().of(svg, root.style())));
        children(svg, inside.moved(fit));
        return elements;
    }

    private void children(Element parent, Place place) {
        for (Element child : Names.children(parent)) {
            element(child, place);
        }
    }

    private void element(Element element, Place around) {
        if (!Names.isSvg(element)) {
            return;
        }
        drawing.budget().element(around.nesting());
        if (++walked % ELEMENTS_PER_REPORT == 0) {
            drawing.options().progress().accept(Math.min(1, (double) walked / expected));
        }
        String tag = element.getLocalName();
        switch (tag) {
            case "g", "a" -> children(element, entered(element, styled(element, around)));
            case "switch" -> choose(element, entered(element, styled(element, around)));
            case "svg" -> nested(element, styled(element, around), Double.NaN, Double.NaN);
            case "use" -> use(element, styled(element, around));
            case "image" -> {
                Place place = entered(element, styled(element, around));
                pictures.paint(element, place, () -> builder(element, place)).ifPresent(builder -> elements.add(builder.build()));
            }
            case "text" -> text(element, entered(element, styled(element, around)));
            default -> {
                if (Shapes.isShape(element)) {
                    shape(element, entered(element, styled(element, around)));
                }
            }
        }
    }

    private Place styled(Element element, Place around) {
        return around.styled(drawing.cascade().of(element, around.style()));
    }

    /** What holds inside an element: transform, clip, effects, layer, ids. */
    private Place entered(Element element, Place styled) {
        Place place = clips.clipped(element, Transforms.applied(element, styled, drawing), this::boundsOf);
        Style style = styled.style();
        if (style.get("display", "inline").equals("none")) {
            place = place.hidden();
        }
        double opacity = drawing.paints().opacity(element, style, "opacity");
        if (opacity == 0) {
            place = place.clear();
        }
        Set<Effect> effects = EnumSet.noneOf(Effect.class);
        if (opacity > 0 && opacity < 1) {
            effects.add(Effect.PARTIAL_OPACITY);
        }
        if (!style.get("mask", "none").equals("none") || !style.get("mask-image", "none").equals("none")) {
            effects.add(Effect.MASK);
        }
        if (!style.get("filter", "none").equals("none")) {
            effects.add(Effect.FILTER);
        }
        if (!style.get("mix-blend-mode", "normal").equals("normal")) {
            effects.add(Effect.BLEND_MODE);
        }
        if (place.layer().isEmpty()) {
            place = place.inLayer(layers.begunBy(element));
        }
        return place.with(effects).below(element.getAttributeNS(null, "id"), element.getAttributeNS(null, "data-part").strip());
    }

    private Geometry boundsOf(Element element, Place place) {
        return new Bounds(drawing, texts).of(element, place);
    }

    private void shape(Element element, Place place) {
        drawing.shapes().path(element, place.style(), place.lengths()).ifPresent(path -> {
            add(element, place, path, builder(element, place));
        });
    }

    private void add(Element element, Place place, DrawnPath path, Builder builder) {
        try {
            if (painter.paint(element, place, path, builder)) {
                elements.add(builder.build());
            }
        } catch (TopologyException e) { // rounding beat every way to cut the rings
            drawing.report().add(Kind.BAD_VALUE, element, "its area cannot be worked out; the element is left out");
        }
    }

    private Builder builder(Element element, Place place) {
        String id = ids.of(element.getAttributeNS(null, "id").strip(), element.getLocalName());
        drawing.report().delivered(element, id);
        return kerfglow.api.proof.Element.builder(id)
                .tag(element.getLocalName()).layer(place.layer().isEmpty() ? Layers.ROOT : place.layer())
                .label(Names.label(element)).dataPart(place.dataPart()).idPath(place.ids())
                .line(drawing.source().lines().of(element)).order(elements.size());
    }

    private void text(Element element, Place place) {
        for (TextOutlines.Span span : texts.spans(element, place)) {
            add(span.element(), span.place(), span.path(),
                    builder(span.element(), span.place()).tag("text").origin(Origin.TEXT).text(span.run()));
        }
    }

    /** Shows the first child whose conditions hold; the others are delivered as not displayed. */
    private void choose(Element element, Place place) {
        boolean chosen = false;
        for (Element child : Names.children(element)) {
            if (!Names.isSvg(child)) {
                continue;
            }
            boolean shows = !chosen && Conditions.hold(child);
            chosen |= shows;
            element(child, shows ? place : place.hidden());
        }
    }

    private void use(Element use, Place styled) {
        String href = Names.href(use);
        Element target = href.startsWith("#") ? drawing.source().byId().get(href.substring(1)) : null;
        if (target == null) {
            if (href.startsWith("#")) {
                drawing.report().badValue(use, "href", "refers to " + href + ", which is not in this file", "nothing is drawn for it");
            }
            return; // a reference out of the file has its note already
        }
        Place place = entered(use, styled);
        place = place.layer().isEmpty() ? place.inLayer(Layers.ROOT) : place;
        Shapes shapes = drawing.shapes();
        place = place.moved(AffineTransform.getTranslateInstance(
                shapes.place(use, styled.style(), "x", styled.lengths(), Lengths.Axis.X),
                shapes.place(use, styled.style(), "y", styled.lengths(), Lengths.Axis.Y)));
        boolean isViewport = Names.isSvg(target, "symbol") || Names.isSvg(target, "svg");
        if (!isViewport) {
            element(target, place);
            return;
        }
        drawing.budget().element(place.nesting());
        nested(target, styled(target, place),
                shapes.autoSize(use, styled.style(), "width", styled.lengths(), Lengths.Axis.X),
                shapes.autoSize(use, styled.style(), "height", styled.lengths(), Lengths.Axis.Y));
    }

    /** A nested svg or a symbol: a viewport of its own, which clips unless overflow says otherwise. */
    private void nested(Element element, Place styled, double usedWidth, double usedHeight) {
        Shapes shapes = drawing.shapes();
        Lengths outer = styled.lengths();
        boolean isSymbol = Names.isSvg(element, "symbol");
        double x = isSymbol ? 0 : shapes.place(element, styled.style(), "x", outer, Lengths.Axis.X);
        double y = isSymbol ? 0 : shapes.place(element, styled.style(), "y", outer, Lengths.Axis.Y);
        double width = Double.isNaN(usedWidth) ? shapes.autoSize(element, styled.style(), "width", outer, Lengths.Axis.X) : usedWidth;
        double height = Double.isNaN(usedHeight) ? shapes.autoSize(element, styled.style(), "height", outer, Lengths.Axis.Y) : usedHeight;
        Viewport.Box port = new Viewport.Box(x, y, Double.isNaN(width) ? outer.width() : width, Double.isNaN(height) ? outer.height() : height);
        if (port.width() == 0 || port.height() == 0) {
            drawing.report().add(Kind.BAD_VALUE, element, "this viewport has no size; what is in it is left out");
            return;
        }
        Place place = entered(element, styled);
        String overflow = styled.style().get("overflow", "hidden");
        if (!overflow.equals("visible") && !overflow.equals("auto")) {
            place = place.clipped(place.clip().and(Areas.rectangle(port.x(), port.y(), port.width(), port.height(), place.toMm(), drawing.factory())));
        }
        AffineTransform fit = AffineTransform.getTranslateInstance(port.x(), port.y());
        Lengths inner = outer.within(port.width(), port.height());
        String viewBox = element.getAttributeNS(null, "viewBox").strip();
        if (!viewBox.isEmpty()) {
            try {
                Viewport.Box box = Viewport.viewBox(viewBox);
                if (box.width() == 0 || box.height() == 0) {
                    throw new BadValueException("has no size");
                }
                fit = Viewport.fit(box, port, element.getAttributeNS(null, "preserveAspectRatio"));
                inner = outer.within(box.width(), box.height());
            } catch (BadValueException e) {
                drawing.report().badValue(element, "viewBox", e.getMessage(), "what is in it is left out");
                return;
            }
        }
        children(element, place.moved(fit).within(inner));
    }
}
