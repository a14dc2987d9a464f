// SPDX-License-Identifier: Apache-2.0
package kerfglow.dropins;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import kerfglow.worker.form.FormNode;

/** One call of a check in a worker process: how far it is, and its answer. */
final class Exchange {
    /** A check that honours cancel does so within this; one that does not is ended with its process. Assumed: short enough to rerun at once. */
    private static final long GRACE_MILLIS = 500;

    private final long run;
    private final WorkerProcess worker;
    private final CompletableFuture<FormNode> answer = new CompletableFuture<>();
    private volatile double fraction;

    Exchange(long run, WorkerProcess worker) {
        this.run = run;
        this.worker = worker;
    }

    long run() {
        return run;
    }

    /** How far the check says that it is, 0 to 1. */
    double fraction() {
        return fraction;
    }

    /** The last message about it, when it comes. */
    CompletableFuture<FormNode> answer() {
        return answer;
    }

    void hear(FormNode message) {
        if (message.text("kind").equals("progress")) {
            double told = message.number("fraction");
            fraction = told >= 0 && told <= 1 ? told : fraction; // also refuses NaN
        } else {
            answer.complete(message);
        }
    }

    /** Asks the check to stop, and ends its process when it does not. Comes back at once. */
    void stop() {
        worker.cancel(this);
        answer.copy().orTimeout(GRACE_MILLIS, TimeUnit.MILLISECONDS).whenComplete((message, late) -> {
            if (late != null) {
                worker.kill();
            }
        });
    }
}
