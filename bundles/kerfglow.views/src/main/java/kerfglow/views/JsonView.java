// SPDX-License-Identifier: Apache-2.0
package kerfglow.views;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import kerfglow.api.Measure;
import kerfglow.api.OverlayLayer;
import kerfglow.api.Table;
import kerfglow.api.TableInfo;
import kerfglow.api.proof.Part;
import kerfglow.host.Result;
import kerfglow.job.Decision;
import kerfglow.job.JsonText;
import kerfglow.job.ReviewedResult;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.PrecisionModel;
import org.locationtech.jts.io.WKTWriter;

/**
 * A result as JSON: lengths in mm, areas in mm², geometry as WKT (OGC 06-103r4). {@code result.schema.json} beside this class
 * is its schema. Fields are only ever added.
 */
public final class JsonView {
    /** A millionth of a millimetre: far below any tolerance here, and it keeps rounding noise out of comparisons. */
    private static final double WKT_SCALE = 1e6;

    private final JsonGenerator json;

    private JsonView(JsonGenerator json) {
        this.json = json;
    }

    /** A file that could not be run, and why. */
    public record Unusable(String file, String error) {
    }

    /** Writes one result about which nothing is decided; the writer stays open. */
    public static void write(Result result, Writer out) {
        write(ReviewedResult.undecided(result), out);
    }

    /** Writes one result with what was decided about it; the writer stays open. */
    public static void write(ReviewedResult result, Writer out) {
        with(out, view -> view.result(result));
    }

    /** Writes several files' results about which nothing is decided, and what could not be run; the writer stays open. */
    public static void writeAll(List<Result> results, List<Unusable> unusable, Writer out) {
        writeReviewed(results.stream().map(ReviewedResult::undecided).toList(), unusable, out);
    }

    /** Writes several files' results with what was decided about them, and what could not be run; the writer stays open. */
    public static void writeReviewed(List<ReviewedResult> results, List<Unusable> unusable, Writer out) {
        with(out, view -> {
            view.json.writeStartObject();
            view.json.writeArrayFieldStart("results");
            for (ReviewedResult result : results) {
                view.result(result);
            }
            view.json.writeEndArray();
            view.json.writeArrayFieldStart("unusable");
            for (Unusable each : unusable) {
                view.json.writeStartObject();
                view.json.writeStringField("file", each.file());
                view.json.writeStringField("error", each.error());
                view.json.writeEndObject();
            }
            view.json.writeEndArray();
            view.json.writeEndObject();
        });
    }

    private interface Writing {
        void to(JsonView view) throws IOException;
    }

    private static void with(Writer out, Writing writing) {
        try (JsonGenerator json = JsonText.generator(out)) {
            json.disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET);
            json.setPrettyPrinter(new DefaultPrettyPrinter());
            writing.to(new JsonView(json));
            json.writeRaw('\n');
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }

    private void result(ReviewedResult reviewed) throws IOException {
        Result result = reviewed.result();
        json.writeStartObject();
        json.writeObjectFieldStart("proof");
        json.writeStringField("file", result.proof().file());
        json.writeStringField("sha256", result.proof().sha256());
        number("widthMm", result.proof().widthMm());
        number("heightMm", result.proof().heightMm());
        number("scale", result.proof().scale());
        number("chordErrorMm", result.proof().chordErrorMm());
        json.writeEndObject();
        json.writeArrayFieldStart("parts");
        for (Part part : result.parts()) {
            part(part);
        }
        json.writeEndArray();
        json.writeArrayFieldStart("findings");
        for (Result.ReportedFinding finding : result.findings()) {
            finding(finding, reviewed.decision(finding));
        }
        json.writeEndArray();
        json.writeArrayFieldStart("checks");
        for (Result.CheckRow row : result.checks()) {
            check(row);
        }
        json.writeEndArray();
        json.writeArrayFieldStart("settings");
        for (Result.SettingUsed used : result.settings()) {
            setting(used);
        }
        json.writeEndArray();
        strings("remarks", result.remarks());
        json.writeFieldName("decisions");
        DecisionsJson.write(reviewed, json);
        json.writeEndObject();
    }

    private void part(Part part) throws IOException {
        Geometry material = part.material();
        json.writeStartObject();
        json.writeStringField("id", part.id());
        json.writeStringField("layer", part.layer());
        json.writeStringField("role", part.role().word());
        json.writeBooleanField("assigned", part.isAssigned());
        json.writeStringField("paint", part.paint().toString());
        strings("elements", part.elements());
        strings("sources", part.sources().stream().map(source -> source.name().toLowerCase(Locale.ROOT)).sorted().toList());
        optional("material", part.sheetMaterial());
        if (part.thicknessMm().isPresent()) {
            number("thicknessMm", part.thicknessMm().getAsDouble());
        }
        number("areaMm2", material.getArea());
        number("perimeterMm", material.getLength());
        json.writeNumberField("holes", holes(material));
        Envelope box = material.getEnvelopeInternal();
        json.writeArrayFieldStart("boundsMm");
        for (double edge : new double[] {box.getMinX(), box.getMinY(), box.getMaxX(), box.getMaxY()}) {
            json.writeNumber(rounded(edge));
        }
        json.writeEndArray();
        json.writeStringField("wkt", wkt(material));
        json.writeEndObject();
    }

    private static int holes(Geometry material) {
        int holes = 0;
        for (int i = 0; i < material.getNumGeometries(); i++) {
            holes += ((Polygon) material.getGeometryN(i)).getNumInteriorRing();
        }
        return holes;
    }

    private void finding(Result.ReportedFinding finding, Decision decision) throws IOException {
        json.writeStartObject();
        json.writeStringField("id", finding.id());
        json.writeStringField("rule", finding.rule().id());
        json.writeStringField("severity", finding.severity().word());
        json.writeStringField("severityReason", finding.severityReason());
        json.writeStringField("decision", DecisionsJson.word(decision.kind()));
        strings("parts", finding.parts());
        strings("elements", finding.elements());
        if (!finding.places().isEmpty()) {
            place(finding.places().get(0), false);
        }
        measure("measured", finding.measured());
        measure("required", finding.required());
        json.writeStringField("unit", finding.measured().or(finding::required).map(measure -> measure.quantity().unit()).orElse(""));
        json.writeNumberField("count", finding.count());
        json.writeArrayFieldStart("places");
        for (Result.Place place : finding.places()) {
            json.writeStartObject();
            place(place, true);
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeStringField("message", finding.message());
        json.writeStringField("why", finding.rule().why());
        json.writeStringField("fix", finding.fix());
        json.writeStringField("source", finding.rule().source());
        json.writeEndObject();
    }

    private void place(Result.Place place, boolean withMeasure) throws IOException {
        Coordinate at = place.at();
        json.writeArrayFieldStart("at");
        json.writeNumber(rounded(at.x));
        json.writeNumber(rounded(at.y));
        json.writeEndArray();
        json.writeStringField("wkt", wkt(place.shape()));
        if (withMeasure) {
            measure("measured", place.measured());
            if (place.suggestion().isPresent()) {
                json.writeStringField("suggestion", wkt(place.suggestion().get()));
            }
        }
    }

    private void check(Result.CheckRow row) throws IOException {
        json.writeStartObject();
        json.writeStringField("check", row.check());
        json.writeStringField("version", row.version());
        json.writeStringField("status", row.status().word());
        json.writeNumberField("millis", row.millis());
        json.writeStringField("why", row.why());
        json.writeArrayFieldStart("measurements");
        for (Table table : row.tables()) {
            table(table);
        }
        json.writeEndArray();
        json.writeArrayFieldStart("layers");
        for (OverlayLayer layer : row.layers()) {
            layer(layer);
        }
        json.writeEndArray();
        json.writeEndObject();
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
            json.writeStringField("type", column.type().name().toLowerCase(Locale.ROOT));
            json.writeStringField("unit", column.quantity() == null ? "" : column.quantity().unit());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeArrayFieldStart("rows");
        for (List<Object> row : table.rows()) {
            json.writeStartArray();
            for (Object cell : row) {
                value(cell);
            }
            json.writeEndArray();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private void layer(OverlayLayer layer) throws IOException {
        json.writeStartObject();
        json.writeStringField("id", layer.id());
        json.writeStringField("title", layer.title());
        json.writeArrayFieldStart("items");
        for (OverlayLayer.Item item : layer.items()) {
            json.writeStartObject();
            json.writeStringField("wkt", wkt(item.shape()));
            if (!Double.isNaN(item.level())) {
                number("level", item.level());
            }
            json.writeStringField("label", item.label());
            json.writeEndObject();
        }
        json.writeEndArray();
        if (layer.raster().isPresent()) {
            raster(layer.raster().get());
        }
        json.writeArrayFieldStart("legend");
        for (OverlayLayer.LegendEntry entry : layer.legend()) {
            json.writeStartObject();
            json.writeStringField("colour", String.format(Locale.ROOT, "#%06x", entry.rgb()));
            json.writeStringField("label", entry.label());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    /** Where the picture lies; its colours are for eyes, and what they stand for is given as a table by the check that made it. */
    private void raster(OverlayLayer.Raster raster) throws IOException {
        json.writeObjectFieldStart("raster");
        number("leftMm", raster.leftMm());
        number("topMm", raster.topMm());
        number("cellMm", raster.cellMm());
        json.writeNumberField("columns", raster.columns());
        json.writeNumberField("rows", raster.rows());
        json.writeEndObject();
    }

    private void setting(Result.SettingUsed used) throws IOException {
        json.writeStartObject();
        json.writeStringField("key", used.key());
        json.writeStringField("scope", used.scope());
        json.writeFieldName("value");
        value(used.value());
        json.writeStringField("unit", used.unit());
        json.writeStringField("from", used.from());
        json.writeEndObject();
    }

    private void value(Object value) throws IOException {
        if (value == null) {
            json.writeNull();
        } else if (value instanceof Integer whole) {
            json.writeNumber(whole);
        } else if (value instanceof Number number) {
            json.writeNumber(rounded(number.doubleValue()));
        } else if (value instanceof Boolean flag) {
            json.writeBoolean(flag);
        } else if (value instanceof Geometry geometry) {
            json.writeString(wkt(geometry));
        } else {
            json.writeString(value.toString());
        }
    }

    private void measure(String name, Optional<Measure> measure) throws IOException {
        if (measure.isPresent()) {
            number(name, measure.get().value());
        } else {
            json.writeNullField(name);
        }
    }

    private void optional(String name, Optional<String> text) throws IOException {
        if (text.isPresent()) {
            json.writeStringField(name, text.get());
        }
    }

    private void number(String name, double value) throws IOException {
        json.writeNumberField(name, rounded(value));
    }

    /** To a millionth, as the WKT. */
    private static double rounded(double value) {
        double scaled = Math.rint(value * WKT_SCALE) / WKT_SCALE;
        return scaled == 0 ? 0 : scaled; // never -0
    }

    private void strings(String name, List<String> values) throws IOException {
        json.writeArrayFieldStart(name);
        for (String value : values) {
            json.writeString(value);
        }
        json.writeEndArray();
    }

    static String wkt(Geometry geometry) {
        WKTWriter writer = new WKTWriter();
        writer.setPrecisionModel(new PrecisionModel(WKT_SCALE));
        return writer.write(geometry);
    }
}
