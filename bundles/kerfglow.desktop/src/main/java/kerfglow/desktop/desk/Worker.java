// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.CancellationException;
import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.Collectors;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Proof;
import kerfglow.api.proof.ProofException;
import kerfglow.desktop.scene.Scene;
import kerfglow.desktop.scene.SceneMaker;
import kerfglow.host.Result;
import kerfglow.host.RunRequest;
import kerfglow.host.Runner;
import kerfglow.host.Session;
import kerfglow.host.SheetException;
import kerfglow.host.Watcher;

/**
 * Reads and checks proofs in the background and puts what comes out on the desk: first the proof, then each check's findings as it
 * ends, then the whole result. A new file ends the work on the last one.
 */
public final class Worker {
    /** People read no more than this many changes of a progress bar. */
    private static final long PROGRESS_NANOS = 100_000_000;

    private final Desk desk;
    private final Session session;
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
        session = runner.session();
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
        private final List<Result.ReportedFinding> soFar = new ArrayList<>();
        private final Map<String, Double> fractions = new TreeMap<>();
        private long toldNanos;

        Run(Path file) {
            this.file = file;
        }

        @Override
        public void run() {
            String name = String.valueOf(file.getFileName());
            tell(WorkState.at("Opening " + name, 0));
            try {
                Result result;
                synchronized (session) { // a session serves one run at a time; the one before has been told to stop
                    result = session.run(RunRequest.of(file), this);
                }
                onDesk(() -> {
                    desk.show(result);
                    desk.setWork(WorkState.IDLE);
                });
            } catch (ProofException | SheetException unfit) {
                tell(WorkState.failed(name + ": " + unfit.getMessage()));
            } catch (CancellationException | InterruptedException stopped) {
                tell(WorkState.failed(name + ": stopped before all was checked; open it again to check the rest"));
            } catch (RuntimeException | Error defect) { // whatever it is, the window must say so and live
                tell(WorkState.failed(name + ": the program failed: " + defect + ". This is a defect of the program; please report it with the file"));
            }
        }

        @Override
        public void opened(Proof proof, List<Part> parts, UnitSystem units) {
            Scene scene = SceneMaker.scene(proof, parts);
            onDesk(() -> desk.put(file, proof, parts, scene, units));
        }

        @Override
        public void ended(Result.CheckRow row, List<Result.ReportedFinding> findings) {
            List<Result.ReportedFinding> now;
            synchronized (soFar) {
                soFar.addAll(findings);
                now = List.copyOf(soFar);
            }
            onDesk(() -> desk.showSoFar(row, now));
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
            String stage;
            double done;
            synchronized (fractions) {
                fractions.put(what, fraction);
                long now = System.nanoTime();
                if (now - toldNanos < PROGRESS_NANOS) {
                    return;
                }
                toldNanos = now;
                stage = fractions.entrySet().stream().filter(each -> each.getValue() < 1).map(Map.Entry::getKey).collect(Collectors.joining(", "));
                done = fractions.values().stream().mapToDouble(Double::doubleValue).average().orElse(0);
            }
            tell(WorkState.at("Working on: " + stage, done));
        }

        @Override
        public boolean isCancelled() {
            return cancelled.get();
        }
    }
}
