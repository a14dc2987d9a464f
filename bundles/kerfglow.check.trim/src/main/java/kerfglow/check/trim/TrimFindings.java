// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.trim;

import java.util.ArrayList;
import java.util.List;
import kerfglow.api.Finding;
import kerfglow.api.Inspection;
import kerfglow.api.Measure;
import kerfglow.api.proof.Part;
import kerfglow.geometry.Stretch;

/** Says what was measured, in the units of the job. */
final class TrimFindings {
    private final Inspection inspection;

    TrimFindings(Inspection inspection) {
        this.inspection = inspection;
    }

    List<Finding> of(TrimmedFace face) {
        List<Finding> findings = new ArrayList<>();
        face.dark().forEach(stretch -> findings.add(dark(face, stretch)));
        face.bends().forEach(bend -> findings.add(tight(face, bend)));
        return findings;
    }

    private static String name(Part part) {
        return part.role().word() + " " + part.id() + (part.layer().isBlank() ? "" : " on layer \"" + part.layer() + "\"");
    }

    private Finding dark(TrimmedFace face, Stretch stretch) {
        TrimmedFace.Task task = face.task();
        String lips = "two lips of " + length(task.moulding().lipMm());
        Finding.Builder finding;
        if (stretch.kind() == Stretch.Kind.TAPER) {
            finding = Finding.of(TrimRules.LITTLE_LIT, "A stroke of " + name(task.face()) + " runs out to a tip of which " + lips
                    + " leave less than " + length(task.leastLitMm()) + " lit over " + length(stretch.lengthMm()) + "; "
                    + length(task.tipLengthMm()) + " is the most.")
                    .measured(Measure.mm(stretch.lengthMm())).required(Measure.mm(task.tipLengthMm()));
        } else {
            double lit = face.litMm(stretch);
            finding = Finding.of(TrimRules.LITTLE_LIT, "Of a stroke of " + name(task.face()) + " that is " + length(stretch.widthMm()) + " wide "
                    + lips + (lit > 0 ? " leave " + length(lit) : " leave nothing") + " lit; " + length(task.leastLitMm()) + " is the least.")
                    .measured(Measure.mm(lit)).required(Measure.mm(task.leastLitMm()))
                    .fix("Make it wider by " + length(task.wideEnoughMm() - stretch.widthMm()) + ", or use a narrower lip.");
        }
        return finding.place(stretch.axis()).at(stretch.at()).parts(task.face().id()).elements(task.face().elements()).build();
    }

    private Finding tight(TrimmedFace face, Curve bend) {
        Part part = face.task().face();
        Moulding moulding = face.task().moulding();
        double least = bend.outside() ? moulding.outsideRadiusMm() : moulding.insideRadiusMm();
        return Finding.of(TrimRules.TIGHT_CURVE, "A curve of " + name(part) + " has a radius of " + length(bend.radiusMm())
                + (bend.outside() ? " round a bulge; " : " in a hollow; ") + length(least) + " is the least that the moulding follows.")
                .place(bend.place()).at(bend.at()).measured(Measure.mm(bend.radiusMm())).required(Measure.mm(least)).parts(part.id())
                .elements(part.elements()).build();
    }

    Finding of(MouldingNeed need) {
        return Finding.of(TrimRules.LENGTH, need.moulding().words() + ": " + length(need.lengthMm()) + " round " + need.edges()
                + (need.edges() == 1 ? " edge of " : " edges of ") + need.faces() + (need.faces() == 1 ? " face, " : " faces, ") + need.joints()
                + (need.joints() == 1 ? " joint, " : " joints, ") + need.rolls() + (need.rolls() == 1 ? " roll of " : " rolls of ")
                + length(need.moulding().rollMm()) + ".").measured(Measure.mm(need.lengthMm())).build();
    }

    private String length(double mm) {
        return inspection.length(mm);
    }
}
