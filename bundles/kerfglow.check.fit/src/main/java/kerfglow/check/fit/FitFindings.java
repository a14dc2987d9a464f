// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import kerfglow.api.Finding;
import kerfglow.api.Inspection;
import kerfglow.api.Measure;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;

/** Says what was measured, in the units of the job. */
final class FitFindings {
    private final Inspection inspection;

    FitFindings(Inspection inspection) {
        this.inspection = inspection;
    }

    static String name(Part part) {
        return part.role().word() + " " + part.id() + (part.layer().isBlank() ? "" : " on layer \"" + part.layer() + "\"");
    }

    private static String names(List<Part> parts) {
        return String.join(" and ", parts.stream().map(FitFindings::name).toList());
    }

    List<Finding> of(PairResult result) {
        List<Finding> findings = new ArrayList<>();
        result.departures().forEach(departure -> findings.add(departure(result, departure)));
        result.counters().forEach(fault -> findings.add(counter(result, fault)));
        result.missed().forEach(missed -> findings.add(missed(result, missed)));
        return findings;
    }

    private Finding departure(PairResult result, Departure departure) {
        Allowance allowance = result.allowance();
        double clearance = departure.extremeMm();
        String edge = (departure.counter() ? "A counter of " : "The edge of ") + names(result.pair().inners());
        String where = " over " + length(departure.place().getLength()) + "; the allowance is " + allowance.words(inspection) + ", within "
                + length(allowance.toleranceMm()) + " a side.";
        String message;
        String fix;
        if (clearance < 0) {
            message = edge + " sticks out of " + names(result.pair().outers()) + " by " + length(-clearance) + where;
            // a corner sticks out farther than the edges beside it, so that no one number says how far to move them
            fix = "Move this edge inwards until it keeps " + length(allowance.sideMm()) + ".";
        } else if (departure.kind() == Departure.Kind.TIGHT) {
            message = edge + " keeps only " + length(clearance) + " from " + names(result.pair().outers()) + where;
            fix = "Move this edge away from that of the face or opening by " + length(allowance.sideMm() - clearance) + ".";
        } else {
            message = edge + " stands " + length(clearance) + " off " + names(result.pair().outers()) + where;
            fix = "Move this edge nearer by " + length(clearance - allowance.sideMm()) + ", or draw what is missing between.";
        }
        return Finding.of(FitRules.CLEARANCE, message).place(departure.place()).at(departure.at()).measured(Measure.mm(clearance))
                .required(Measure.mm(allowance.sideMm())).parts(result.pair().ids()).elements(result.pair().elements()).fix(fix).build();
    }

    private Finding counter(PairResult result, PairResult.CounterFault fault) {
        Allowance allowance = result.allowance();
        String inner = name(fault.part());
        String outers = names(result.pair().outers());
        String message = switch (fault.kind()) {
            case SHRUNK -> "The counter of " + inner + (fault.clearanceMm() < 0 ? " lies " + length(-fault.clearanceMm()) + " past the edge of "
                    : " is no larger than that of ") + outers + "; it must be larger by " + allowance.words(inspection) + ".";
            case CLOSED -> "The " + inner + " goes on behind a counter of " + outers + "; it needs a counter that is larger by "
                    + allowance.words(inspection) + ".";
            case EXTRA -> "The " + inner + " has an opening " + length(fault.clearanceMm()) + " wide where " + outers + " has none.";
        };
        Finding.Builder finding = Finding.of(FitRules.COUNTER, message).place(fault.place()).parts(result.pair().ids())
                .elements(result.pair().elements());
        if (fault.kind() == PairResult.CounterFault.Kind.SHRUNK) {
            finding.measured(Measure.mm(fault.clearanceMm())).required(Measure.mm(allowance.sideMm()));
        } else if (fault.kind() == PairResult.CounterFault.Kind.EXTRA) {
            finding.measured(Measure.mm(fault.clearanceMm()))
                    .required(Measure.mm(inspection.settings().get(FitSettings.HOLE_SIZE, result.pair().outers().get(0))))
                    .fix("Close it, or open a counter in the face; a hole for wires is smaller.");
        }
        return finding.build();
    }

    private Finding missed(PairResult result, PairResult.Missed missed) {
        Allowance allowance = result.allowance();
        return Finding.of(FitRules.MISSED_STROKE, "Along " + length(missed.place().getLength()) + " of its edge " + name(missed.part())
                + " has no part of " + names(result.pair().inners()) + " near; at most it is " + length(missed.distanceMm())
                + " off, the allowance is " + allowance.words(inspection) + ".")
                .place(missed.place()).at(missed.at()).measured(Measure.mm(missed.distanceMm())).required(Measure.mm(allowance.sideMm()))
                .parts(result.pair().ids()).elements(result.pair().elements()).build();
    }

    Finding lonely(Part part) {
        String partner = switch (part.role()) {
            case FACE -> "back";
            case BACK -> "face";
            case PUSH_THROUGH -> "opening";
            default -> "push-through";
        };
        boolean inner = part.role() == Role.BACK || part.role() == Role.PUSH_THROUGH;
        return Finding.of(FitRules.UNPAIRED, "The " + name(part) + " has no " + partner + (inner ? " of its own over it." : " that lies with it."))
                .place(part.shape()).parts(part.id()).elements(part.elements()).cause(part.role().word()).build();
    }

    List<Finding> of(MadeBack back) {
        return back.faults().stream().map(fault -> fault(back, fault)).toList();
    }

    private Finding fault(MadeBack back, MadeBack.Fault fault) {
        String face = name(back.face());
        double total = back.allowance().totalMm();
        String narrow = length(fault.widthMm()) + " wide and its back " + back.allowance().words(inspection) + " smaller";
        Finding.Builder finding = switch (fault.kind()) {
            case VANISHES -> Finding.of(FitRules.BACK_LOST, "The back of " + face + " vanishes: the face is at most " + narrow + ".");
            case LOSES_STROKE -> Finding.of(FitRules.BACK_LOST, "The back of " + face + " loses a stroke " + length(fault.lengthMm())
                    + " long: the face is " + narrow + ".");
            case LOSES_TIP -> Finding.of(FitRules.BACK_LOST, "The back of " + face + " stops " + length(fault.lengthMm())
                    + " before the tip of a stroke that runs out: the face is narrower there than " + back.allowance().words(inspection) + ".");
            case SPLITS -> Finding.of(FitRules.BACK_SPLITS, "The back of " + face + " splits: the face is " + narrow + ".");
            case OPENS_COUNTER -> Finding.of(FitRules.COUNTER, "The back of " + face + " loses the stroke beside a counter over "
                    + length(fault.lengthMm()) + ", so that the counter merges with what lies beyond: the face is " + narrow + ".")
                    .fix("Widen the stroke, or use a smaller allowance.");
        };
        boolean tip = fault.kind() == MadeBack.Fault.Kind.LOSES_TIP;
        return finding.place(fault.place()).at(fault.at()).measured(Measure.mm(tip ? fault.lengthMm() : fault.widthMm()))
                .required(Measure.mm(tip ? ThinFace.of(inspection, back.face()).tipMm(back.allowance().sideMm()) : total))
                .parts(back.face().id()).elements(back.face().elements()).build();
    }

    Optional<Finding> of(Thermal thermal) {
        if (thermal.fits()) {
            return Optional.empty();
        }
        Part face = thermal.face();
        String message = thermal.leftMm() < 0
                ? "The allowance of " + name(face) + " does not even hold walls and legs: " + thermal.sum(inspection) + "."
                : "The " + name(face) + " of " + thermal.material() + " moves more against its can than there is play, and " + thermal.fails()
                        + ": " + thermal.sum(inspection) + ".";
        return Optional.of(Finding.of(FitRules.THERMAL, message).place(face.shape()).measured(Measure.mm(thermal.movementMm()))
                .required(Measure.mm(thermal.leftMm())).parts(face.id()).elements(face.elements())
                .fix("Allow " + length(thermal.movementMm() - thermal.leftMm())
                        + " more in total, split the face, or use a material nearer to the can's.")
                .build());
    }

    private String length(double mm) {
        return inspection.length(mm);
    }
}
