// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.router;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.time.Duration;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CountDownLatch;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class WorkersTest {
    @Test
    void results_come_in_the_order_of_the_tasks() {
        List<Workers.Task<Integer>> tasks = IntStream.range(0, 50).<Workers.Task<Integer>>mapToObj(i -> pulse -> i * i).toList();
        assertEquals(IntStream.range(0, 50).map(i -> i * i).boxed().toList(), Workers.run(tasks, fraction -> { }));
    }

    @Test
    void what_a_task_throws_reaches_the_caller_as_it_is() {
        IllegalArgumentException fault = new IllegalArgumentException("fault");
        List<Workers.Task<Integer>> tasks = List.of(pulse -> 1, pulse -> {
            throw fault;
        });
        assertSame(fault, assertThrows(IllegalArgumentException.class, () -> Workers.run(tasks, fraction -> { })));
        AssertionError error = new AssertionError("defect");
        assertSame(error, assertThrows(AssertionError.class, () -> Workers.run(List.<Workers.Task<Integer>>of(pulse -> {
            throw error;
        }), fraction -> { })));
    }

    @Test
    void cancelling_stops_a_task_that_never_ends_by_itself() {
        CountDownLatch ended = new CountDownLatch(1);
        List<Workers.Task<Integer>> tasks = List.of(pulse -> {
            try {
                while (true) {
                    pulse.run();
                }
            } finally {
                ended.countDown();
            }
        });
        assertTimeoutPreemptively(Duration.ofSeconds(10), () -> {
            long start = System.nanoTime();
            assertThrows(CancellationException.class, () -> Workers.run(tasks, fraction -> {
                if (System.nanoTime() - start > 50_000_000L) {
                    throw new CancellationException();
                }
            }));
            ended.await();
        });
    }
}
