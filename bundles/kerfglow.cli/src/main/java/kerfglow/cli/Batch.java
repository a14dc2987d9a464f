// SPDX-License-Identifier: Apache-2.0
package kerfglow.cli;

import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import kerfglow.api.proof.ProofException;
import kerfglow.host.SheetException;
import kerfglow.job.JobFileException;
import kerfglow.views.JsonView;
import kerfglow.views.PlainText;

/** Several files, one after the other. One bad file does not stop the rest; each leaves a status. */
final class Batch {
    private static final String OVERLAY_FILE = ".overlay.svg";

    private final PrintStream err;
    private final Terminal terminal;
    private final List<JsonView.Unusable> unusable = new ArrayList<>();
    private final List<ExitStatus> statuses = new ArrayList<>();

    /** What is done with one file. */
    interface Work {
        ExitStatus on(Path file, ProgressLine progress) throws ProofException, SheetException, WordsException, IOException, InterruptedException;
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

    /** Does the work on each. */
    void each(List<Path> files, Work work) throws InterruptedException {
        for (Path file : files) {
            one(file, work);
        }
    }

    private void one(Path file, Work work) throws InterruptedException {
        ProgressLine progress = new ProgressLine(err, terminal.progress(), file.toString());
        try {
            statuses.add(work.on(file, progress));
        } catch (ProofException | SheetException | WordsException | JobFileException unfit) {
            progress.done();
            refuse(file.toString(), unfit.getMessage());
        } catch (IOException unwritable) {
            progress.done();
            refuse(file.toString(), unwritable.getMessage() == null ? unwritable.toString() : unwritable.getMessage());
        } catch (OutOfMemoryError tooLarge) {
            progress.done();
            err.println(PlainText.of("kerfglow: " + file) + ": too large for the memory that the program may use; set KERFGLOW_VMARGS=-Xmx8g and try again");
            broken(file, "out of memory");
        } catch (RuntimeException | Error defect) { // an Error too: one bad file must not stop the rest
            progress.done();
            err.println(PlainText.of("kerfglow: " + file + ": the program failed: " + defect) + ". This is a defect of the program; please report it with the file.");
            broken(file, "the program failed: " + defect);
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
