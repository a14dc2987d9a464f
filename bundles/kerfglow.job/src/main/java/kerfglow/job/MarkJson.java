// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A mark as a W3C Web Annotation and back: the text is a body with the purpose commenting, each answer one with the purpose replying,
 * "settled" one with the purpose assessing; the target is the proof with an SVG selector. Terms of our own have the prefix kerfglow.
 */
final class MarkJson {
    static final String ANNOTATION_CONTEXT = "http://www.w3.org/ns/anno.jsonld";
    /** A namespace of our own; experimental, so that nothing has to be registered (RFC 3406, 3.1). */
    static final String OWN_NAMESPACE = "urn:x-kerfglow:job:";

    private static final String SETTLED = "settled";

    private MarkJson() {
    }

    static void write(Mark mark, ProofRef proof, JsonGenerator json) throws IOException {
        json.writeStartObject();
        writeContext(json);
        json.writeStringField("id", mark.id());
        json.writeStringField("type", "Annotation");
        json.writeStringField("motivation", "commenting");
        creator(mark.author(), json);
        json.writeStringField("created", mark.created().toString());
        json.writeStringField("modified", mark.modified().toString());
        json.writeArrayFieldStart("kerfglow:earlier");
        for (Instant time : mark.earlier()) {
            json.writeString(time.toString());
        }
        json.writeEndArray();
        json.writeArrayFieldStart("body");
        if (!mark.text().isEmpty()) {
            body(mark.text(), "commenting", json);
            json.writeEndObject();
        }
        for (Mark.Answer answer : mark.answers()) {
            body(answer.text(), "replying", json);
            json.writeStringField("id", answer.id());
            creator(answer.author(), json);
            json.writeStringField("created", answer.created().toString());
            json.writeEndObject();
        }
        if (mark.settled().isPresent()) {
            body(SETTLED, "assessing", json);
            creator(mark.settled().get().author(), json);
            json.writeStringField("created", mark.settled().get().at().toString());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeObjectFieldStart("target");
        json.writeStringField("type", "SpecificResource");
        json.writeStringField("source", iri(proof.file()));
        json.writeStringField("kerfglow:sha256", mark.proofSha256());
        json.writeObjectFieldStart("selector");
        json.writeStringField("type", "SvgSelector");
        json.writeStringField("value", SvgSelector.write(mark.shape(), proof));
        json.writeStringField("kerfglow:shape", mark.shape().word());
        json.writeEndObject();
        json.writeEndObject();
        json.writeEndObject();
    }

    /** The context of one annotation. */
    private static void writeContext(JsonGenerator json) throws IOException {
        writeContext(json, false);
    }

    /** @param ownTerms true to take every name that the model does not know for one of ours, as a job does */
    static void writeContext(JsonGenerator json, boolean ownTerms) throws IOException {
        json.writeArrayFieldStart("@context");
        json.writeString(ANNOTATION_CONTEXT);
        json.writeStartObject();
        if (ownTerms) {
            json.writeStringField("@vocab", OWN_NAMESPACE);
        }
        json.writeStringField("kerfglow", OWN_NAMESPACE);
        json.writeEndObject();
        json.writeEndArray();
    }

    private static void creator(String name, JsonGenerator json) throws IOException {
        json.writeObjectFieldStart("creator");
        json.writeStringField("type", "Person");
        json.writeStringField("name", name);
        json.writeEndObject();
    }

    private static void body(String text, String purpose, JsonGenerator json) throws IOException {
        json.writeStartObject();
        json.writeStringField("type", "TextualBody");
        json.writeStringField("format", "text/plain");
        json.writeStringField("purpose", purpose);
        json.writeStringField("value", text);
    }

    /** A file name as a relative reference (RFC 3986): spaces and the like are escaped. */
    private static String iri(String file) {
        try {
            return new URI(null, null, file, null).toString();
        } catch (URISyntaxException odd) {
            return "file:" + file.replaceAll("[^A-Za-z0-9/._-]", "_");
        }
    }

    /** Reads a mark; one from another program may lack what is ours. */
    static Mark read(JsonValue json) throws JobProblem {
        JsonValue target = json.required("target").items().stream().filter(JsonValue::isObject).findFirst().orElseThrow(() -> json.wrong("the mark has no place on the proof"));
        JsonValue selector = target.required("selector").items().stream().filter(MarkJson::isSvg).findFirst()
                .orElseThrow(() -> target.wrong("the mark has no SVG selector"));
        try {
            Optional<JsonValue> kind = selector.field("kerfglow:shape");
            MarkShape shape = SvgSelector.read(selector.text("value"), kind.isPresent() ? Optional.of(kind.get().text()) : Optional.empty());
            String author = author(json);
            Instant created = instant(json, "created");
            Instant modified = json.field("modified").isPresent() ? instant(json, "modified") : created;
            List<String> texts = new ArrayList<>();
            List<Mark.Answer> answers = new ArrayList<>();
            Optional<Mark.Settled> settled = Optional.empty();
            for (JsonValue body : json.list("body")) {
                String purpose = body.textOr("purpose", "commenting");
                if (purpose.equals("replying")) {
                    answers.add(new Mark.Answer(body.textOr("id", Names.newId()), body.text("value"), author(body), instant(body, "created")));
                } else if (purpose.equals("assessing") && body.textOr("value", "").equals(SETTLED)) {
                    settled = Optional.of(new Mark.Settled(author(body), instant(body, "created")));
                } else {
                    texts.add(body.text("value"));
                }
            }
            List<Instant> earlier = new ArrayList<>();
            for (JsonValue time : json.list("kerfglow:earlier")) {
                earlier.add(instant(time));
            }
            return new Mark(json.text("id"), shape, String.join("\n", texts), author, created, modified, answers, settled, earlier, target.textOr("kerfglow:sha256", ""));
        } catch (IllegalArgumentException wrong) {
            throw json.wrong(wrong.getMessage());
        }
    }

    private static boolean isSvg(JsonValue selector) {
        return selector.list("type").stream().anyMatch(type -> type.says("SvgSelector"));
    }

    private static String author(JsonValue json) throws JobProblem {
        JsonValue creator = json.required("creator");
        return creator.isObject() ? creator.text("name") : creator.text();
    }

    static Instant instant(JsonValue json, String name) throws JobProblem {
        return instant(json.required(name));
    }

    private static Instant instant(JsonValue value) throws JobProblem {
        try {
            return Instant.parse(value.text());
        } catch (DateTimeException wrong) {
            throw value.wrong("\"" + value.text() + "\" is not a time; it must read as 2026-01-31T12:00:00Z");
        }
    }
}
