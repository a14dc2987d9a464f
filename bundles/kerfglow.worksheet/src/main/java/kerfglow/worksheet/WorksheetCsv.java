// SPDX-License-Identifier: Apache-2.0
package kerfglow.worksheet;

import java.io.IOException;
import java.io.Writer;
import java.util.List;
import java.util.Locale;
import kerfglow.api.Table;
import kerfglow.api.TableInfo;
import kerfglow.views.PlainText;

/**
 * A worksheet as comma-separated values (RFC 4180), one number or text a line: section, part, table, row, item, title, value, unit. Lengths are mm, areas mm²,
 * whatever units a person reads.
 */
public final class WorksheetCsv {
    private static final String HEAD = "section,part,table,row,item,title,value,unit";
    /** A spreadsheet takes a text that begins so for a formula and runs it (OWASP, "CSV Injection"); with an apostrophe before it, it stays a text. */
    private static final String FORMULA = "(?s)[=+@\t\r-].*";
    private static final String NUMBER = "-?\\d+(\\.\\d+)?";
    private final Writer out;

    private WorksheetCsv(Writer out) {
        this.out = out;
    }

    /** Writes; the writer is flushed and stays open. */
    public static void write(Worksheet sheet, Writer out) throws IOException {
        WorksheetCsv csv = new WorksheetCsv(out);
        out.write(HEAD + "\r\n");
        csv.facts("header", "", sheet.header());
        for (String caution : sheet.cautions()) {
            csv.line("cautions", "", "", "", "caution", "", caution, "");
        }
        for (Table table : sheet.totals()) {
            csv.table("totals", "", table);
        }
        csv.table("parts", "", sheet.parts());
        for (LetterSheet letter : sheet.letters()) {
            csv.facts("letter", letter.part().id(), letter.facts());
            for (Table table : letter.tables()) {
                csv.table("letter", letter.part().id(), table);
            }
            for (Table table : letter.bends()) {
                csv.table("letter", letter.part().id(), table);
            }
        }
        for (String gap : sheet.gaps()) {
            csv.line("not measured", "", "", "", "gap", "", gap, "");
        }
        out.flush();
    }

    private void facts(String section, String part, List<Fact> facts) throws IOException {
        for (Fact fact : facts) {
            line(section, part, "", "", fact.id(), fact.title(), fact.quantity().isPresent() ? number(fact.number()) : fact.text(), fact.quantity().map(each -> each.unit()).orElse(""));
        }
    }

    private void table(String section, String part, Table table) throws IOException {
        for (int row = 0; row < table.rows().size(); row++) {
            for (int i = 0; i < table.info().columns().size(); i++) {
                TableInfo.Column column = table.info().columns().get(i);
                Object cell = table.rows().get(row).get(i);
                if (cell != null) {
                    line(section, part, table.info().id(), Integer.toString(row + 1), column.id(), column.title(),
                            cell instanceof Double number ? number(number) : cell.toString(), column.quantity() == null ? "" : column.quantity().unit());
                }
            }
        }
    }

    private void line(String... cells) throws IOException {
        for (int i = 0; i < cells.length; i++) {
            out.write((i == 0 ? "" : ",") + quoted(cells[i]));
        }
        out.write("\r\n");
    }

    private static String quoted(String cell) {
        String plain = PlainText.of(cell);
        String text = plain.matches(FORMULA) && !plain.matches(NUMBER) ? "'" + plain : plain;
        return text.matches("(?s).*[\",\r\n].*") ? "\"" + text.replace("\"", "\"\"") + "\"" : text;
    }

    /** To a millionth of the unit, without zeros that say nothing. */
    static String number(double value) {
        String text = String.format(Locale.ROOT, "%.6f", value).replaceAll("0+$", "").replaceAll("\\.$", "");
        return text.equals("-0") ? "0" : text;
    }
}
