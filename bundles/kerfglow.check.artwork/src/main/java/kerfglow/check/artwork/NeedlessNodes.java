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
import kerfglow.api.Settings;
import kerfglow.api.Severity;
import kerfglow.api.proof.Element;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/** Elements with many more nodes than their outlines need, as tracing leaves them. */
final class NeedlessNodes {
    static final Rule RULE = new Rule("artwork.needless-nodes", Severity.REVIEW, "An outline has many more nodes than its shape needs",
            "A controller slows down at each node, so the edge shows facets and burn marks, and CAD crawls.",
            "Simplify the path, or redraw it with lines and arcs.", "common practice, no source");
    static final Setting<Double> TOLERANCE = Setting.lengthMm("artwork.node-tolerance", "how far the outline may move when nodes go", 0.1, 0.001, 5,
            "about what a router holds on sheet, and unseen on a sign", "common practice, no source");
    static final Setting<Integer> LEAST = Setting.count("artwork.needless-least", "needless nodes that an element may have", 150, 1, 10_000_000,
            "Assumed: a few dozen do no harm and are quicker left than cleaned", "common practice, no source");
    static final Setting<Double> SHARE = Setting.number("artwork.needless-share", "share of its nodes that may be needless", Quantity.RATIO, 0.5, 0,
            1, "curves drawn well can have up to twice the nodes that arcs would need", "common practice, no source");

    private static final GeometryFactory FACTORY = new GeometryFactory();

    private NeedlessNodes() {
    }

    static List<Finding> find(Artwork artwork, double from, double to) {
        Map<Element, List<Contour>> byElement = new LinkedHashMap<>();
        artwork.contours().forEach(contour -> byElement.computeIfAbsent(contour.element(), any -> new ArrayList<>()).add(contour));
        Gatherer found = new Gatherer(artwork, RULE);
        int done = 0;
        for (Map.Entry<Element, List<Contour>> entry : byElement.entrySet()) {
            artwork.inspection().checkpoint(from + (to - from) * done++ / byElement.size());
            look(artwork, entry.getKey(), entry.getValue(), found);
        }
        return found.findings();
    }

    private static void look(Artwork artwork, Element element, List<Contour> contours, Gatherer found) {
        Settings settings = artwork.inspection().settings();
        double toleranceMm = settings.get(TOLERANCE, contours.get(0).part());
        int least = settings.get(LEAST, contours.get(0).part());
        int nodes = contours.stream().mapToInt(contour -> contour.outline().nodes().getNumPoints()).sum();
        if (nodes <= least) {
            return;
        }
        int needed = 0;
        for (Contour contour : contours) {
            int[] places = places(contour);
            needed += new PieceFit(contour.points(), toleranceMm).pieces(places) + (contour.isRing() ? 0 : 1);
        }
        if (nodes - needed <= least || nodes - needed <= settings.get(SHARE, contours.get(0).part()) * nodes) {
            return;
        }
        Geometry place = FACTORY.buildGeometry(contours.stream().map(contour -> contour.outline().path()).toList());
        String message = artwork.name(element) + " has " + nodes + " nodes; " + needed + " would do to follow it within "
                + artwork.length(toleranceMm);
        found.add(element, place, artwork.finding(RULE, message, List.of(element)).place(place).measured(Measure.count(nodes))
                .required(Measure.count(needed)).build());
    }

    /** Where the nodes stand among the points: both run in the same order. The two ends always count. */
    private static int[] places(Contour contour) {
        Coordinate[] nodes = contour.outline().nodes().getCoordinates();
        Coordinate[] points = contour.points();
        List<Integer> places = new ArrayList<>();
        places.add(0);
        int node = 0;
        for (int i = 0; i < points.length; i++) {
            boolean isNode = false;
            while (node < nodes.length && nodes[node].equals2D(points[i])) { // nodes drawn twice in one place are one here
                node++;
                isNode = true;
            }
            if (isNode && i > 0 && i < points.length - 1) {
                places.add(i);
            }
        }
        places.add(points.length - 1);
        return places.stream().mapToInt(Integer::intValue).toArray();
    }
}
