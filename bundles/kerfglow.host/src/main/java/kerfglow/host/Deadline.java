// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import java.util.concurrent.CancellationException;

/** When one check must be done; starts with the check. */
final class Deadline {
    private static final long NANOS_PER_SECOND = 1_000_000_000L;

    private final long endNanos;

    Deadline(double seconds) {
        endNanos = System.nanoTime() + (long) (seconds * NANOS_PER_SECOND);
    }

    long leftNanos() {
        return endNanos - System.nanoTime();
    }

    void require(Watcher watcher) {
        if (watcher.isCancelled() || leftNanos() <= 0) {
            throw new CancellationException();
        }
    }
}
