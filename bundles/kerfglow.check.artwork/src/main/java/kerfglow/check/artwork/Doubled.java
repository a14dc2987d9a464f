// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.artwork;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import kerfglow.api.Finding;
import kerfglow.api.Measure;
import kerfglow.api.Quantity;
import kerfglow.api.Rule;
import kerfglow.api.Setting;
import kerfglow.api.Severity;
import kerfglow.api.proof.Element;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;

/** Outlines that a cutter would run twice. */
final class Doubled {
    static final Rule WHOLE = new Rule("artwork.doubled-outline", Severity.STOP, "The same outline is drawn twice",
            "The machine runs the line once for each copy: film is cut through its liner, a routed edge is burnt or chipped, and a nest "
                    + "counts the part twice.",
            "Delete all but one of the copies.", "common practice, no source");
    static final Rule STRETCH = new Rule("artwork.doubled-stretch", Severity.REVIEW, "Two outlines run along the same line for a stretch",
            "The machine runs the stretch twice, and what is left between the two lines is a sliver or a bridge of no width.",
            "Unite the two shapes, or move them apart by what the machine needs.", "common practice, no source");
    static final Setting<Double> WITHIN = Setting.lengthMm("artwork.doubled-within", "greatest distance between lines that count as one",
            0.05, 0.0001, 2, "Assumed: finer than the kerf of any blade or bit, coarser than rounding and flattening",
            "common practice, no source");
    static final Setting<Double> LEAST = Setting.lengthMm("artwork.doubled-least", "shortest stretch that counts as doubled", 5.0, 0.1, 1000,
            "shapes that only touch run within the distance for a millimetre or two", "geometry");
    static final Setting<Double> ANGLE = Setting.number("artwork.doubled-angle", "greatest angle between lines that count as one",
            Quantity.ANGLE, 2.0, 0.01, 20, "curves that touch at a point part quickly; copies of a line do not", "geometry");

    /** Ends and corners of a copy that lies a little aside are not covered; 2 % of the outline allows for them. */
    private static final double WHOLE_SHARE = 0.98;
    private static final GeometryFactory FACTORY = new GeometryFactory();

    private final Artwork artwork;
    private final double bridgeMm;
    private final Copies copies;

    private Doubled(Artwork artwork, Copies copies) {
        this.artwork = artwork;
        this.copies = copies;
        this.bridgeMm = 2 * artwork.inspection().settings().get(WITHIN);
    }

    static List<Finding> find(Artwork artwork, Copies copies, List<NearPair> pairs) {
        Doubled doubled = new Doubled(artwork, copies);
        Gatherer whole = new Gatherer(artwork, WHOLE);
        Gatherer parts = new Gatherer(artwork, STRETCH);
        Map<List<String>, List<NearPair>> byElements = new LinkedHashMap<>();
        for (NearPair pair : pairs) {
            if (doubled.isWhole(pair)) {
                copies.join(pair.a(), pair.b());
            } else if (!stretches(artwork, pair).isEmpty()) {
                byElements.computeIfAbsent(List.of(pair.a().element().id(), pair.b().element().id()), any -> new ArrayList<>()).add(pair);
            }
        }
        doubled.addWholes(whole);
        byElements.values().forEach(between -> doubled.addStretches(parts, between));
        List<Finding> findings = new ArrayList<>(whole.findings());
        findings.addAll(parts.findings());
        return findings;
    }

    /** The stretches of the first outline of a pair that the second one repeats. */
    static List<double[]> stretches(Artwork artwork, NearPair pair) {
        return pair.alongA().joined(2 * artwork.inspection().settings().get(WITHIN), artwork.inspection().settings().get(LEAST, pair.a().part()));
    }

    private boolean isWhole(NearPair pair) {
        return !pair.isOneOutline() && covers(pair.alongA(), pair.stationsA()) && covers(pair.alongB(), pair.stationsB());
    }

    private boolean covers(Stretches along, double[] stations) {
        return Stretches.totalMm(along.joined(bridgeMm, 0)) >= WHOLE_SHARE * stations[stations.length - 1];
    }

    /** A letter with counters is copied outline by outline; what the same elements repeat is one finding. */
    private void addWholes(Gatherer into) {
        Map<List<Element>, List<List<Contour>>> byElements = new LinkedHashMap<>();
        for (List<Contour> set : copies.sets()) {
            byElements.computeIfAbsent(set.stream().map(Contour::element).distinct().toList(), any -> new ArrayList<>()).add(set);
        }
        byElements.forEach((elements, sets) -> {
            Geometry lines = FACTORY.buildGeometry(sets.stream().map(set -> line(set.get(0))).toList());
            into.add(elements.get(0), lines, whole(elements, lines, sets.stream().mapToInt(List::size).max().orElse(0)));
        });
    }

    private Finding whole(List<Element> elements, Geometry lines, int times) {
        String names = String.join(" and ", elements.stream().limit(2).map(artwork::name).toList())
                + (elements.size() > 2 ? " and " + (elements.size() - 2) + " more" : "");
        String message = "The same outline, " + artwork.length(lines.getLength()) + " long, is drawn " + times + " times, by " + names
                + "; it is to be cut once";
        return artwork.finding(WHOLE, message, elements).place(lines).at(lines.getCoordinate()).measured(Measure.count(times))
                .required(Measure.count(1)).build();
    }

    private void addStretches(Gatherer into, List<NearPair> between) {
        List<LineString> lines = new ArrayList<>();
        for (NearPair pair : between) {
            for (double[] stretch : stretches(artwork, pair)) {
                lines.add(Stretches.line(pair.a(), pair.stationsA(), stretch));
            }
        }
        Element one = between.get(0).a().element();
        Element two = between.get(0).b().element();
        double leastMm = artwork.inspection().settings().get(LEAST, between.get(0).a().part());
        Geometry place = FACTORY.buildGeometry(lines);
        String who = one == two ? artwork.name(one) + " runs over its own line" : artwork.name(one) + " and " + artwork.name(two)
                + " run along the same line";
        String message = who + " for " + artwork.length(place.getLength()) + (lines.size() > 1 ? " in " + lines.size() + " stretches" : "")
                + ", from " + artwork.place(lines.get(0).getCoordinateN(0)) + "; stretches below " + artwork.length(leastMm) + " are let pass";
        into.add(one, place, artwork.finding(STRETCH, message, List.of(one, two)).place(place).measured(Measure.mm(place.getLength()))
                .required(Measure.mm(leastMm)).build());
    }

    private static LineString line(Contour contour) {
        return FACTORY.createLineString(contour.points());
    }
}
