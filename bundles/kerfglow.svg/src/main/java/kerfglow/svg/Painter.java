// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.awt.geom.AffineTransform;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import kerfglow.api.proof.Effect;
import kerfglow.api.proof.Element.Builder;
import kerfglow.api.proof.ImportNote.Kind;
import kerfglow.api.proof.Outline;
import kerfglow.api.proof.Paint;
import kerfglow.api.proof.Visibility;
import kerfglow.geometry.FillRule;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.w3c.dom.Element;

/** Works out what one shape paints: outlines, fill and stroke areas, paints, effects and visibility. */
final class Painter {
    private static final Set<String> MARKED = Set.of("path", "line", "polyline", "polygon");
    private final Drawing drawing;
    private final Gradients gradients;

    Painter(Drawing drawing) {
        this.drawing = drawing;
        gradients = new Gradients(drawing);
    }

    /** Fills the builder in; false when the shape lies too far out to be used, which a note says. */
    boolean paint(Element element, Place place, DrawnPath path, Builder builder) {
        List<Subpath> subpaths = Flattener.flatten(path, place.toMm(), drawing.options().chordErrorMm(), drawing.budget());
        List<Outline> outlines = new ArrayList<>(subpaths.size());
        for (Subpath subpath : subpaths) {
            Optional<Outline> outline = outline(subpath, place.toMm());
            if (outline.isEmpty()) {
                drawing.report().add(Kind.BAD_VALUE, element,
                        "a coordinate lies more than 1000 km from the origin or is no number; the element is left out");
                return false;
            }
            outlines.add(outline.get());
        }
        builder.outlines(outlines);
        Style style = place.style();
        Paints.Painted fill = drawing.paints().fill(element, style);
        Paints.Painted stroke = drawing.paints().stroke(element, style);
        Optional<Pens.Pen> pen = stroke.paint().isPainted() ? Pens.of(element, place, drawing) : Optional.empty();
        if (pen.isEmpty()) {
            stroke = Paints.Painted.NOTHING;
        }
        boolean anySeen = fill.isSeen() || stroke.isSeen();
        boolean anyPainted = fill.paint().isPainted() || stroke.paint().isPainted();
        if (anySeen) { // a clear paint beside one that is seen paints nothing
            fill = fill.isSeen() ? fill : Paints.Painted.NOTHING;
            stroke = stroke.isSeen() ? stroke : Paints.Painted.NOTHING;
        }
        Geometry nothing = drawing.factory().createPolygon();
        Geometry fillArea = fill.paint().isPainted() ? Areas.filled(subpaths, place.toMm(), rule(style, "fill-rule"), drawing.factory()) : nothing;
        Geometry strokeArea = stroke.paint().isPainted() ? pen.get().area(element, subpaths, place.toMm(), drawing) : nothing;
        Geometry fillSeen = place.clip().of(fillArea);
        Geometry strokeSeen = place.clip().of(strokeArea);
        boolean isClippedAway = fillSeen.isEmpty() && strokeSeen.isEmpty() && !(fillArea.isEmpty() && strokeArea.isEmpty());
        builder.fill(fill.paint()).fillArea(fillSeen);
        builder.stroke(stroke.paint(), stroke.paint().isPainted() ? pen.get().widthMm() : 0).strokeArea(strokeSeen);
        gradients.of(fill, subpaths, place).ifPresent(builder::fillGradient);
        gradients.of(stroke, subpaths, place).ifPresent(builder::strokeGradient);
        builder.visibility(visibility(place, anyPainted, anySeen, isClippedAway)).effects(effects(element, place, fill, stroke));
        return true;
    }

    static FillRule rule(Style style, String property) {
        return style.get(property, "nonzero").equals("evenodd") ? FillRule.EVENODD : FillRule.NONZERO;
    }

    /** The reason that is farthest from the shape itself is told first. */
    static Visibility visibility(Place place, boolean anyPainted, boolean anySeen, boolean isClippedAway) {
        if (!place.isDisplayed()) {
            return Visibility.NOT_DISPLAYED;
        }
        if (!place.style().get("visibility", "visible").equals("visible")) {
            return Visibility.HIDDEN;
        }
        if (place.isClear()) {
            return Visibility.TRANSPARENT;
        }
        if (!anyPainted) {
            return Visibility.UNPAINTED;
        }
        if (!anySeen) {
            return Visibility.TRANSPARENT;
        }
        return isClippedAway ? Visibility.CLIPPED_AWAY : Visibility.SHOWN;
    }

    private Set<Effect> effects(Element element, Place place, Paints.Painted fill, Paints.Painted stroke) {
        Set<Effect> effects = EnumSet.noneOf(Effect.class);
        effects.addAll(place.effects());
        for (Paints.Painted painted : List.of(fill, stroke)) {
            if (painted.paint().kind() == Paint.Kind.GRADIENT) {
                effects.add(Effect.GRADIENT);
            } else if (painted.paint().kind() == Paint.Kind.PATTERN) {
                effects.add(Effect.PATTERN);
            }
            if (painted.opacity() > 0 && painted.opacity() < 1) {
                effects.add(Effect.PARTIAL_OPACITY);
            }
        }
        if (MARKED.contains(element.getLocalName())) {
            for (String end : List.of("marker-start", "marker-mid", "marker-end")) {
                if (!place.style().get(end, "none").toLowerCase(Locale.ROOT).equals("none")) {
                    effects.add(Effect.MARKER);
                }
            }
        }
        return effects;
    }

    private Optional<Outline> outline(Subpath subpath, AffineTransform toMm) {
        Coordinate[] points = Areas.toMm(subpath, toMm);
        if (!Areas.areNear(points)) {
            return Optional.empty();
        }
        Coordinate[] nodes = new Coordinate[subpath.nodes().length];
        for (int i = 0; i < nodes.length; i++) {
            nodes[i] = points[subpath.nodes()[i]].copy();
        }
        Geometry line;
        if (points.length == 1) {
            line = drawing.factory().createPoint(points[0]);
        } else {
            Coordinate[] all = points;
            if (subpath.closed()) {
                all = java.util.Arrays.copyOf(points, points.length + 1);
                all[points.length] = points[0].copy();
            }
            line = drawing.factory().createLineString(all);
        }
        return Optional.of(new Outline(line, subpath.returns(), drawing.factory().createMultiPointFromCoords(nodes)));
    }
}
