// SPDX-License-Identifier: Apache-2.0
package kerfglow.bench;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import kerfglow.api.Check;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Proof;
import kerfglow.check.artwork.ArtworkCheck;
import kerfglow.check.fit.FitCheck;
import kerfglow.check.glow.GlowCheck;
import kerfglow.check.legibility.LegibilityCheck;
import kerfglow.check.mount.MountCheck;
import kerfglow.check.power.PowerCheck;
import kerfglow.check.print.PrintCheck;
import kerfglow.check.returns.ReturnsCheck;
import kerfglow.check.router.RouterCheck;
import kerfglow.check.sheet.SheetCheck;
import kerfglow.check.trim.TrimCheck;
import kerfglow.check.vinyl.VinylCheck;
import kerfglow.host.CheckCatalogue;
import kerfglow.host.Result;
import kerfglow.host.RunRequest;
import kerfglow.host.Runner;
import kerfglow.host.Watcher;
import kerfglow.svg.SvgImporter;

/**
 * Processor time and memory of import and of each check for 1, 10, 100, 1,000 and 10,000 letters 100 mm high, no two alike, as the table of
 * {@code docs/performance.md}. Ends with status 1 when ten times the letters cost more than {@link #MOST} times what n log n says, from 100
 * letters on: below, starting costs more than the letters. Processor time, because it says the same on a busy machine.
 */
public final class SizeTable {
    private static final double MOST = 1.3;
    private static final int STEP = 10;
    private static final int FROM = 100;
    private static final int[] LETTERS = {1, 10, 100, 1_000, 10_000};
    /** Laying out lights takes a part of a second a letter, and no sign has 10,000 different lit letters. */
    private static final int MOST_LIT = 1_000;
    /** Roles that the letters have where it is not face. */
    private static final Map<String, String> ROLES = Map.of("vinyl", "vinyl", "print", "print");
    /** What power needs to know of modules and supplies; invented. */
    private static final String MODULES = """
            stock:
              light-modules:
                - {name: small module, flux: 60 lm, beam-angle: 150 deg, length: 20 mm, width: 10 mm, emitter-height: 6 mm, watts: 0.7 W, volts: 12 V, cable-pitch: 150 mm, longest-run: 50, cable: 18 AWG}
              power-supplies:
                - {name: 60 W supply, volts: 12 V, watts: 60 W}
            """;
    /** The processor's time is counted in steps of this, milliseconds; less is taken for so much. */
    private static final double TICK = 10;
    /** Ten thousand larger ones have more corners than the importer takes; those with light are larger, since no module fits into these. */
    private static final double HEIGHT_MM = 100;
    private static final int REPEATS = 3;
    private static final int WARM_LETTERS = 300;
    private static final double NANOS = 1e6;
    private static final double MIB = 1 << 20;
    private static final OperatingSystemMXBean SYSTEM = (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();

    /** @param openMillis import and parts; @param checkMillis what comes then; @param heldMib what proof and result hold after a collection; @param note of the check when it did not end well */
    private record Cost(double openMillis, double checkMillis, double heldMib, String note) {
    }

    private SizeTable() {
    }

    /** Prints the table; arguments are the checks whose rows are wanted, none for all. */
    public static void main(String[] arguments) throws Exception {
        boolean within = true;
        double[] opened = null;
        for (Check check : List.of(new ArtworkCheck(), new RouterCheck(), new FitCheck(), new ReturnsCheck(), new TrimCheck(), new SheetCheck(), new VinylCheck(), new MountCheck(), new LegibilityCheck(),
                new PrintCheck(), new GlowCheck(), new PowerCheck())) {
            String id = check.info().id();
            if (arguments.length > 0 && !List.of(arguments).contains(id)) {
                continue;
            }
            boolean lit = id.equals("glow") || id.equals("power");
            CheckCatalogue catalogue = new CheckCatalogue();
            catalogue.add(check, "kerfglow.check." + id, "bench");
            if (id.equals("power")) {
                catalogue.add(new GlowCheck(), "kerfglow.check.glow", "bench"); // wires what this lays out: their costs are one
            }
            Runner runner = new Runner(new SvgImporter(), catalogue);
            cost(runner, id, lit ? STEP : WARM_LETTERS);
            double[] open = new double[LETTERS.length];
            double[] time = new double[LETTERS.length];
            double[] held = new double[LETTERS.length];
            int sizes = 0;
            StringBuilder row = new StringBuilder("| " + id);
            for (int letters : LETTERS) {
                if (lit && letters > MOST_LIT) {
                    row.append(" | ");
                    continue;
                }
                List<Cost> costs = new ArrayList<>();
                for (int i = 0; i < (letters > STEP * FROM || lit ? 1 : REPEATS); i++) {
                    costs.add(cost(runner, id, letters));
                }
                open[sizes] = median(costs.stream().mapToDouble(Cost::openMillis).toArray());
                time[sizes] = median(costs.stream().mapToDouble(Cost::checkMillis).toArray());
                held[sizes] = median(costs.stream().mapToDouble(Cost::heldMib).toArray());
                row.append(String.format(Locale.ROOT, " | %.0f ms, %.0f MiB%s", time[sizes], held[sizes], costs.get(0).note()));
                sizes++;
            }
            double growth = worst(time, sizes);
            double growthHeld = worst(held, sizes);
            within &= growth <= MOST && growthHeld <= MOST;
            System.out.printf(Locale.ROOT, "%s | %.2f, %.2f |%n", row, growth, growthHeld);
            opened = opened == null ? open : opened;
        }
        StringBuilder row = new StringBuilder("| import, parts");
        for (double millis : opened) {
            row.append(String.format(Locale.ROOT, " | %.0f ms", millis));
        }
        double growth = worst(opened, LETTERS.length);
        System.out.printf(Locale.ROOT, "%s | %.2f |%n", row, growth);
        System.exit(within && growth <= MOST ? 0 : 1);
    }

    /** The greatest growth from one size to the next, over that of n log n. */
    private static double worst(double[] values, int sizes) {
        double worst = 0;
        for (int i = 1; i < sizes; i++) {
            if (LETTERS[i - 1] >= FROM) {
                double allowed = STEP * Math.log(LETTERS[i]) / Math.log(LETTERS[i - 1]);
                worst = Math.max(worst, values[i] / values[i - 1] / allowed);
            }
        }
        return worst;
    }

    private static Cost cost(Runner runner, String check, int letters) throws Exception {
        boolean lit = check.equals("glow") || check.equals("power");
        Path proof = LetterProof.write(Files.createTempFile("letters", ".svg"), letters, lit ? LetterProof.HEIGHT_MM : HEIGHT_MM);
        Path job = Files.writeString(Files.createTempFile("letters", ".job.yaml"),
                "roles: [{layer: Letters, role: " + ROLES.getOrDefault(check, "face") + "}]\nbuild: face-lit letters\nsettings: {returns.depth: 80 mm, host.check-time-limit: 3000 s}\n");
        Path shop = Files.writeString(Files.createTempFile("letters", ".shop.yaml"), MODULES);
        try {
            long[] opened = new long[1];
            long before = held();
            long start = SYSTEM.getProcessCpuTime();
            Result result = runner.run(new RunRequest(proof, Optional.of(job), check.equals("power") ? Optional.of(shop) : Optional.empty(), List.of(), check.equals("power") ? List.of("glow", check) : List.of(check)), new Watcher() {
                @Override
                public void progress(String what, double fraction) {
                    // nobody to tell
                }

                @Override
                public boolean isCancelled() {
                    return false;
                }

                @Override
                public void opened(Proof drawn, List<Part> parts, UnitSystem units) {
                    opened[0] = SYSTEM.getProcessCpuTime();
                }
            });
            long end = SYSTEM.getProcessCpuTime();
            double held = (held() - before) / MIB;
            Result.Status status = result.checks().stream().filter(each -> each.check().equals(check)).findFirst().orElseThrow().status();
            return new Cost(Math.max(TICK, (opened[0] - start) / NANOS), Math.max(TICK, (end - opened[0]) / NANOS), held, status == Result.Status.PASSED || status == Result.Status.FINDINGS ? "" : " (" + status + ")");
        } finally {
            Files.delete(proof);
            Files.delete(job);
            Files.delete(shop);
        }
    }

    private static long held() {
        System.gc();
        return Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }
}
