// SPDX-License-Identifier: Apache-2.0
package kerfglow.views;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.StringReader;
import java.io.StringWriter;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.SchemaFactory;
import kerfglow.api.Severity;
import kerfglow.host.JobSheet;
import kerfglow.host.Result;
import kerfglow.job.Job;
import kerfglow.job.JobState;
import kerfglow.job.MarkShape;
import kerfglow.job.PointMm;
import kerfglow.job.ProofRef;
import kerfglow.job.ReviewedResult;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** SARIF and JUnit XML; against the published SARIF schema they are held in the acceptance tests. */
class MachineViewsTest {
    private static final List<JsonView.Unusable> BAD = List.of(new JsonView.Unusable("no.svg", "there is no such <file>"));

    /** The sample with its stop waived, the late check accepted, and a mark. */
    static ReviewedResult reviewed() {
        Result result = Sample.result();
        Job job = new Job(JobState.of(ProofRef.of("bar.svg"), JobSheet.NONE), Clock.systemUTC());
        job.show(result);
        job.waive(result.findings().get(0), "hidden by the \"frame\" & fine", "Rhea");
        job.waive(result.checks().get(1), "known", "Rhea");
        job.mark(new MarkShape.Dimension(new PointMm(10, 10), new PointMm(40, 50)), "", "Tomas");
        return job.reviewed().orElseThrow();
    }

    private static JsonNode sarif(ReviewedResult... results) throws Exception {
        StringWriter out = new StringWriter();
        SarifView.write(List.of(results), BAD, "1.2.3", out);
        return new ObjectMapper().readTree(out.toString());
    }

    @Test
    void sarif_has_a_result_for_each_finding_with_its_rule_and_level() throws Exception {
        JsonNode run = sarif(ReviewedResult.undecided(Sample.result())).get("runs").get(0);
        List<String> levels = new ArrayList<>();
        run.get("results").forEach(result -> {
            levels.add(result.get("level").asText());
            assertEquals(result.get("ruleId"), run.get("tool").get("driver").get("rules").get(result.get("ruleIndex").asInt()).get("id"));
            assertTrue(result.get("suppressions").isEmpty());
        });
        assertEquals(List.of("error", "warning", "note"), levels);
        JsonNode first = run.get("results").get(0);
        assertEquals("00000001", first.get("partialFingerprints").get("kerfglowFinding/v1").asText());
        assertEquals(2, first.get("locations").size());
        assertEquals(60, first.get("locations").get(1).get("properties").get("xMm").asDouble());
        assertEquals("p1", first.get("locations").get(0).get("logicalLocations").get(0).get("name").asText());
        assertEquals(2.5, first.get("properties").get("measured").asDouble());
    }

    /** RFC 3986: a space is %20; SARIF 3.11.5: a brace of the text is doubled, a bracket escaped. */
    @Test
    void sarif_escapes_addresses_and_messages() throws Exception {
        JsonNode run = sarif(ReviewedResult.undecided(Sample.result())).get("runs").get(0);
        assertEquals("some%20folder/bar%20&%20co.svg", run.get("artifacts").get(0).get("location").get("uri").asText());
        assertTrue(run.get("tool").get("driver").get("rules").get(0).get("shortDescription").get("text").asText().contains("{{0}} \\[x\\](1)"));
        assertEquals("file:///C:/proofs/a%25b.svg", SarifView.uri("C:\\proofs\\a%b.svg"));
        assertEquals("./a:b.svg", SarifView.uri("a:b.svg"));
        assertEquals("ab".repeat(32), run.get("artifacts").get(0).get("hashes").get("sha-256").asText());
    }

    @Test
    void sarif_tells_what_did_not_run_and_what_is_waived() throws Exception {
        JsonNode runs = sarif(reviewed()).get("runs");
        JsonNode invocation = runs.get(0).get("invocations").get(0);
        assertFalse(invocation.get("executionSuccessful").asBoolean());
        String notes = invocation.get("toolExecutionNotifications").toString();
        assertTrue(notes.contains("late timed out") && notes.contains("other not measured: No thickness.") && notes.contains("A remark."), notes);
        JsonNode suppression = runs.get(0).get("results").get(0).get("suppressions").get(0);
        assertEquals("accepted", suppression.get("status").asText());
        assertEquals("Rhea: hidden by the \"frame\" & fine", suppression.get("justification").asText());
        assertFalse(runs.get(1).get("invocations").get(0).get("executionSuccessful").asBoolean());
    }

    private static Document junit(ReviewedResult result, Severity threshold) throws Exception {
        StringWriter out = new StringWriter();
        JunitView.write(List.of(result), BAD, threshold, out);
        SchemaFactory.newInstance(XMLConstants.W3C_XML_SCHEMA_NS_URI).newSchema(JunitView.class.getResource("junit.xsd")).newValidator()
                .validate(new StreamSource(new StringReader(out.toString())));
        return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(out.toString())));
    }

    private static Element suite(Document document, String name) {
        NodeList suites = document.getElementsByTagName("testsuite");
        for (int i = 0; i < suites.getLength(); i++) {
            if (((Element) suites.item(i)).getAttribute("name").equals(name)) {
                return (Element) suites.item(i);
            }
        }
        throw new AssertionError(name);
    }

    private static String counts(Element suite) {
        return suite.getAttribute("tests") + " " + suite.getAttribute("failures") + " " + suite.getAttribute("errors") + " " + suite.getAttribute("skipped");
    }

    @Test
    void junit_has_a_suite_for_each_check_and_a_case_for_each_finding() throws Exception {
        Document document = junit(ReviewedResult.undecided(Sample.result()), Severity.STOP);
        assertEquals("3 1 0 0", counts(suite(document, "some folder/bar & co.svg trial")));
        assertEquals("1 0 1 0", counts(suite(document, "some folder/bar & co.svg late")));
        assertEquals("1 0 0 1", counts(suite(document, "some folder/bar & co.svg other")));
        assertEquals("1 0 0 0", counts(suite(document, "some folder/bar & co.svg quiet")));
        assertEquals("1 0 1 0", counts(suite(document, "no.svg")));
        Element failure = (Element) document.getElementsByTagName("failure").item(0);
        assertEquals("Part p1 is narrow.", failure.getAttribute("message"));
        assertTrue(failure.getTextContent().contains("2.5 mm, needs 3 mm") && failure.getTextContent().contains("why: It breaks."), failure::getTextContent);
    }

    @Test
    void junit_fails_where_the_exit_status_does() throws Exception {
        assertEquals("3 2 0 0", counts(suite(junit(ReviewedResult.undecided(Sample.result()), Severity.REVIEW), "some folder/bar & co.svg trial")));
        Document decided = junit(reviewed(), Severity.STOP);
        assertEquals("3 0 0 1", counts(suite(decided, "some folder/bar & co.svg trial")));
        assertEquals("1 0 0 1", counts(suite(decided, "some folder/bar & co.svg late")));
    }
}
