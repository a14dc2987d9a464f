// SPDX-License-Identifier: Apache-2.0
package kerfglow.views;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfglow.api.Quantity;
import kerfglow.api.UnitSystem;
import kerfglow.api.Units;
import kerfglow.host.Result;
import kerfglow.job.Decision;
import kerfglow.job.Mark;
import kerfglow.job.MarkShape;
import kerfglow.job.ReviewedResult;
import kerfglow.job.SignOff;
import kerfglow.job.Waiver;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;

/**
 * What people decided about a result, in the words that views show.
 *
 * @param rulings by the id of the finding
 * @param acceptedChecks by the id of the check: that it failed or timed out is accepted
 * @param marks in the order made
 * @param signOffs in the order made, void ones too
 * @param carriedOver true when it was decided on an older revision of the proof
 */
public record Review(Map<String, Ruling> rulings, Map<String, Ruling> acceptedChecks, List<MarkLine> marks, List<SignOffLine> signOffs, boolean carriedOver) {
    /** Nothing is decided. */
    public static final Review NONE = new Review(Map.of(), Map.of(), List.of(), List.of(), false);

    /**
     * A named person's decision to accept something.
     *
     * @param author who
     * @param day when, UTC
     * @param reason why
     * @param again why it is to be decided again; empty while the decision holds
     */
    public record Ruling(String author, LocalDate day, String reason, String again) {
        public boolean holds() {
            return again.isEmpty();
        }

        static Ruling of(Waiver waiver, String again) {
            return new Ruling(waiver.author(), Review.day(waiver.at()), waiver.reason(), again);
        }
    }

    /**
     * A reviewer's mark.
     *
     * @param letter names it on the picture: A, B, …
     * @param kind what was drawn, one word
     * @param shape its line or outline, mm
     * @param anchor where its letter stands, mm
     * @param text what it says; a dimension says its length
     * @param author who made it
     * @param day when, UTC
     * @param answers each with its author
     * @param settled who settled it and when; empty while it is open
     */
    public record MarkLine(String letter, String kind, Geometry shape, Coordinate anchor, String text, String author, LocalDate day, List<String> answers, String settled) {
        public MarkLine {
            answers = List.copyOf(answers);
        }

        /** A to Z, then AA, AB, …: the name of the mark that stands at this place in the list, from 0. */
        static String letter(int index) {
            int letters = 'Z' - 'A' + 1;
            return (index < letters ? "" : letter(index / letters - 1)) + (char) ('A' + index % letters);
        }

        static MarkLine of(int index, Mark mark, UnitSystem units) {
            String text = mark.text();
            if (mark.shape() instanceof MarkShape.Dimension dimension) {
                text = Units.format(dimension.lengthMm(), Quantity.LENGTH, units) + (text.isEmpty() ? "" : ": " + text);
            }
            return new MarkLine(letter(index), mark.shape().word(), mark.shape().outline(), mark.shape().anchor().coordinate(), text, mark.author(), Review.day(mark.created()),
                    mark.answers().stream().map(answer -> answer.author() + ", " + Review.day(answer.created()) + ": " + answer.text()).toList(),
                    mark.settled().map(settled -> "settled by " + settled.author() + ", " + Review.day(settled.at())).orElse(""));
        }
    }

    /**
     * Somebody's word that the proof may go on.
     *
     * @param author who signed
     * @param day when, UTC
     * @param remark what the person added
     * @param open what was open then
     * @param voidBecause why it does not hold any more; empty while it does
     */
    public record SignOffLine(String author, LocalDate day, String remark, List<String> open, List<String> voidBecause) {
        public SignOffLine {
            open = List.copyOf(open);
            voidBecause = List.copyOf(voidBecause);
        }

        public boolean holds() {
            return voidBecause.isEmpty();
        }

        static SignOffLine of(ReviewedResult.SignOffStand stand) {
            SignOff signOff = stand.signOff();
            return new SignOffLine(signOff.author(), Review.day(signOff.at()), signOff.remark(), signOff.open().stream().map(SignOff.OpenItem::text).toList(), stand.voidBecause());
        }
    }

    public Review {
        rulings = Map.copyOf(rulings);
        acceptedChecks = Map.copyOf(acceptedChecks);
        marks = List.copyOf(marks);
        signOffs = List.copyOf(signOffs);
    }

    /** The decisions of a job, as they stand on a result. */
    public static Review of(ReviewedResult reviewed) {
        Map<String, Ruling> rulings = new HashMap<>();
        for (Result.ReportedFinding finding : reviewed.result().findings()) {
            Decision decision = reviewed.decision(finding);
            decision.waiver().ifPresent(waiver -> rulings.put(finding.id(), Ruling.of(waiver, decision.why())));
        }
        Map<String, Ruling> checks = new HashMap<>();
        reviewed.result().checks().forEach(row -> reviewed.waiver(row).ifPresent(waiver -> checks.put(row.check(), Ruling.of(waiver, ""))));
        List<MarkLine> marks = new ArrayList<>();
        reviewed.job().ifPresent(job -> job.marks().forEach(mark -> marks.add(MarkLine.of(marks.size(), mark, reviewed.result().units()))));
        return new Review(rulings, checks, marks, reviewed.signOffs().stream().map(SignOffLine::of).toList(), reviewed.isNewRevision());
    }

    private static LocalDate day(Instant at) {
        return LocalDate.ofInstant(at, ZoneOffset.UTC);
    }

    /** What was decided about a finding, whether it holds or not. */
    public Optional<Ruling> ruling(Result.ReportedFinding finding) {
        return Optional.ofNullable(rulings.get(finding.id()));
    }

    /** True when somebody accepted it and nothing has changed since. */
    public boolean isWaived(Result.ReportedFinding finding) {
        return ruling(finding).filter(Ruling::holds).isPresent();
    }
}
