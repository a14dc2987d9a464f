// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import kerfglow.api.Inspection;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.Paint;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.api.proof.Visibility;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.index.strtree.STRtree;

/**
 * What lies behind lettering in paint order.
 *
 * <p>Looked at in places just outside each letter's outline and in its counters: the topmost fill or stroke there that was painted before the letter
 * and is part of the sign, or else the wall. Of a gradient only its first colour is known; a picture or a pattern has no one colour.
 */
final class Backdrop {
    /** How far outside the outline, in heights of the letter: clear of the edge, well before the next letter. */
    private static final double OUTSIDE = 0.02;
    private static final int PLACES = 24;
    private static final Set<Role> UNSEEN = Set.of(Role.HOLE, Role.MODULE, Role.KEEP_OUT, Role.BACK, Role.RETURN, Role.NOTE, Role.UNUSED);

    /** Something painted. */
    private record Coat(int order, Paint paint, IndexedPointInAreaLocator area) {
    }

    /**
     * One pair of colours that meet.
     *
     * @param letter 0xRRGGBB
     * @param behind 0xRRGGBB
     * @param wall true when what lies behind is the wall
     */
    record Pair(int letter, int behind, boolean wall) {
        double ratio() {
            return Colours.ratio(letter, behind);
        }

        double reflectance() {
            return Colours.reflectance(Colours.luminance(letter), Colours.luminance(behind));
        }
    }

    /**
     * What was found behind a line.
     *
     * @param pairs least contrast first
     * @param missing what could not be measured, sentences
     */
    record Seen(List<Pair> pairs, Set<String> missing) {
    }

    private final STRtree coats = new STRtree();
    private final Map<String, Integer> orders = new HashMap<>();
    private final Inspection inspection;

    Backdrop(Inspection inspection) {
        this.inspection = inspection;
        Set<String> sign = new HashSet<>();
        inspection.parts().stream().filter(part -> !UNSEEN.contains(part.role())).forEach(part -> sign.addAll(part.elements()));
        for (Element element : inspection.proof().elements()) {
            inspection.checkpoint(0);
            orders.put(element.id(), element.order());
            if (element.visibility() != Visibility.SHOWN || !sign.contains(element.id()) && element.image().isEmpty()) {
                continue;
            }
            add(element, element.fillArea(), element.image().isPresent() ? new Paint(Paint.Kind.PATTERN, 0) : element.fill());
            add(element, element.strokeArea(), element.stroke());
        }
    }

    private void add(Element element, Geometry area, Paint paint) {
        if (!area.isEmpty() && paint.isPainted()) {
            coats.insert(area.getEnvelopeInternal(), new Coat(element.order(), paint, new IndexedPointInAreaLocator(area)));
        }
    }

    Seen behind(Line line, Runnable pulse) {
        Set<Pair> pairs = new LinkedHashSet<>();
        Set<String> missing = new LinkedHashSet<>();
        OptionalInt wall = Colours.parse(inspection.settings().get(LegibilitySettings.WALL_COLOUR, line.first()));
        for (Upright letter : line.letters()) {
            pulse.run();
            Part part = letter.piece().part();
            if (part.paint().kind() == Paint.Kind.PATTERN || !part.paint().isPainted()) {
                missing.add("Lettering filled with a pattern has no one colour; its contrast was not measured.");
                continue;
            }
            firstColourOnly(part.paint(), missing);
            int order = part.elements().stream().mapToInt(id -> orders.getOrDefault(id, part.order())).min().orElse(part.order());
            for (Coordinate place : places(letter)) {
                look(place, order, part, wall, pairs, missing);
            }
        }
        List<Pair> sorted = new ArrayList<>(pairs);
        sorted.sort(Comparator.comparingDouble(Pair::ratio));
        return new Seen(sorted, missing);
    }

    private void look(Coordinate place, int order, Part part, OptionalInt wall, Set<Pair> pairs, Set<String> missing) {
        Coat top = null;
        for (Object found : coats.query(new Envelope(place))) {
            Coat coat = (Coat) found;
            if (coat.order() < order && (top == null || coat.order() > top.order()) && coat.area().locate(place) != Location.EXTERIOR) {
                top = coat;
            }
        }
        if (top == null) {
            if (wall.isPresent()) {
                pairs.add(new Pair(part.paint().rgb(), wall.getAsInt(), true));
            } else {
                missing.add("The wall's colour is not given (legibility.wall-colour, #rrggbb), so contrast with the bare wall was not measured.");
            }
        } else if (top.paint().kind() == Paint.Kind.PATTERN) {
            missing.add("Behind lettering lies a picture or a pattern, which has no one colour; contrast with it was not measured.");
        } else {
            firstColourOnly(top.paint(), missing);
            pairs.add(new Pair(part.paint().rgb(), top.paint().rgb(), false));
        }
    }

    private static void firstColourOnly(Paint paint, Set<String> missing) {
        if (paint.kind() == Paint.Kind.GRADIENT) {
            missing.add("Of a gradient only its first colour is known, so contrast was measured with that and not at the worst place.");
        }
    }

    private static List<Coordinate> places(Upright letter) {
        Geometry shape = letter.piece().shape();
        Coordinate[] ring = shape.buffer(OUTSIDE * letter.box().getHeight(), 2).getBoundary().getCoordinates();
        List<Coordinate> places = new ArrayList<>();
        int step = Math.max(1, ring.length / PLACES);
        for (int i = 0; i < ring.length; i += step) {
            places.add(ring[i]);
        }
        return places;
    }
}
