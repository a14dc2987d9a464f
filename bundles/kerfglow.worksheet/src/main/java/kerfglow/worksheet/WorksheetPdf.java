// SPDX-License-Identifier: Apache-2.0
package kerfglow.worksheet;

import java.io.IOException;
import java.io.OutputStream;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import kerfglow.api.Table;
import kerfglow.api.TableInfo;
import kerfglow.api.UnitSystem;
import kerfglow.api.Units;
import kerfglow.papers.Paper;

/** A worksheet on paper: what it is and the sign to scale, totals, all parts, then a sheet for each letter with its bend tables. */
public final class WorksheetPdf {
    private static final String FOOTER = "No approval. Electrical, weight and wind figures are estimates: local code governs, licensed practice decides.";
    private static final String AT_THE_BENDER = "Lay the strip flat and measure every position from its joint end (J in the drawing). Walk along it with the can on your left as the letter is seen "
            + "from the front: towards bends to the can, away bends from it. A bend begins at its position and takes its length of the flat strip; radii are inside radii.";
    /** Tells revisions of one job apart on every page. */
    private static final int SHORT_DIGEST = 12;
    /** A picture leaves room for facts beside it. */
    private static final double LETTER_WIDTH_MM = 165;
    /** Leaves room on the page for the tables of strips and weight, so that the bend table has the next one for itself. */
    private static final double LETTER_HEIGHT_MM = 100;
    private static final double SIGN_WIDTH_MM = 170;
    private static final double SIGN_HEIGHT_MM = 100;
    /** A chapter's heading stays with its first table. */
    private static final double FIRST_TABLE_MM = 60;
    /** Columns are shared out by what stands in them, within these bounds, in characters. */
    private static final int NARROWEST = 6;
    private static final int WIDEST = 34;
    /** A column is made wide enough for its head to take about so many lines. */
    private static final int LINES_OF_A_HEAD = 3;
    /** A table of one row reads better as a list when it has more columns. */
    private static final int MOST_COLUMNS_OF_ONE_ROW = 8;

    private final Worksheet sheet;
    private final Paper paper;
    private final UnitSystem units;

    private WorksheetPdf(Worksheet sheet, Paper paper) {
        this.sheet = sheet;
        this.paper = paper;
        this.units = sheet.reviewed().result().units();
    }

    /**
     * Writes; the stream stays open.
     *
     * @param created stands in the file's properties
     */
    public static void write(Worksheet sheet, Paper.Size size, Instant created, OutputStream out) throws IOException {
        String job = sheet.header().get(0).text();
        String revision = header(sheet, "revision");
        String digest = sheet.reviewed().result().proof().sha256();
        String footer = "Revision " + revision + ", proof " + digest.substring(0, Math.min(SHORT_DIGEST, digest.length())) + ". " + FOOTER;
        try (Paper paper = new Paper(new Paper.About("Production worksheet: " + job, "Revision " + revision + ", proof " + digest, footer, size, true, created))) {
            new WorksheetPdf(sheet, paper).set();
            paper.write(out);
        }
    }

    private static String header(Worksheet sheet, String id) {
        return sheet.header().stream().filter(fact -> fact.id().equals(id)).map(Fact::text).findFirst().orElse("");
    }

    private void set() throws IOException {
        paper.heading(1, sheet.header().get(0).text());
        SignDrawing drawing = new SignDrawing(sheet, SIGN_WIDTH_MM, SIGN_HEIGHT_MM);
        paper.beside(drawing.widthMm(), drawing.heightMm(), drawing.widthMm(), drawing::draw, lines(sheet.header().stream().filter(fact -> !fact.id().equals("job") && !fact.id().equals("digest")).toList()));
        paper.paragraph("Proof: " + header(sheet, "digest"), Paper.Style.SMALL);
        paper.heading(2, "Cautions");
        for (String caution : sheet.cautions()) {
            paper.paragraph(caution);
        }
        paper.together(FIRST_TABLE_MM);
        paper.heading(2, "What it takes");
        for (Table table : sheet.totals()) {
            titled(table);
        }
        paper.heading(2, "Parts");
        table(sheet.parts());
        if (!sheet.gaps().isEmpty()) {
            paper.heading(2, "Not measured");
            for (String gap : sheet.gaps()) {
                paper.paragraph(gap);
            }
        }
        for (LetterSheet letter : sheet.letters()) {
            letter(letter);
        }
    }

    private List<Paper.Labelled> lines(List<Fact> facts) {
        return facts.stream().map(fact -> new Paper.Labelled(fact.title(), fact.words(units))).toList();
    }

    private void letter(LetterSheet letter) throws IOException {
        paper.newPage();
        paper.heading(2, letter.title());
        LetterDrawing drawing = new LetterDrawing(letter, LETTER_WIDTH_MM, LETTER_HEIGHT_MM);
        paper.beside(drawing.widthMm(), drawing.heightMm(), drawing.widthMm(), canvas -> drawing.draw(canvas, units), lines(letter.facts()));
        for (Table table : letter.tables()) {
            titled(table);
        }
        for (Table bends : letter.bends()) {
            paper.heading(3, bends.info().title());
            if (bends.rows().isEmpty()) {
                paper.paragraph("This strip has no bends.");
            } else {
                paper.paragraph(AT_THE_BENDER, Paper.Style.SMALL);
                paper.tableInHalves(columns(bends), rows(bends));
            }
        }
    }

    private void titled(Table table) throws IOException {
        paper.heading(3, table.info().title());
        if (table.rows().size() == 1 && table.info().columns().size() > MOST_COLUMNS_OF_ONE_ROW) {
            List<List<String>> facts = new ArrayList<>();
            for (int i = 0; i < table.info().columns().size(); i++) {
                facts.add(List.of(table.info().columns().get(i).title(), words(table.rows().get(0).get(i), table.info().columns().get(i))));
            }
            paper.tableInHalves(List.of(new Paper.Column("What", 3), new Paper.Column("How much", 2)), facts);
        } else {
            table(table);
        }
    }

    private void table(Table table) throws IOException {
        paper.table(columns(table), rows(table));
    }

    private List<List<String>> rows(Table table) {
        List<TableInfo.Column> columns = table.info().columns();
        List<List<String>> rows = new ArrayList<>();
        for (List<Object> row : table.rows()) {
            List<String> cells = new ArrayList<>();
            for (int i = 0; i < columns.size(); i++) {
                cells.add(words(row.get(i), columns.get(i)));
            }
            rows.add(cells);
        }
        return rows;
    }

    private List<Paper.Column> columns(Table table) {
        List<TableInfo.Column> columns = table.info().columns();
        List<List<String>> rows = rows(table);
        List<Paper.Column> shared = new ArrayList<>();
        for (int i = 0; i < columns.size(); i++) {
            int column = i;
            int longest = rows.stream().mapToInt(row -> row.get(column).length()).max().orElse(0);
            int word = List.of(columns.get(i).title().split(" ")).stream().mapToInt(String::length).max().orElse(0);
            int head = Math.max(word, columns.get(i).title().length() / LINES_OF_A_HEAD);
            shared.add(new Paper.Column(columns.get(i).title(), Math.max(NARROWEST, Math.min(WIDEST, Math.max(longest, head) + 2)), columns.get(i).type() == TableInfo.Type.NUMBER));
        }
        return shared;
    }

    private String words(Object cell, TableInfo.Column column) {
        if (cell == null) {
            return "–";
        }
        if (cell instanceof Double number) {
            return Units.format(number, column.quantity(), units);
        }
        return cell instanceof Boolean flag ? flag ? "yes" : "no" : cell.toString();
    }
}
