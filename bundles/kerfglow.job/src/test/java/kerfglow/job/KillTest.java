// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Processes that edit a job are killed at random moments. Afterwards the job file is whole and one that was saved, nobody holds it, and all that was
 * entered longer ago than promised is there. {@code -Dkerfglow.kills=200} kills more often.
 */
class KillTest {
    private static final int KILLS = Integer.getInteger("kerfglow.kills", 20);
    /** Several at once, so that the disk is busy too. */
    private static final int AT_ONCE = 7;
    /** Short, so that many autosaves fall into each run. */
    private static final Duration DELAY = Duration.ofMillis(50);
    /** The promise is 5 s with a delay of 2 s, so that 3 s are left for writing on a busy machine. */
    private static final long LATE_MILLIS = 5000 - JobFile.AUTOSAVE_DELAY.toMillis();
    /** Longer than that, so that a process that never wrote would be found out. */
    private static final long LEAST_RUN_MILLIS = LATE_MILLIS + 100;
    private static final long RUN_SPREAD_MILLIS = 400;

    @TempDir
    private Path folder;

    /** A person at work: enters something every few milliseconds and saves now and then. */
    public static final class Typist {
        private static final int SAVE_EVERY = 60;
        /** Should nobody kill it. */
        private static final int MOST_ENTRIES = 20_000;

        private Typist() {
        }

        /** @param arguments the job file */
        public static void main(String[] arguments) throws Exception {
            JobFile file = JobFile.open(Path.of(arguments[0]), new JobFile.Options(Clock.systemUTC(), DELAY, problem -> System.out.println("problem " + problem), Optional.empty()));
            JobFile.open(Path.of(arguments[0]), JobFile.Options.of(problem -> { })).close(); // a second window of the process comes and goes; the first still holds the job
            JobState state = JobFileTest.full();
            for (int i = 0; i < 200; i++) { // large enough for a write to take a while
                state = state.plus(Mark.of(new MarkShape.Note(new PointMm(i, i)), "word ".repeat(100), "Rhea", Samples.NOON, ""));
            }
            for (int i = 1; i <= MOST_ENTRIES; i++) {
                state = state.withSheet(SheetEdits.withTitle(state.sheet(), String.valueOf(i)));
                file.changed(state);
                System.out.println("entered " + i + " " + System.currentTimeMillis());
                if (i % SAVE_EVERY == 0) {
                    file.save(state, false);
                    System.out.println("saved " + i + " " + System.currentTimeMillis());
                }
                Thread.sleep(2);
            }
        }
    }

    /** What one run came to. */
    private record Killed(long lostMillis, int entered, int saves) {
    }

    @Test
    void a_kill_at_any_moment_costs_no_more_than_promised() throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(AT_ONCE);
        try {
            List<Future<Killed>> runs = new ArrayList<>();
            for (int i = 0; i < KILLS; i++) {
                Path own = Files.createDirectory(folder.resolve("run" + i));
                long seed = i;
                runs.add(threads.submit((Callable<Killed>) () -> kill(own.resolve("sign.kerfglow"), new Random(seed))));
            }
            List<Killed> killed = new ArrayList<>();
            for (Future<Killed> run : runs) {
                killed.add(run.get());
            }
            assertTrue(killed.stream().allMatch(each -> each.entered() > 10), "every process was at work");
            assertTrue(killed.stream().mapToInt(Killed::saves).sum() >= KILLS, "saving was tried too");
            System.out.println("KillTest: killed " + KILLS + " times; oldest entry lost, ms: " + killed.stream().mapToLong(Killed::lostMillis).max().orElseThrow());
        } finally {
            threads.shutdownNow();
        }
    }

    private static Killed kill(Path path, Random random) throws Exception {
        Process process = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Xmx200m", "-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1", "-cp",
                System.getProperty("java.class.path"), Typist.class.getName(), path.toString()).redirectErrorStream(true).start();
        List<Long> enteredAt = new ArrayList<>(List.of(0L));
        List<Integer> saved = new ArrayList<>(List.of(0));
        long end = Long.MAX_VALUE;
        long killedAt = 0;
        try (BufferedReader said = new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
            for (String line = said.readLine(); line != null; line = said.readLine()) {
                String[] words = line.split(" ");
                assertTrue(words[0].equals("entered") || words[0].equals("saved"), line);
                if (words[0].equals("entered")) {
                    enteredAt.add(Long.valueOf(words[2]));
                } else {
                    saved.add(Integer.valueOf(words[1]));
                }
                if (enteredAt.size() == 2 && words[0].equals("entered")) {
                    requireHeld(path, process.pid());
                }
                end = enteredAt.size() == 2 ? Math.min(end, System.currentTimeMillis() + LEAST_RUN_MILLIS + random.nextInt((int) RUN_SPREAD_MILLIS)) : end;
                if (killedAt == 0 && System.currentTimeMillis() >= end) {
                    killedAt = System.currentTimeMillis();
                    process.toHandle().destroyForcibly(); // the handle, since the process would close the pipe too
                }
            }
        } finally {
            process.destroyForcibly();
        }
        process.waitFor();
        return judged(path, enteredAt, saved, killedAt);
    }

    private static void requireHeld(Path path, long pid) throws IOException {
        try (JobFile second = JobFile.open(path, JobFile.Options.of(problem -> { }))) {
            assertTrue(second.heldBy().orElseThrow().contains("process " + pid), second.heldBy()::toString);
        }
    }

    private static Killed judged(Path path, List<Long> enteredAt, List<Integer> saved, long killedAt) throws IOException {
        int onDisk = 0;
        if (Files.exists(path)) {
            JobFile.Contents contents = JobFile.read(path);
            assertEquals(List.of(), contents.problems(), "the job file is whole");
            onDisk = Integer.parseInt(contents.state().sheet().title());
            int last = saved.get(saved.size() - 1);
            assertTrue(saved.contains(onDisk) || onDisk == last + Typist.SAVE_EVERY, "the old or the new one, but it is " + onDisk + " and saved were " + saved);
            assertTrue(onDisk >= last, "what was saved stays saved");
            assertEquals(206, contents.state().marks().size());
        }
        try (JobFile file = JobFile.open(path, JobFile.Options.of(problem -> { }))) {
            assertTrue(file.heldBy().isEmpty(), "a process that was killed holds nothing");
            if (file.unsaved().isPresent()) {
                JobFile.Unsaved unsaved = file.unsaved().get();
                assertEquals(206, unsaved.state().marks().size(), "what is offered is whole");
                assertTrue(unsaved.fitsFile(), "and it goes on from the job file");
                onDisk = Math.max(onDisk, Integer.parseInt(unsaved.state().sheet().title()));
            }
        }
        long oldestLost = onDisk + 1 < enteredAt.size() ? killedAt - enteredAt.get(onDisk + 1) : 0;
        assertTrue(oldestLost <= DELAY.toMillis() + LATE_MILLIS, "lost what was entered " + oldestLost + " ms before");
        try (Stream<Path> left = Files.list(path.getParent())) {
            assertTrue(left.allMatch(each -> each.equals(path) || each.equals(path.resolveSibling(".sign.kerfglow.unsaved"))), "no halves are left behind");
        }
        return new Killed(oldestLost, enteredAt.size(), saved.size() - 1);
    }
}
