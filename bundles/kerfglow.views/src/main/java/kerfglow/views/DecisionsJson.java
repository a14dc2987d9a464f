// SPDX-License-Identifier: Apache-2.0
package kerfglow.views;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import kerfglow.host.Result;
import kerfglow.job.Decision;
import kerfglow.job.JobState;
import kerfglow.job.Mark;
import kerfglow.job.ReviewedResult;
import kerfglow.job.SignOff;
import kerfglow.job.Waiver;

/** What a reviewer decided, as the field {@code decisions} of the JSON view. */
final class DecisionsJson {
    private final JsonGenerator json;
    private final ReviewedResult reviewed;

    private DecisionsJson(JsonGenerator json, ReviewedResult reviewed) {
        this.json = json;
        this.reviewed = reviewed;
    }

    /** Writes the array; empty when there is no job. */
    static void write(ReviewedResult reviewed, JsonGenerator json) throws IOException {
        json.writeStartArray();
        if (reviewed.job().isPresent()) {
            new DecisionsJson(json, reviewed).job(reviewed.job().get());
        }
        json.writeEndArray();
    }

    private void job(JobState job) throws IOException {
        for (Waiver waiver : job.waivers()) {
            if (waiver instanceof Waiver.OfFinding finding) {
                waiver(finding);
            } else if (waiver instanceof Waiver.OfCheck check) {
                waiver(check);
            }
        }
        for (Mark mark : job.marks()) {
            mark(mark, job.proof().sha256());
        }
        for (ReviewedResult.SignOffStand stand : reviewed.signOffs()) {
            signOff(stand);
        }
    }

    private void waiver(Waiver.OfFinding waiver) throws IOException {
        List<Result.ReportedFinding> own = reviewed.result().findings().stream()
                .filter(finding -> reviewed.decision(finding).waiver().filter(each -> each.id().equals(waiver.id())).isPresent()).toList();
        begin("waiver", waiver.id(), waiver.author(), waiver.at());
        json.writeStringField("rule", waiver.decided().rule());
        json.writeStringField("reason", waiver.reason());
        json.writeArrayFieldStart("findings");
        for (Result.ReportedFinding finding : own) {
            json.writeString(finding.id());
        }
        json.writeEndArray();
        Optional<Decision> again = own.stream().map(reviewed::decision).filter(decision -> !decision.isWaived()).findFirst();
        json.writeStringField("state", own.isEmpty() ? "finding is gone" : again.isPresent() ? word(Decision.Kind.DECIDE_AGAIN) : "holds");
        json.writeStringField("why", again.map(Decision::why).orElse(""));
        json.writeEndObject();
    }

    private void waiver(Waiver.OfCheck waiver) throws IOException {
        boolean needed = reviewed.result().checks().stream().anyMatch(row -> row.check().equals(waiver.check()) && ReviewedResult.isBroken(row));
        boolean holds = reviewed.result().checks().stream().anyMatch(row -> reviewed.waiver(row).filter(each -> each.id().equals(waiver.id())).isPresent());
        begin("check waiver", waiver.id(), waiver.author(), waiver.at());
        json.writeStringField("check", waiver.check());
        json.writeStringField("version", waiver.version());
        json.writeStringField("status", waiver.status().word());
        json.writeStringField("reason", waiver.reason());
        json.writeStringField("state", holds ? "holds" : needed ? word(Decision.Kind.DECIDE_AGAIN) : "not needed");
        json.writeEndObject();
    }

    private void mark(Mark mark, String proofSha256) throws IOException {
        begin("mark", mark.id(), mark.author(), mark.created());
        json.writeStringField("shape", mark.shape().word());
        json.writeStringField("wkt", JsonView.wkt(mark.shape().outline()));
        json.writeStringField("text", mark.text());
        json.writeStringField("modified", mark.modified().toString());
        json.writeBooleanField("onThisProof", mark.proofSha256().equals(proofSha256));
        json.writeArrayFieldStart("answers");
        for (Mark.Answer answer : mark.answers()) {
            json.writeStartObject();
            json.writeStringField("author", answer.author());
            json.writeStringField("at", answer.created().toString());
            json.writeStringField("text", answer.text());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeBooleanField("settled", mark.settled().isPresent());
        json.writeStringField("settledBy", mark.settled().map(Mark.Settled::author).orElse(""));
        json.writeEndObject();
    }

    private void signOff(ReviewedResult.SignOffStand stand) throws IOException {
        SignOff signOff = stand.signOff();
        begin("sign-off", signOff.id(), signOff.author(), signOff.at());
        json.writeStringField("remark", signOff.remark());
        json.writeBooleanField("holds", stand.holds());
        json.writeArrayFieldStart("voidBecause");
        for (String why : stand.voidBecause()) {
            json.writeString(why);
        }
        json.writeEndArray();
        json.writeArrayFieldStart("open");
        for (SignOff.OpenItem item : signOff.open()) {
            json.writeStartObject();
            json.writeStringField("kind", item.kind());
            json.writeStringField("id", item.id());
            json.writeStringField("text", item.text());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private void begin(String kind, String id, String author, Instant at) throws IOException {
        json.writeStartObject();
        json.writeStringField("kind", kind);
        json.writeStringField("id", id);
        json.writeStringField("author", author);
        json.writeStringField("at", at.toString());
    }

    /** {@code open}, {@code waived} or {@code decide again}. */
    static String word(Decision.Kind kind) {
        return kind.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
