// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import kerfglow.api.Measure;
import kerfglow.api.Quantity;
import kerfglow.api.UnitSystem;
import kerfglow.api.Units;
import kerfglow.host.Result;
import kerfglow.job.Job;
import kerfglow.job.Mark;
import kerfglow.job.OutlineChange;
import kerfglow.job.ProofComparison;
import kerfglow.job.SeenFinding;
import org.locationtech.jts.geom.Envelope;

/** What became of the revision before, as lines that a person goes through. */
public final class RevisionList {
    /** In the order in which they are read: what needs a person first. */
    public enum Kind {
        MARK("Marks that no longer stand on what they were made on"),
        NEW("New findings"),
        GONE("Findings that are gone"),
        MOVED("Outlines that moved"),
        RESHAPED("Outlines of another shape"),
        CAME("Outlines that are new"),
        WENT("Outlines that are gone"),
        SAME("Findings that are the same");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /**
     * One line.
     *
     * @param text for a person
     * @param where on the new revision, mm; absent when it concerns no place
     * @param before true when the place is to be seen on the revision before, since it is no more
     * @param finding id of the finding of the new revision; absent for anything else
     * @param mark id of the mark; absent for anything else
     */
    public record Line(String text, Optional<Envelope> where, boolean before, Optional<String> finding, Optional<String> mark) {
    }

    /** Longer lists of names tell nobody anything. */
    private static final int MOST_NAMES = 4;

    private final Map<Kind, List<Line>> lines = new EnumMap<>(Kind.class);
    private final UnitSystem units;

    private RevisionList(UnitSystem units) {
        this.units = units;
        for (Kind kind : Kind.values()) {
            lines.put(kind, new ArrayList<>());
        }
    }

    /** The lines for what lies on the desk. Marks are listed also without a revision before: those of a second reviewer may be of another one. */
    public static RevisionList of(Desk desk) {
        return of(desk.comparison(), desk.result(), desk.job().map(Job::state).map(state -> marks(state.marks(), state.proof().sha256())).orElse(List.of()), desk.units());
    }

    private static List<Mark> marks(List<Mark> all, String proof) {
        return all.stream().filter(mark -> !mark.proofSha256().isEmpty() && !mark.proofSha256().equals(proof)).toList();
    }

    /**
     * The lines.
     *
     * @param comparison of the two revisions; absent when there is no revision before
     * @param result of the new revision
     * @param marks that do not stand
     */
    public static RevisionList of(Optional<ProofComparison> comparison, Optional<Result> result, List<Mark> marks, UnitSystem units) {
        RevisionList list = new RevisionList(units);
        marks.forEach(list::add);
        comparison.ifPresent(each -> {
            each.findings().forEach(change -> list.add(change, result));
            each.outlines().forEach(list::add);
        });
        return list;
    }

    private void add(Mark mark) {
        lines.get(Kind.MARK).add(new Line(mark.shape().word() + " by " + mark.author() + ": " + mark.text(), Optional.of(mark.shape().outline().getEnvelopeInternal()), false, Optional.empty(),
                Optional.of(mark.id())));
    }

    private void add(ProofComparison.FindingChange change, Optional<Result> result) {
        Kind kind = switch (change.kind()) {
            case SAME -> Kind.SAME;
            case NEW -> Kind.NEW;
            case GONE -> Kind.GONE;
        };
        SeenFinding seen = change.after().or(change::before).orElseThrow();
        Optional<Result.ReportedFinding> reported = change.after().flatMap(after -> result.stream().flatMap(each -> each.findings().stream())
                .filter(finding -> finding.id().equals(after.id())).findFirst());
        String text = reported.map(finding -> finding.severity().word() + ": " + finding.message()).orElseGet(() -> gone(seen));
        lines.get(kind).add(new Line(text + places(", more places: ", kind == Kind.SAME ? change.morePlaces() : 0) + places(", fewer places: ", kind == Kind.SAME ? change.fewerPlaces() : 0),
                extent(seen), kind == Kind.GONE, change.after().map(SeenFinding::id), Optional.empty()));
    }

    private String gone(SeenFinding seen) {
        String where = seen.places().stream().findFirst().map(place -> ", was at " + length(place.at().xMm()) + " , " + length(place.at().yMm())).orElse("");
        if (!seen.message().isEmpty()) {
            return seen.message() + where;
        }
        return seen.rule() + where + seen.measured().map(found -> ", found " + text(found)).orElse("") + seen.required().map(needed -> ", needed " + text(needed)).orElse("")
                + (seen.elements().isEmpty() ? "" : ", on " + String.join(", ", seen.elements().stream().limit(MOST_NAMES).toList()) + (seen.elements().size() > MOST_NAMES ? "..." : ""));
    }

    private String text(Measure measure) {
        return Units.format(measure.value(), measure.quantity(), units);
    }

    private static String places(String words, int count) {
        return count == 0 ? "" : words + count;
    }

    private static Optional<Envelope> extent(SeenFinding seen) {
        Envelope extent = new Envelope();
        seen.places().forEach(place -> extent.expandToInclude(place.shape().getEnvelopeInternal()));
        return Optional.of(extent).filter(each -> !each.isNull());
    }

    private void add(OutlineChange change) {
        String name = change.role() + change.after().or(change::before).map(id -> " " + id).orElse("");
        String far = change.greatestMm() == 0 ? "" : length(change.greatestMm());
        Kind kind = switch (change.kind()) {
            case MOVED -> Kind.MOVED;
            case CHANGED -> Kind.RESHAPED;
            case ADDED -> Kind.CAME;
            case REMOVED -> Kind.WENT;
        };
        String text = switch (kind) {
            case MOVED -> name + " moved by " + far;
            case RESHAPED -> name + ", outlines apart by up to " + far;
            default -> name;
        };
        lines.get(kind).add(new Line(text, Optional.of(change.where().getEnvelopeInternal()).filter(each -> !each.isNull()), kind == Kind.WENT, Optional.empty(), Optional.empty()));
    }

    private String length(double mm) {
        return Units.format(mm, Quantity.LENGTH, units);
    }

    /** The lines of one kind. */
    public List<Line> lines(Kind kind) {
        return List.copyOf(lines.get(kind));
    }

    /** All in one sentence. */
    public String summary() {
        return "Outlines: " + counts(Map.of(Kind.MOVED, "moved", Kind.RESHAPED, "of another shape", Kind.CAME, "new", Kind.WENT, "gone"), "as they were") + "; findings: "
                + counts(Map.of(Kind.NEW, "new", Kind.GONE, "gone", Kind.SAME, "the same"), "none") + "; marks to be looked at again: " + lines.get(Kind.MARK).size() + ".";
    }

    /** What there is, in the order of the list. */
    private String counts(Map<Kind, String> words, String none) {
        String counts = Arrays.stream(Kind.values()).filter(words::containsKey).filter(kind -> !lines.get(kind).isEmpty()).map(kind -> lines.get(kind).size() + " " + words.get(kind))
                .collect(Collectors.joining(", "));
        return counts.isEmpty() ? none : counts;
    }
}
