// SPDX-License-Identifier: Apache-2.0
package kerfglow.worksheet;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import kerfglow.api.Quantity;
import kerfglow.api.Severity;
import kerfglow.api.Table;
import kerfglow.api.TableInfo;
import kerfglow.api.TableInfo.Column;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.host.Result;
import kerfglow.job.ReviewedResult;
import kerfglow.outlines.ResultRow;
import kerfglow.views.FindingText;
import org.locationtech.jts.geom.Envelope;

/** Gathers a worksheet from the tables of a result. Reads them by the ids of their columns, so that a check that is not installed leaves a gap. */
final class WorksheetMaker {
    /** Film is listed by colour: its pieces are many, and come off one roll. */
    private static final List<Role> MADE = List.of(Role.FACE, Role.BACK, Role.PANEL, Role.OPENING, Role.PUSH_THROUGH, Role.RETURN, Role.PRINT);
    private static final List<String> CAUTIONS = List.of(
            "Findings are flags for a person, never approvals: measure the first part of each kind before the rest is made.",
            "Electrical figures are for planning. NEC Article 600 or the local equivalent governs, and a licensed electrician decides.",
            "Weight, wind and fixings are estimates. The local building code governs, and a licensed engineer decides.",
            "Routers throw small parts and broken bits, benders and plotters pinch: keep guards and eye protection as each machine's maker says.");
    private static final List<Excerpt> TOTALS = List.of(
            Excerpt.of("mount", "sign", "The sign in all (estimate)", "width height area-outline area-rectangle mass x y studs wires drains"),
            Excerpt.of("mount", "materials", "Weight by what and material (estimate)", "what material mass"),
            Excerpt.of("mount", "wind", "Wind (estimate)", "how pressure factor coefficient area-by area force eccentricity"),
            Excerpt.of("sheet", "sheets", "Sheets", "material thickness sheet pieces sheets at-least area"),
            Excerpt.of("router", "bits", "Router bits", "sheet bit diameter reaches cuts-everything gaps corners"),
            Excerpt.of("returns", "coils", "Coil for the returns", "material thickness depth strips length coil coils"),
            Excerpt.of("trim", "mouldings", "Edge moulding", "moulding length edges joints rolls"),
            Excerpt.of("power", "totals", "Light: modules and load (for planning)", "type modules volts load current strings supplies mains"),
            Excerpt.of("power", "supplies", "Supplies (for planning)", "supply kind volts rating circuits strings load loading"),
            Excerpt.of("power", "strings", "Strings (for planning)", "string type parts modules load feed cable conductor drop supply circuit"),
            Excerpt.of("power", "cables", "Cable to cut (for planning)", "conductor length"),
            Excerpt.of("vinyl", "colours", "Film by colour, in the order in which it is laid", "colour pieces area cut roll roll-length waste rolls panels weeding"),
            Excerpt.of("vinyl", "panels", "Panels of film wider than the roll", "part colour panel width height"));
    private static final TableInfo PARTS = new TableInfo("parts", "Parts", List.of(
            Column.text("part", "Part"), Column.text("role", "Role"), Column.text("layer", "Layer"), Column.text("material", "Material"),
            Column.number("thickness", "Thick", Quantity.LENGTH), Column.number("width", "Width", Quantity.LENGTH), Column.number("height", "Height", Quantity.LENGTH),
            Column.number("area", "Area", Quantity.AREA), Column.text("sheet", "Sheet"), Column.number("angle", "Turned", Quantity.ANGLE),
            Column.number("pieces", "Pieces", Quantity.COUNT), Column.text("bit", "Bit"), Column.number("mass", "Weight", Quantity.MASS)));

    private final ReviewedResult reviewed;
    private final Result result;
    private final String revision;
    private final String made;

    WorksheetMaker(ReviewedResult reviewed, String revision, String made) {
        this.reviewed = reviewed;
        this.result = reviewed.result();
        this.revision = revision;
        this.made = made;
    }

    Worksheet make() {
        List<LetterSheet> letters = new ArrayList<>();
        result.parts().stream().filter(part -> part.role() == Role.FACE || part.role() == Role.RETURN).filter(this::isLetter).forEach(part -> letters.add(new LetterMaker(result, part).make()));
        List<Table> totals = TOTALS.stream().map(excerpt -> excerpt.from(result)).flatMap(Optional::stream).toList();
        return new Worksheet(reviewed, header(), cautions(), totals, parts(), letters, gaps());
    }

    private List<Fact> header() {
        List<Fact> facts = new ArrayList<>(List.of(
                Fact.text("job", "Job", result.job().title().isBlank() ? FindingText.fileName(result) : result.job().title()),
                Fact.text("shop", "Shop", result.shop().name()),
                Fact.text("build", "Build", result.job().build().orElse("")),
                Fact.text("proof", "Proof", FindingText.fileName(result)),
                Fact.text("revision", "Revision", revision.isBlank() ? "not given" : revision),
                Fact.text("digest", "Digest", "SHA-256 " + result.proof().sha256()),
                Fact.number("proof-width", "Proof width", result.proof().widthMm(), Quantity.LENGTH),
                Fact.number("proof-height", "Proof height", result.proof().heightMm(), Quantity.LENGTH),
                Fact.number("scale", "Drawn 1 to", result.proof().scale(), Quantity.RATIO),
                Fact.text("made", "Made", made),
                Fact.text("open", "Open findings", open()),
                Fact.text("signed", "Signed off", reviewed.signedOff().map(signOff -> "by " + signOff.author()).orElse("no"))));
        facts.removeIf(fact -> !fact.isKnown());
        return facts;
    }

    private String open() {
        List<String> words = new ArrayList<>();
        for (Severity severity : List.of(Severity.STOP, Severity.REVIEW)) {
            words.add(openOf(severity) + " " + severity.word());
        }
        return String.join(", ", words);
    }

    private long openOf(Severity severity) {
        return result.findings().stream().filter(finding -> finding.severity() == severity && !reviewed.decision(finding).isWaived()).count();
    }

    private List<String> cautions() {
        List<String> cautions = new ArrayList<>();
        long stops = openOf(Severity.STOP);
        if (stops > 0) {
            cautions.add(stops + (stops == 1 ? " finding says" : " findings say") + " stop: something here cannot be made as it is drawn. Do not start before the report is settled.");
        }
        cautions.addAll(CAUTIONS);
        return cautions;
    }

    private List<String> gaps() {
        return result.checks().stream().filter(row -> !row.why().isBlank()).map(row -> row.check() + ": " + row.why()).toList();
    }

    private boolean isLetter(Part part) {
        return !rows("returns", "strips", "part", part).isEmpty() || !rows("glow", "modules", "part", part).isEmpty() || !rows("fit", "made-backs", "face", part).isEmpty();
    }

    private List<ResultRow> rows(String check, String table, String column, Part part) {
        return ResultRow.of(result, check, table).stream().filter(row -> row.text(column).equals(part.id())).toList();
    }

    private Optional<ResultRow> row(String check, String table, Part part) {
        return rows(check, table, "part", part).stream().findFirst();
    }

    private Table parts() {
        List<List<Object>> rows = new ArrayList<>();
        for (Part part : result.parts()) {
            if (MADE.contains(part.role())) {
                rows.add(row(part));
            }
        }
        return new Table(PARTS, rows);
    }

    private List<Object> row(Part part) {
        Envelope box = part.shape().getEnvelopeInternal();
        Optional<ResultRow> sheet = row("sheet", "parts", part);
        List<ResultRow> weights = rows("mount", "weights", "part", part);
        Double mass = weights.isEmpty() ? null : weights.stream().mapToDouble(row -> row.number("mass")).sum();
        return Arrays.<Object>asList(part.id(), part.role().word(), part.layer(), part.sheetMaterial().orElse(null), part.thicknessMm().isPresent() ? part.thicknessMm().getAsDouble() : null,
                box.getWidth(), box.getHeight(), part.shape().getArea(), sheet.map(row -> row.text("sheet")).orElse(null),
                cell(sheet, "angle"), cell(sheet, "pieces"), row("router", "parts", part).map(row -> row.text("used-bit")).orElse(null), mass);
    }

    private static Double cell(Optional<ResultRow> row, String column) {
        return row.map(each -> each.number(column)).filter(Double::isFinite).orElse(null);
    }

}
