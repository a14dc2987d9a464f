// SPDX-License-Identifier: Apache-2.0
package kerfglow.testkit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import kerfglow.api.Check;
import kerfglow.api.CheckInfo;
import kerfglow.api.Inspection;
import kerfglow.api.Outcome;
import kerfglow.api.Workers;
import org.junit.jupiter.api.Test;

/** {@link Workers} as a check uses them. */
class WorkersTest {
    private static void inspect(Consumer<Double> checkpoint, Consumer<Inspection> work) {
        Check check = new Check() {
            @Override
            public CheckInfo info() {
                return new CheckInfo("trial", "trial", List.of(), List.of(), List.of(), List.of(), "");
            }

            @Override
            public Outcome inspect(Inspection inspection) {
                work.accept(inspection);
                return Outcome.of(List.of());
            }
        };
        CheckTester.of(check).onCheckpoint(checkpoint).run();
    }

    @Test
    void results_come_in_the_order_of_the_items() {
        List<Integer> items = IntStream.range(0, 50).boxed().toList();
        inspect(fraction -> { }, inspection -> assertEquals(items.stream().map(i -> i * i).toList(), new Workers(inspection).map(items, i -> i * i)));
    }

    @Test
    void progress_runs_from_nought_to_one_over_all_calls_and_on_the_calling_thread_alone() {
        List<Double> told = new ArrayList<>();
        Thread caller = Thread.currentThread();
        inspect(fraction -> {
            assertSame(caller, Thread.currentThread());
            told.add(fraction);
        }, inspection -> {
            Workers workers = new Workers(inspection);
            workers.expect(20);
            workers.map(IntStream.range(0, 15).boxed().toList(), i -> {
                workers.pulse();
                return i;
            });
            workers.map(IntStream.range(0, 5).boxed().toList(), i -> i);
        });
        assertEquals(0, told.get(0));
        assertEquals(1, told.get(told.size() - 1));
        assertEquals(told.stream().sorted().toList(), told);
    }

    @Test
    void what_the_work_throws_reaches_the_caller_as_it_is() {
        IllegalArgumentException fault = new IllegalArgumentException("fault");
        AssertionError error = new AssertionError("defect");
        for (Throwable each : List.of(fault, error)) {
            inspect(fraction -> { }, inspection -> assertSame(each, assertThrows(each.getClass(), () -> new Workers(inspection).map(List.of(1, 2, 3), i -> {
                if (i == 2 && each instanceof Error thrown) {
                    throw thrown;
                }
                if (i == 2) {
                    throw fault;
                }
                return i;
            }))));
        }
    }

    @Test
    void cancelling_stops_work_that_never_ends_by_itself() {
        CountDownLatch ended = new CountDownLatch(2);
        AtomicInteger calls = new AtomicInteger();
        assertTimeoutPreemptively(Duration.ofSeconds(10), () -> {
            assertThrows(CancellationException.class, () -> inspect(fraction -> {
                if (calls.incrementAndGet() > 3) {
                    throw new CancellationException();
                }
            }, inspection -> {
                Workers workers = new Workers(inspection);
                workers.map(List.of(1, 2), i -> {
                    try {
                        while (true) {
                            workers.pulse();
                        }
                    } finally {
                        ended.countDown();
                    }
                });
            }));
            ended.await();
        });
        assertTrue(calls.get() > 3);
    }
}
