// SPDX-License-Identifier: Apache-2.0
package kerfglow.worker.process;

import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.atomic.AtomicLong;

/** Takes what the shop's bundle prints: the first of it goes to the host for complaints, the rest is counted and thrown away. */
final class Printed extends OutputStream {
    /** Assumed: more than any message that helps, less than fills a pipe. */
    private static final int KEPT = 8 * 1024;

    private final PrintStream host;
    private final AtomicLong count = new AtomicLong();

    private Printed(PrintStream host) {
        this.host = host;
    }

    /** Puts itself in place of both streams of the process. */
    static Printed takeOver() {
        Printed printed = new Printed(System.err);
        PrintStream stream = new PrintStream(printed, false, StandardCharsets.UTF_8);
        System.setOut(stream);
        System.setErr(stream);
        return printed;
    }

    /** Bytes printed so far. */
    long count() {
        return count.get();
    }

    @Override
    public void write(int one) {
        if (count.getAndIncrement() < KEPT) {
            host.write(one);
        }
    }

    @Override
    public void write(byte[] bytes, int from, int length) {
        long before = count.getAndAdd(length);
        if (before < KEPT) {
            host.write(bytes, from, (int) Math.min(length, KEPT - before));
            host.flush();
        }
    }
}
