// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import kerfglow.api.UnitSystem;
import kerfglow.host.Result;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DamagedJobTest {
    @TempDir
    private Path folder;
    private Path path;
    private JobState whole;
    private String text;

    @BeforeEach
    void save() throws IOException {
        path = folder.resolve("sign.kerfglow");
        whole = JobFileTest.full();
        whole = whole.withSheet(SheetEdits.withUnits(SheetEdits.withTitle(whole.sheet(), "The sign"), UnitSystem.INCH));
        try (JobFile file = open()) {
            file.save(whole, false);
        }
        text = Files.readString(path);
    }

    private JobFile open() throws IOException {
        return JobFile.open(path, new JobFile.Options(Samples.CLOCK, Duration.ofSeconds(1), problem -> { }, Optional.empty()));
    }

    private JobReader.Read read(String damaged) {
        return JobReader.read("sign.kerfglow", damaged.getBytes(StandardCharsets.UTF_8), folder);
    }

    @Test
    void the_original_is_kept_and_what_can_be_read_is_read_and_can_be_saved() throws IOException {
        byte[] damaged = text.replaceFirst("\"motivation\" : \"commenting\",", "\"motivation\" : commenting\",").getBytes(StandardCharsets.UTF_8);
        Files.write(path, damaged);
        try (JobFile file = open()) {
            JobFile.Contents contents = file.contents();
            assertArrayEquals(damaged, Files.readAllBytes(contents.kept().orElseThrow()));
            assertTrue(contents.problems().get(0).matches("line \\d+, column \\d+: .*"), contents.problems()::toString);
            assertEquals(whole.marks().subList(1, 6), contents.state().marks(), "all but the damaged one");
            assertEquals(whole.waivers(), contents.state().waivers());
            assertEquals(whole.signOffs(), contents.state().signOffs());
            assertEquals("The sign", contents.state().sheet().title());
            assertEquals("sign.svg", contents.state().proof().file());
            file.save(contents.state(), false);
        }
        assertEquals(List.of(), JobFile.read(path).problems());
        try (JobFile file = open()) {
            assertTrue(file.contents().kept().isEmpty());
        }
    }

    @Test
    void a_file_cut_short_anywhere_gives_all_that_stands_before_the_cut() {
        for (int cut = 0; cut < text.stripTrailing().length(); cut += 97) {
            JobReader.Read read = read(text.substring(0, cut));
            assertFalse(read.problems().isEmpty(), "cut at " + cut);
            int at = cut;
            assertEquals(whole.marks().stream().filter(mark -> isWholeBefore(mark.id(), "\n  }", at)).toList(), read.state().marks(), "cut at " + cut);
            assertEquals(whole.waivers().stream().filter(waiver -> isWholeBefore(waiver.id(), "\n  }", at)).toList(), read.state().waivers(), "cut at " + cut);
        }
    }

    /** Entries stand indented by two; jackson's printer puts the brace that ends one on its own line or after a comma. */
    private boolean isWholeBefore(String id, String end, int cut) {
        int from = text.indexOf("\"id\" : \"" + id + "\"");
        int closing = text.indexOf(end, from);
        return closing >= 0 && closing + end.length() <= cut;
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 5, 8, 13, 21, 34})
    void garbage_anywhere_never_throws_and_never_passes_for_whole(long seed) {
        Random random = new Random(seed);
        Result result = Samples.result("two", Samples.letters(), List.of(Samples.finding("00000001", Samples.GAP, 2, 3, "LINESTRING (20 50, 22 50)")));
        for (int i = 0; i < 20; i++) {
            byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
            int at = random.nextInt(bytes.length - 64);
            for (int j = 0; j < 64; j++) {
                bytes[at + j] = (byte) (random.nextInt(32));
            }
            JobReader.Read read = JobReader.read("sign.kerfglow", bytes, folder);
            assertFalse(read.problems().isEmpty());
            assertTrue(whole.marks().containsAll(read.state().marks()), "what is read is what was written");
            assertTrue(whole.marks().size() - read.state().marks().size() <= 2, "64 bytes touch two marks at most");
            assertEquals(1, ReviewedResult.of(read.state(), result).result().findings().size(), "what is left can be worked with");
        }
    }

    @Test
    void an_entry_at_fault_is_left_out_alone_and_its_place_is_told() {
        JobReader.Read read = read(text.replace("\"reason\" : \"The joint is hidden\"", "\"reason\" : \"\"").replaceFirst("<circle fill", "<triangle fill"));
        assertEquals(2, read.problems().size(), read.problems()::toString);
        assertTrue(read.problems().get(0).contains("line ") && read.problems().get(0).contains("circle, ellipse"), read.problems()::toString);
        assertTrue(read.problems().get(1).contains("the reason of the waiver is missing"), read.problems()::toString);
        assertEquals(5, read.state().marks().size());
        assertEquals(1, read.state().waivers().size());
        assertEquals(whole.signOffs(), read.state().signOffs());
    }

    @Test
    void a_key_of_the_job_sheet_at_fault_is_left_out_alone() {
        JobReader.Read read = read(text.replace("\"units\" : \"inch\"", "\"units\" : \"ell\""));
        assertEquals("The sign", read.state().sheet().title());
        assertTrue(read.state().sheet().units().isEmpty());
        int line = 1 + (int) text.substring(0, text.indexOf("\"units\"")).chars().filter(character -> character == '\n').count();
        assertTrue(read.problems().get(0).contains("line " + line + ", units"), read.problems()::toString);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "   ", "null", "[]", "{}", "{\"type\": \"other\"}", "%PDF-1.7", "{\"type\": \"kerfglow:Job\"}"})
    void what_is_no_job_file_is_kept_and_told(String content) throws IOException {
        Files.writeString(path, content);
        try (JobFile file = open()) {
            assertFalse(file.contents().problems().isEmpty());
            assertEquals(content, Files.readString(file.contents().kept().orElseThrow()));
            assertEquals(List.of(), file.contents().state().marks());
        }
        assertEquals(content, Files.readString(path), "opening writes nothing over it");
    }

    @ParameterizedTest
    @ValueSource(strings = {"POINT (NaN 1)", "LINESTRING (0 0, 1e999 1)", "POLYGON ((0 0", "", "CIRCLE (1)"})
    void geometry_that_is_none_is_left_out_with_its_entry(String wkt) {
        JobReader.Read read = read(text.replace("LINESTRING (20 50, 22 50)", wkt));
        assertEquals(2, read.problems().size(), read.problems()::toString);
        assertEquals(1, read.state().waivers().size());
        assertEquals(whole.marks(), read.state().marks());
        assertFalse(read(text.replace("LINESTRING (20 50, 22 50)", "GEOMETRYCOLLECTION (".repeat(50_000))).problems().isEmpty());
    }

    @Test
    void nesting_without_end_is_refused() {
        assertFalse(read("[".repeat(100_000)).problems().isEmpty());
        assertFalse(read("{\"type\":".repeat(3_000)).problems().isEmpty());
    }

    @Test
    void text_after_the_end_and_bytes_that_are_no_text_are_told() {
        assertEquals(List.of("something stands after the end of the job"), read(text + "{}").problems());
        byte[] bytes = text.replace("The sign", "The s\u0001gn").getBytes(StandardCharsets.UTF_8);
        bytes[text.indexOf("The sign") + 5] = (byte) 0xff;
        assertTrue(JobReader.read("sign.kerfglow", bytes, folder).problems().get(0).contains("not UTF-8"));
    }
}
