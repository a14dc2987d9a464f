// SPDX-License-Identifier: Apache-2.0
package kerfglow.dropins;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** What a process printed last. Everything is read, so that no process waits for a reader; little is kept. */
final class LastWords {
    private static final int KEPT = 4096;
    private static final int SHOWN = 200;
    /** What the platform prints before it ends a process that is out of memory. */
    private static final String OUT_OF_MEMORY = "java.lang.OutOfMemoryError";

    private final StringBuilder words = new StringBuilder();

    /** Reads to the end. */
    void drain(InputStream from) {
        byte[] some = new byte[KEPT];
        try (from) {
            for (int got = from.read(some); got >= 0; got = from.read(some)) {
                synchronized (words) {
                    words.append(new String(some, 0, got, StandardCharsets.UTF_8));
                    words.delete(0, Math.max(0, words.length() - KEPT));
                }
            }
        } catch (IOException closed) {
            return; // the process is gone
        }
    }

    boolean areOutOfMemory() {
        synchronized (words) {
            return words.indexOf(OUT_OF_MEMORY) >= 0;
        }
    }

    /** The last line as a clause; empty when nothing was printed. */
    String clause() {
        synchronized (words) {
            List<String> lines = words.toString().lines().filter(line -> !line.isBlank()).toList();
            String last = lines.isEmpty() ? "" : lines.get(lines.size() - 1).strip();
            return last.isEmpty() ? "" : "; it last printed \"" + last.substring(0, Math.min(last.length(), SHOWN)) + "\"";
        }
    }
}
