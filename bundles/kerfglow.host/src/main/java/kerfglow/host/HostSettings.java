// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import java.util.List;
import kerfglow.api.Quantity;
import kerfglow.api.Setting;
import kerfglow.api.proof.ImportOptions;

/** The settings that the host itself reads; set like those of a check. */
public final class HostSettings {
    /** How long one check may take. */
    public static final Setting<Double> CHECK_TIME_LIMIT = Setting.number("host.check-time-limit", "time that one check may take", Quantity.TIME,
            120.0, 0.01, 3600.0, "Assumed: more than thirty times what any check needs for the largest proof of the benchmarks; one that takes longer hangs", "measured, docs/performance.md");

    /** How long the import of one proof may take. */
    public static final Setting<Double> IMPORT_TIME_LIMIT = Setting.number("host.import-time-limit", "time that the import of one proof may take", Quantity.TIME,
            120.0, 0.01, 3600.0, "Assumed: more than a hundred times what the largest proof of the benchmarks needs; a file that takes longer is damaged or made to hang",
            "measured, docs/performance.md");

    /** Chord error of flattened curves. */
    public static final Setting<Double> CHORD_ERROR = Setting.lengthMm("host.chord-error", "how far a flattened curve may lie from the true one",
            ImportOptions.DEFAULT_CHORD_ERROR_MM, 0.0005, 1.0,
            "finer than a router positions, coarse enough for long scripts; measures against the true curve add twice this", "common practice, no source");

    /** User units in an inch. */
    public static final Setting<Double> UNITS_PER_INCH = Setting.number("host.units-per-inch", "user units in an inch where the file gives no unit",
            Quantity.RATIO, ImportOptions.CSS_UNITS_PER_INCH, 1.0, 10000.0,
            "96 by the standard; some drawing programs write 72, older ones 90", "W3C CSS Values and Units, absolute lengths");

    /** Heap of the process that a shop's own check runs in. */
    public static final Setting<Integer> WORKER_HEAP = Setting.count("host.worker-heap", "memory that a shop's own check may use, MiB", 512, 32, 65536,
            "Assumed: a proof of 2,000 letters fits several times over, and a check that allocates without end does not slow the machine down", "measured, docs/performance.md");

    /** How many findings of a shop's own check are taken over. */
    public static final Setting<Integer> MOST_FINDINGS = Setting.count("host.most-findings", "most findings of a shop's own check that are kept", 10_000, 1, 1_000_000,
            "Assumed: more than the largest proof of the benchmarks has, far more than anybody reads", "measured, docs/performance.md");

    /** All of them. */
    public static final List<Setting<?>> ALL = List.of(CHECK_TIME_LIMIT, IMPORT_TIME_LIMIT, CHORD_ERROR, UNITS_PER_INCH, WORKER_HEAP, MOST_FINDINGS);

    private HostSettings() {
    }
}
