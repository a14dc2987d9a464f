// SPDX-License-Identifier: Apache-2.0
package kerfglow.cli;

import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import kerfglow.api.proof.ProofException;
import kerfglow.host.SheetException;
import kerfglow.host.Watcher;
import kerfglow.job.JobFileException;
import kerfglow.views.JsonView;
import kerfglow.views.PlainText;

/** Several files, as many at once as there are cores, told in their order. One bad file does not stop the rest; each leaves a status. */
final class Batch {
    private static final String OVERLAY_FILE = ".overlay.svg";
    /** A result that waits for an earlier, slower file costs memory, a core that waits costs time. */
    private static final int AHEAD = 2;

    private final PrintStream err;
    private final Terminal terminal;
    private final List<JsonView.Unusable> unusable = new ArrayList<>();
    private final List<ExitStatus> statuses = new ArrayList<>();

    private record Started(Path file, ProgressLine progress, Future<RunWords.Checked> checked) {
    }

    /** Checks one file, while others are checked. */
    interface Check {
        RunWords.Checked of(Path file, Watcher watcher) throws ProofException, SheetException, IOException, InterruptedException;
    }

    /** What is done with a checked file, with one after the other. */
    interface Then {
        ExitStatus on(Path file, RunWords.Checked checked) throws WordsException, IOException;
    }

    Batch(PrintStream err, Terminal terminal) {
        this.err = err;
        this.terminal = terminal;
    }

    /** The files that names stand for: themselves, or the SVG files of a folder; what cannot be found is refused. */
    List<Path> files(List<String> names) {
        List<Path> files = new ArrayList<>();
        for (String name : names) {
            try {
                if (name.isEmpty()) { // a path of its own: the folder that one is in, with all below it
                    throw new InvalidPathException(name, "empty");
                }
                Path path = Path.of(name);
                List<Path> here = Files.isDirectory(path) ? inside(path) : List.of(path);
                if (here.isEmpty()) {
                    refuse(name, "there is no SVG file in this folder");
                }
                files.addAll(here);
            } catch (InvalidPathException notAPath) {
                refuse(name, "this is not a file name");
            } catch (IOException unreadable) {
                refuse(name, "the folder cannot be read: " + unreadable.getMessage());
            } catch (UncheckedIOException unreadable) { // what a walk meets on its way
                refuse(name, "a folder in it cannot be read: " + unreadable.getCause().getMessage());
            }
        }
        return files;
    }

    private static List<Path> inside(Path folder) throws IOException {
        try (Stream<Path> walk = Files.walk(folder)) {
            return walk.filter(Files::isRegularFile).filter(path -> {
                String name = path.getFileName().toString().toLowerCase(Locale.ROOT);
                return name.endsWith(".svg") && !name.endsWith(OVERLAY_FILE);
            }).sorted().toList();
        }
    }

    /** Tells why a file cannot be used. */
    void refuse(String file, String why) {
        err.println(PlainText.of("kerfglow: " + file + ": " + why));
        unusable.add(new JsonView.Unusable(file, why));
        statuses.add(ExitStatus.INPUT);
    }

    /** Checks each; what is done then has one thread and keeps to the order of the files. */
    void each(List<Path> files, Check check, Then then) throws InterruptedException {
        int cores = Math.min(Runtime.getRuntime().availableProcessors(), files.size());
        if (cores < 2) {
            for (Path file : files) {
                ProgressLine progress = new ProgressLine(err, file.toString());
                one(file, progress, () -> check.of(file, progress), then, false);
            }
            return;
        }
        ExecutorService pool = Executors.newFixedThreadPool(cores, task -> {
            Thread thread = new Thread(task, "file");
            thread.setDaemon(true);
            return thread;
        });
        try {
            List<Path> tooLarge = several(files, check, then, pool, cores * AHEAD);
            for (Path file : tooLarge) { // perhaps only beside the others
                ProgressLine progress = new ProgressLine(err, file.toString());
                one(file, progress, () -> check.of(file, progress), then, false);
            }
        } finally {
            pool.shutdownNow();
        }
    }

    /** Returns those for which the memory was not enough. */
    private List<Path> several(List<Path> files, Check check, Then then, ExecutorService pool, int ahead) throws InterruptedException {
        List<Path> tooLarge = new ArrayList<>();
        Deque<Started> started = new ArrayDeque<>();
        Iterator<Path> waiting = files.iterator();
        while (waiting.hasNext() || !started.isEmpty()) {
            while (waiting.hasNext() && started.size() < ahead) {
                Path file = waiting.next();
                ProgressLine progress = new ProgressLine(err, file.toString());
                started.add(new Started(file, progress, pool.submit(() -> check.of(file, progress))));
            }
            Started next = started.remove();
            if (!one(next.file, next.progress, next.checked::get, then, true)) {
                tooLarge.add(next.file);
            }
        }
        return tooLarge;
    }

    /** Returns false, and tells nothing, when the memory was not enough beside others. */
    private boolean one(Path file, ProgressLine progress, Callable<RunWords.Checked> checking, Then then, boolean besideOthers) throws InterruptedException {
        try {
            if (terminal.progress()) {
                progress.show();
            }
            RunWords.Checked checked = checked(checking);
            progress.done();
            statuses.add(then.on(file, checked));
        } catch (ProofException | SheetException | WordsException | JobFileException unfit) {
            progress.done();
            refuse(file.toString(), unfit.getMessage());
        } catch (IOException unwritable) {
            progress.done();
            refuse(file.toString(), unwritable.getMessage() == null ? unwritable.toString() : unwritable.getMessage());
        } catch (InterruptedException interrupted) {
            throw interrupted;
        } catch (OutOfMemoryError tooLarge) {
            progress.done();
            if (besideOthers) {
                return false;
            }
            err.println(PlainText.of("kerfglow: " + file) + ": too large for the memory that the program may use; set KERFGLOW_VMARGS=-Xmx8g and try again");
            broken(file, "out of memory");
        } catch (Exception | Error defect) { // an Error too: one bad file must not stop the rest
            progress.done();
            err.println(PlainText.of("kerfglow: " + file + ": the program failed: " + defect) + ". This is a defect of the program; please report it with the file.");
            broken(file, "the program failed: " + defect);
        }
        return true;
    }

    private static RunWords.Checked checked(Callable<RunWords.Checked> checking) throws Exception {
        try {
            return checking.call();
        } catch (ExecutionException elsewhere) {
            if (elsewhere.getCause() instanceof Error error) {
                throw error;
            }
            throw (Exception) elsewhere.getCause();
        }
    }

    private void broken(Path file, String why) {
        unusable.add(new JsonView.Unusable(file.toString(), why));
        statuses.add(ExitStatus.BROKEN);
    }

    List<JsonView.Unusable> unusable() {
        return unusable;
    }

    int status() {
        return ExitStatus.of(statuses).code();
    }
}
