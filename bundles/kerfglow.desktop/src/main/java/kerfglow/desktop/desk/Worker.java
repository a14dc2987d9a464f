// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Executor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.Collectors;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Proof;
import kerfglow.api.proof.ProofException;
import kerfglow.desktop.scene.Scene;
import kerfglow.desktop.scene.SceneMaker;
import kerfglow.host.JobSheet;
import kerfglow.host.Result;
import kerfglow.host.RunRequest;
import kerfglow.host.Runner;
import kerfglow.host.Session;
import kerfglow.host.SheetException;
import kerfglow.host.ShopSheet;
import kerfglow.host.Watcher;
import kerfglow.job.JobFile;

/**
 * Reads and checks in the background and puts what comes out on the desk: first the proof, then each check's findings as it ends, then the
 * whole result. A changed job sheet, or another file for the proof, is checked by itself; the session runs only the checks that it concerns. New work ends the work
 * before it.
 */
public final class Worker {
    /** People read no more than this many changes of a progress bar. */
    private static final long PROGRESS_NANOS = 100_000_000;

    /** Longer than a window takes to come up on a slow machine. */
    private static final long PICTURE_MILLIS = 5000;

    private final Desk desk;
    private final Session session;
    private final JobFile.Options options;
    private final Executor windowThread;
    private final AtomicReference<Run> current = new AtomicReference<>();
    private JobSheet asked = JobSheet.NONE;
    private Optional<Path> askedProof = Optional.empty();

    /**
     * A worker.
     *
     * @param desk touched on {@code windowThread} alone
     * @param runner the only road to the checks
     * @param options how job files are opened here
     * @param windowThread runs what touches the desk
     */
    public Worker(Desk desk, Runner runner, JobFile.Options options, Executor windowThread) {
        this.desk = desk;
        this.options = options;
        session = runner.session();
        this.windowThread = windowThread;
        desk.listen(Topic.JOB, this::checkChangedSheet);
    }

    /** Opens a proof or a job file; returns at once. */
    public void open(Path file) {
        Run run = take(new Run(String.valueOf(file.getFileName()), Optional.empty()));
        run.start(() -> {
            OpenedJob opened = OpenedJob.of(file, options);
            run.onDesk(() -> {
                asked = opened.state().sheet();
                askedProof = Optional.of(opened.proof());
                desk.begin(opened.proof(), opened.file(), opened.state());
            });
            run.check(opened.proof(), opened.state().sheet());
        });
    }

    /** Reads the proof's file again and checks what is not known yet. */
    public void checkAgain() {
        desk.proofFile().ifPresent(proof -> desk.job().ifPresent(job -> {
            JobSheet sheet = job.state().sheet();
            asked = sheet;
            askedProof = Optional.of(proof);
            Run run = take(new Run(String.valueOf(proof.getFileName()), desk.result()));
            run.start(() -> run.check(proof, sheet));
        }));
    }

    private void checkChangedSheet() {
        if (desk.job().isPresent() && !(desk.job().get().state().sheet().equals(asked) && desk.proofFile().equals(askedProof))) {
            checkAgain();
        }
    }

    private Run take(Run run) {
        Run before = current.getAndSet(run);
        if (before != null) {
            before.cancelled.set(true);
        }
        return run;
    }

    /** Stops what runs. */
    public void cancel() {
        Run run = current.get();
        if (run != null) {
            run.cancelled.set(true);
        }
    }

    /** Work that may fail in the ways that files and sheets fail. */
    @FunctionalInterface
    private interface Work {
        void run() throws IOException, ProofException, SheetException, InterruptedException;
    }

    /** One piece of work on its way through reading and checks. */
    private final class Run implements Watcher {
        private final String name;
        private final AtomicBoolean cancelled = new AtomicBoolean();
        private final List<Result.ReportedFinding> soFar = new ArrayList<>();
        private final List<Result.CheckRow> rows = new ArrayList<>();
        private final Map<String, Double> fractions = new TreeMap<>();
        /** What lies on the desk, when it is of the same proof. */
        private final Optional<Result> checked;
        /** Rows that are on the desk already; who has these and no others needs to be shown nothing yet. */
        private final List<Result.CheckRow> known;
        /** What waits to be shown; while the window is busy, the next takes its place. */
        private final AtomicReference<Result> unseen = new AtomicReference<>();
        private JobSheet sheet = JobSheet.NONE;
        private ShopSheet shop = ShopSheet.NONE;
        private List<Result.SettingUsed> settings = List.of();
        private Proof proof;
        private List<Part> parts = List.of();
        private UnitSystem units = UnitSystem.METRIC;
        private long toldNanos;

        Run(String name, Optional<Result> checked) {
            this.name = name;
            this.checked = checked;
            known = checked.map(Result::checks).orElse(List.of());
        }

        void start(Work work) {
            Thread thread = new Thread(() -> guard(work), "proof " + name);
            thread.setDaemon(true);
            thread.start();
        }

        private void guard(Work work) {
            tell(WorkState.at("Reading " + name, 0));
            try {
                synchronized (session) { // a session serves one run at a time; the one before has been told to stop
                    work.run();
                }
            } catch (IOException | ProofException | SheetException unfit) {
                onDesk(desk::forgetSoFar);
                tell(WorkState.failed(unfit.getMessage().contains(name) ? unfit.getMessage() : name + ": " + unfit.getMessage()));
            } catch (CancellationException | InterruptedException stopped) {
                onDesk(desk::forgetSoFar);
                tell(WorkState.failed(name + ": stopped before all was checked; read and check again for the rest"));
            } catch (RuntimeException | Error defect) { // whatever it is, the window must say so and live
                onDesk(desk::forgetSoFar);
                tell(WorkState.failed(name + ": the program failed: " + defect + ". This is a defect of the program; please report it with the file"));
            }
        }

        void check(Path file, JobSheet sheet) throws ProofException, SheetException, InterruptedException {
            Result result = session.run(RunRequest.of(file, sheet), this);
            unseen.set(null);
            onDesk(() -> {
                desk.setWork(WorkState.IDLE);
                desk.show(result);
            });
        }

        @Override
        public void given(JobSheet job, ShopSheet newShop, List<Result.SettingUsed> newSettings) {
            sheet = job;
            shop = newShop;
            settings = newSettings;
        }

        @Override
        public void opened(Proof newProof, List<Part> newParts, UnitSystem newUnits) {
            proof = newProof;
            parts = newParts;
            units = newUnits;
            if (checked.filter(before -> before.proof() == newProof && before.parts().equals(newParts) && before.units() == newUnits).isPresent()) {
                return; // it lies on the desk as it is
            }
            Scene scene = SceneMaker.scene(newProof, newParts);
            scene.prepare(); // else the window's thread would
            onDesk(() -> desk.put(newProof, newParts, scene, newUnits));
            awaitPicture();
        }

        /** The checks take every processor there is; the person sees the proof before they begin. */
        private void awaitPicture() {
            CountDownLatch painted = new CountDownLatch(1);
            windowThread.execute(() -> windowThread.execute(painted::countDown)); // the second turn comes after what the first asked to be painted
            try {
                if (!painted.await(PICTURE_MILLIS, TimeUnit.MILLISECONDS)) {
                    tell(WorkState.at("Working on: checks", 0)); // a window that is as slow as that must not hold up the work
                }
            } catch (InterruptedException stopped) {
                Thread.currentThread().interrupt();
            }
        }

        @Override
        public synchronized void ended(Result.CheckRow row, List<Result.ReportedFinding> findings) {
            rows.add(row);
            soFar.addAll(findings);
            soFar.sort(Comparator.comparing(Result.ReportedFinding::severity).reversed().thenComparing(finding -> finding.rule().id()));
            boolean last = rows.size() == known.size(); // the whole result is about to follow
            if (last || known.stream().anyMatch(each -> each == row)) {
                return;
            }
            if (unseen.getAndSet(new Result(proof, sheet, shop, units, parts, soFar, rows, settings, List.of())) == null) {
                onDesk(() -> Optional.ofNullable(unseen.getAndSet(null)).ifPresent(desk::showSoFar));
            }
        }

        private void tell(WorkState state) {
            onDesk(() -> desk.setWork(state));
        }

        void onDesk(Runnable change) {
            windowThread.execute(() -> {
                if (current.get() == this) { // else other work has been begun since
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
