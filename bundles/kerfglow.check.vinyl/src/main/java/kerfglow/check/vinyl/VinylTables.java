// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.vinyl;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfglow.api.Quantity;
import kerfglow.api.Table;
import kerfglow.api.TableInfo;
import kerfglow.api.TableInfo.Column;
import kerfglow.api.proof.Part;

/** The numbers that the check of film measures beyond its findings. */
final class VinylTables {
    static final TableInfo COLOURS = new TableInfo("colours", "Film by colour, in the order in which it is laid", List.of(
            Column.text("colour", "Colour"),
            Column.number("pieces", "Pieces", Quantity.COUNT),
            Column.number("waste-pieces", "Pieces of waste", Quantity.COUNT),
            Column.number("area", "Area of film", Quantity.AREA),
            Column.number("cut", "Length of cut", Quantity.LENGTH),
            Column.text("roll", "Roll"),
            Column.number("roll-width", "Width of the roll", Quantity.LENGTH),
            Column.number("roll-length", "Length of roll used, estimated", Quantity.LENGTH),
            Column.number("at-least", "Length of roll at least, by area", Quantity.LENGTH),
            Column.number("roll-area", "Area of roll used", Quantity.AREA),
            Column.number("waste", "Waste", Quantity.AREA),
            Column.number("rolls", "Rolls", Quantity.COUNT),
            Column.number("panels", "Panels of pieces wider than the roll", Quantity.COUNT),
            Column.number("weeding", "Weeding effort", Quantity.TIME)));
    static final TableInfo PIECES = new TableInfo("pieces", "Pieces of film", List.of(
            Column.text("part", "Part"),
            Column.text("colour", "Colour"),
            Column.number("area", "Area", Quantity.AREA),
            Column.number("cut", "Length of cut", Quantity.LENGTH),
            Column.number("panels", "Panels", Quantity.COUNT)));
    static final TableInfo PANELS = new TableInfo("panels", "Panels of pieces wider than the roll", List.of(
            Column.text("part", "Part"),
            Column.text("colour", "Colour"),
            Column.number("panel", "Panel, from the left or the top", Quantity.COUNT),
            Column.number("width", "Width", Quantity.LENGTH),
            Column.number("height", "Height", Quantity.LENGTH),
            Column.geometry("shape", "Shape, overlaps included")));
    static final TableInfo MEETINGS = new TableInfo("meetings", "Where colours meet too closely", List.of(
            Column.text("lower", "Lower piece"),
            Column.text("upper", "Upper piece"),
            Column.text("kind", "How they meet"),
            Column.number("measured", "Least overlap, below 0 for a gap; for a repeated edge how far apart the edges are", Quantity.LENGTH),
            Column.number("length", "Length of edge", Quantity.LENGTH),
            Column.geometry("line", "Place")));
    static final List<TableInfo> ALL = List.of(COLOURS, PIECES, PANELS, MEETINGS);

    private VinylTables() {
    }

    static List<Table> of(List<FilmUse> uses, List<Effort> efforts, List<Meeting> meetings) {
        List<List<Object>> colours = new ArrayList<>();
        List<List<Object>> pieces = new ArrayList<>();
        List<List<Object>> panels = new ArrayList<>();
        for (int i = 0; i < uses.size(); i++) {
            FilmUse use = uses.get(i);
            Effort effort = efforts.get(i);
            String colour = use.film().colour();
            Optional<Layout> layout = use.layout();
            double count = use.panels().values().stream().flatMap(Optional::stream).mapToInt(plan -> plan.shapes().size()).sum();
            colours.add(Arrays.<Object>asList(colour, (double) use.film().parts().size(), (double) effort.wastePieces(), use.film().areaMm2(), use.film().cutMm(),
                    layout.map(each -> each.roll().name()).orElse(null), layout.map(each -> each.roll().widthMm()).orElse(null),
                    layout.map(Layout::lengthMm).orElse(null), layout.map(Layout::leastMm).orElse(null), layout.map(Layout::areaMm2).orElse(null),
                    layout.isPresent() ? use.wasteMm2() : null, layout.map(each -> (double) each.rolls()).orElse(null), count, effort.seconds()));
            for (Part part : use.film().parts()) {
                Optional<Panels> plan = use.panels().getOrDefault(part, Optional.empty());
                boolean unplanned = use.panels().containsKey(part) && plan.isEmpty() || use.widest() == 0;
                pieces.add(Arrays.<Object>asList(part.id(), colour, part.shape().getArea(), part.shape().getLength(),
                        unplanned ? null : plan.map(each -> (double) each.shapes().size()).orElse(1.0)));
            }
            for (Map.Entry<Part, Optional<Panels>> entry : use.panels().entrySet()) {
                entry.getValue().ifPresent(plan -> {
                    for (int panel = 0; panel < plan.shapes().size(); panel++) {
                        panels.add(List.of(entry.getKey().id(), colour, panel + 1.0, plan.shapes().get(panel).getEnvelopeInternal().getWidth(),
                                plan.shapes().get(panel).getEnvelopeInternal().getHeight(), plan.shapes().get(panel)));
                    }
                });
            }
        }
        List<List<Object>> meets = new ArrayList<>();
        meetings.forEach(each -> meets.add(List.of(each.lower().id(), each.upper().id(), each.kind().words(), each.measuredMm(), each.line().getLength(), each.line())));
        return List.of(new Table(COLOURS, colours), new Table(PIECES, pieces), new Table(PANELS, panels), new Table(MEETINGS, meets));
    }
}
