// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import kerfglow.api.Measure;
import kerfglow.api.OverlayLayer;
import kerfglow.api.Rule;
import kerfglow.api.Severity;
import kerfglow.api.Table;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Proof;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;

/**
 * What one run found; immutable. Every view (text, JSON, picture, window, report) shows this and computes nothing again.
 *
 * @param proof what was drawn
 * @param job the job sheet
 * @param shop the shop sheet
 * @param units the units that a person reads
 * @param parts what the proof becomes, notes and leftovers among them
 * @param findings by severity, most severe first, then by rule and place
 * @param checks one row a check, by id
 * @param settings every value that could hold
 * @param remarks what the person should know about the run itself, for instance which sheets were used
 */
public record Result(Proof proof, JobSheet job, ShopSheet shop, UnitSystem units, List<Part> parts, List<ReportedFinding> findings,
        List<CheckRow> checks, List<SettingUsed> settings, List<String> remarks) {

    /** How a check ended. */
    public enum Status {
        /** Measured, nothing to report. */
        PASSED,
        /** Measured, something to report. */
        FINDINGS,
        /** Could not measure; the row says what is missing. Neither a pass nor a finding. */
        NOT_MEASURED,
        /** Threw; a defect of the check. */
        FAILED,
        /** Took longer than allowed. */
        TIMED_OUT;

        /** {@code passed}, {@code findings}, {@code not measured}, {@code failed}, {@code timed out}. */
        public String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }

    /**
     * One row a check.
     *
     * @param check its id
     * @param title what it looks for
     * @param version of its bundle
     * @param status how it ended
     * @param millis how long it took
     * @param why what is missing or what went wrong; empty when all was measured
     * @param tables its own numbers
     * @param layers what it shows beside its findings
     */
    public record CheckRow(String check, String title, String version, Status status, long millis, String why, List<Table> tables,
            List<OverlayLayer> layers) {
    }

    /**
     * A value that could hold in this run.
     *
     * @param key the setting
     * @param scope what it holds for, as {@link Scope#toString()} writes it
     * @param value a Double, Integer, Boolean or String
     * @param unit unit of a number, else empty
     * @param from {@code check}, {@code command line}, or sheet and line
     */
    public record SettingUsed(String key, String scope, Object value, String unit, String from) {
    }

    /**
     * One place of a finding.
     *
     * @param at where the marker stands, mm
     * @param shape the geometry, mm
     * @param measured what was measured here
     * @param suggestion the outline as it would be right, mm, when the check drew it
     */
    public record Place(Coordinate at, Geometry shape, Optional<Measure> measured, Optional<Geometry> suggestion) {
        /** A place without a suggestion. */
        public Place(Coordinate at, Geometry shape, Optional<Measure> measured) {
            this(at, shape, measured, Optional.empty());
        }
    }

    /**
     * One place, or one set of congruent places of equal measure, where a rule does not hold.
     *
     * @param id the same from run to run for the same rule and place
     * @param rule the rule
     * @param severity its weight in this shop
     * @param severityReason why the shop weighs it otherwise than the check, or empty
     * @param parts ids of the parts concerned
     * @param elements ids of the elements concerned
     * @param measured what was measured, at the first place
     * @param required what the rule asks for
     * @param places top to bottom; empty when it concerns the whole proof
     * @param message what was found
     * @param fix what to do about it
     */
    public record ReportedFinding(String id, Rule rule, Severity severity, String severityReason, List<String> parts, List<String> elements,
            Optional<Measure> measured, Optional<Measure> required, List<Place> places, String message, String fix) {
        /** How many places, at least 1. */
        public int count() {
            return Math.max(1, places.size());
        }
    }

    public Result {
        parts = List.copyOf(parts);
        findings = List.copyOf(findings);
        checks = List.copyOf(checks);
        settings = List.copyOf(settings);
        remarks = List.copyOf(remarks);
    }

    /** This result of some checks, with what another result of the same proof has of all others. */
    public Result over(Result before) {
        Set<String> own = checks.stream().map(CheckRow::check).collect(Collectors.toSet());
        List<CheckRow> rows = Stream.concat(checks.stream(), before.checks.stream().filter(row -> !own.contains(row.check()))).sorted(Comparator.comparing(CheckRow::check)).toList();
        List<ReportedFinding> all = Stream.concat(findings.stream(), before.findings.stream().filter(finding -> own.stream().noneMatch(check -> finding.rule().id().startsWith(check + "."))))
                .sorted(Comparator.comparing(ReportedFinding::severity).reversed().thenComparing(finding -> finding.rule().id())).toList(); // of one rule they are in order already
        return new Result(proof, job, shop, units, parts, all, rows, settings, remarks);
    }

    /** True when a finding weighs at least this much. */
    public boolean has(Severity least) {
        return findings.stream().anyMatch(finding -> finding.severity().compareTo(least) >= 0);
    }

    /** True when a check failed or timed out, so that the result is not whole. */
    public boolean isBroken() {
        return checks.stream().anyMatch(row -> row.status() == Status.FAILED || row.status() == Status.TIMED_OUT);
    }
}
