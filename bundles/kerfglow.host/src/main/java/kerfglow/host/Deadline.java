// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import java.util.concurrent.CancellationException;

/** When a piece of work must be done; starts when it is made. */
final class Deadline {
    private static final long NANOS_PER_SECOND = 1_000_000_000L;

    private final long endNanos;

    Deadline(double seconds) {
        endNanos = System.nanoTime() + (long) (seconds * NANOS_PER_SECOND);
    }

    /**
     * Goes on only while there is time and nobody cancelled.
     *
     * @throws CancellationException otherwise
     */
    void require(Watcher watcher) {
        if (watcher.isCancelled() || System.nanoTime() >= endNanos) {
            throw new CancellationException();
        }
    }
}
