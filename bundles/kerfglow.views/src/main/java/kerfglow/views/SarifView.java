// SPDX-License-Identifier: Apache-2.0
package kerfglow.views;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.net.URI;
import java.net.URISyntaxException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfglow.api.Measure;
import kerfglow.api.Rule;
import kerfglow.api.Severity;
import kerfglow.host.Result;
import kerfglow.job.Decision;
import kerfglow.job.JsonText;
import kerfglow.job.ReviewedResult;

/**
 * Results as SARIF 2.1.0 (OASIS Standard, 27 March 2020, with Errata 01), one run a proof: stop is an error, review a warning, info a note; a waiver is a
 * suppression; a check that did not finish is a notification. Places are properties in mm, since the standard knows places in text alone.
 */
public final class SarifView {
    private static final String VERSION = "2.1.0";
    private static final String SCHEMA = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";
    /** Kept for ever, as ids of findings are. */
    private static final String FINGERPRINT = "kerfglowFinding/v1";
    private static final double ROUND = 1e6;

    private final JsonGenerator json;
    private final String version;

    private SarifView(JsonGenerator json, String version) {
        this.json = json;
        this.version = version;
    }

    /**
     * Writes the log; the writer stays open.
     *
     * @param results a run each
     * @param unusable a run each too, one that did not succeed
     * @param version of the program
     */
    public static void write(List<ReviewedResult> results, List<JsonView.Unusable> unusable, String version, Writer out) {
        try (JsonGenerator json = JsonText.generator(out)) {
            json.disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET);
            json.setPrettyPrinter(new DefaultPrettyPrinter());
            new SarifView(json, version).log(results, unusable);
            json.writeRaw('\n');
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }

    private void log(List<ReviewedResult> results, List<JsonView.Unusable> unusable) throws IOException {
        json.writeStartObject();
        json.writeStringField("$schema", SCHEMA);
        json.writeStringField("version", VERSION);
        json.writeArrayFieldStart("runs");
        for (ReviewedResult result : results) {
            run(result);
        }
        for (JsonView.Unusable each : unusable) {
            json.writeStartObject();
            tool(List.of());
            json.writeArrayFieldStart("invocations");
            json.writeStartObject();
            json.writeBooleanField("executionSuccessful", false);
            json.writeArrayFieldStart("toolExecutionNotifications");
            notification("error", "input", each.file() + ": " + each.error());
            json.writeEndArray();
            json.writeEndObject();
            json.writeEndArray();
            json.writeArrayFieldStart("results");
            json.writeEndArray();
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private void run(ReviewedResult reviewed) throws IOException {
        Result result = reviewed.result();
        Map<String, Rule> rules = new LinkedHashMap<>();
        result.findings().forEach(finding -> rules.putIfAbsent(finding.rule().id(), finding.rule()));
        List<String> order = new ArrayList<>(rules.keySet());
        json.writeStartObject();
        tool(List.copyOf(rules.values()));
        invocation(reviewed);
        json.writeArrayFieldStart("artifacts");
        json.writeStartObject();
        artifactLocation("location", result);
        json.writeArrayFieldStart("roles");
        json.writeString("analysisTarget");
        json.writeEndArray();
        json.writeStringField("mimeType", "image/svg+xml");
        json.writeObjectFieldStart("hashes");
        json.writeStringField("sha-256", result.proof().sha256());
        json.writeEndObject();
        json.writeEndObject();
        json.writeEndArray();
        json.writeArrayFieldStart("results");
        for (Result.ReportedFinding finding : result.findings()) {
            finding(reviewed, finding, order.indexOf(finding.rule().id()));
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private void tool(List<Rule> rules) throws IOException {
        json.writeObjectFieldStart("tool");
        json.writeObjectFieldStart("driver");
        json.writeStringField("name", "Kerfglow");
        json.writeStringField("version", version);
        json.writeArrayFieldStart("rules");
        for (Rule rule : rules) {
            json.writeStartObject();
            json.writeStringField("id", rule.id());
            message("shortDescription", rule.summary());
            message("fullDescription", rule.why());
            message("help", rule.fix() + " Source: " + rule.source());
            json.writeObjectFieldStart("defaultConfiguration");
            json.writeStringField("level", level(rule.severity()));
            json.writeEndObject();
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
        json.writeEndObject();
    }

    private void invocation(ReviewedResult reviewed) throws IOException {
        json.writeArrayFieldStart("invocations");
        json.writeStartObject();
        json.writeBooleanField("executionSuccessful", !reviewed.result().isBroken());
        json.writeArrayFieldStart("toolExecutionNotifications");
        for (Result.CheckRow row : reviewed.result().checks()) {
            boolean broken = ReviewedResult.isBroken(row);
            if (broken || !row.why().isEmpty()) {
                notification(broken ? "error" : "warning", row.check(), row.check() + " " + row.status().word() + (row.why().isEmpty() ? "" : ": " + row.why()));
            }
        }
        for (String remark : reviewed.result().remarks()) {
            notification("note", "run", remark);
        }
        json.writeEndArray();
        json.writeEndObject();
        json.writeEndArray();
    }

    private void notification(String level, String id, String text) throws IOException {
        json.writeStartObject();
        json.writeStringField("level", level);
        json.writeObjectFieldStart("descriptor");
        json.writeStringField("id", id);
        json.writeEndObject();
        message("message", text);
        json.writeEndObject();
    }

    private void finding(ReviewedResult reviewed, Result.ReportedFinding finding, int ruleIndex) throws IOException {
        json.writeStartObject();
        json.writeStringField("ruleId", finding.rule().id());
        json.writeNumberField("ruleIndex", ruleIndex);
        json.writeStringField("level", level(finding.severity()));
        message("message", finding.message() + " " + finding.fix());
        json.writeArrayFieldStart("locations");
        location(reviewed.result(), finding, finding.places().stream().findFirst());
        for (int i = 1; i < finding.places().size(); i++) {
            location(reviewed.result(), finding, Optional.of(finding.places().get(i)));
        }
        json.writeEndArray();
        json.writeNumberField("occurrenceCount", finding.count());
        json.writeObjectFieldStart("partialFingerprints");
        json.writeStringField(FINGERPRINT, finding.id());
        json.writeEndObject();
        suppressions(reviewed.decision(finding));
        json.writeObjectFieldStart("properties");
        measure("measured", finding.measured());
        measure("required", finding.required());
        finding.measured().or(finding::required).map(measure -> measure.quantity().unit()).ifPresent(this::unit);
        if (!finding.severityReason().isEmpty()) {
            json.writeStringField("severityReason", finding.severityReason());
        }
        json.writeEndObject();
        json.writeEndObject();
    }

    private void unit(String unit) {
        try {
            json.writeStringField("unit", unit);
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }

    /** Present and empty when nothing is decided, so that a reader knows that it was looked at (3.27.23). */
    private void suppressions(Decision decision) throws IOException {
        json.writeArrayFieldStart("suppressions");
        if (decision.waiver().isPresent()) {
            json.writeStartObject();
            json.writeStringField("kind", "external");
            json.writeStringField("status", decision.isWaived() ? "accepted" : "underReview");
            json.writeStringField("justification", decision.waiver().get().author() + ": " + decision.waiver().get().reason() + (decision.isWaived() ? "" : " To be decided again: " + decision.why() + "."));
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private void location(Result result, Result.ReportedFinding finding, Optional<Result.Place> place) throws IOException {
        json.writeStartObject();
        json.writeObjectFieldStart("physicalLocation");
        artifactLocation("artifactLocation", result);
        json.writeEndObject();
        json.writeArrayFieldStart("logicalLocations");
        for (String part : finding.parts()) {
            logical(part, "part");
        }
        for (String element : finding.elements()) {
            logical(element, "element");
        }
        json.writeEndArray();
        if (place.isPresent()) {
            json.writeObjectFieldStart("properties");
            json.writeNumberField("xMm", rounded(place.get().at().x));
            json.writeNumberField("yMm", rounded(place.get().at().y));
            measure("measured", place.get().measured());
            json.writeEndObject();
        }
        json.writeEndObject();
    }

    private void logical(String name, String kind) throws IOException {
        json.writeStartObject();
        json.writeStringField("name", name);
        json.writeStringField("kind", kind);
        json.writeEndObject();
    }

    private void artifactLocation(String field, Result result) throws IOException {
        json.writeObjectFieldStart(field);
        json.writeStringField("uri", uri(result.proof().file()));
        json.writeNumberField("index", 0);
        json.writeEndObject();
    }

    /** A path as a URI reference (RFC 3986): with forward slashes; whatever else is not allowed is percent-encoded. */
    static String uri(String file) {
        String path = file.replace('\\', '/');
        boolean drive = path.matches("[A-Za-z]:/.*");
        try {
            return drive ? new URI("file", "", "/" + path, null).toASCIIString() : new URI(null, null, path.matches("[^/]*:.*") ? "./" + path : path, null).toASCIIString();
        } catch (URISyntaxException impossible) { // the constructor quotes what is not allowed
            throw new IllegalArgumentException(file, impossible);
        }
    }

    private void measure(String name, Optional<Measure> measure) throws IOException {
        if (measure.isPresent()) {
            json.writeNumberField(name, rounded(measure.get().value()));
        }
    }

    private static double rounded(double value) {
        return Math.rint(value * ROUND) / ROUND + 0.0; // never -0
    }

    private void message(String field, String text) throws IOException {
        json.writeObjectFieldStart(field);
        json.writeStringField("text", escaped(text));
        json.writeEndObject();
    }

    /** Braces are placeholders and brackets links unless they are escaped (3.11.5, 3.11.6). */
    private static String escaped(String text) {
        return text.replace("\\", "\\\\").replace("[", "\\[").replace("]", "\\]").replace("{", "{{").replace("}", "}}");
    }

    private static String level(Severity severity) {
        return switch (severity) {
            case STOP -> "error";
            case REVIEW -> "warning";
            case INFO -> "note";
        };
    }
}
