// SPDX-License-Identifier: Apache-2.0
package kerfglow.it.shop;

import java.util.Collections;
import java.util.List;
import kerfglow.api.Check;
import kerfglow.api.CheckInfo;
import kerfglow.api.Finding;
import kerfglow.api.Inspection;
import kerfglow.api.Measure;
import kerfglow.api.Outcome;
import kerfglow.api.Rule;
import kerfglow.api.Setting;
import kerfglow.api.Severity;

/** A shop's check that does what its setting says; the tests put this class into bundles of their own. It tells the number of its process. */
public final class TrialCheck implements Check {
    /** The one rule. */
    public static final Rule RULE = new Rule("shop.trial.rule", Severity.INFO, "A trial", "why", "fix", "geometry");
    private static final Setting<String> WAY = Setting.text("shop.trial.way", "what to do", "good", "reason", "source");
    private static final Setting<Double> LEAST = Setting.lengthMm("shop.trial.least", "a length", 1.0, 0, 100, "reason", "source");
    private static final int MANY = 10_000;

    @Override
    public CheckInfo info() {
        return new CheckInfo("shop.trial", "trial", List.of(RULE), List.of(WAY, LEAST), List.of(), List.of(), "# Trial\n\n## shop.trial.rule\n\nThe page.\n");
    }

    @Override
    public Outcome inspect(Inspection inspection) {
        Finding finding = Finding.of(RULE, "process " + ProcessHandle.current().pid() + ", parts " + inspection.parts().size())
                .place(inspection.parts().get(0).shape()).measured(Measure.mm(inspection.settings().get(LEAST))).build();
        switch (inspection.settings().get(WAY)) {
            case "many" -> {
                return Outcome.of(Collections.nCopies(MANY, finding));
            }
            case "throw" -> throw new IllegalStateException("on purpose");
            case "exit" -> Runtime.getRuntime().halt(5);
            case "wait" -> {
                while (true) {
                    pause();
                    inspection.checkpoint(0.5);
                }
            }
            case "deaf" -> {
                while (true) {
                    pause();
                }
            }
            default -> {
                return Outcome.of(List.of(finding));
            }
        }
        return null;
    }

    private static void pause() {
        try {
            Thread.sleep(1);
        } catch (InterruptedException ignored) {
            return; // a bad check does not care
        }
    }
}
