// SPDX-License-Identifier: Apache-2.0
package kerfglow.worksheet;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;
import java.io.Writer;
import java.util.List;
import kerfglow.api.Table;
import kerfglow.api.TableInfo;
import kerfglow.api.UnitSystem;
import kerfglow.job.JsonText;

/** A worksheet as JSON: lengths in mm, areas in mm², each table with its schema. Fields are only ever added. */
public final class WorksheetJson {
    private static final int VERSION = 1;
    private final JsonGenerator json;

    private WorksheetJson(JsonGenerator json) {
        this.json = json;
    }

    /** Writes; the writer is flushed and stays open. */
    public static void write(Worksheet sheet, Writer out) throws IOException {
        JsonGenerator json = JsonText.generator(out);
        json.disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET);
        json.setPrettyPrinter(new DefaultPrettyPrinter());
        new WorksheetJson(json).sheet(sheet);
        json.close();
        out.write("\n");
        out.flush();
    }

    private void sheet(Worksheet sheet) throws IOException {
        json.writeStartObject();
        json.writeNumberField("worksheet", VERSION);
        json.writeStringField("units", sheet.reviewed().result().units() == UnitSystem.INCH ? "inch" : "metric");
        facts("header", sheet.header());
        strings("cautions", sheet.cautions());
        tables("totals", sheet.totals());
        json.writeFieldName("parts");
        table(sheet.parts());
        json.writeArrayFieldStart("letters");
        for (LetterSheet letter : sheet.letters()) {
            json.writeStartObject();
            json.writeStringField("part", letter.part().id());
            json.writeStringField("title", letter.title());
            facts("facts", letter.facts());
            tables("tables", letter.tables());
            tables("bends", letter.bends());
            json.writeEndObject();
        }
        json.writeEndArray();
        strings("notMeasured", sheet.gaps());
        json.writeEndObject();
    }

    private void facts(String name, List<Fact> facts) throws IOException {
        json.writeArrayFieldStart(name);
        for (Fact fact : facts) {
            json.writeStartObject();
            json.writeStringField("id", fact.id());
            json.writeStringField("title", fact.title());
            if (fact.quantity().isPresent()) {
                json.writeNumberField("value", fact.number());
                json.writeStringField("unit", fact.quantity().get().unit());
            } else {
                json.writeStringField("value", fact.text());
            }
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private void strings(String name, List<String> strings) throws IOException {
        json.writeArrayFieldStart(name);
        for (String each : strings) {
            json.writeString(each);
        }
        json.writeEndArray();
    }

    private void tables(String name, List<Table> tables) throws IOException {
        json.writeArrayFieldStart(name);
        for (Table each : tables) {
            table(each);
        }
        json.writeEndArray();
    }

    private void table(Table table) throws IOException {
        json.writeStartObject();
        json.writeStringField("id", table.info().id());
        json.writeStringField("title", table.info().title());
        json.writeArrayFieldStart("columns");
        for (TableInfo.Column column : table.info().columns()) {
            json.writeStartObject();
            json.writeStringField("id", column.id());
            json.writeStringField("title", column.title());
            json.writeStringField("unit", column.quantity() == null ? "" : column.quantity().unit());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeArrayFieldStart("rows");
        for (List<Object> row : table.rows()) {
            json.writeStartArray();
            for (Object cell : row) {
                if (cell == null) {
                    json.writeNull();
                } else if (cell instanceof Double number) {
                    json.writeNumber(number);
                } else if (cell instanceof Boolean flag) {
                    json.writeBoolean(flag);
                } else {
                    json.writeString(cell.toString());
                }
            }
            json.writeEndArray();
        }
        json.writeEndArray();
        json.writeEndObject();
    }
}
