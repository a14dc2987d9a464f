// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import kerfglow.api.Inspection;
import kerfglow.api.proof.Gradient.Shade;
import kerfglow.api.proof.Paint;
import kerfglow.api.proof.Part;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.distance.DistanceOp;

/**
 * What lies behind lettering in paint order.
 *
 * <p>Looked at in places just outside each letter's outline and in its counters: what is seen there of all that was painted before the
 * letter and is part of the sign, or else the wall. A gradient has the colour that it has in the place, on the letter as behind it; where its
 * course is not known all its stops count. What lies below shines through the clear parts of a gradient. A picture or a pattern has no
 * one colour.
 */
final class Backdrop {
    /** How far outside the outline, in heights of the letter: clear of the edge, well before the next letter. */
    private static final double OUTSIDE = 0.02;
    /** How far apart the places lie, in heights of the letter. Assumed: several to each stroke's width. */
    private static final double STEP = 0.08;

    /**
     * One pair of colours that meet.
     *
     * @param letter 0xRRGGBB
     * @param behind 0xRRGGBB
     * @param wall true when what lies behind is the wall
     * @param gradient true when one of the two changes along the line, and this is the worst place
     * @param place where they meet, mm
     */
    record Pair(int letter, int behind, boolean wall, boolean gradient, Coordinate place) {
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
     * @param pairs least contrast first; of a gradient only the worst
     * @param missing what could not be measured, sentences
     */
    record Seen(List<Pair> pairs, Set<String> missing) {
    }

    /** Colours that are compared as one: of a gradient the worst counts. */
    private record Meeting(Paint letter, int coat, int behind) {
    }

    /** What may be seen in a place; no colours when it cannot be told. */
    private record Ground(List<Integer> colours, int coat, boolean wall, boolean gradient) {
    }

    private static final int WALL = -1;

    private final Inspection inspection;
    private final Coats coats;

    Backdrop(Inspection inspection, Coats coats) {
        this.inspection = inspection;
        this.coats = coats;
    }

    Seen behind(Line line, Runnable pulse) {
        Map<Meeting, Pair> worst = new LinkedHashMap<>();
        Map<Meeting, Pair> leastReflectance = new LinkedHashMap<>();
        Set<String> missing = new LinkedHashSet<>();
        OptionalInt wall = Colours.parse(inspection.settings().get(LegibilitySettings.WALL_COLOUR, line.first()));
        for (Upright letter : line.letters()) {
            Part part = letter.piece().part();
            if (part.paint().colours().isEmpty()) {
                missing.add("Lettering filled with a pattern, or with a gradient whose colours are not known, has no one colour; its contrast was not measured.");
                continue;
            }
            int order = coats.order(part);
            for (Coordinate place : places(letter)) {
                pulse.run();
                Ground ground = ground(coats.below(place, order), place, wall, missing);
                for (int behind : ground.colours()) {
                    for (Shade own : own(part, place)) {
                        boolean gradient = ground.gradient() || part.paint().kind() == Paint.Kind.GRADIENT;
                        Pair pair = new Pair(own.over(behind), behind, ground.wall(), gradient, place);
                        Meeting meeting = new Meeting(part.paint(), ground.coat(), gradient ? WALL : behind);
                        worst.merge(meeting, pair, (a, b) -> b.ratio() < a.ratio() ? b : a);
                        leastReflectance.merge(meeting, pair, (a, b) -> b.reflectance() < a.reflectance() ? b : a);
                    }
                }
            }
        }
        Set<Pair> pairs = new LinkedHashSet<>(worst.values());
        pairs.addAll(leastReflectance.values());
        List<Pair> sorted = new ArrayList<>(pairs);
        sorted.sort(Comparator.comparingDouble(Pair::ratio));
        return new Seen(sorted, missing);
    }

    /** The letter's own colour at the place on it that lies nearest; all that it has where their course is not known. */
    private List<Shade> own(Part part, Coordinate place) {
        if (part.paint().kind() == Paint.Kind.COLOUR) {
            return List.of(new Shade(part.paint().rgb(), 1));
        }
        Coordinate on = DistanceOp.nearestPoints(part.shape(), part.shape().getFactory().createPoint(place))[0];
        return coats.of(part, on).map(coat -> coat.at(on)).orElseGet(() -> part.paint().colours().stream().map(rgb -> new Shade(rgb, 1)).toList());
    }

    private Ground ground(List<Coats.Coat> below, Coordinate place, OptionalInt wall, Set<String> missing) {
        if (below.isEmpty()) {
            if (wall.isEmpty()) {
                missing.add("The wall's colour is not given (legibility.wall-colour, #rrggbb), so contrast with the bare wall was not measured.");
            }
            return new Ground(wall.stream().boxed().toList(), WALL, true, false);
        }
        Coats.Coat top = below.get(0);
        List<Shade> shades = top.at(place);
        if (shades.isEmpty()) {
            missing.add(top.isGradient() ? "Behind lettering lies a gradient whose colours are not known; contrast with it was not measured."
                    : "Behind lettering lies a picture or a pattern, which has no one colour; contrast with it was not measured.");
            return new Ground(List.of(), top.number(), false, false);
        }
        if (shades.stream().allMatch(shade -> shade.opacity() == 1)) {
            return new Ground(shades.stream().map(Shade::rgb).toList(), top.number(), false, top.isGradient());
        }
        Ground under = ground(below.subList(1, below.size()), place, wall, missing);
        List<Integer> mixed = shades.stream().flatMap(shade -> under.colours().stream().map(shade::over)).toList();
        return new Ground(mixed, top.number(), false, true);
    }

    /** Places along all rings of the letter, evenly. */
    static List<Coordinate> places(Upright letter) {
        double height = letter.box().getHeight();
        Geometry rings = letter.piece().shape().buffer(OUTSIDE * height, 2).getBoundary();
        List<Coordinate> places = new ArrayList<>();
        for (int i = 0; i < rings.getNumGeometries(); i++) {
            Coordinate[] ring = rings.getGeometryN(i).getCoordinates();
            double next = 0;
            for (int k = 1; k < ring.length; k++) {
                double length = ring[k - 1].distance(ring[k]);
                for (; next < length; next += STEP * height) {
                    double share = next / length;
                    places.add(new Coordinate(ring[k - 1].x + share * (ring[k].x - ring[k - 1].x), ring[k - 1].y + share * (ring[k].y - ring[k - 1].y)));
                }
                next -= length;
            }
        }
        return places;
    }
}
