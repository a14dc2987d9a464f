// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.glow;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import kerfglow.api.Finding;
import kerfglow.api.Inspection;
import kerfglow.api.Measure;
import kerfglow.api.Quantity;
import kerfglow.api.Rule;
import kerfglow.api.Units;
import kerfglow.api.proof.Part;
import kerfglow.light.Levels;
import kerfglow.light.LightModule;
import kerfglow.light.Spots;
import kerfglow.light.layout.Layout;
import kerfglow.light.layout.RowSeries;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;

/** Says what was measured, in the units of the job. */
final class GlowFindings {
    /** A plate may touch a wall: what lies nearer than this, mm, is rounding. */
    static final double TOUCH_MM = 0.05;
    private static final int PER_CENT = 100;
    /** No row needs to be more even than this, least over mean. */
    private static final double MOST_EVEN = 0.999;

    private final Inspection inspection;

    GlowFindings(Inspection inspection) {
        this.inspection = inspection;
    }

    List<Finding> of(LitFace face) {
        List<Finding> findings = new ArrayList<>();
        for (LitFace.Piece piece : face.cans()) {
            for (int i = 0; i < piece.modules().size(); i++) {
                if (!piece.layout().isPresent()) {
                    addEdge(face, piece, piece.modules().get(i), piece.how().get(i), findings);
                }
            }
        }
        face.cans().stream().filter(piece -> piece.modules().isEmpty()).forEach(piece -> findings.add(unlit(face, piece)));
        if (face.isLit()) {
            addUneven(face, findings);
            addSpots(face, findings);
            face.dark().forEach(patch -> findings.add(dark(face, patch)));
        }
        return findings;
    }

    private Finding unlit(LitFace face, LitFace.Piece piece) {
        boolean whole = face.cans().size() == 1;
        String which = whole ? LitTask.name(face.task().part()) : "one of the " + face.cans().size() + " pieces into which the back line cuts " + LitTask.name(face.task().part());
        String why = piece.layout().isEmpty() ? "the drawn and placed ones lie in other pieces."
                : "none of " + length(face.task().module().type().lengthMm()) + " by " + length(face.task().module().type().widthMm()) + " fits between its returns.";
        return finding(GlowRules.UNLIT, face, which + " has no light module: " + why).place(whole ? face.task().part().shape() : piece.inside()).build();
    }

    private static Finding.Builder finding(Rule rule, LitFace face, String message) {
        Part part = face.task().part();
        return Finding.of(rule, Character.toUpperCase(message.charAt(0)) + message.substring(1)).parts(part.id()).elements(part.elements());
    }

    private void addEdge(LitFace face, LitFace.Piece piece, LightModule module, String how, List<Finding> findings) {
        Geometry plate = module.outline(face.factory());
        double over = 0;
        for (Coordinate corner : plate.getCoordinates()) {
            over = Math.max(over, piece.inside().distance(face.factory().createPoint(corner)));
        }
        boolean crosses = !piece.inside().buffer(TOUCH_MM).covers(plate);
        String where = crosses ? "a return" : plate.intersection(face.task().keepClear()).getArea() > TOUCH_MM ? "a hole or keep-out" : "";
        if (where.isEmpty()) {
            return;
        }
        Finding.Builder finding = finding(GlowRules.MODULE_EDGE, face, "the " + how + " module at " + length(module.xMm()) + ", " + length(module.yMm()) + " in "
                + LitTask.name(face.task().part()) + " lies across " + where + (over > TOUCH_MM ? " by " + length(over) : "") + ".").place(plate).cause(where);
        findings.add((over > TOUCH_MM ? finding.measured(Measure.mm(over)).required(Measure.mm(0)) : finding).build());
    }

    private void addUneven(LitFace face, List<Finding> findings) {
        Levels levels = face.luminance();
        Targets targets = face.task().targets();
        boolean toMean = levels.uniformity() < targets.uniformity();
        if (!toMean && levels.leastToGreatest() >= targets.leastToGreatest()) {
            return;
        }
        double measured = toMean ? levels.uniformity() : levels.leastToGreatest();
        double required = toMean ? targets.uniformity() : targets.leastToGreatest();
        Finding.Builder finding = finding(GlowRules.UNEVEN, face, (face.task().halo() ? "the halo of " : "") + LitTask.name(face.task().part()) + " has "
                + luminance(levels.least()) + " where it is darkest, " + luminance(levels.mean()) + " in the mean and " + luminance(levels.greatest())
                + " where it is brightest: the least is " + ratio(measured) + " of the " + (toMean ? "mean" : "greatest") + ", " + ratio(required) + " is wanted.")
                .place(face.factory().createPoint(levels.leastAt())).measured(new Measure(measured, Quantity.RATIO)).required(new Measure(required, Quantity.RATIO))
                .cause(toMean ? "mean" : "greatest");
        findings.add((face.isBestFound() ? finding.fix("This is the best that was found with this module; "
                + limits(face) + "use smaller or more modules, or a deeper can.") : finding).build());
    }

    private static String limits(LitFace face) {
        StringBuilder words = new StringBuilder();
        for (Layout.Limit limit : Layout.Limit.values()) {
            if (face.cans().stream().anyMatch(piece -> piece.layout().isPresent() && piece.layout().get().limits().contains(limit))) {
                words.append(switch (limit) {
                    case NO_ROOM -> "no plate fits in a part of it; ";
                    case MODULE_EDGE -> "no plate comes near its narrow places; ";
                    case FREE_ENDS -> "its ends get light from one side only; ";
                    case TOO_SHALLOW -> "it is too shallow for plates as close as they may lie; ";
                    case CABLE -> "the module's own cable does not reach from one to the next; ";
                });
            }
        }
        return words.toString();
    }

    private void addSpots(LitFace face, List<Finding> findings) {
        List<Spots.Spot> spots = face.spots();
        if (spots.isEmpty()) {
            return;
        }
        Targets targets = face.task().targets();
        double strongest = spots.stream().mapToDouble(Spots.Spot::contrast).max().orElseThrow();
        Coordinate at = spots.stream().filter(spot -> spot.contrast() == strongest).findFirst().orElseThrow().at();
        Finding.Builder finding = finding(GlowRules.HOT_SPOT, face, (spots.size() == 1 ? "a bright spot shows" : spots.size() + " bright spots show") + " on "
                + (face.task().halo() ? "the halo of " : "") + LitTask.name(face.task().part()) + " from " + length(targets.distanceMm()) + " away, the strongest "
                + perCent(strongest) + " brighter than the darkest place on the way to the next; " + perCent(targets.contrast()) + " is the most.")
                .place(face.factory().createMultiPointFromCoords(spots.stream().map(Spots.Spot::at).toArray(Coordinate[]::new))).at(at)
                .measured(new Measure(strongest, Quantity.RATIO)).required(new Measure(targets.contrast(), Quantity.RATIO));
        findings.add((face.isBestFound() ? finding.fix("This is the best that was found with this module; " + limits(face) + "make the can deeper, or use a face that spreads more.")
                : finding).build());
        double pitch = face.pitchMm();
        double needed = pitch > 0 ? neededDepthMm(face, pitch) : 0;
        if (needed > face.task().depthMm() && !face.task().halo()) {
            findings.add(finding(GlowRules.SHALLOW, face, LitTask.name(face.task().part()) + " is " + length(face.task().depthMm()) + " deep; modules "
                    + length(pitch) + " apart need about " + length(needed) + ".").place(face.task().part().shape()).at(at).measured(Measure.mm(face.task().depthMm()))
                    .required(Measure.mm(needed)).fix("Make the can about " + length(needed) + " deep, or set the modules closer together.").build());
        }
    }

    /** The depth at which an endless row of this pitch shows no spot, with the direct share and the spread of this face, mm; 0 when any depth will do. */
    private static double neededDepthMm(LitFace face, double pitch) {
        double wave = Math.PI * Math.hypot(face.task().finish().spreadMm(), face.task().targets().eyeMm()) / pitch;
        double visible = face.directShare() * Math.exp(-2 * wave * wave);
        // of a wave, peak over trough less 1 is about twice what the trough lacks of the mean
        double uniformity = 1 - face.task().targets().contrast() / (2 * visible);
        return uniformity <= 0 ? 0 : new RowSeries(face.task().module().type()).heightMm(Math.min(MOST_EVEN, uniformity), pitch) + face.task().module().type().heightMm();
    }

    private Finding dark(LitFace face, DarkPatches.Patch patch) {
        double mean = face.luminance().mean();
        return finding(GlowRules.DARK_PATCH, face, "a patch of " + Units.format(patch.areaMm2(), Quantity.AREA, inspection.units()) + " of "
                + (face.task().halo() ? "the halo of " : "") + LitTask.name(face.task().part()) + " stays dark: " + luminance(patch.level()) + " at least, "
                + ratio(patch.level() / mean) + " of the mean; " + ratio(face.task().targets().uniformity()) + " is wanted.").place(patch.place()).at(patch.at())
                .measured(new Measure(patch.level() / mean, Quantity.RATIO)).required(new Measure(face.task().targets().uniformity(), Quantity.RATIO)).build();
    }

    /** For each type of module how many there are in all. */
    List<Finding> layouts(List<LitFace> faces) {
        Map<String, List<LitFace>> byType = new LinkedHashMap<>();
        faces.stream().filter(face -> !face.modules().isEmpty()).forEach(face -> byType.computeIfAbsent(face.task().module().type().name(), name -> new ArrayList<>()).add(face));
        List<Finding> findings = new ArrayList<>();
        byType.forEach((name, own) -> {
            int count = own.stream().mapToInt(face -> face.modules().size()).sum();
            double flux = own.stream().flatMap(face -> face.modules().stream()).mapToDouble(module -> module.type().fluxLm()).sum();
            double[] pitches = own.stream().mapToDouble(LitFace::pitchMm).filter(pitch -> pitch > 0).sorted().toArray();
            String apart = pitches.length == 0 ? "" : ", " + length(pitches[0]) + (pitches.length > 1 && !length(pitches[0]).equals(length(pitches[pitches.length - 1]))
                    ? " to " + length(pitches[pitches.length - 1]) : "") + " apart";
            findings.add(Finding.of(GlowRules.LAYOUT, count + (count == 1 ? " module" : " modules") + (name.isEmpty() ? "" : " \"" + name + "\"") + " in " + own.size()
                    + (own.size() == 1 ? " part" : " parts") + apart + ", " + Units.format(flux, Quantity.LUMINOUS_FLUX, inspection.units())
                    + " in all.").measured(Measure.count(count)).parts(own.stream().map(face -> face.task().part().id()).toList()).build());
        });
        return findings;
    }

    private String length(double mm) {
        return inspection.length(mm);
    }

    private String luminance(double value) {
        return String.format(Locale.ROOT, "%.0f cd/m²", value);
    }

    private static String ratio(double value) {
        return String.format(Locale.ROOT, "%.2f", value);
    }

    private static String perCent(double share) {
        return String.format(Locale.ROOT, "%.1f %%", share * PER_CENT);
    }
}
