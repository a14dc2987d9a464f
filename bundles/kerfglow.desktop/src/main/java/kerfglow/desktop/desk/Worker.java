// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

import java.nio.file.Path;
import java.util.concurrent.CancellationException;
import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicReference;
import kerfglow.api.proof.ProofException;
import kerfglow.desktop.scene.Scene;
import kerfglow.desktop.scene.SceneMaker;
import kerfglow.host.Result;
import kerfglow.host.RunRequest;
import kerfglow.host.Runner;
import kerfglow.host.SheetException;
import kerfglow.host.Watcher;

/**
 * Reads and checks proofs in the background and puts what comes out on the desk. A new file ends the work on the last one.
 */
public final class Worker {
    /** People read no more than this many changes of a progress bar. */
    private static final long PROGRESS_NANOS = 100_000_000;

    private final Desk desk;
    private final Runner runner;
    private final Executor windowThread;
    private final AtomicReference<Run> current = new AtomicReference<>();

    /**
     * A worker.
     *
     * @param desk touched on {@code windowThread} alone
     * @param runner the only road to the checks
     * @param windowThread runs what touches the desk
     */
    public Worker(Desk desk, Runner runner, Executor windowThread) {
        this.desk = desk;
        this.runner = runner;
        this.windowThread = windowThread;
    }

    /** Opens a proof; returns at once. */
    public void open(Path file) {
        Run run = new Run(file);
        Run before = current.getAndSet(run);
        if (before != null) {
            before.cancelled.set(true);
        }
        Thread thread = new Thread(run, "proof " + file.getFileName());
        thread.setDaemon(true);
        thread.start();
    }

    /** Stops what runs. */
    public void cancel() {
        Run run = current.get();
        if (run != null) {
            run.cancelled.set(true);
        }
    }

    /** One file on its way through import and checks. */
    private final class Run implements Runnable, Watcher {
        private final Path file;
        private final AtomicBoolean cancelled = new AtomicBoolean();
        private volatile long toldNanos;

        Run(Path file) {
            this.file = file;
        }

        @Override
        public void run() {
            String name = String.valueOf(file.getFileName());
            tell(WorkState.at("Opening " + name, 0));
            try {
                Result result = runner.run(RunRequest.of(file), this);
                Scene scene = SceneMaker.scene(result.proof(), result.parts());
                onDesk(() -> {
                    desk.put(file, result.proof(), result.parts(), scene);
                    desk.show(result);
                    desk.setWork(WorkState.IDLE);
                });
            } catch (ProofException | SheetException unfit) {
                tell(WorkState.failed(name + ": " + unfit.getMessage()));
            } catch (CancellationException | InterruptedException stopped) {
                tell(WorkState.failed(name + ": stopped; open it again to check the rest"));
            } catch (RuntimeException | Error defect) { // whatever it is, the window must say so and live
                tell(WorkState.failed(name + ": the program failed: " + defect + ". This is a defect of the program; please report it with the file"));
            }
        }

        private void tell(WorkState state) {
            onDesk(() -> desk.setWork(state));
        }

        private void onDesk(Runnable change) {
            windowThread.execute(() -> {
                if (current.get() == this) { // else another file has been opened since
                    change.run();
                }
            });
        }

        @Override
        public void progress(String what, double fraction) {
            long now = System.nanoTime();
            if (now - toldNanos > PROGRESS_NANOS) {
                toldNanos = now;
                tell(WorkState.at(what, fraction));
            }
        }

        @Override
        public boolean isCancelled() {
            return cancelled.get();
        }
    }
}
