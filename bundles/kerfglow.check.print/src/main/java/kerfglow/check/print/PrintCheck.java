// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.print;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import kerfglow.api.Check;
import kerfglow.api.CheckInfo;
import kerfglow.api.Finding;
import kerfglow.api.Inspection;
import kerfglow.api.Measure;
import kerfglow.api.Outcome;
import kerfglow.api.Quantity;
import kerfglow.api.Rule;
import kerfglow.api.Severity;
import kerfglow.api.Table;
import kerfglow.api.TableInfo;
import kerfglow.api.TableInfo.Column;
import kerfglow.api.UnitSystem;
import kerfglow.api.Units;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.ImageInfo;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.api.proof.Visibility;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.index.strtree.STRtree;
import org.osgi.service.component.annotations.Component;

/**
 * Compares pictures at real size with what the eye tells apart, and print with the contours that are cut through it.
 *
 * <p>Pictures are looked at unless they lie in a layer of notes: one where what is drawn becomes no part. Cost: for each printed area
 * and each contour that it meets, some thousand places along the contour.
 */
@Component
public final class PrintCheck implements Check {
    static final Rule RESOLUTION = new Rule("print.resolution", Severity.REVIEW, "A picture is too coarse for where it is seen from",
            "Pixels that the eye tells apart show as steps and blur, most of all along lettering and logos in the picture.",
            "Ask the customer for the original or for artwork in outlines, or print it smaller.",
            "geometry: one pixel to one minute of arc, the definition of normal visual acuity");
    static final Rule BLEED_RULE = new Rule("print.bleed", Severity.REVIEW, "Print ends at the contour that is cut",
            "The blade never runs exactly on the printed edge: where the print ends too early a white edge stays.",
            "Let the print reach beyond the contour all round.", "common practice; the amount is one print shop's");
    static final TableInfo IMAGES = new TableInfo("images", "Pictures at real size", List.of(
            Column.text("element", "Element"),
            Column.text("layer", "Layer"),
            Column.number("pixels-across", "Pixels across", Quantity.COUNT),
            Column.number("pixels-down", "Pixels down", Quantity.COUNT),
            Column.number("width", "Width", Quantity.LENGTH),
            Column.number("height", "Height", Quantity.LENGTH),
            Column.number("ppi", "Pixels per inch, coarser axis", Quantity.RATIO),
            Column.number("sharp-from", "Looks sharp from", Quantity.LENGTH)));

    private final CheckInfo info = new CheckInfo("print", "Sharpness and bleed of print", List.of(RESOLUTION, BLEED_RULE),
            PrintSettings.ALL, List.of(), List.of(IMAGES), CheckInfo.page(PrintCheck.class, "page.md"));

    /** One printed area. */
    private record Printed(String name, Geometry area, List<String> elements, List<String> parts, boolean picture) {
    }

    @Override
    public CheckInfo info() {
        return info;
    }

    @Override
    public Outcome inspect(Inspection inspection) {
        List<Element> images = images(inspection);
        List<Part> prints = inspection.parts(Role.PRINT);
        if (images.isEmpty() && prints.isEmpty()) {
            return Outcome.notMeasured("nothing of this proof is printed: it has no picture and no part of role print");
        }
        List<Finding> findings = new ArrayList<>();
        Set<String> missing = new LinkedHashSet<>();
        List<List<Object>> rows = new ArrayList<>();
        images.forEach(image -> resolution(inspection, image, rows, missing).ifPresent(findings::add));
        findings.addAll(bleeds(inspection, images, prints));
        return Outcome.of(findings).withTables(List.of(new Table(IMAGES, rows))).withMissing(List.copyOf(missing));
    }

    private static List<Element> images(Inspection inspection) {
        Set<String> used = new HashSet<>();
        inspection.parts().forEach(part -> used.addAll(part.elements()));
        Set<String> notes = new HashSet<>();
        Set<String> signs = new HashSet<>();
        for (Element element : inspection.proof().elements()) {
            if (used.contains(element.id())) {
                signs.add(element.layer());
            } else if (element.visibility() == Visibility.SHOWN && element.image().isEmpty()
                    && !(element.fillArea().isEmpty() && element.strokeArea().isEmpty())) {
                notes.add(element.layer());
            }
        }
        notes.removeAll(signs);
        return inspection.proof().elements().stream().filter(element -> element.image().isPresent()
                && element.visibility() == Visibility.SHOWN && !notes.contains(element.layer())).toList();
    }

    private static Optional<Finding> resolution(Inspection inspection, Element element, List<List<Object>> rows, Set<String> missing) {
        inspection.checkpoint(0);
        ImageInfo image = element.image().orElseThrow();
        double distance = inspection.settings().get(PrintSettings.VIEWING_DISTANCE);
        double acuity = inspection.settings().get(PrintSettings.ACUITY);
        double ppi = Sharpness.ppi(image);
        boolean known = Double.isFinite(ppi);
        rows.add(Arrays.<Object>asList(element.id(), element.layer(), (double) image.pixelWidth(), (double) image.pixelHeight(), image.widthMm(),
                image.heightMm(), known ? ppi : null, known ? Sharpness.sharpFromMm(ppi, acuity) : null));
        if (!known) {
            missing.add("The pixels of " + name(element) + " cannot be read, so its sharpness was not measured.");
            return Optional.empty();
        }
        if (distance <= 0) {
            missing.add("How near people come to the print is not given (print.viewing-distance), so the sharpness of pictures was not compared.");
            return Optional.empty();
        }
        double required = Sharpness.requiredPpi(distance, acuity);
        if (ppi >= required) {
            return Optional.empty();
        }
        String message = "The " + name(element) + " has " + number(ppi) + " pixels per inch at " + inspection.length(image.widthMm()) + " by "
                + inspection.length(image.heightMm()) + "; seen from " + inspection.length(distance) + " it needs " + number(required)
                + ". It looks sharp from " + inspection.length(Sharpness.sharpFromMm(ppi, acuity)) + ".";
        return Optional.of(Finding.of(RESOLUTION, message).place(element.fillArea()).measured(new Measure(ppi, Quantity.RATIO))
                .required(new Measure(required, Quantity.RATIO)).elements(List.of(element.id()))
                .fix("Use a picture of " + (long) Math.ceil(image.widthMm() / Units.MM_PER_INCH * required) + " by "
                        + (long) Math.ceil(image.heightMm() / Units.MM_PER_INCH * required) + " pixels, or outlines.").build());
    }

    private static List<Finding> bleeds(Inspection inspection, List<Element> images, List<Part> prints) {
        List<Printed> printed = new ArrayList<>();
        images.forEach(image -> printed.add(new Printed(name(image), image.fillArea(), List.of(image.id()), List.of(), true)));
        prints.forEach(part -> printed.add(new Printed(name(part), part.shape(), part.elements(), List.of(part.id()), false)));
        List<Part> contours = inspection.parts(Role.FACE, Role.PANEL, Role.PUSH_THROUGH, Role.PRINT);
        STRtree index = new STRtree();
        for (int i = 0; i < contours.size(); i++) {
            index.insert(contours.get(i).shape().getEnvelopeInternal(), i);
        }
        List<Finding> findings = new ArrayList<>();
        for (int i = 0; i < printed.size(); i++) {
            double done = (double) i / printed.size();
            for (Part contour : near(printed.get(i), contours, index)) {
                if (printed.get(i).picture() || contour.role() != Role.PRINT) {
                    bleed(inspection, printed.get(i), contour, done).ifPresent(findings::add);
                }
            }
        }
        return findings;
    }

    /** The contours that a print may cover, in their order. */
    private static List<Part> near(Printed printed, List<Part> contours, STRtree index) {
        List<Part> near = new ArrayList<>();
        index.query(printed.area().getEnvelopeInternal()).stream().mapToInt(i -> (Integer) i).sorted().forEach(i -> near.add(contours.get(i)));
        return near;
    }

    private static Optional<Finding> bleed(Inspection inspection, Printed printed, Part contour, double done) {
        double bleed = inspection.settings().get(PrintSettings.BLEED, contour);
        BleedMeasure.Bare bare = BleedMeasure.of(printed.area(), contour.shape(), bleed, () -> inspection.checkpoint(done));
        if (bare.isEmpty()) {
            return Optional.empty();
        }
        String reach = bare.leastMm() < 0 ? "ends " + inspection.length(-bare.leastMm()) + " inside"
                : "reaches " + inspection.length(bare.leastMm()) + " beyond";
        List<String> parts = new ArrayList<>(printed.parts());
        parts.add(contour.id());
        return Optional.of(Finding.of(BLEED_RULE, "The " + printed.name() + " " + reach + " the contour of " + name(contour)
                + ", along " + inspection.length(bare.stretches().getLength()) + " of it; " + inspection.length(bleed) + " is asked for.")
                .place(bare.stretches()).measured(Measure.mm(bare.leastMm())).required(Measure.mm(bleed)).parts(parts)
                .elements(printed.elements()).fix("Let the print reach " + inspection.length(bleed - bare.leastMm())
                        + " farther; a picture that was clipped often has more under its clip.").build());
    }

    private static String name(Element element) {
        return "picture " + element.id() + (element.layer().isBlank() ? "" : " on layer \"" + element.layer() + "\"");
    }

    private static String name(Part part) {
        return part.role().word() + " " + part.id() + (part.layer().isBlank() ? "" : " on layer \"" + part.layer() + "\"");
    }

    private static String number(double value) {
        return Units.format(Math.round(value * 10) / 10.0, Quantity.RATIO, UnitSystem.METRIC);
    }
}
