// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import kerfglow.api.Quantity;
import kerfglow.api.Table;
import kerfglow.api.TableInfo;
import kerfglow.api.TableInfo.Column;
import org.locationtech.jts.geom.Geometry;

/** The numbers that the legibility check measures beyond its findings. */
final class LegibilityTables {
    static final TableInfo LINES = new TableInfo("lines", "Lines of lettering", List.of(
            Column.text("line", "Line"),
            Column.text("layer", "Layer"),
            Column.text("text", "Text, where it is live"),
            Column.text("parts", "Parts"),
            Column.text("form", "How it runs"),
            Column.number("angle", "Turned clockwise", Quantity.ANGLE),
            Column.number("letters", "Letters", Quantity.COUNT),
            Column.number("confidence", "Confidence that it is lettering", Quantity.RATIO),
            Column.number("cap-height", "Cap height", Quantity.LENGTH),
            Column.number("x-height", "x-height", Quantity.LENGTH),
            Column.number("stroke", "Stroke to height", Quantity.RATIO),
            Column.number("width", "Width to height", Quantity.RATIO),
            Column.number("spacing", "Spacing to height, median", Quantity.RATIO),
            Column.number("least-spacing", "Spacing to height, least", Quantity.RATIO),
            Column.text("rule", "Reading rule"),
            Column.number("reads-from", "Greatest reading distance", Quantity.LENGTH),
            Column.number("asked-from", "Reading distance asked for", Quantity.LENGTH),
            Column.number("required", "Height required", Quantity.LENGTH),
            Column.number("scale", "Scale that would make it right", Quantity.RATIO),
            Column.number("contrast", "Least contrast ratio, by day", Quantity.RATIO),
            Column.number("reflectance-contrast", "Least reflectance contrast, by day", Quantity.RATIO),
            Column.text("behind", "Colours behind it"),
            Column.geometry("base-line", "Base line"),
            Column.text("heights-from", "What the heights are from: outlines, or live text"),
            Column.number("night-contrast", "Least ratio of luminances, by night", Quantity.RATIO),
            Column.number("night-luminance", "Luminance of the lettering there, by night", Quantity.LUMINANCE),
            Column.number("night-luminance-behind", "Luminance behind it there, by night", Quantity.LUMINANCE)));
    static final TableInfo CIRCLES = new TableInfo("reading-circles", "Circles of reading distance on the ground", List.of(
            Column.text("line", "Line"),
            Column.text("rule", "Reading rule"),
            Column.geometry("at", "Middle of the line"),
            Column.number("radius", "Greatest reading distance", Quantity.LENGTH),
            Column.number("asked", "Reading distance asked for", Quantity.LENGTH)));
    static final TableInfo GRAPHICS = new TableInfo("graphics", "Shapes that are no lettering", List.of(
            Column.text("part", "Part"),
            Column.text("layer", "Layer"),
            Column.number("confidence", "Confidence that it is none", Quantity.RATIO)));
    static final List<TableInfo> ALL = List.of(LINES, CIRCLES, GRAPHICS);

    private LegibilityTables() {
    }

    static List<Table> of(List<LineReport> reports, List<Lettering.Graphic> graphics) {
        List<List<Object>> lines = new ArrayList<>();
        List<List<Object>> circles = new ArrayList<>();
        for (LineReport report : reports) {
            lines.add(row(report));
            if (report.reachMm().isPresent()) {
                Geometry middle = report.line().place().getEnvelope().getCentroid();
                circles.add(Arrays.asList(report.id(), report.rule(), middle, report.reachMm().getAsDouble(), cell(report.askedMm())));
            }
        }
        return List.of(new Table(LINES, lines), new Table(CIRCLES, circles), new Table(GRAPHICS, graphics.stream()
                .map(graphic -> List.<Object>of(graphic.part().id(), graphic.part().layer(), graphic.confidence())).toList()));
    }

    private static List<Object> row(LineReport report) {
        Line line = report.line();
        LineModel model = line.model();
        Proportions shape = report.proportions();
        double cap = model.capMm();
        return Arrays.<Object>asList(report.id(), line.first().layer(), report.text().isEmpty() ? null : report.text(), String.join(" ", report.partIds()),
                form(line), Math.toDegrees(Math.IEEEremainder(line.frame().angle(), 2 * Math.PI)), (double) line.letters().size(), line.confidence(),
                cap, cell(model.xMm()), shape.strokeMm() / cap, share(shape.widthMm(), cap), share(shape.spacingMm(), cap),
                share(shape.leastSpacingMm(), cap), report.rule(), cell(report.reachMm()), cell(report.askedMm()), cell(report.requiredMm()),
                cell(report.scale()), report.worst().map(Backdrop.Pair::ratio).orElse(null), report.leastReflectance().isPresent()
                        ? report.leastReflectance().getAsDouble() : null, report.behind(), line.level(0),
                report.live() ? "live text" : "outlines", report.night().map(Night.Contrast::ratio).orElse(null),
                report.night().map(Night.Contrast::letter).orElse(null), report.night().map(Night.Contrast::behind).orElse(null));
    }

    static String form(Line line) {
        return (line.isJoined() ? "joined, " : "") + switch (line.frame().form()) {
            case STRAIGHT -> "straight";
            case ARCHED -> line.frame().isOutward() ? "arched, heads outward" : "arched, heads inward";
            case STACKED -> "stacked";
        };
    }

    private static Double cell(OptionalDouble value) {
        return value.isPresent() ? (Double) value.getAsDouble() : null;
    }

    private static Double share(OptionalDouble value, double of) {
        return value.isPresent() ? (Double) (value.getAsDouble() / of) : null;
    }
}
