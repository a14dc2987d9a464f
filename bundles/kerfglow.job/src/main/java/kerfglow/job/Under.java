// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import kerfglow.api.PlacedModule;
import kerfglow.api.proof.Part;
import kerfglow.host.Result;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/** What lies under a pointer or in a frame on the proof, uppermost first: marks, places of findings, lights placed by hand, parts. */
public final class Under {
    private final List<Placed> placed;
    private final List<Selection.Thing> findings;

    /**
     * Ready to look.
     *
     * @param state the job with its marks and lights
     * @param result what is shown
     */
    public Under(JobState state, Result result) {
        placed = placed(state, result);
        findings = result.findings().stream().map(finding -> new Selection.Thing(Selection.Kind.FINDING, finding.id())).toList();
    }

    /** Something, where it is. Of one kind the smaller lies above, since the larger could not be reached else. */
    private record Placed(Selection.Thing thing, Geometry shape) {
    }

    private static List<Placed> placed(JobState state, Result result) {
        List<Placed> all = new ArrayList<>();
        state.marks().forEach(mark -> all.add(new Placed(new Selection.Thing(Selection.Kind.MARK, mark.id()), ground(mark.shape()))));
        for (Result.ReportedFinding finding : result.findings()) {
            finding.places().forEach(place -> all.add(new Placed(new Selection.Thing(Selection.Kind.FINDING, finding.id()), place.shape())));
        }
        List<PlacedModule> modules = state.sheet().modules();
        for (int i = 0; i < modules.size(); i++) {
            Geometry centre = new GeometryFactory().createPoint(new Coordinate(modules.get(i).xMm(), modules.get(i).yMm()));
            all.add(new Placed(new Selection.Thing(Selection.Kind.LIGHT, String.valueOf(i)), centre));
        }
        for (Part part : result.parts()) {
            all.add(new Placed(new Selection.Thing(Selection.Kind.PART, part.id()), part.shape()));
        }
        return all.stream().sorted(Comparator.comparing((Placed each) -> each.thing().kind()).thenComparingDouble(each -> each.shape().getArea())).toList();
    }

    /** Rings and boxes are taken by their line, so that what they go round can still be reached. */
    private static Geometry ground(MarkShape shape) {
        return shape instanceof MarkShape.Ring || shape instanceof MarkShape.Box ? shape.outline().getBoundary() : shape.outline();
    }

    /**
     * What is within reach of a point.
     *
     * @param reachMm how near is near enough, mm; a few pixels at the zoom that is shown
     */
    public List<Selection.Thing> at(PointMm point, double reachMm) {
        Geometry pointer = new GeometryFactory().createPoint(point.coordinate());
        Envelope around = new Envelope(point.coordinate());
        around.expandBy(reachMm);
        Set<Selection.Thing> found = new LinkedHashSet<>();
        placed.stream().filter(each -> each.shape().getEnvelopeInternal().intersects(around)).filter(each -> each.shape().isWithinDistance(pointer, reachMm))
                .forEach(each -> found.add(each.thing()));
        return List.copyOf(found);
    }

    /** What lies wholly in a frame. */
    public List<Selection.Thing> inside(Envelope frame) {
        Set<Selection.Thing> found = new LinkedHashSet<>();
        placed.stream().filter(each -> frame.contains(each.shape().getEnvelopeInternal())).forEach(each -> found.add(each.thing()));
        return List.copyOf(found);
    }

    /** Everything that could be selected. */
    public Set<Selection.Thing> all() {
        Set<Selection.Thing> all = new LinkedHashSet<>();
        placed.forEach(each -> all.add(each.thing()));
        all.addAll(findings); // those without a place too
        return all;
    }
}
