// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Element;

/**
 * Marks against the rules ("must") of the Web Annotation Data Model, W3C Recommendation of 23 February 2017, sections 3.1 to 3.3 and 4; the SVG is read by
 * the XML parser of the platform, not by our reader.
 */
class AnnotationTest {
    /** Section 3.3.5: the motivations that there are. */
    private static final Set<String> MOTIVATIONS = Set.of("assessing", "bookmarking", "classifying", "commenting", "describing", "editing", "highlighting", "identifying", "linking",
            "moderating", "questioning", "replying", "tagging");
    /** Section 3.3.1: a dateTime of XML Schema in UTC, expressed as Z. */
    private static final String UTC = "\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\d(\\.\\d+)?Z";

    private static JsonNode job() throws Exception {
        JobState state = JobFileTest.full();
        return new ObjectMapper().readTree(JobJson.write(state.withProof(state.proof().withFile("art/sign 1 ü.svg")), Path.of("jobs").toAbsolutePath(), Samples.NOON, ""));
    }

    private static void requireIri(JsonNode node) {
        assertTrue(node.isTextual() && !node.asText().isEmpty(), () -> "an IRI is wanted: " + node);
        URI.create(node.asText());
    }

    @Test
    void every_mark_keeps_to_the_rules_of_the_recommendation() throws Exception {
        JsonNode marks = job().get("marks");
        assertEquals(6, marks.size());
        for (JsonNode mark : marks) {
            List<String> contexts = new ArrayList<>();
            mark.get("@context").forEach(context -> contexts.add(context.asText()));
            assertTrue(contexts.contains("http://www.w3.org/ns/anno.jsonld"), "3.1: one of the contexts must be that of the model");
            requireIri(mark.get("id"));
            assertEquals("Annotation", mark.get("type").asText(), "3.1: must be one of its types");
            assertTrue(MOTIVATIONS.contains(mark.get("motivation").asText()));
            assertTrue(mark.get("created").asText().matches(UTC) && mark.get("modified").asText().matches(UTC));
            assertEquals("Person", mark.get("creator").get("type").asText());
            for (JsonNode body : mark.get("body")) {
                assertEquals("TextualBody", body.get("type").asText());
                assertTrue(body.get("value").isTextual(), "3.2.4: exactly one value");
                assertTrue(MOTIVATIONS.contains(body.get("purpose").asText()), "3.3.5");
            }
            JsonNode target = mark.get("target");
            requireIri(target.get("source"));
            assertEquals("art/sign%201%20ü.svg", target.get("source").asText(), "an IRI may hold letters of every script (RFC 3987), but no space");
            assertEquals("SvgSelector", target.get("selector").get("type").asText(), "4.2.7");
            assertTrue(target.get("selector").get("value").isTextual(), "4.2.7: exactly one value");
        }
    }

    @Test
    void terms_of_our_own_carry_a_prefix_that_the_context_explains() throws Exception {
        Set<String> ofTheModel = Set.of("@context", "id", "type", "motivation", "creator", "created", "modified", "body", "target");
        for (JsonNode mark : job().get("marks")) {
            assertTrue(mark.get("@context").get(1).has("kerfglow"));
            mark.fieldNames().forEachRemaining(name -> assertTrue(ofTheModel.contains(name) || name.startsWith("kerfglow:"), name));
        }
    }

    private static Element shape(JsonNode mark) throws Exception {
        DocumentBuilder builder = DocumentBuilderFactory.newDefaultNSInstance().newDocumentBuilder();
        Element svg = builder.parse(new ByteArrayInputStream(mark.get("target").get("selector").get("value").asText().getBytes(StandardCharsets.UTF_8))).getDocumentElement();
        assertEquals("http://www.w3.org/2000/svg", svg.getNamespaceURI());
        assertEquals("0 0 300 120", svg.getAttribute("viewBox"), "the size of the proof in mm");
        assertEquals(1, svg.getChildNodes().getLength());
        return (Element) svg.getFirstChild();
    }

    private static List<Double> numbers(Element element, String... names) {
        List<Double> numbers = new ArrayList<>();
        for (String name : names) {
            for (String number : element.getAttribute(name).split("[ ,]")) {
                numbers.add(Double.valueOf(number));
            }
        }
        return numbers;
    }

    @Test
    void the_svg_shows_what_was_drawn() throws Exception {
        JsonNode marks = job().get("marks");
        assertEquals(List.of(1.25, 2.0), numbers(shape(marks.get(0)), "cx", "cy"));
        assertEquals(List.of(0.0, 0.0, 10.0, 5.0), numbers(shape(marks.get(1)), "x1", "y1", "x2", "y2"));
        assertEquals(List.of(0.0, 0.0, 1.0, 2.0, -3.0, 4.0625), numbers(shape(marks.get(2)), "points"));
        assertEquals(List.of(50.0, 50.0, 10.0, 5.0), numbers(shape(marks.get(3)), "cx", "cy", "rx", "ry"));
        assertEquals(List.of(5.0, 6.0, 7.0, 8.0), numbers(shape(marks.get(4)), "x", "y", "width", "height"));
        assertEquals(List.of(0.0, 0.0, 3.0, 4.0), numbers(shape(marks.get(5)), "x1", "y1", "x2", "y2"));
        assertEquals(List.of("circle", "line", "polyline", "ellipse", "rect", "line"), List.of(shape(marks.get(0)).getLocalName(), shape(marks.get(1)).getLocalName(),
                shape(marks.get(2)).getLocalName(), shape(marks.get(3)).getLocalName(), shape(marks.get(4)).getLocalName(), shape(marks.get(5)).getLocalName()));
        assertEquals(5, new MarkShape.Dimension(new PointMm(0, 0), new PointMm(3, 4)).lengthMm());
    }

    @Test
    void an_annotation_of_another_program_is_read() throws Exception {
        Mark mark = MarkJson.read(JsonValue.first("""
                {"@context": "http://www.w3.org/ns/anno.jsonld", "id": "urn:example:1", "type": "Annotation", "creator": "https://people.example/rhea", "created": "2026-01-31T12:00:00Z",
                 "body": {"type": "TextualBody", "value": "Look here"},
                 "target": {"source": "sign.svg", "selector": [{"type": "FragmentSelector", "value": "xywh=1,2,3,4"}, {"type": "SvgSelector",
                  "value": "<svg:svg xmlns:svg='http://www.w3.org/2000/svg'><svg:g><svg:rect x='1' y='2' width='3' height='4'/></svg:g></svg:svg>"}]}}"""));
        assertEquals("Look here", mark.text());
        assertEquals("https://people.example/rhea", mark.author());
        assertEquals(new MarkShape.Box(new PointMm(1, 2), 3, 4), mark.shape());
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "not xml", "<svg/>", "<svg><path d='M0 0'/></svg>", "<svg><rect x='1' y='2' width='0' height='4'/></svg>", "<svg><line x1='1' y1='x' x2='0' y2='4'/></svg>",
        "<svg><circle cx='1' r='1'/></svg>", "<svg><line x1='1' y1='2' x2='3' y2='4'/>", "<svg><line x1='1' y1='2' x2='NaN' y2='4'/></svg>",
        "<!DOCTYPE svg [<!ENTITY a 'b'>]><svg><line x1='1' y1='2' x2='3' y2='4'/>&a;</svg>"})
    void svg_that_is_no_mark_is_refused(String svg) {
        assertThrows(IllegalArgumentException.class, () -> SvgSelector.read(svg, Optional.empty()));
    }
}
