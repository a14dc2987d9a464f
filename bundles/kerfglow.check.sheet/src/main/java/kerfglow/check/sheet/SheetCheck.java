// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.sheet;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import kerfglow.api.Check;
import kerfglow.api.CheckInfo;
import kerfglow.api.Finding;
import kerfglow.api.Inspection;
import kerfglow.api.Outcome;
import kerfglow.api.OverlayLayer;
import kerfglow.api.Setting;
import kerfglow.api.StockItem;
import kerfglow.api.StockKind;
import kerfglow.api.Table;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.geometry.RectangleFit;
import org.locationtech.jts.geom.Geometry;
import org.osgi.service.component.annotations.Component;

/**
 * Says which sheet each part is cut from and at which angle, where a part that fits none is split, and about how many sheets all
 * parts take.
 *
 * <p>Cost: n² in the corners of each hull; for parts that fit no sheet a sweep of some hundred seams in up to four directions.
 */
@Component
public final class SheetCheck implements Check {
    /** The kind of stock that it reads. */
    public static final StockKind SHEETS = SheetSettings.SHEETS;
    /** Field of {@link #SHEETS}, mm. */
    public static final Setting<Double> WIDTH = SheetSettings.WIDTH;
    /** Field of {@link #SHEETS}, mm. */
    public static final Setting<Double> HEIGHT = SheetSettings.HEIGHT;

    private static final Role[] CUT = Stream.of(Role.values()).filter(role -> role.isRouted() && role != Role.OPENING).toArray(Role[]::new);
    /** Of the work, fitting counts as this share of the progress, and packing as the rest. */
    private static final double FITTING_SHARE = 0.7;

    private final CheckInfo info = new CheckInfo("sheet", "Parts against the sheets that are stocked", SheetRules.ALL, SheetSettings.ALL,
            List.of(SHEETS), SheetTables.ALL, CheckInfo.page(SheetCheck.class, "page.md"));

    @Override
    public CheckInfo info() {
        return info;
    }

    @Override
    public Outcome inspect(Inspection inspection) {
        List<Part> parts = inspection.parts(CUT);
        if (parts.isEmpty()) {
            return Outcome.notMeasured("No part of this proof is cut from sheet.");
        }
        return new Run(inspection, parts).outcome();
    }

    /** One run of the check. */
    private static final class Run {
        private final Inspection inspection;
        private final List<Part> parts;
        private final List<StockSheet> stock;
        private final List<Finding> findings = new ArrayList<>();
        private final Set<String> missing = new LinkedHashSet<>();
        private final List<List<Object>> partRows = new ArrayList<>();
        private final List<List<Object>> seamRows = new ArrayList<>();
        private final List<List<Object>> sheetRows = new ArrayList<>();
        private final List<OverlayLayer.Item> seams = new ArrayList<>();
        private final Map<List<Object>, Batch> batches = new LinkedHashMap<>();

        Run(Inspection inspection, List<Part> parts) {
            this.inspection = inspection;
            this.parts = parts;
            List<StockItem> listed = inspection.stock(SHEETS);
            stock = listed.isEmpty() ? SheetSettings.usual(inspection.units()) : listed.stream().map(StockSheet::of).toList();
            if (listed.isEmpty()) {
                missing.add("The shop sheet lists no sheets; measured with the common sizes " + String.join(", ", stock.stream().map(StockSheet::name).toList()) + ".");
            }
        }

        Outcome outcome() {
            SheetFindings writer = new SheetFindings(inspection);
            for (int i = 0; i < parts.size(); i++) {
                double fraction = FITTING_SHARE * i / parts.size();
                inspection.checkpoint(fraction);
                measure(parts.get(i), writer, () -> inspection.checkpoint(fraction));
            }
            int done = 0;
            for (Batch batch : batches.values()) {
                double fraction = FITTING_SHARE + (1 - FITTING_SHARE) * done++ / batches.size();
                List<Batch.Count> counts = batch.counts(() -> inspection.checkpoint(fraction));
                counts.forEach(count -> sheetRows.add(Arrays.<Object>asList(batch.material(), Double.isNaN(batch.thicknessMm()) ? null : batch.thicknessMm(),
                        count.sheet().sheet().name(), (double) count.pieces(), (double) count.sheets(), (double) count.atLeast(), count.areaMm2())));
                writer.count(batch, counts).ifPresent(findings::add);
            }
            inspection.checkpoint(1);
            return Outcome.of(findings)
                    .withTables(List.of(new Table(SheetTables.PARTS, partRows), new Table(SheetTables.SHEETS, sheetRows), new Table(SheetTables.SEAMS, seamRows)))
                    .withLayers(List.of(new OverlayLayer("seams", "Seams of parts that fit no sheet", seams))).withMissing(List.copyOf(missing));
        }

        private void measure(Part part, SheetFindings writer, Runnable pulse) {
            String material = part.sheetMaterial().orElse("");
            double thickness = part.thicknessMm().orElse(Double.NaN);
            double margin = inspection.settings().get(SheetSettings.MARGIN, part);
            String grain = inspection.settings().get(SheetSettings.GRAIN, part);
            List<StockSheet.Usable> sheets = stock.stream().filter(sheet -> sheet.isFor(material, thickness)).map(sheet -> sheet.less(margin, grain))
                    .sorted(Comparator.comparingDouble((StockSheet.Usable usable) -> usable.sheet().areaMm2())).toList();
            if (sheets.isEmpty()) {
                missing.add("The shop sheet lists no sheet of " + SheetFindings.words(inspection, material, thickness) + ", so "
                        + part.role().word() + " parts of it were not measured.");
                return;
            }
            double spacing = inspection.settings().get(SheetSettings.SPACING, part);
            Batch batch = batches.computeIfAbsent(Arrays.<Object>asList(material.strip().toLowerCase(Locale.ROOT), thickness, sheets, spacing),
                    key -> new Batch(material, thickness, sheets, spacing, new ArrayList<>()));
            Piece whole = Piece.of(part, part.shape());
            Optional<Piece.Lying> lying = whole.lying(sheets);
            if (lying.isPresent()) {
                batch.pieces().add(whole);
                row(part, whole, lying, 1);
                return;
            }
            Optional<Split> split = splitter(part, sheets, pulse).split(part.shape());
            split.ifPresent(found -> {
                found.pieces().forEach(piece -> batch.pieces().add(Piece.of(part, piece)));
                found.cuts().forEach(cut -> seam(part, cut));
            });
            row(part, whole, lying, split.map(found -> found.pieces().size()).orElse(0));
            findings.add(writer.tooLarge(part, whole, sheets, split));
        }

        private Splitter splitter(Part part, List<StockSheet.Usable> sheets, Runnable pulse) {
            List<Geometry> keepOuts = inspection.parts(Role.KEEP_OUT).stream().map(keepOut -> (Geometry) keepOut.shape()).toList();
            Sweep.Limits limits = new Sweep.Limits(inspection.settings().get(SheetSettings.CUT_CLEARANCE, part),
                    inspection.settings().get(SheetSettings.NECK_WIDTH, part), keepOuts);
            return new Splitter(sheets, limits, inspection.proof().chordErrorMm(), pulse);
        }

        private void seam(Part part, Split.Cut cut) {
            seams.add(new OverlayLayer.Item(cut.line(), Double.NaN, inspection.length(cut.lengthMm())));
            seamRows.add(List.of(part.id(), cut.lengthMm(), cut.degrees(), String.join(", ", cut.near().stream().map(Sweep.Obstacle::words).toList()), cut.line()));
        }

        private void row(Part part, Piece whole, Optional<Piece.Lying> lying, int pieces) {
            RectangleFit.Turned smallest = whole.fit().smallestRectangle();
            partRows.add(Arrays.<Object>asList(part.id(), part.role().word(), Math.max(smallest.widthMm(), smallest.heightMm()),
                    Math.min(smallest.widthMm(), smallest.heightMm()), lying.map(each -> each.sheet().sheet().name()).orElse(null),
                    lying.map(each -> each.turned().degrees()).orElse(null), pieces == 0 ? null : (double) pieces));
        }
    }
}
