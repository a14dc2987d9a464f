// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import kerfglow.api.Measure;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.PrecisionModel;
import org.locationtech.jts.io.WKTWriter;
import org.locationtech.jts.simplify.DouglasPeuckerSimplifier;

/** Writes a job as the text of a job file; docs/jobs.md describes the format. */
final class JobJson {
    /** Raised when an older program could no longer read what matters. */
    static final int FORMAT = 1;

    /** Places are kept to a ten-thousandth of a millimetre: below the 0.001 mm of the import. */
    private static final double PLACE_SCALE = 1e4;
    /** Kept outlines serve to know the artwork again, not to cut it: a hundredth of a millimetre and this much straightening keep the file small. */
    static final double OUTLINE_RESOLUTION_MM = 0.05;
    private static final double OUTLINE_SCALE = 100;

    private final JsonGenerator json;

    private JobJson(JsonGenerator json) {
        this.json = json;
    }

    /**
     * The text.
     *
     * @param state what to keep
     * @param folder what paths count from
     * @param saved when
     * @param previous digest of the bytes of the job file that this one takes the place of; empty for a new one
     */
    static String write(JobState state, Path folder, Instant saved, String previous) {
        StringWriter out = new StringWriter();
        try (JsonGenerator json = JsonText.generator(out)) {
            json.setPrettyPrinter(new DefaultPrettyPrinter());
            new JobJson(json).job(state, folder, saved, previous);
            json.writeRaw('\n');
        } catch (IOException never) {
            throw new UncheckedIOException(never);
        }
        return out.toString();
    }

    private void job(JobState state, Path folder, Instant saved, String previous) throws IOException {
        json.writeStartObject();
        MarkJson.writeContext(json, true);
        json.writeStringField("type", "kerfglow:Job");
        json.writeNumberField("format", FORMAT);
        json.writeStringField("saved", saved.toString());
        json.writeStringField("previous", previous);
        json.writeObjectFieldStart("proof");
        json.writeStringField("file", state.proof().file());
        json.writeStringField("sha256", state.proof().sha256());
        json.writeNumberField("widthMm", state.proof().widthMm());
        json.writeNumberField("heightMm", state.proof().heightMm());
        json.writeNumberField("scale", state.proof().scale());
        json.writeEndObject();
        json.writeFieldName("sheet");
        SheetJson.write(state.sheet(), folder, json);
        json.writeArrayFieldStart("marks");
        for (Mark mark : state.marks()) {
            MarkJson.write(mark, state.proof(), json);
        }
        json.writeEndArray();
        json.writeArrayFieldStart("waivers");
        for (Waiver waiver : state.waivers()) {
            waiver(waiver);
        }
        json.writeEndArray();
        json.writeArrayFieldStart("signOffs");
        for (SignOff signOff : state.signOffs()) {
            signOff(signOff);
        }
        json.writeEndArray();
        seen(state.seen());
        json.writeEndObject();
    }

    private void waiver(Waiver waiver) throws IOException {
        json.writeStartObject();
        json.writeStringField("type", waiver instanceof Waiver.OfFinding ? "kerfglow:FindingWaiver" : "kerfglow:CheckWaiver");
        json.writeStringField("id", waiver.id());
        json.writeStringField("reason", waiver.reason());
        json.writeStringField("author", waiver.author());
        json.writeStringField("at", waiver.at().toString());
        if (waiver instanceof Waiver.OfFinding finding) {
            json.writeStringField("finding", finding.findingId());
            json.writeStringField("severity", finding.severity());
            json.writeStringField("message", finding.message());
            json.writeFieldName("decided");
            finding(finding.decided());
            places(finding.places());
        } else if (waiver instanceof Waiver.OfCheck check) {
            json.writeStringField("check", check.check());
            json.writeStringField("version", check.version());
            json.writeStringField("status", check.status().word());
        }
        json.writeEndObject();
    }

    private void signOff(SignOff signOff) throws IOException {
        json.writeStartObject();
        json.writeStringField("type", "kerfglow:SignOff");
        json.writeStringField("id", signOff.id());
        json.writeStringField("author", signOff.author());
        json.writeStringField("at", signOff.at().toString());
        json.writeStringField("remark", signOff.remark());
        json.writeArrayFieldStart("open");
        for (SignOff.OpenItem item : signOff.open()) {
            json.writeStartObject();
            json.writeStringField("kind", item.kind());
            json.writeStringField("of", item.id());
            json.writeStringField("text", item.text());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeObjectFieldStart("digests");
        json.writeStringField("proof", signOff.digests().proof());
        json.writeStringField("sheet", signOff.digests().sheet());
        json.writeStringField("settings", signOff.digests().settings());
        json.writeStringField("checks", signOff.digests().checks());
        json.writeEndObject();
        json.writeEndObject();
    }

    private void seen(Snapshot seen) throws IOException {
        json.writeObjectFieldStart("seen");
        json.writeNumberField("resolutionMm", Math.max(seen.resolutionMm(), OUTLINE_RESOLUTION_MM));
        json.writeArrayFieldStart("outlines");
        for (Snapshot.Outline outline : seen.outlines()) {
            json.writeStartObject();
            json.writeStringField("part", outline.part());
            json.writeStringField("role", outline.role());
            json.writeStringField("layer", outline.layer());
            json.writeStringField("wkt", wkt(DouglasPeuckerSimplifier.simplify(outline.shape(), OUTLINE_RESOLUTION_MM), OUTLINE_SCALE));
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeArrayFieldStart("findings");
        for (SeenFinding each : seen.findings()) {
            finding(each);
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private void finding(SeenFinding finding) throws IOException {
        json.writeStartObject();
        json.writeStringField("finding", finding.id());
        json.writeStringField("rule", finding.rule());
        json.writeStringField("message", finding.message());
        texts("roles", finding.roles());
        texts("parts", finding.parts());
        texts("elements", finding.elements());
        measure("measured", finding.measured());
        measure("required", finding.required());
        places(finding.places());
        json.writeEndObject();
    }

    private void places(List<SeenPlace> places) throws IOException {
        json.writeArrayFieldStart("places");
        for (SeenPlace place : places) {
            json.writeStartObject();
            json.writeNumberField("x", rounded(place.at().xMm()));
            json.writeNumberField("y", rounded(place.at().yMm()));
            json.writeStringField("wkt", wkt(place.shape(), PLACE_SCALE));
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private void measure(String name, Optional<Measure> measure) throws IOException {
        if (measure.isPresent()) {
            json.writeObjectFieldStart(name);
            json.writeNumberField("value", measure.get().value());
            json.writeStringField("quantity", measure.get().quantity().name());
            json.writeEndObject();
        }
    }

    private void texts(String name, Collection<String> values) throws IOException {
        json.writeArrayFieldStart(name);
        for (String value : values) {
            json.writeString(value);
        }
        json.writeEndArray();
    }

    private static double rounded(double value) {
        double scaled = Math.rint(value * PLACE_SCALE) / PLACE_SCALE;
        return scaled == 0 ? 0 : scaled; // never -0
    }

    private static String wkt(Geometry geometry, double scale) {
        WKTWriter writer = new WKTWriter();
        writer.setPrecisionModel(new PrecisionModel(scale));
        return writer.write(geometry);
    }
}
