// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.artwork;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import kerfglow.api.Finding;
import kerfglow.api.Measure;
import kerfglow.api.Rule;
import kerfglow.api.Setting;
import kerfglow.api.Severity;
import kerfglow.api.proof.Element;
import org.locationtech.jts.algorithm.Distance;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/** Outlines that cross themselves or each other. */
final class Crossings {
    static final Rule SELF = new Rule("artwork.self-crossing", Severity.STOP, "An outline crosses itself",
            "Inside and outside change sides at each crossing, so CAD offsets the wrong way there or refuses the shape.",
            "Cut the loop off, or unite the path with itself.", "common practice, no source");
    static final Rule CROSSING = new Rule("artwork.crossing", Severity.REVIEW, "Two outlines that are cut from one sheet cross",
            "Each outline is cut whole, so the machine cuts through the other shape at every crossing.",
            "Subtract or unite the shapes, or move them apart.", "common practice, no source");
    static final Rule OVERLAP = new Rule("artwork.overlap", Severity.REVIEW, "Shapes of one part overlap and are not united",
            "On screen they look like one shape and are measured here as one, but the file holds the outline of each, and a cutter "
                    + "follows both through the middle of the part.",
            "Unite the shapes before the file goes to CAD.", "common practice, no source");
    static final Setting<Double> DEPTH = Setting.lengthMm("artwork.crossing-depth", "depth up to which crossing outlines only touch", 0.01, 0, 1,
            "a shape that is set against another one is off by rounding and flattening, about half the chord error", "geometry");

    /** Both ends of a flat loop leave the crossing side by side; so many depths on, those of any other have parted. Spares walking round every loop. */
    private static final double FIRST_STEP = 10;

    private static final GeometryFactory FACTORY = new GeometryFactory();

    private final Artwork artwork;

    private record Kind(Rule rule, Element one, Element two) {
    }

    private Crossings(Artwork artwork) {
        this.artwork = artwork;
    }

    static List<Finding> find(Artwork artwork, List<NearPair> pairs) {
        Crossings crossings = new Crossings(artwork);
        Map<Kind, List<Coordinate>> places = new LinkedHashMap<>();
        for (NearPair pair : pairs) {
            artwork.inspection().checkpoint(ArtworkCheck.AFTER_PAIRS);
            if (!pair.crossings().isEmpty() && pair.a().element().layer().equals(pair.b().element().layer())) {
                List<Coordinate> at = crossings.real(pair);
                if (!at.isEmpty()) {
                    places.computeIfAbsent(crossings.kind(pair), kind -> new ArrayList<>()).addAll(at);
                }
            }
        }
        Map<Rule, Gatherer> gatherers = new LinkedHashMap<>();
        List.of(SELF, CROSSING, OVERLAP).forEach(rule -> gatherers.put(rule, new Gatherer(artwork, rule)));
        places.forEach((kind, at) -> {
            Geometry place = FACTORY.createMultiPointFromCoords(at.toArray(new Coordinate[0]));
            gatherers.get(kind.rule()).add(kind.one(), place, crossings.finding(kind, place));
        });
        List<Finding> findings = new ArrayList<>();
        gatherers.values().forEach(gatherer -> findings.addAll(gatherer.findings()));
        return findings;
    }

    private Kind kind(NearPair pair) {
        Element one = pair.a().element();
        Element two = pair.b().element();
        if (pair.isOneOutline()) {
            return new Kind(SELF, one, two);
        }
        boolean united = one != two && artwork.parts(one).stream().anyMatch(artwork.parts(two)::contains);
        return new Kind(united ? OVERLAP : CROSSING, one, two);
    }

    private Finding finding(Kind kind, Geometry place) {
        int count = place.getNumGeometries();
        String where = count == 1 ? " at " + artwork.place(place.getCoordinate())
                : " in " + count + " points, first at " + artwork.place(place.getCoordinate());
        String message;
        if (kind.rule() == SELF) {
            message = artwork.name(kind.one()) + " crosses its own outline" + where;
        } else if (kind.one() == kind.two()) {
            message = "Two outlines of " + artwork.name(kind.one()) + " cross" + where;
        } else {
            message = artwork.name(kind.one()) + " and " + artwork.name(kind.two()) + (kind.rule() == OVERLAP
                    ? " overlap in one part; their outlines cross" : " cross") + where;
        }
        return artwork.finding(kind.rule(), message + "; none may cross", List.of(kind.one(), kind.two())).place(place)
                .at(place.getCoordinate()).measured(Measure.count(count)).required(Measure.count(0)).build();
    }

    /** The crossings of a pair, one for each place, without those of lines that only touch or that are reported as doubled. */
    private List<Coordinate> real(NearPair pair) {
        List<NearPair.Crossing> sorted = new ArrayList<>(pair.crossings());
        sorted.sort(Comparator.comparingDouble(NearPair.Crossing::stationMm));
        List<double[]> doubled = Doubled.stretches(artwork, pair);
        sorted.removeIf(crossing -> isWithin(doubled, crossing.stationMm()));
        if (pair.isOneOutline()) {
            double depthMm = artwork.inspection().settings().get(DEPTH, pair.a().part());
            sorted.removeIf(crossing -> isFlatLoop(pair, crossing, depthMm));
        } else {
            removeTouches(pair, sorted);
        }
        List<Coordinate> at = new ArrayList<>();
        for (NearPair.Crossing crossing : sorted) {
            if (at.isEmpty() || at.get(at.size() - 1).distance(crossing.at()) > Artwork.RESOLUTION_MM) {
                at.add(crossing.at());
            }
        }
        if (at.size() > 1 && at.get(0).distance(at.get(at.size() - 1)) <= Artwork.RESOLUTION_MM) {
            at.remove(at.size() - 1);
        }
        return at;
    }

    /**
     * True when what the crossing cuts off goes out and comes back on one line, as where an outline runs back over itself: which side of
     * itself it lies on there is a matter of rounding, and turns with the drawing.
     */
    private static boolean isFlatLoop(NearPair pair, NearPair.Crossing crossing, double depthMm) {
        double fromMm = Math.min(crossing.stationMm(), crossing.otherStationMm());
        double toMm = Math.max(crossing.stationMm(), crossing.otherStationMm());
        return isFlatLoop(pair, crossing.at(), fromMm, toMm, depthMm) || pair.a().isRing() && isFlatLoop(pair, crossing.at(), toMm, fromMm, depthMm);
    }

    private static boolean isFlatLoop(NearPair pair, Coordinate at, double fromMm, double toMm, double depthMm) {
        double[] stations = pair.stationsA();
        double endMm = stations[stations.length - 1];
        double lengthMm = fromMm <= toMm ? toMm - fromMm : toMm - fromMm + endMm;
        double stepMm = Math.min(lengthMm / 2, FIRST_STEP * depthMm);
        Coordinate out = Stretches.at(pair.a(), stations, (fromMm + stepMm) % endMm);
        Coordinate home = Stretches.at(pair.a(), stations, (toMm - stepMm + endMm) % endMm);
        return out.distance(home) <= 2 * depthMm && isFlat(at, between(pair.a(), stations, fromMm, toMm), depthMm);
    }

    private static boolean isFlat(Coordinate at, List<Coordinate> loop, double depthMm) {
        Coordinate farthest = at;
        for (Coordinate point : loop) {
            farthest = point.distance(at) > farthest.distance(at) ? point : farthest;
        }
        Coordinate tip = farthest;
        return loop.stream().allMatch(point -> Distance.pointToSegment(point, at, tip) <= depthMm);
    }

    private boolean isWithin(List<double[]> stretches, double stationMm) {
        double marginMm = artwork.inspection().settings().get(Doubled.WITHIN);
        return stretches.stream().anyMatch(stretch -> stationMm >= stretch[0] - marginMm && stationMm <= stretch[1] + marginMm);
    }

    /** In and out again without going deep is a touch: both crossings go. */
    private void removeTouches(NearPair pair, List<NearPair.Crossing> sorted) {
        boolean[] touch = new boolean[sorted.size()];
        int last = sorted.size() - 1;
        for (int i = 0; i <= last; i++) {
            boolean around = i == last; // from the last crossing over the start of a ring to the first
            int next = around ? 0 : i + 1;
            if (last > 0 && (!around || pair.a().isRing()) && isTouch(pair, sorted.get(i), sorted.get(next))) {
                touch[i] = true;
                touch[next] = true;
            }
        }
        for (int i = last; i >= 0; i--) {
            if (touch[i]) {
                sorted.remove(i);
            }
        }
    }

    /** True when what each outline does between two crossings stays near the other one. */
    private boolean isTouch(NearPair pair, NearPair.Crossing from, NearPair.Crossing to) {
        if (from.at().distance(to.at()) <= Artwork.RESOLUTION_MM) {
            return false; // one crossing, found twice
        }
        double depthMm = artwork.inspection().settings().get(DEPTH, pair.a().part());
        return staysNear(between(pair.a(), pair.stationsA(), from.stationMm(), to.stationMm()), pair.b().points(), depthMm)
                && (staysNear(between(pair.b(), pair.stationsB(), from.otherStationMm(), to.otherStationMm()), pair.a().points(), depthMm)
                        || staysNear(between(pair.b(), pair.stationsB(), to.otherStationMm(), from.otherStationMm()), pair.a().points(),
                                depthMm));
    }

    /** The points and middles of segments from one station on to another, over the start of a ring when it lies between. */
    private static List<Coordinate> between(Contour contour, double[] stations, double fromMm, double toMm) {
        List<Coordinate> points = new ArrayList<>();
        double endMm = stations[stations.length - 1];
        List<double[]> stretches = fromMm <= toMm ? List.of(new double[] {fromMm, toMm})
                : List.of(new double[] {fromMm, endMm}, new double[] {0, toMm});
        for (double[] stretch : stretches) {
            Coordinate[] line = Stretches.line(contour, stations, stretch).getCoordinates();
            for (int i = 0; i + 1 < line.length; i++) {
                points.add(new Coordinate((line[i].x + line[i + 1].x) / 2, (line[i].y + line[i + 1].y) / 2));
                points.add(line[i + 1]);
            }
        }
        return points;
    }

    private static boolean staysNear(List<Coordinate> points, Coordinate[] other, double depthMm) {
        return points.stream().allMatch(point -> Distance.pointToSegmentString(point, other) <= depthMm);
    }
}
