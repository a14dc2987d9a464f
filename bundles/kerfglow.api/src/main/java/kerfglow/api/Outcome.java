// SPDX-License-Identifier: Apache-2.0
package kerfglow.api;

import java.util.List;

/**
 * What a check has to say about one proof.
 *
 * @param findings every place by itself; empty is a pass
 * @param tables its own numbers, under schemas that it declares
 * @param layers what it shows beside its findings
 * @param missing what could not be measured for want of what, one sentence each, shown to the person
 * @param measured false when nothing at all could be measured, so that this is neither a pass nor a finding
 */
public record Outcome(List<Finding> findings, List<Table> tables, List<OverlayLayer> layers, List<String> missing, boolean measured) {
    public Outcome {
        findings = List.copyOf(findings);
        tables = List.copyOf(tables);
        layers = List.copyOf(layers);
        missing = List.copyOf(missing);
        if (!measured && !findings.isEmpty()) {
            throw new IllegalArgumentException("a check that measured nothing cannot have findings");
        }
    }

    /** Measured, with findings alone. */
    public static Outcome of(List<Finding> findings) {
        return new Outcome(findings, List.of(), List.of(), List.of(), true);
    }

    /** Not measured: neither a pass nor a finding. */
    public static Outcome notMeasured(String missing) {
        return new Outcome(List.of(), List.of(), List.of(), List.of(missing), false);
    }

    /** The same with tables. */
    public Outcome withTables(List<Table> value) {
        return new Outcome(findings, value, layers, missing, measured);
    }

    /** The same with overlay layers. */
    public Outcome withLayers(List<OverlayLayer> value) {
        return new Outcome(findings, tables, value, missing, measured);
    }

    /** The same, with what could not be measured for some of the parts. */
    public Outcome withMissing(List<String> value) {
        return new Outcome(findings, tables, layers, value, measured);
    }
}
