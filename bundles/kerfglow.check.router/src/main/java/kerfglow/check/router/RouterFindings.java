// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.router;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import kerfglow.api.Finding;
import kerfglow.api.Inspection;
import kerfglow.api.Measure;
import kerfglow.api.Quantity;
import kerfglow.api.Units;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.geometry.Residue;
import kerfglow.geometry.Stretch;

/** Says what was measured on one part, in the units of the job. */
final class RouterFindings {
    private final Inspection inspection;
    private final Set<String> loose;
    private final Map<Double, String> lengths = new HashMap<>();

    /** @param loose ids of parts that fall out, which is told of them already */
    RouterFindings(Inspection inspection, Set<String> loose) {
        this.inspection = inspection;
        this.loose = loose;
    }

    List<Finding> of(PartResult result) {
        List<Finding> findings = new ArrayList<>();
        smallPart(result.part()).ifPresent(findings::add);
        result.thin().forEach(stretch -> findings.add(thin(result, stretch)));
        result.task().used().ifPresent(bit -> result.left().get(bit).forEach(residue -> findings.add(left(result, bit, residue))));
        return findings;
    }

    static String name(Part part) {
        return part.role().word() + " " + part.id() + (part.layer().isBlank() ? "" : " on layer \"" + part.layer() + "\"");
    }

    private Finding left(PartResult result, Bit bit, Residue residue) {
        inspection.checkpoint(1); // a lattice has a hundred thousand of these
        return residue.kind() == Residue.Kind.GAP ? gap(result, bit, residue) : corner(result, bit, residue);
    }

    private Finding gap(PartResult result, Bit bit, Residue gap) {
        Part part = result.part();
        String message = gap.isEntered()
                ? "The walls of " + name(part) + " stand " + length(gap.widthMm()) + " apart; the bit needs " + length(bit.diameterMm()) + "."
                : "The bit of " + length(bit.diameterMm()) + " does not fit at all into waste of " + name(part) + " that is "
                        + length(gap.widthMm()) + " wide.";
        return Finding.of(RouterRules.NARROW_GAP, message).place(gap.area()).at(gap.at()).measured(Measure.mm(gap.widthMm()))
                .required(Measure.mm(bit.diameterMm())).parts(part.id()).elements(part.elements()).fix(gapFix(result, bit, gap)).build();
    }

    private String gapFix(PartResult result, Bit bit, Residue gap) {
        String widen = "open it by " + length(bit.diameterMm() - gap.widthMm());
        Optional<Bit> passes = largest(result, gap.widthMm());
        if (passes.isEmpty()) {
            return "Either " + widen + ", or close it; no stocked bit passes.";
        }
        Bit smaller = passes.get();
        return result.task().sheet().isReachedBy(smaller)
                ? "Either use " + called(smaller) + ", which passes, or " + widen + "."
                : "Either " + widen + ", or use thinner stock: " + called(smaller) + " passes, but cuts " + length(smaller.fluteMm())
                        + " deep only.";
    }

    /** The largest bit no wider than a gap. */
    private static Optional<Bit> largest(PartResult result, double widthMm) {
        return result.task().bits().stream().filter(bit -> bit.diameterMm() <= widthMm).reduce((smaller, larger) -> larger);
    }

    private Finding corner(PartResult result, Bit bit, Residue corner) {
        Part part = result.part();
        String message = "An inside corner of " + name(part) + " stays filled " + length(corner.depthMm()) + " deep: the bit of "
                + length(bit.diameterMm()) + " leaves a radius of " + length(bit.diameterMm() / 2) + ".";
        Finding.Builder finding = Finding.of(RouterRules.INSIDE_CORNER, message).place(corner.area()).at(corner.at())
                .measured(Measure.mm(corner.depthMm())).required(Measure.mm(result.task().leftDepthMm())).parts(part.id())
                .elements(part.elements());
        // the depth of a straight corner goes with the bit
        result.task().bits().stream()
                .filter(smaller -> smaller.diameterMm() < bit.diameterMm() && result.task().sheet().isReachedBy(smaller))
                .reduce((smallest, larger) -> larger)
                .ifPresent(smaller -> finding.fix("With " + called(smaller) + " about "
                        + length(corner.depthMm() * smaller.diameterMm() / bit.diameterMm())
                        + " would stay; or accept the radius, draw it, or have the corner finished by hand."));
        return finding.build();
    }

    private Finding thin(PartResult result, Stretch stretch) {
        Part part = result.part();
        double least = result.task().leastStrokeMm();
        Finding.Builder finding;
        if (stretch.kind() == Stretch.Kind.TAPER) {
            finding = Finding.of(RouterRules.THIN_STROKE, "A stroke of " + name(part) + " runs out to a tip over "
                    + length(stretch.lengthMm()) + ", narrower than " + length(least) + " all along; " + length(result.task().taperLengthMm())
                    + " is the most.")
                    .measured(Measure.mm(stretch.lengthMm())).required(Measure.mm(result.task().taperLengthMm()))
                    .fix("End the stroke where it is " + length(least) + " wide, or make it run out faster.");
        } else {
            finding = Finding.of(RouterRules.THIN_STROKE, "A stroke of " + name(part) + " is " + length(stretch.widthMm())
                    + " wide where it is narrowest; " + length(least) + " is the least"
                    + (part.role() == Role.OPENING ? ", the bit's diameter." : "."))
                    .measured(Measure.mm(stretch.widthMm())).required(Measure.mm(least))
                    .fix("Make it wider by " + length(least - stretch.widthMm())
                            + (part.role() == Role.OPENING ? ", or use a smaller bit." : ", or cut it from a tougher material."));
        }
        return finding.place(stretch.axis()).at(stretch.at()).parts(part.id()).elements(part.elements()).build();
    }

    private Optional<Finding> smallPart(Part part) {
        double least = inspection.settings().get(RouterSettings.LEAST_AREA, part);
        double area = part.shape().getArea();
        if (part.role() == Role.OPENING || area >= least || loose.contains(part.id())) {
            return Optional.empty();
        }
        return Optional.of(Finding.of(RouterRules.SMALL_PART, "The " + name(part) + " has " + area(area) + "; vacuum holds "
                + area(least) + " and more.")
                .place(part.shape()).measured(new Measure(area, Quantity.AREA)).required(new Measure(least, Quantity.AREA))
                .parts(part.id()).elements(part.elements()).build());
    }

    private String called(Bit bit) {
        return "\"" + bit.name() + "\" (" + length(bit.diameterMm()) + ")";
    }

    /** A part with many holes has the same lengths in very many findings, and writing one takes longer than measuring it. */
    private String length(double mm) {
        return lengths.computeIfAbsent(mm, inspection::length);
    }

    private String area(double mm2) {
        return Units.format(mm2, Quantity.AREA, inspection.units());
    }
}
