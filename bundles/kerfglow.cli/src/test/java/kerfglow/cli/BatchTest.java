// SPDX-License-Identifier: Apache-2.0
package kerfglow.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class BatchTest {
    private static final int FILES = 40;

    private final ByteArrayOutputStream err = new ByteArrayOutputStream();
    private final Batch batch = new Batch(new PrintStream(err, true, StandardCharsets.UTF_8), new Terminal(false, false));
    private final List<Path> files = IntStream.range(0, FILES).mapToObj(i -> Path.of(i + ".svg")).toList();

    @Test void what_is_told_keeps_the_order_of_the_files_whichever_is_checked_first() throws Exception {
        List<Path> told = new ArrayList<>();
        AtomicInteger atOnce = new AtomicInteger();
        AtomicInteger most = new AtomicInteger();
        Thread here = Thread.currentThread();
        batch.each(files, (file, watcher) -> {
            most.accumulateAndGet(atOnce.incrementAndGet(), Math::max);
            Thread.sleep(file.equals(files.get(0)) ? 100 : 5);
            atOnce.decrementAndGet();
            return null;
        }, (file, checked) -> {
            assertEquals(here, Thread.currentThread(), "only one writes");
            told.add(file);
            return ExitStatus.CLEAR;
        });
        assertEquals(files, told);
        assertEquals(Math.min(FILES, Runtime.getRuntime().availableProcessors()), most.get(), "as many at once as there are cores");
        assertEquals(ExitStatus.CLEAR.code(), batch.status());
    }

    @Test void one_bad_file_does_not_stop_the_rest() throws Exception {
        List<Path> told = new ArrayList<>();
        batch.each(files, (file, watcher) -> {
            if (file.equals(files.get(3))) {
                throw new IllegalStateException("a defect");
            }
            return null;
        }, (file, checked) -> {
            told.add(file);
            return ExitStatus.CLEAR;
        });
        assertEquals(FILES - 1, told.size());
        assertTrue(err.toString(StandardCharsets.UTF_8).contains("3.svg: the program failed: java.lang.IllegalStateException: a defect"), err::toString);
        assertEquals(ExitStatus.BROKEN.code(), batch.status());
    }

    @Test void a_file_that_was_too_large_beside_others_is_checked_again_alone() throws Exception {
        assumeTrue(Runtime.getRuntime().availableProcessors() > 1, "on one core no file has others beside it");
        ConcurrentHashMap<Path, Integer> tries = new ConcurrentHashMap<>();
        List<Path> told = new ArrayList<>();
        batch.each(files, (file, watcher) -> {
            int which = tries.merge(file, 1, Integer::sum);
            if (file.equals(files.get(1)) && which == 1 || file.equals(files.get(2))) {
                throw new OutOfMemoryError("no room");
            }
            return null;
        }, (file, checked) -> {
            told.add(file);
            return ExitStatus.CLEAR;
        });
        assertTrue(told.contains(files.get(1)));
        assertEquals(FILES - 1, told.size());
        assertTrue(err.toString(StandardCharsets.UTF_8).startsWith("kerfglow: 2.svg: too large for the memory"), err::toString);
        assertEquals(List.of("2.svg"), batch.unusable().stream().map(each -> each.file()).toList());
    }
}
