// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A job that came from somebody who means harm: its text, and what lies beside it in its folder. */
class HostileJobTest {
    private static final Duration LONGEST = Duration.ofSeconds(10);
    private static final String PRECIOUS = "what must stay as it is";
    @TempDir
    private Path folder;

    private JobFile open() throws IOException {
        return assertTimeoutPreemptively(LONGEST, () -> JobFile.open(folder.resolve("sign.kerfglow"), new JobFile.Options(Samples.CLOCK, Duration.ofMillis(10), problem -> { }, Optional.empty())));
    }

    private Path pipe(String name) throws Exception {
        Path pipe = folder.resolve(name);
        assertEquals(0, new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor());
        return pipe;
    }

    @ParameterizedTest
    @ValueSource(strings = {".sign.kerfglow.holder", ".sign.kerfglow.lock", ".sign.kerfglow.unsaved.half", ".sign.kerfglow.unsaved"})
    void a_link_beside_the_job_is_never_written_through(String name) throws Exception {
        Path precious = Files.writeString(folder.resolve("precious"), PRECIOUS);
        Files.createSymbolicLink(folder.resolve(name), precious);
        JobState state = JobFileTest.full();
        try (JobFile file = open()) {
            assertTrue(file.unsaved().isEmpty(), "a link is nothing that was left unsaved");
            if (file.readOnly().isEmpty()) {
                file.changed(state);
                Thread.sleep(200); // the autosave writes
                file.save(state, false);
            } else {
                assertTrue(file.readOnly().get().contains("link"), file.readOnly()::toString);
            }
        }
        assertEquals(PRECIOUS, Files.readString(precious));
    }

    @Test
    void the_copy_of_a_damaged_job_is_not_written_through_a_link() throws Exception {
        Path job = Files.writeString(folder.resolve("sign.kerfglow"), "{\"type\": damaged");
        Path outside = folder.resolve("outside");
        Files.createSymbolicLink(JobNames.named(job.toRealPath(), "damaged", DiskFile.digest(Files.readAllBytes(job))), outside);
        open().close();
        assertFalse(Files.exists(outside));
    }

    @ParameterizedTest
    @ValueSource(strings = {".sign.kerfglow.lock", ".sign.kerfglow.holder", ".sign.kerfglow.unsaved", ".sign.kerfglow.unsaved.half"})
    void a_pipe_beside_the_job_is_not_waited_for(String name) throws Exception {
        pipe(name);
        try (JobFile file = open()) {
            assertEquals(List.of(), file.contents().state().marks());
        }
    }

    @Test
    void a_pipe_an_endless_device_and_a_folder_in_place_of_the_job_are_refused() throws Exception {
        Path pipe = pipe("sign.kerfglow");
        for (Path odd : List.of(pipe, Path.of("/dev/zero"), folder)) {
            JobFileException refused = assertTimeoutPreemptively(LONGEST, () -> assertThrows(JobFileException.class, () -> JobFile.read(odd)));
            assertTrue(refused.getMessage().contains("cannot be read: this is a "), refused::getMessage);
        }
        assertThrows(JobFileException.class, this::open);
    }

    static Stream<Arguments> texts() {
        String many = IntStream.range(0, 60_000).mapToObj(i -> "\"k" + i + "\":\"v\"").collect(Collectors.joining(","));
        return Stream.of(Arguments.of("a million numbers", "{\"type\":\"kerfglow:Job\",\"marks\":[" + "1,".repeat(2_000_000) + "1]}", "limit on values"),
                Arguments.of("begun again and again", "{\"type\":".repeat(1_500_000), "limit on values"),
                Arguments.of("begun again and again with much between", ("{\"type\":" + " ".repeat(30_000)).repeat(500), "limit on values"),
                Arguments.of("a sheet of many keys", "{\"type\":\"kerfglow:Job\",\"format\":1,\"proof\":{\"file\":\"a.svg\",\"widthMm\":1,\"heightMm\":1,\"scale\":1},\"sheet\":{" + many + "}}", "limit on keys"),
                Arguments.of("a number that no double holds", "{\"type\":\"kerfglow:Job\",\"format\":1,\"proof\":{\"file\":\"a.svg\",\"widthMm\":1e999,\"heightMm\":1,\"scale\":1},\"sheet\":{}}", "too large"),
                Arguments.of("a geometry of many points", "{\"type\":\"kerfglow:Job\",\"format\":1,\"seen\":{\"resolutionMm\":1,\"outlines\":[{\"part\":\"a\",\"role\":\"face\",\"layer\":\"\",\"wkt\":\"LINESTRING ("
                        + "0 0,".repeat(200_000) + "1\"}]}}", "not a geometry"));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("texts")
    void a_text_that_costs_too_much_is_told_in_time_and_in_a_few_sentences(String name, String text, String words) {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        JobReader.Read read = assertTimeoutPreemptively(LONGEST, () -> JobReader.read("sign.kerfglow", bytes, folder));
        String told = String.join("; ", read.problems());
        assertTrue(told.contains(words), told);
        assertTrue(told.length() < 20_000, () -> told.length() + " characters");
    }

    @Test
    void a_job_larger_than_the_limit_is_refused() throws IOException {
        Path file = folder.resolve("sign.kerfglow");
        Files.write(file, new byte[(int) StoredJob.MOST_BYTES + 1]);
        assertTrue(assertThrows(JobFileException.class, () -> JobFile.read(file)).getMessage().contains("limit on file size"));
    }
}
