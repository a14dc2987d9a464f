// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.returns;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import kerfglow.api.Finding;
import kerfglow.api.Inspection;
import kerfglow.api.Measure;
import kerfglow.api.Quantity;
import kerfglow.api.Rule;
import kerfglow.api.Units;
import kerfglow.api.proof.Part;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/** Says what of one strip cannot be formed, in the units of the job. */
final class ReturnsFindings {
    private final Inspection inspection;
    private final List<Coil> coils;

    ReturnsFindings(Inspection inspection, List<Coil> coils) {
        this.inspection = inspection;
        this.coils = coils;
    }

    List<Finding> of(Faults faults) {
        List<Finding> findings = new ArrayList<>();
        Strip strip = faults.strip();
        Tooling tooling = strip.tooling();
        String where = "the " + strip.contour().words() + " of " + name(strip.contour().part());
        for (Faults.Tight tight : faults.tight()) {
            findings.add(finding(ReturnsRules.TIGHT_RADIUS, "A curve of " + where + " bends the strip to " + length(tight.insideRadiusMm())
                    + " inside, over " + degrees(tight.degrees()) + "; the bender rolls " + length(tooling.leastRadiusMm()) + " and more.",
                    strip, tight.line(), tight.at(), mm(tight.insideRadiusMm()), mm(tooling.leastRadiusMm())).build());
        }
        for (Faults.Flange flange : faults.flanges()) {
            findings.add(finding(ReturnsRules.SHORT_FLANGE, "Two folds of " + where + " stand " + length(flange.lengthMm()) + " apart; "
                    + length(tooling.leastFlangeMm()) + " is the least.",
                    strip, flange.line(), flange.line().getInteriorPoint().getCoordinate(), mm(flange.lengthMm()), mm(tooling.leastFlangeMm()))
                    .build());
        }
        for (Step corner : faults.sharp()) {
            double inside = 180 - corner.degrees();
            findings.add(finding(ReturnsRules.SHARP_BEND, "A corner of " + where + " leaves " + degrees(inside) + " between its sides; the bender makes "
                    + degrees(tooling.leastAngle()) + " and more.",
                    strip, new GeometryFactory().createPoint(corner.middle()), corner.middle(), new Measure(inside, Quantity.ANGLE),
                    new Measure(tooling.leastAngle(), Quantity.ANGLE)).build());
        }
        for (Faults.Channel channel : faults.channels()) {
            findings.add(finding(ReturnsRules.NARROW_CHANNEL, (channel.inside() ? "Within " : "Outside ") + where + " two runs of the strip "
                    + (channel.tipMm() > 0 ? "run together into a tip over " + length(channel.tipMm()) : "stand " + length(channel.widthMm()) + " apart")
                    + "; the arm of the bender needs " + length(tooling.armMm()) + ".",
                    strip, channel.place(), channel.at(), mm(channel.widthMm()), mm(tooling.armMm())).build());
        }
        faults.counterMm().ifPresent(disc -> findings.add(finding(ReturnsRules.SMALL_COUNTER, "The largest disc in a counter of "
                + name(strip.contour().part()) + " measures " + length(disc) + "; " + length(tooling.leastCounterMm()) + " is the least that a strip is formed in.",
                strip, strip.contour().filled(), strip.contour().filled().getInteriorPoint().getCoordinate(), mm(disc), mm(tooling.leastCounterMm())).build()));
        coil(strip, where).ifPresent(findings::add);
        return findings;
    }

    private Optional<Finding> coil(Strip strip, String where) {
        Tooling tooling = strip.tooling();
        List<Coil> fitting = coils.stream().filter(coil -> coil.isFor(tooling)).toList();
        if (fitting.isEmpty()) {
            return Optional.empty(); // said as missing
        }
        List<Coil> wide = fitting.stream().filter(coil -> coil.isWideEnough(tooling.depthMm())).toList();
        if (wide.isEmpty()) {
            double widest = fitting.stream().mapToDouble(Coil::widthMm).max().orElseThrow();
            return Optional.of(finding(ReturnsRules.COIL, "The return of " + where + " is " + length(tooling.depthMm()) + " deep; the widest coil of "
                    + tooling.material() + " is " + length(widest) + " wide.", strip, strip.contour().ring(), strip.joint(), mm(tooling.depthMm()), mm(widest))
                    .build());
        }
        Coil longest = wide.stream().max(Comparator.comparingDouble(Coil::lengthMm)).orElseThrow();
        double length = strip.lengthMm();
        if (longest.isLongEnough(length)) {
            return Optional.empty();
        }
        int joints = (int) Math.ceil(length / longest.lengthMm());
        return Optional.of(finding(ReturnsRules.COIL, "The strip of " + where + " is " + length(length) + " long; the longest coil holds "
                + length(longest.lengthMm()) + ".", strip, strip.contour().ring(), strip.joint(), mm(length), mm(longest.lengthMm()))
                .fix("Make it in " + joints + " pieces of " + length(length / joints) + " with " + joints + " joints, or order a longer coil.").build());
    }

    private static Finding.Builder finding(Rule rule, String message, Strip strip, Geometry place, Coordinate at, Measure measured, Measure required) {
        Part part = strip.contour().part();
        return Finding.of(rule, message).place(place).at(at).measured(measured).required(required).parts(part.id()).elements(part.elements());
    }

    static String name(Part part) {
        return part.role().word() + " " + part.id() + (part.layer().isBlank() ? "" : " on layer \"" + part.layer() + "\"");
    }

    private static Measure mm(double value) {
        return Measure.mm(value);
    }

    private String degrees(double value) {
        return Units.format(value, Quantity.ANGLE, inspection.units());
    }

    private String length(double mm) {
        return inspection.length(mm);
    }
}
