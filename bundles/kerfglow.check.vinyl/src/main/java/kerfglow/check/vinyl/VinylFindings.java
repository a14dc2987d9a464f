// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.vinyl;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import kerfglow.api.Finding;
import kerfglow.api.Inspection;
import kerfglow.api.Measure;
import kerfglow.api.Quantity;
import kerfglow.api.Settings;
import kerfglow.api.Units;
import kerfglow.api.proof.Part;
import kerfglow.geometry.RectangleFit;
import kerfglow.geometry.Stretch;
import org.locationtech.jts.geom.Geometry;

/** Says what was measured, in the units of the job. */
final class VinylFindings {
    private static final double SECONDS_PER_MINUTE = 60;
    /** Waste touches the film that it lies between, and its axis stands no farther from it than half of what is thin. */
    private static final double NEAR_MM = 1.0;

    private final Inspection inspection;

    VinylFindings(Inspection inspection) {
        this.inspection = inspection;
    }

    List<Finding> of(Film film, Weeding weeding, Weeding.Limits waste) {
        Settings settings = inspection.settings();
        List<Finding> findings = new ArrayList<>();
        for (Part part : weeding.smallFilm()) {
            double least = settings.get(VinylSettings.LEAST_PIECE, part);
            findings.add(small("The " + name(part), Weeding.sideMm(part.shape()), least).place(part.shape()).parts(part.id()).elements(part.elements()).build());
        }
        weeding.smallWaste().forEach(piece -> findings.add(small("A piece of waste between film of " + film.colour(), Weeding.sideMm(piece), waste.pieceMm())
                .place(piece).parts(near(film, piece)).build()));
        weeding.thinFilm().forEach(thin -> findings.add(thin("A stroke of the " + name(thin.part()), thin.stretch(), Weeding.Limits.of(settings, thin.part()).strokeMm(),
                Weeding.Limits.of(settings, thin.part()).tipMm()).parts(thin.part().id()).elements(thin.part().elements()).build()));
        weeding.thinWaste().forEach(stretch -> findings.add(thin("Waste between film of " + film.colour(), stretch, waste.wasteMm(), waste.tipMm())
                .parts(near(film, stretch.axis())).build()));
        return findings;
    }

    private static List<String> near(Film film, Geometry place) {
        return film.parts().stream().filter(part -> part.shape().isWithinDistance(place, NEAR_MM)).map(Part::id).toList();
    }

    static String name(Part part) {
        return "film " + part.id() + " of " + part.paint() + (part.layer().isBlank() ? "" : " on layer \"" + part.layer() + "\"");
    }

    private Finding.Builder small(String what, double side, double least) {
        return Finding.of(VinylRules.SMALL_PIECE, what + " is no larger than a square of " + length(side) + "; " + length(least) + " is the least.")
                .measured(Measure.mm(side)).required(Measure.mm(least));
    }

    private Finding.Builder thin(String what, Stretch stretch, double least, double tip) {
        Finding.Builder finding = stretch.kind() == Stretch.Kind.TAPER
                ? Finding.of(VinylRules.THIN, what + " runs out to a tip over " + length(stretch.lengthMm()) + ", narrower than " + length(least) + " all along; "
                        + length(tip) + " is the most.").measured(Measure.mm(stretch.lengthMm())).required(Measure.mm(tip))
                : Finding.of(VinylRules.THIN, what + " is " + length(stretch.widthMm()) + " wide where it is narrowest; " + length(least) + " is the least.")
                        .measured(Measure.mm(stretch.widthMm())).required(Measure.mm(least)).fix("Make it wider by " + length(least - stretch.widthMm()) + ", or have it printed.");
        return finding.place(stretch.axis()).at(stretch.at());
    }

    Finding of(Meeting meeting, Meetings.Limits limits) {
        String pair = "the " + name(meeting.lower()) + " and the " + name(meeting.upper()) + " over it";
        String along = " along " + length(meeting.line().getLength());
        double required = meeting.kind() == Meeting.Kind.REPEAT ? limits.registrationMm() : limits.overlapMm();
        String message = switch (meeting.kind()) {
            case GAP -> "Between " + pair + " a gap of up to " + length(-meeting.measuredMm()) + " shows" + along + "; they should overlap by " + length(required) + ".";
            case SHORT -> meeting.measuredMm() == 0 ? "Edge to edge, " + pair + " do not overlap" + along + "; " + length(required) + " is the least."
                    : "Where they meet, " + pair + " overlap by " + length(meeting.measuredMm()) + along + "; " + length(required) + " is the least.";
            case REPEAT -> "The edges of " + pair + " run as one" + along + ", " + length(meeting.measuredMm()) + " apart: laid off by up to " + length(required)
                    + " the lower shows beside the upper.";
        };
        String fix = meeting.kind() == Meeting.Kind.REPEAT ? "Let the upper edge stand back by " + length(required) + ", or run past the lower one by that much."
                : "Let the lower colour run on below the upper one by " + length(required - meeting.measuredMm()) + ".";
        return Finding.of(VinylRules.OVERLAP, message).place(meeting.line()).measured(Measure.mm(meeting.measuredMm())).required(Measure.mm(required))
                .parts(meeting.lower().id(), meeting.upper().id()).fix(fix).cause(meeting.kind().words()).build();
    }

    List<Finding> seams(FilmUse use) {
        List<Finding> findings = new ArrayList<>();
        use.panels().forEach((part, plan) -> {
            double extent = new RectangleFit(part.shape()).leastExtentMm();
            String message = "The " + name(part) + " is " + length(extent) + " across at least; the widest roll of its colour leaves " + length(Math.max(0, use.widest())) + "."
                    + plan.map(panels -> " It takes " + panels.shapes().size() + " panels with " + (panels.degrees() == 0 ? "upright" : "level") + " seams.").orElse("");
            String fix = plan.map(panels -> panels.details() == 0 ? "Lay it in " + panels.shapes().size() + " panels; the seams shown keep clear of fine detail, or use a wider roll."
                    : "Use a wider roll, or agree on the seams: none keep clear of all detail, those shown cross or come close to " + panels.details()
                            + (panels.details() == 1 ? " place." : " places.")).orElse("Use a wider roll; no plan of panels was found.");
            findings.add(Finding.of(VinylRules.SEAM, message).place(part.shape()).measured(Measure.mm(extent)).required(Measure.mm(Math.max(0, use.widest())))
                    .parts(part.id()).elements(part.elements()).fix(fix).build());
        });
        return findings;
    }

    Optional<Finding> use(FilmUse use, Effort effort) {
        return use.layout().map(layout -> {
            String weeding = " Weeding effort " + String.format(Locale.ROOT, "%.1f", effort.seconds() / SECONDS_PER_MINUTE) + " min: " + effort.pieces() + " pieces of film and waste at " + Units.format(effort.perPiece(), Quantity.TIME, inspection.units()) + ", "
                    + length(effort.cutMm()) + " of cut at " + Units.format(effort.perMetre(), Quantity.TIME, inspection.units()) + " a metre.";
            return Finding.of(VinylRules.USE, "Film of " + use.film().colour() + " takes about " + length(layout.lengthMm()) + " of \"" + layout.roll().name() + "\" ("
                    + length(layout.roll().widthMm()) + " wide), at least " + length(layout.leastMm()) + ": " + area(use.film().areaMm2()) + " of film and "
                    + area(use.wasteMm2()) + " of waste." + weeding)
                    .measured(Measure.mm(layout.lengthMm())).parts(use.film().parts().stream().map(Part::id).toList()).cause(use.film().colour()).build();
        });
    }

    private String length(double mm) {
        return inspection.length(mm);
    }

    private String area(double mm2) {
        return Units.format(mm2, Quantity.AREA, inspection.units());
    }
}
