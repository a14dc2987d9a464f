// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.artwork;

import java.util.ArrayList;
import java.util.List;
import kerfglow.api.Finding;
import kerfglow.api.Measure;
import kerfglow.api.Rule;
import kerfglow.api.Setting;
import kerfglow.api.Severity;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.index.strtree.STRtree;

/** Outlines that are to be cut but do not close. */
final class OpenOutlines {
    static final Rule OPEN = new Rule("artwork.open-outline", Severity.STOP, "An outline that is to be cut does not close",
            "Filled on screen it looks whole, but CAD has no shape to offset or nest, and a router leaves the piece hanging.",
            "Draw the missing stretch or close the path; delete it when it is left over.", "common practice, no source");
    static final Rule NEARLY = new Rule("artwork.nearly-closed", Severity.REVIEW, "The ends of an outline nearly meet",
            "Some CAD joins such ends and some does not, so the same file makes a part in one shop and none in the next.",
            "Join the two end nodes.", "common practice, no source");
    static final Rule PIECES = new Rule("artwork.outline-in-pieces", Severity.REVIEW,
            "An outline is drawn in pieces whose ends meet but are not joined",
            "CAD takes each piece for an open line, and fills of the single pieces paint the wrong area.",
            "Join the pieces into one closed path.", "common practice, no source");
    static final Setting<Double> NEAR_ENDS = Setting.lengthMm("artwork.near-ends", "widest gap between ends that nearly meet", 1.0, 0, 50,
            "Assumed: what drawing by eye leaves; wider gaps are missing stretches", "common practice, no source");
    static final Setting<Double> CLOSED_WITHIN = Setting.lengthMm("artwork.closed-within", "gap that counts as closed", 0.001, 0, 1,
            "coordinates are kept to 0.001 mm, so a smaller gap is rounding", "geometry");

    private static final GeometryFactory FACTORY = new GeometryFactory();

    private final Artwork artwork;
    private final List<Contour> open = new ArrayList<>();
    private final STRtree ends = new STRtree();

    private record End(Contour contour, Coordinate at) {
    }

    private OpenOutlines(Artwork artwork) {
        this.artwork = artwork;
        for (Contour contour : artwork.contours()) {
            double closedWithinMm = artwork.inspection().settings().get(CLOSED_WITHIN, contour.part());
            if (!contour.outline().closed() && first(contour).distance(last(contour)) > closedWithinMm) {
                open.add(contour);
                ends.insert(new Envelope(first(contour)), new End(contour, first(contour)));
                ends.insert(new Envelope(last(contour)), new End(contour, last(contour)));
            }
        }
        ends.build();
    }

    static List<Finding> find(Artwork artwork) {
        OpenOutlines outlines = new OpenOutlines(artwork);
        Gatherer open = new Gatherer(artwork, OPEN);
        Gatherer nearly = new Gatherer(artwork, NEARLY);
        Gatherer pieces = new Gatherer(artwork, PIECES);
        for (Contour contour : outlines.open) {
            outlines.judge(contour, open, nearly, pieces);
        }
        List<Finding> findings = new ArrayList<>(open.findings());
        findings.addAll(nearly.findings());
        findings.addAll(pieces.findings());
        return findings;
    }

    private void judge(Contour contour, Gatherer open, Gatherer nearly, Gatherer pieces) {
        double nearMm = artwork.inspection().settings().get(NEAR_ENDS, contour.part());
        Coordinate from = first(contour);
        Coordinate to = last(contour);
        double gapMm = from.distance(to);
        String who = artwork.name(contour.element());
        if (meetsAnother(contour, from, nearMm) && meetsAnother(contour, to, nearMm)) {
            add(pieces, PIECES, contour, "Both ends of " + who + " meet ends of other open outlines, but nothing joins them; they stand "
                    + artwork.length(gapMm) + " apart, at " + artwork.place(from) + " and " + artwork.place(to));
        } else if (gapMm <= nearMm + Artwork.RESOLUTION_MM) {
            add(nearly, NEARLY, contour, "The ends of " + who + " stand " + artwork.length(gapMm) + " apart at " + artwork.place(from)
                    + "; a closed outline has no gap");
        } else {
            add(open, OPEN, contour, "The outline of " + who + " is open over " + artwork.length(gapMm) + ", from " + artwork.place(from)
                    + " to " + artwork.place(to) + "; a closed outline has no gap");
        }
    }

    /** A closing stretch drawn by nobody: the straight line between the ends is where the fault is seen. */
    private void add(Gatherer into, Rule rule, Contour contour, String message) {
        Coordinate from = first(contour);
        Coordinate to = last(contour);
        var gap = FACTORY.createLineString(new Coordinate[] {from, to});
        into.add(contour.element(), gap, artwork.finding(rule, message, List.of(contour.element())).place(gap).at(from)
                .measured(Measure.mm(from.distance(to))).required(Measure.mm(0)).build());
    }

    private boolean meetsAnother(Contour contour, Coordinate at, double withinMm) {
        Envelope around = new Envelope(at);
        around.expandBy(withinMm + Artwork.RESOLUTION_MM);
        for (Object found : ends.query(around)) {
            End end = (End) found;
            if (end.contour() != contour && end.contour().run().equals(contour.run())
                    && end.contour().element().layer().equals(contour.element().layer()) && end.at().distance(at) <= withinMm + Artwork.RESOLUTION_MM) {
                return true;
            }
        }
        return false;
    }

    private static Coordinate first(Contour contour) {
        return contour.points()[0];
    }

    private static Coordinate last(Contour contour) {
        return contour.points()[contour.points().length - 1];
    }
}
