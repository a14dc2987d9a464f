// SPDX-License-Identifier: Apache-2.0
package kerfglow.testkit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.UnixOperatingSystemMXBean;
import java.io.IOException;
import java.io.Writer;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import kerfglow.api.Check;
import kerfglow.check.artwork.ArtworkCheck;
import kerfglow.check.fit.FitCheck;
import kerfglow.check.glow.GlowCheck;
import kerfglow.check.legibility.LegibilityCheck;
import kerfglow.check.mount.MountCheck;
import kerfglow.check.power.PowerCheck;
import kerfglow.check.print.PrintCheck;
import kerfglow.check.returns.ReturnsCheck;
import kerfglow.check.router.RouterCheck;
import kerfglow.check.sheet.SheetCheck;
import kerfglow.check.trim.TrimCheck;
import kerfglow.check.vinyl.VinylCheck;
import kerfglow.host.CheckCatalogue;
import kerfglow.host.JobSheet;
import kerfglow.host.Result;
import kerfglow.host.RunRequest;
import kerfglow.host.Runner;
import kerfglow.host.Session;
import kerfglow.host.Watcher;
import kerfglow.views.JsonView;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Many proofs, no two alike, through all checks in one process: memory, threads, open files and temporary files stay where they were.
 * {@code -Dkerfglow.proofs=2000} runs longer.
 */
class SoakTest {
    private static final int PROOFS = Integer.getInteger("kerfglow.proofs", 60);
    private static final List<String> SAMPLES = List.of("plain-letters", "faulty-letters", "glow-letters");
    /** A tenth of a proof of the demo's size; what is kept for good from each proof would be many times this over the proofs between two looks. */
    private static final long TOLERANCE_BYTES = 3L << 20;
    /** Pools that come and go with the work. */
    private static final int THREADS_TOLERANCE = 8;
    private static final Pattern NUMBER = Pattern.compile("(?<=[MLHVA ])([0-9]+)(?=[ MLHVZA])");

    @TempDir
    private Path folder;

    /** What is in use at one moment. */
    private record Use(long heapBytes, int threads, long openFiles, long temporaryFiles) {
        static Use now() throws IOException, InterruptedException {
            for (int i = 0; i < 3; i++) {
                System.gc();
                Thread.sleep(50);
            }
            long open = ManagementFactory.getOperatingSystemMXBean() instanceof UnixOperatingSystemMXBean unix ? unix.getOpenFileDescriptorCount() : 0;
            try (Stream<Path> temporary = Files.list(Path.of(System.getProperty("java.io.tmpdir")))) {
                return new Use(Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory(), Thread.activeCount(), open,
                        temporary.filter(path -> path.getFileName().toString().matches("(kerfglow|check-test|\\+~JF).*")).count());
            }
        }
    }

    private static CheckCatalogue catalogue() {
        CheckCatalogue catalogue = new CheckCatalogue();
        for (Check check : List.of(new ArtworkCheck(), new RouterCheck(), new FitCheck(), new GlowCheck(), new ReturnsCheck(), new TrimCheck(), new SheetCheck(), new VinylCheck(),
                new MountCheck(), new LegibilityCheck(), new PrintCheck(), new PowerCheck())) {
            catalogue.add(check, check.info().id(), "1.0.0");
        }
        return catalogue;
    }

    /** The sample with its path numbers stretched, by a factor of its own for each number of the run. */
    private static String stretched(String svg, int number) {
        double factor = 0.7 + 0.3 * number / PROOFS;
        Matcher matcher = NUMBER.matcher(svg);
        return matcher.replaceAll(found -> String.format(Locale.ROOT, "%.4f", Integer.parseInt(found.group(1)) * factor));
    }

    @Test
    void many_proofs_in_one_process_leave_nothing_behind() throws Exception {
        Path testdata = Path.of(System.getProperty("testdata"));
        Runner runner = new Runner(HostRun.importer(), catalogue());
        Session session = runner.session();
        Use early = null;
        long findings = 0;
        long written = 0;
        for (int i = 0; i < PROOFS; i++) {
            String sample = SAMPLES.get(i % SAMPLES.size());
            Path proof = Files.writeString(folder.resolve("proof.svg"), stretched(Files.readString(testdata.resolve(sample + ".svg")), i));
            JobSheet job = JobSheet.parse(sample, Files.readString(testdata.resolve(sample + ".job.yaml")), testdata);
            Result result = (i % 7 == 0 ? runner.session() : session).run(RunRequest.of(proof, job), Watcher.NONE);
            assertTrue(result.checks().stream().noneMatch(row -> row.status() == Result.Status.FAILED || row.status() == Result.Status.TIMED_OUT), result.checks()::toString);
            findings += result.findings().size();
            Counted json = new Counted();
            JsonView.write(result, json);
            written += json.characters;
            if (i == PROOFS / 5) {
                early = Use.now();
            }
            if ((i + 1) % Math.max(1, PROOFS / 5) == 0) {
                System.out.println("SoakTest: after " + (i + 1) + " proofs " + Use.now());
            }
        }
        Use late = Use.now();
        assertTrue(findings > PROOFS && written > PROOFS * 1000L, "findings " + findings + ", characters " + written);
        assertTrue(late.heapBytes - early.heapBytes < TOLERANCE_BYTES, "heap: " + early + " then " + late);
        assertTrue(late.threads - early.threads <= THREADS_TOLERANCE, "threads: " + early + " then " + late);
        assertTrue(late.openFiles - early.openFiles <= THREADS_TOLERANCE, "open files: " + early + " then " + late);
        assertEquals(early.temporaryFiles, late.temporaryFiles, "temporary files");
    }

    /** Counts what is written and keeps nothing. */
    private static final class Counted extends Writer {
        private long characters;

        @Override
        public void write(char[] buffer, int offset, int length) {
            characters += length;
        }

        @Override
        public void flush() {
            // nothing is kept
        }

        @Override
        public void close() {
            // nothing is kept
        }
    }
}
