// SPDX-License-Identifier: Apache-2.0
package kerfglow.views;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.StringWriter;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import kerfglow.api.Measure;
import kerfglow.api.Rule;
import kerfglow.api.Severity;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Proof;
import kerfglow.api.proof.Role;
import kerfglow.host.JobSheet;
import kerfglow.host.Result;
import kerfglow.host.ShopSheet;
import kerfglow.job.Job;
import kerfglow.job.JobState;
import kerfglow.job.MarkShape;
import kerfglow.job.PointMm;
import kerfglow.job.ProofRef;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

class DecisionsViewTest {
    private static final Rule NARROW = new Rule("trial.narrow", Severity.STOP, "Too narrow", "It breaks.", "Widen it.", "geometry");

    private Job job;

    private static Result result(String digit, double measured) {
        Geometry box = CheckTester.wkt("POLYGON ((10 10, 90 10, 90 40, 10 40, 10 10))");
        Geometry place = CheckTester.wkt("POINT (20 10)");
        Result.ReportedFinding finding = new Result.ReportedFinding("00000001", NARROW, Severity.STOP, "", List.of("p1"), List.of("bar"), Optional.of(Measure.mm(measured)),
                Optional.of(Measure.mm(3)), List.of(new Result.Place(place.getCoordinate(), place, Optional.of(Measure.mm(measured)))), "It is narrow.", "Widen it.");
        return new Result(new Proof("bar.svg", digit.repeat(64), 100, 50, 1, 0.02, List.of(), List.of()), JobSheet.NONE, ShopSheet.NONE, UnitSystem.METRIC,
                List.of(Part.builder("p1", Role.FACE, (Polygon) box).build()), List.of(finding),
                List.of(new Result.CheckRow("trial", "trial", "1.0.0", Result.Status.FINDINGS, 1, "", List.of(), List.of()),
                        new Result.CheckRow("other", "other", "1.0.0", Result.Status.TIMED_OUT, 1, "took long", List.of(), List.of())), List.of(), List.of());
    }

    @BeforeEach
    void decide() {
        job = new Job(JobState.of(ProofRef.of("bar.svg"), JobSheet.NONE), Clock.systemUTC());
        Result result = result("a", 2);
        job.show(result);
        job.waive(result.findings().get(0), "Hidden by the trim", "Rhea");
        job.waive(result.checks().get(1), "Not needed here", "Odo");
        String mark = job.mark(new MarkShape.Note(new PointMm(50, 25)), "Is this the right blue?", "Rhea");
        job.answerMark(mark, "Yes", "Odo");
        job.settleMark(job.mark(new MarkShape.Ring(new PointMm(50, 25), 5, 5), "", "Rhea"), "Odo");
        assertEquals(List.of(), job.signOff("Rhea", ""));
    }

    private JsonNode json() throws Exception {
        StringWriter out = new StringWriter();
        JsonView.write(job.reviewed().orElseThrow(), out);
        return new ObjectMapper().readTree(out.toString());
    }

    private static JsonNode of(JsonNode json, String kind) {
        List<JsonNode> found = new ArrayList<>();
        json.get("decisions").forEach(each -> {
            if (each.get("kind").asText().equals(kind)) {
                found.add(each);
            }
        });
        return found.get(0);
    }

    @Test
    void json_tells_every_decision_and_keeps_to_its_schema() throws Exception {
        JsonNode json = json();
        assertEquals(List.of(), List.copyOf(JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(JsonView.class.getResourceAsStream("result.schema.json")).validate(json)));
        assertEquals(5, json.get("decisions").size());
        assertEquals("waived", json.get("findings").get(0).get("decision").asText());
        assertEquals("holds", of(json, "waiver").get("state").asText());
        assertEquals("[\"00000001\"]", of(json, "waiver").get("findings").toString());
        assertEquals("holds", of(json, "check waiver").get("state").asText());
        assertEquals("POINT (50 25)", of(json, "mark").get("wkt").asText());
        assertEquals("Yes", of(json, "mark").get("answers").get(0).get("text").asText());
        assertTrue(of(json, "sign-off").get("holds").asBoolean());
        assertEquals(2, of(json, "sign-off").get("open").size(), "the open mark and the check that was accepted");
    }

    @Test
    void text_marks_what_is_waived_and_does_not_count_it() {
        String text = TextView.of(job.reviewed().orElseThrow(), false);
        for (String words : List.of("waived by Rhea: Hidden by the trim", "accepted by Odo: Not needed here", "open note by Rhea at 50.0, 25.0 mm: Is this the right blue?",
                "signed off by Rhea", "0 stop, 0 review, 0 info, 1 waived")) {
            assertTrue(text.contains(words), words + "\n" + text);
        }
        assertFalse(text.contains("open ring") || text.contains("not whole"), text);
        assertTrue(text.lines().allMatch(line -> line.length() <= 120), "lines fit a terminal");
    }

    @Test
    void a_new_revision_and_a_grown_shortfall_are_said() throws Exception {
        job.show(result("b", 1.9));
        String text = TextView.of(job.reviewed().orElseThrow(), false);
        for (String words : List.of("decide again, since it misses what is required by 1.1 mm now, by 1 mm when it was waived; waived by Rhea", "The proof was changed since",
                "void: ", "The proof changed since", "1 stop, 0 review, 0 info")) {
            assertTrue(text.replaceAll("\\s+", " ").contains(words), words + "\n" + text);
        }
        assertEquals("decide again", json().get("findings").get(0).get("decision").asText());
        assertEquals("decide again", of(json(), "waiver").get("state").asText());
        assertFalse(of(json(), "sign-off").get("holds").asBoolean());
    }
}
