// SPDX-License-Identifier: Apache-2.0
package kerfglow.testkit;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ServiceLoader;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.UnaryOperator;
import kerfglow.api.Check;
import kerfglow.api.CheckInfo;
import kerfglow.api.Inspection;
import kerfglow.api.Outcome;
import kerfglow.api.proof.ProofException;
import kerfglow.api.proof.ProofImporter;
import kerfglow.host.CheckCatalogue;
import kerfglow.host.JobSheet;
import kerfglow.host.Result;
import kerfglow.host.RunRequest;
import kerfglow.host.Runner;
import kerfglow.host.SheetException;
import kerfglow.host.Watcher;

/** Runs a check as the program does, from the drawing on: import, job sheet, parts. Needs the host and the import beside the API. */
final class HostRun {
    private HostRun() {
    }

    /** Notes what the check answered. */
    private record Noted(Check check, UnaryOperator<Inspection> given, AtomicReference<Outcome> answer) implements Check {
        @Override
        public CheckInfo info() {
            return check.info();
        }

        @Override
        public Outcome inspect(Inspection inspection) {
            Outcome outcome = check.inspect(given.apply(inspection));
            answer.set(outcome);
            return outcome;
        }
    }

    /** The importer on the class path. */
    static ProofImporter importer() {
        return ServiceLoader.load(ProofImporter.class).findFirst()
                .orElseThrow(() -> new IllegalStateException("svg() needs the import (kerfglow.svg and what it uses) on the class path; inside the framework give it with importer()"));
    }

    /**
     * Runs.
     *
     * @param given makes what the check is given out of what the host would give it
     * @throws AssertionError when the drawing or the sheet cannot be used, or the check fails
     */
    static Outcome of(Check check, ProofImporter importer, String svg, String jobSheet, UnaryOperator<Inspection> given) {
        AtomicReference<Outcome> answer = new AtomicReference<>();
        CheckCatalogue catalogue = new CheckCatalogue();
        catalogue.add(new Noted(check, given, answer), "test", "0");
        try {
            Path file = Files.createTempFile("check-test", ".svg");
            try {
                Files.writeString(file, svg);
                JobSheet job = jobSheet.isBlank() ? JobSheet.NONE : JobSheet.parse("job sheet of the test", jobSheet, file.getParent());
                Result result = new Runner(importer, catalogue).run(RunRequest.of(file, job), Watcher.NONE);
                Result.CheckRow row = result.checks().get(0);
                if (row.status() == Result.Status.FAILED || row.status() == Result.Status.TIMED_OUT) {
                    throw new AssertionError("the check ended as " + row.status().word() + ": " + row.why());
                }
                return answer.get() == null ? Outcome.notMeasured(row.why()) : answer.get();
            } finally {
                Files.delete(file);
            }
        } catch (IOException unwritable) {
            throw new UncheckedIOException(unwritable);
        } catch (ProofException | SheetException unfit) {
            throw new AssertionError("the test's drawing or job sheet cannot be used: " + unfit.getMessage(), unfit);
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new AssertionError("interrupted", interrupted);
        }
    }
}
