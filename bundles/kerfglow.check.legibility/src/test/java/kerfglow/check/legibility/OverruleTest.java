// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Stream;
import kerfglow.api.Outcome;
import kerfglow.api.Table;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;

/** What the job sheet says of a layer or a part outweighs what the outlines look like; confidence is told either way. */
class OverruleTest {
    private static final String STAR = "0 0, 10 40, 50 50, 10 60, 0 100, -10 60, -50 50, -10 40";

    private static String shapes(List<String> outlines, String label) {
        StringBuilder svg = new StringBuilder("<g id='").append(label).append("'>");
        double x = 100;
        for (String outline : outlines) {
            svg.append("<polygon transform='translate(").append(x).append(" 200)' points='").append(outline).append("'/>");
            x += 110;
        }
        return svg.append("</g>").toString();
    }

    private static CheckTester sign(String sheet) {
        List<String> letters = Stream.of(BlockSign.H, BlockSign.T, BlockSign.L, BlockSign.E).toList();
        return CheckTester.of(new LegibilityCheck()).svg("<svg xmlns='http://www.w3.org/2000/svg' width='2000mm' height='800mm' viewBox='0 0 2000 800'>"
                + shapes(letters, "Letters") + "<g transform='translate(0 300)'>" + shapes(List.of(STAR, STAR, STAR), "Stars") + "</g></svg>").job(sheet);
    }

    private static final String FACES = "roles: [{layer: \"*\", role: face}]\n";

    private static List<List<Object>> rows(Outcome outcome, String id) {
        return outcome.tables().stream().filter(table -> table.info().id().equals(id)).map(Table::rows).findFirst().orElseThrow();
    }

    /** Layers of what is told to be no lettering, with the confidence. */
    private static List<String> graphics(Outcome outcome) {
        return rows(outcome, LegibilityTables.GRAPHICS.id()).stream().map(row -> row.get(1) + " " + row.get(2)).toList();
    }

    @Test
    void outlines_alone_tell_letters_from_ornaments_with_a_confidence_short_of_certainty() {
        Outcome outcome = sign(FACES).run();
        assertEquals(1, rows(outcome, LegibilityTables.LINES.id()).size());
        List<String> graphics = graphics(outcome);
        assertEquals(3, graphics.size());
        assertTrue(graphics.stream().allMatch(each -> each.matches("Stars 0\\.(75|95)")), graphics.toString());
    }

    @Test
    void a_layer_that_the_job_sheet_calls_no_lettering_is_none_for_certain() {
        Outcome outcome = sign(FACES + "settings:\n  legibility.lettering:\n    - {value: no, layer: Letters}\n").run();
        assertEquals(4, graphics(outcome).stream().filter("Letters 1.0"::equals).count());
        assertEquals(0, rows(outcome, LegibilityTables.LINES.id()).size());
    }

    @Test
    void a_layer_that_the_job_sheet_calls_lettering_is_measured_beside_the_rest() {
        Outcome outcome = sign(FACES + "settings:\n  legibility.lettering:\n    - {value: yes, layer: Stars}\n").run();
        assertTrue(rows(outcome, LegibilityTables.LINES.id()).size() >= 2, "the word and the stars");
        assertEquals(List.of(), graphics(outcome));
    }

    @Test
    void a_single_part_can_be_taken_out() {
        Outcome whole = sign(FACES).run();
        Outcome without = sign(FACES + "settings:\n  legibility.lettering:\n    - {value: no, part: p1}\n").run();
        List<String> certain = rows(without, LegibilityTables.GRAPHICS.id()).stream().filter(row -> row.get(2).equals(1.0)).map(row -> (String) row.get(0)).toList();
        assertEquals(List.of("p1"), certain);
        assertTrue(rows(whole, LegibilityTables.GRAPHICS.id()).stream().noneMatch(row -> row.get(0).equals("p1")), "left alone it is a letter");
    }
}
