// SPDX-License-Identifier: Apache-2.0
package kerfglow.cli;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import kerfglow.api.proof.ProofException;
import kerfglow.host.Runner;
import kerfglow.host.SafeFile;
import kerfglow.host.SheetException;
import kerfglow.job.JobFileException;
import kerfglow.job.ReviewedResult;

/** Runs once and writes files made of the result, each whole or not at all, and never over something newer without being told. */
final class FloorFiles {
    private final Runner runner;
    private final PrintStream out;
    private final PrintStream err;
    private final Terminal terminal;

    /** A file to write and what stands in it. */
    record Made(Path target, SafeFile.Content content) {
    }

    /** What is made of a result. */
    interface Maker {
        List<Made> of(ReviewedResult reviewed) throws IOException;
    }

    FloorFiles(Runner runner, PrintStream out, PrintStream err, Terminal terminal) {
        this.runner = runner;
        this.out = out;
        this.err = err;
        this.terminal = terminal;
    }

    /** Runs and writes; returns the exit status. Files are written even when a check failed, which is then said. */
    int make(RunArguments arguments, Optional<String> wrong, Maker maker) throws InterruptedException {
        Optional<String> mistaken = wrong.or(arguments::wrong);
        if (mistaken.isPresent()) {
            return refuse(mistaken.get());
        }
        ProgressLine progress = new ProgressLine(err, terminal.progress(), arguments.file().toString());
        try {
            ReviewedResult reviewed = arguments.run(runner, progress);
            progress.done();
            for (Made made : maker.of(reviewed)) {
                SafeFile.writeOver(made.target(), arguments.inputs(reviewed), arguments.replaces(), made.content());
                out.println("written: " + made.target());
            }
            if (reviewed.isBroken()) {
                err.println("kerfglow: " + arguments.file() + ": a check failed or timed out, so its numbers are missing; \"kerfglow check\" says which.");
                return ExitStatus.BROKEN.code();
            }
            return ExitStatus.CLEAR.code();
        } catch (ProofException | SheetException | JobFileException unfit) {
            progress.done();
            return refuse(arguments.file() + ": " + unfit.getMessage());
        } catch (IOException unwritable) {
            progress.done();
            return refuse(unwritable.getMessage() == null ? unwritable.toString() : unwritable.getMessage());
        }
    }

    private int refuse(String why) {
        err.println("kerfglow: " + why);
        return ExitStatus.INPUT.code();
    }
}
