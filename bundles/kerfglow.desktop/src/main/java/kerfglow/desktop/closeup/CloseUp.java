// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.closeup;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import kerfglow.api.Measure;
import kerfglow.api.Quantity;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.host.Result;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;

/**
 * A place of a finding, ready to be drawn large: the parts around it, the tool as it stands there, and the dimension. Unchanging.
 *
 * @param scale how large it is drawn
 * @param window what is seen, mm
 * @param pieces the parts, those that the finding names last
 * @param place the place
 * @param tool what works there
 * @param dimension the measure, from wall to wall
 */
public record CloseUp(Scale scale, Envelope window, List<Piece> pieces, Result.Place place, Optional<Tool> tool, Optional<Dimension> dimension) {
    /**
     * A part as far as it is seen.
     *
     * @param role what it becomes
     * @param concerned true when the finding names it
     * @param edge its outline, mm
     * @param area its area, mm
     */
    public record Piece(Role role, boolean concerned, Geometry edge, Geometry area) {
    }

    /** A place is seen together with this many times what was measured, so that one sees where it lies. */
    private static final double SURROUNDINGS = 2.5;
    /** So many lengths of a light module show it whole with its neighbours. */
    private static final double MODULES = 1.3;
    /** A little more than a place is seen around it. */
    private static final double WHOLE = 1.3;
    /** Assumed: a length of less than a twelfth of what is seen cannot be judged by eye. */
    private static final double LONG = 12;
    private static final double LEAST_WINDOW_MM = 4;

    /**
     * Prepares a close-up.
     *
     * @param result the run
     * @param finding the finding
     * @param place one of its places
     * @param acrossMm width of the canvas on the screen, mm
     * @param downMm height of the canvas on the screen, mm
     */
    public static CloseUp of(Result result, Result.ReportedFinding finding, Result.Place place, double acrossMm, double downMm) {
        ToolPlacer placer = new ToolPlacer(new ShopFacts(result), result.units());
        Scale scale = Scale.showing(wantedMm(finding, place, placer), Math.min(acrossMm, downMm));
        Coordinate middle = isSeenWhole(finding, place) ? place.shape().getEnvelopeInternal().centre() : place.at();
        Envelope window = new Envelope(middle);
        window.expandBy(acrossMm / scale.factor() / 2, downMm / scale.factor() / 2);
        List<Part> concerned = result.parts().stream().filter(part -> finding.parts().contains(part.id())).toList();
        List<Part> here = concerned.stream().filter(part -> part.shape().getEnvelopeInternal().intersects(window)).toList();
        List<Piece> pieces = new ArrayList<>();
        for (Part part : result.parts()) {
            if (part.role().isChecked() && !here.contains(part) && part.shape().getEnvelopeInternal().intersects(window)) {
                pieces.add(piece(part, false));
            }
        }
        here.forEach(part -> pieces.add(piece(part, true)));
        return new CloseUp(scale, window, List.copyOf(pieces), place, placer.place(finding, place, here, window), Dimension.of(finding, place, here));
    }

    private static Piece piece(Part part, boolean concerned) {
        return new Piece(part.role(), concerned, part.shape().getBoundary(), part.shape());
    }

    private static double wantedMm(Result.ReportedFinding finding, Result.Place place, ToolPlacer placer) {
        double wanted = LEAST_WINDOW_MM;
        for (Optional<Measure> measure : List.of(place.measured().or(finding::measured), finding.required())) {
            if (measure.isPresent() && measure.get().quantity() == Quantity.LENGTH) {
                wanted = Math.max(wanted, SURROUNDINGS * Math.abs(measure.get().value()));
            }
        }
        wanted = Math.max(wanted, SURROUNDINGS * placer.sizeMm(finding).orElse(0));
        wanted = Math.max(wanted, placer.moduleMm(finding).map(length -> MODULES * length).orElse(0.0));
        return isSeenWhole(finding, place) ? Math.max(wanted, WHOLE * sizeMm(place)) : wanted;
    }

    /** An area is shown whole, unless it is so long that the length measured in it could not be seen then. */
    private static boolean isSeenWhole(Result.ReportedFinding finding, Result.Place place) {
        double measuredMm = place.measured().or(finding::measured).filter(measure -> measure.quantity() == Quantity.LENGTH).map(measure -> Math.abs(measure.value()))
                .orElse(Double.POSITIVE_INFINITY);
        return place.shape().getDimension() == 2 && sizeMm(place) < LONG * measuredMm;
    }

    private static double sizeMm(Result.Place place) {
        Envelope extent = place.shape().getEnvelopeInternal();
        return Math.max(extent.getWidth(), extent.getHeight());
    }
}
