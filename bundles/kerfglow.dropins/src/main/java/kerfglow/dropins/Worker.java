// SPDX-License-Identifier: Apache-2.0
package kerfglow.dropins;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import kerfglow.api.CheckInfo;
import kerfglow.host.CheckCatalogue;
import kerfglow.host.CheckFailedException;
import kerfglow.host.HostSettings;
import kerfglow.worker.form.FormNode;

/** One bundle of the folder, its checks, and the process that they run in: kept warm from run to run, started again when it was ended. */
final class Worker {
    /** A process that is not ready by then hangs; a framework starts in less than a second, on a machine that is busy with much else in many. */
    private static final long READY_SECONDS = 30;
    /** A bundle that has not said who it is this long after its process was ready hangs: it has only to load a class and answer. */
    private static final long START_SECONDS = 10;
    private static final String FOLDER = "kerfglow-check";

    private final Processes processes;
    private final BundleFile file;
    private final OwnFolder folder;
    private final Path own;
    private final List<Path> beside = new ArrayList<>();
    private final List<CheckCatalogue.Arrival> checks = new ArrayList<>();
    private String refused;
    private WorkerProcess process;

    /** A bundle, copied into a folder of the worker's own together with what lies beside it. */
    Worker(Processes processes, BundleFile file, List<BundleFile> others) throws IOException {
        this.processes = processes;
        this.file = file;
        folder = new OwnFolder(FOLDER);
        own = folder.bundle(); // its own name may hold letters that a temporary folder cannot
        try {
            refused = AllowedDigests.copy(file.path(), own).orElse(null);
            for (BundleFile other : others) {
                Path copy = folder.beside(beside.size());
                if (AllowedDigests.copy(other.path(), copy).isEmpty()) {
                    beside.add(copy);
                }
            }
        } catch (IOException unreadable) {
            folder.delete();
            throw unreadable;
        }
    }

    /** Deletes what processes that were killed left in the folder for temporary files. */
    static void clearAbandoned() {
        OwnFolder.clearAbandoned(Path.of(System.getProperty("java.io.tmpdir")), FOLDER, Instant.now());
    }

    BundleFile file() {
        return file;
    }

    /** Why it is not used, or not whole, for people. */
    synchronized Optional<String> refused() {
        return Optional.ofNullable(refused);
    }

    synchronized List<CheckCatalogue.Arrival> checks() {
        return List.copyOf(checks);
    }

    /** Starts the process and asks it who it is. */
    synchronized void meet() {
        if (refused != null) {
            return;
        }
        try {
            FormNode said = start(HostSettings.WORKER_HEAP.defaultValue());
            List<String> wrong = new ArrayList<>(said.texts("wrong"));
            for (FormNode each : said.nodes("checks")) {
                try {
                    CheckInfo info = each.value("info", CheckInfo.class);
                    checks.add(new CheckCatalogue.Arrival(new WorkerCheck(this, info, each.texts("reads")), said.text("bundle"), said.text("version")));
                } catch (RuntimeException unfit) { // whatever it says of itself must not cost the other bundles
                    wrong.add("it cannot say who it is: " + unfit.getMessage());
                }
            }
            refused = wrong.isEmpty() ? null : String.join("; ", wrong);
        } catch (RuntimeException failed) { // as above; told in words where the failure is a known one
            refused = failed.getMessage();
        }
        if (checks.isEmpty()) {
            close();
        }
    }

    /**
     * A process that can be asked.
     *
     * @throws CheckFailedException when there is none to be had
     */
    synchronized WorkerProcess process(int heapMib) throws InterruptedException {
        if (process != null) {
            process.settle();
        }
        if (process != null && process.isUsable() && process.heapMib() != heapMib) {
            process.retire();
        }
        if (process == null || !process.isUsable()) {
            start(heapMib);
        }
        return process;
    }

    private FormNode start(int heapMib) {
        try {
            process = processes.take(heapMib);
            process.ready().get(READY_SECONDS, TimeUnit.SECONDS);
            return process.start(own, beside).get(START_SECONDS, TimeUnit.SECONDS);
        } catch (IOException cannotStart) {
            throw new CheckFailedException("no process can be started for it: " + cannotStart.getMessage());
        } catch (ExecutionException ended) {
            throw new CheckFailedException(ended.getCause().getMessage());
        } catch (TimeoutException hangs) {
            process.kill();
            throw new CheckFailedException(process.ready().isDone() ? "it did not say who it is within " + START_SECONDS + " s" : "its process was not ready within " + READY_SECONDS + " s");
        } catch (InterruptedException interrupted) {
            process.kill();
            Thread.currentThread().interrupt();
            throw new CheckFailedException("it was stopped while it started");
        }
    }

    /** Ends the process when nobody has asked it anything for a while; the next call starts it again. */
    synchronized void restAfter(long idleSeconds) {
        if (process != null && process.isUsable() && process.idleSeconds() >= idleSeconds) {
            process.retire();
        }
    }

    /** Ends the process for good. */
    synchronized void close() {
        if (process != null) {
            process.close();
        }
        folder.delete();
    }
}
