// SPDX-License-Identifier: Apache-2.0
package kerfglow.dropins;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import kerfglow.api.Check;
import kerfglow.api.CheckInfo;
import kerfglow.api.Inspection;
import kerfglow.api.Outcome;
import kerfglow.host.CheckFailedException;
import kerfglow.host.HostSettings;
import kerfglow.host.RunsElsewhere;
import kerfglow.worker.form.FormException;
import kerfglow.worker.form.FormNode;
import kerfglow.worker.form.GivenForm;
import kerfglow.worker.form.OutcomeForm;

/** A check of a shop as the host sees it: it asks the worker process, hands progress and cancel on, and says in words what went wrong there. */
final class WorkerCheck implements Check, RunsElsewhere {
    private static final long LOOK_MILLIS = 20;
    /** Assumed: more than a check prints that reports what it does. */
    private static final long MUCH_PRINTED = 1 << 20;

    private final Worker worker;
    private final CheckInfo info;
    private final List<String> reads;

    WorkerCheck(Worker worker, CheckInfo info, List<String> reads) {
        this.worker = worker;
        this.info = info;
        this.reads = List.copyOf(reads);
    }

    @Override
    public CheckInfo info() {
        return info;
    }

    @Override
    public List<String> reads() {
        return reads;
    }

    @Override
    public Outcome inspect(Inspection inspection) {
        inspection.checkpoint(0);
        int mostFindings = inspection.settings().get(HostSettings.MOST_FINDINGS);
        Exchange exchange = process(inspection).inspect(info.id(), inspection, GivenForm.fields(info, reads, inspection), mostFindings);
        try {
            while (true) {
                try {
                    return outcome(exchange.answer().get(LOOK_MILLIS, TimeUnit.MILLISECONDS), mostFindings);
                } catch (TimeoutException notYet) {
                    inspection.checkpoint(exchange.fraction());
                }
            }
        } catch (CancellationException over) {
            exchange.stop();
            throw over;
        } catch (InterruptedException givenUp) {
            exchange.stop();
            Thread.currentThread().interrupt();
            throw new CancellationException();
        } catch (ExecutionException impossible) {
            throw new IllegalStateException(impossible); // answers are completed, never failed
        }
    }

    private WorkerProcess process(Inspection inspection) {
        try {
            return worker.process(inspection.settings().get(HostSettings.WORKER_HEAP));
        } catch (InterruptedException givenUp) {
            Thread.currentThread().interrupt();
            throw new CancellationException();
        }
    }

    private Outcome outcome(FormNode answer, int mostFindings) {
        if (answer.text("kind").equals("failed")) {
            throw new CheckFailedException(answer.text("why"));
        }
        if (answer.text("kind").equals("cancelled")) {
            throw new CheckFailedException("it threw java.util.concurrent.CancellationException though nobody cancelled it");
        }
        Outcome outcome;
        try {
            outcome = OutcomeForm.read(answer.node("outcome"), info);
        } catch (FormException | IllegalArgumentException | ClassCastException unfit) {
            throw new CheckFailedException("its answer cannot be used: " + unfit.getMessage());
        }
        if (outcome.findings().size() > mostFindings) {
            throw new CheckFailedException("it answered with more findings than it was asked for");
        }
        Soundness.fault(outcome).ifPresent(fault -> {
            throw new CheckFailedException(fault);
        });
        List<String> missing = new ArrayList<>(outcome.missing());
        if (answer.whole("printed") > MUCH_PRINTED) {
            missing.add("It printed " + answer.whole("printed") / MUCH_PRINTED + " MiB, which were thrown away.");
        }
        if (answer.whole("threads") > 0) {
            missing.add("It left " + answer.whole("threads") + " threads running, which were ended with its process.");
        }
        return outcome.withMissing(missing);
    }
}
