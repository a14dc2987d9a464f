// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.scene;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import kerfglow.host.Result;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.index.strtree.STRtree;

/** The places of findings prepared for drawing, and which of them a view meets. Unchanging. */
public final class PlaceIndex {
    /**
     * One place of one finding, ready to draw.
     *
     * @param order place in the list, for a fixed paint order
     * @param finding the finding
     * @param place which of its places
     * @param outlines rings and lines at several levels of detail; none for a point
     * @param isArea true when it is filled
     * @param suggestion the outline as it would be right; absent when the check drew none
     */
    public record Drawn(int order, Result.ReportedFinding finding, int place, Outlines outlines, boolean isArea, Optional<Outlines> suggestion) {
        public Result.Place at() {
            return finding.places().get(place);
        }
    }

    private final STRtree index = new STRtree();
    private boolean suggestions;
    private final Map<Geometry, Outlines> known = new IdentityHashMap<>();

    /** Prepares every place of the findings. */
    public PlaceIndex(List<Result.ReportedFinding> findings) {
        this(findings, Map.of());
    }

    /** Prepares others; what was prepared of the same shapes here is taken over, since making levels of detail takes long. */
    public PlaceIndex with(List<Result.ReportedFinding> findings) {
        return new PlaceIndex(findings, known);
    }

    private PlaceIndex(List<Result.ReportedFinding> findings, Map<Geometry, Outlines> before) {
        Function<Geometry, Outlines> outlines = shape -> known.computeIfAbsent(shape, each -> before.containsKey(each) ? before.get(each) : Outlines.of(each));
        int order = 0;
        for (Result.ReportedFinding finding : findings) {
            for (int i = 0; i < finding.places().size(); i++) {
                Result.Place place = finding.places().get(i);
                Envelope extent = place.shape().getEnvelopeInternal();
                extent.expandToInclude(place.at());
                place.suggestion().ifPresent(outline -> extent.expandToInclude(outline.getEnvelopeInternal()));
                index.insert(extent, new Drawn(order++, finding, i, outlines.apply(place.shape()), place.shape().getDimension() == 2, place.suggestion().map(outlines)));
                suggestions |= place.suggestion().isPresent();
            }
        }
        index.build();
    }

    /** True when a check drew what would be right. */
    public boolean hasSuggestions() {
        return suggestions;
    }

    /** The places that a view meets, in the order of the list. */
    public List<Drawn> meeting(Envelope seen) {
        List<Drawn> met = new ArrayList<>();
        index.query(seen, found -> met.add((Drawn) found));
        met.sort(Comparator.comparingInt(Drawn::order));
        return met;
    }
}
