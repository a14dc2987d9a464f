// SPDX-License-Identifier: Apache-2.0
package kerfglow.worker.process;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class ThrownTest {
    private static final class Evil extends RuntimeException {
        private static final long serialVersionUID = 1;

        @Override
        public String getMessage() {
            throw new IllegalStateException();
        }

        @Override
        public synchronized Throwable getCause() {
            return new Evil();
        }
    }

    @Test
    void says_what_and_where() {
        String words = Thrown.words(new IllegalStateException("too thin"));
        assertTrue(words.startsWith("java.lang.IllegalStateException: too thin at ") && words.contains("ThrownTest.java"), words);
        assertEquals("java.lang.IllegalStateException: b", Thrown.deepest(new RuntimeException("a", new IllegalStateException("b"))));
        assertEquals("java.lang.IllegalStateException", Thrown.deepest(new IllegalStateException((String) null)));
    }

    @Test
    void a_message_that_throws_or_does_not_end_is_told_as_far_as_it_goes() {
        assertEquals(Evil.class.getName(), Thrown.words(new Evil()));
        assertTrue(Thrown.words(new IllegalStateException("x".repeat(1_000_000))).length() < 1200);
    }

    @Test
    void causes_that_go_in_a_circle_or_on_for_ever_come_to_an_end() {
        Exception a = new Exception("a");
        Exception b = new Exception("b", a);
        a.initCause(b);
        assertTrue(Thrown.deepest(a).startsWith("java.lang.Exception: "), Thrown.deepest(a));
        assertEquals(Evil.class.getName(), Thrown.deepest(new Evil()));
    }
}
