// SPDX-License-Identifier: Apache-2.0
package kerfglow.worksheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import kerfglow.api.Quantity;
import kerfglow.api.Table;
import kerfglow.api.TableInfo;
import kerfglow.api.Units;
import kerfglow.api.proof.Part;
import kerfglow.host.Result;
import kerfglow.outlines.ResultRow;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;

/** Gathers the sheet of one letter. */
final class LetterMaker {
    private static final Excerpt STRIPS = Excerpt.of("returns", "strips", "Strips", "contour kind length depth thickness bends joint-on residual");
    private static final Excerpt BENDS = Excerpt.of("returns", "bends", "Bends", "bend position allowance kind angle radius direction");
    private static final Excerpt PLACES = Excerpt.of("power", "places", "Modules, from the upper left corner of the proof", "string order type x y turn");
    private static final Excerpt MODULES = Excerpt.of("glow", "modules", "Modules, from the upper left corner of the proof", "type x y turn");
    private static final Excerpt WEIGHTS = Excerpt.of("mount", "weights", "Weight (estimate)", "what material mass");

    private final Result result;
    private final Part part;

    LetterMaker(Result result, Part part) {
        this.result = result;
        this.part = part;
    }

    LetterSheet make() {
        List<Table> tables = new ArrayList<>();
        own(STRIPS).ifPresent(tables::add);
        own(PLACES).or(() -> own(MODULES)).ifPresent(tables::add);
        own(WEIGHTS).ifPresent(tables::add);
        String title = part.role().word() + " " + part.id() + (part.layer().isBlank() ? "" : " on layer \"" + part.layer() + "\"");
        return new LetterSheet(part, Character.toUpperCase(title.charAt(0)) + title.substring(1), facts(), tables, bendTables(), drawn());
    }

    private Optional<Table> own(Excerpt excerpt) {
        return excerpt.from(result, row -> row.text("part").equals(part.id()));
    }

    private List<ResultRow> rows(String check, String table, String column) {
        return ResultRow.of(result, check, table).stream().filter(row -> row.text(column).equals(part.id())).toList();
    }

    private List<Fact> facts() {
        Envelope box = part.shape().getEnvelopeInternal();
        List<Fact> facts = new ArrayList<>(List.of(
                Fact.number("width", "Width", box.getWidth(), Quantity.LENGTH),
                Fact.number("height", "Height", box.getHeight(), Quantity.LENGTH),
                Fact.text("drawn-as", "Drawn as", String.join(", ", part.elements())),
                Fact.text("material", "Material", part.sheetMaterial().orElse("")),
                Fact.number("thickness", "Thickness", part.thicknessMm().orElse(Double.NaN), Quantity.LENGTH)));
        rows("router", "parts", "part").forEach(row -> {
            facts.add(Fact.number("area", "Area", row.number("area"), Quantity.AREA));
            facts.add(Fact.number("cut", "Length of cut", row.number("perimeter"), Quantity.LENGTH));
            facts.add(Fact.text("bit", "Bit", row.text("used-bit")));
        });
        rows("sheet", "parts", "part").forEach(row -> {
            facts.add(Fact.text("sheet", "Sheet", row.text("sheet")));
            facts.add(Fact.number("angle", "Turned by", row.number("angle"), Quantity.ANGLE));
        });
        rows("fit", "made-backs", "face").forEach(row -> {
            facts.add(Fact.number("back-clearance", "Back inset", row.number("clearance"), Quantity.LENGTH));
            facts.add(Fact.number("back-area", "Back area", row.number("area"), Quantity.AREA));
            facts.add(Fact.number("back-edge", "Back edge", row.number("edge"), Quantity.LENGTH));
        });
        pairs().forEach(row -> {
            facts.add(Fact.text("back", "Drawn back", row.text("inner")));
            facts.add(Fact.number("back-clearance", "Clearance", row.number("clearance"), Quantity.LENGTH));
            facts.add(Fact.number("back-least", "Least there", row.number("least"), Quantity.LENGTH));
        });
        List<ResultRow> strips = rows("returns", "strips", "part");
        if (!strips.isEmpty()) {
            facts.add(Fact.number("coil-length", "Coil, in all", strips.stream().mapToDouble(row -> row.number("length")).sum(), Quantity.LENGTH));
        }
        rows("trim", "faces", "face").forEach(row -> {
            facts.add(Fact.text("moulding", "Moulding", row.text("moulding")));
            facts.add(Fact.number("moulding-length", "Trim length", row.number("length"), Quantity.LENGTH));
        });
        List<ResultRow> modules = rows("glow", "modules", "part");
        if (!modules.isEmpty()) {
            facts.add(Fact.number("modules", "Modules", modules.size(), Quantity.COUNT));
        }
        List<ResultRow> weights = rows("mount", "weights", "part");
        if (!weights.isEmpty()) {
            facts.add(Fact.number("weight", "Weight, in all", weights.stream().mapToDouble(row -> row.number("mass")).sum(), Quantity.MASS));
        }
        facts.removeIf(fact -> !fact.isKnown());
        return facts;
    }

    /** One table a strip, its title saying what the bender needs to know of the strip. */
    private List<Table> bendTables() {
        List<Table> tables = new ArrayList<>();
        for (ResultRow strip : rows("returns", "strips", "part")) {
            double contour = strip.number("contour");
            Optional<Table> bends = BENDS.from(result, row -> row.text("part").equals(part.id()) && row.number("contour") == contour);
            String title = "Strip " + Math.round(contour) + " of " + part.id() + ", " + strip.text("kind") + ": " + length(strip.number("length")) + " of strip " + length(strip.number("depth"))
                    + " deep, " + length(strip.number("thickness")) + " thick";
            List<TableInfo.Column> columns = bends.map(table -> table.info().columns()).orElse(List.of());
            tables.add(new Table(new TableInfo("returns.bends-" + Math.round(contour), title, columns), bends.map(Table::rows).orElse(List.of())));
        }
        return tables;
    }

    private String length(double mm) {
        return Units.format(mm, Quantity.LENGTH, result.units());
    }

    private LetterSheet.Drawn drawn() {
        List<LetterSheet.Numbered> bends = new ArrayList<>();
        boolean several = rows("returns", "strips", "part").size() > 1;
        for (ResultRow row : rows("returns", "bends", "part")) {
            String number = (several ? Math.round(row.number("contour")) + "." : "") + Math.round(row.number("bend"));
            row.geometry("at").ifPresent(at -> bends.add(new LetterSheet.Numbered(number, at.getCoordinate())));
        }
        List<Coordinate> modules = rows("glow", "modules", "part").stream().filter(row -> Double.isFinite(row.number("x")) && Double.isFinite(row.number("y")))
                .map(row -> new Coordinate(row.number("x"), row.number("y"))).toList();
        List<Geometry> backs = new ArrayList<>(geometries("fit", "made-backs", "face", "shape"));
        List<String> drawnBacks = pairs().flatMap(row -> Stream.of(row.text("inner").split(" "))).toList();
        result.parts().stream().filter(each -> drawnBacks.contains(each.id())).forEach(each -> backs.add(each.shape()));
        return new LetterSheet.Drawn(backs, geometries("returns", "strips", "part", "joint").stream().map(Geometry::getCoordinate).toList(), bends, modules);
    }

    /** Backs that were drawn for it. */
    private Stream<ResultRow> pairs() {
        return ResultRow.of(result, "fit", "pairs").stream().filter(row -> List.of(row.text("outer").split(" ")).contains(part.id()));
    }

    private List<Geometry> geometries(String check, String table, String key, String column) {
        return rows(check, table, key).stream().map(row -> row.geometry(column)).flatMap(Optional::stream).toList();
    }
}
