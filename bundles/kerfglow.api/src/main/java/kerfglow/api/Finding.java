// SPDX-License-Identifier: Apache-2.0
package kerfglow.api;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;

/**
 * One place where a rule does not hold, or one note. A check reports every place by itself; the host gives ids and severity
 * and collects places that are congruent and equal in measure.
 */
public final class Finding {
    private final Builder b;

    private Finding(Builder b) {
        this.b = b;
    }

    /**
     * Starts a finding.
     *
     * @param rule one of the check's rules
     * @param message what was found, one sentence with the numbers in the units of the job
     */
    public static Builder of(Rule rule, String message) {
        return new Builder(rule, message);
    }

    /** The rule that does not hold. */
    public Rule rule() {
        return b.rule;
    }

    /** What was found, a sentence. */
    public String message() {
        return b.message;
    }

    /** Where it is, mm; absent when it concerns the whole proof. */
    public Optional<Geometry> place() {
        return Optional.ofNullable(b.place);
    }

    /** The point that a marker stands at, mm; absent when it concerns the whole proof. */
    public Optional<Coordinate> at() {
        return Optional.ofNullable(b.at).map(Coordinate::copy);
    }

    /** What was measured; absent when nothing can be. */
    public Optional<Measure> measured() {
        return Optional.ofNullable(b.measured);
    }

    /** What the rule asks for; absent when it asks for no number. */
    public Optional<Measure> required() {
        return Optional.ofNullable(b.required);
    }

    /** Ids of the parts concerned. */
    public List<String> parts() {
        return b.parts;
    }

    /** Ids of the elements concerned; when empty the host fills in those of the parts. */
    public List<String> elements() {
        return b.elements;
    }

    /** What to do about it, when it can be said more exactly than the rule does. */
    public Optional<String> fix() {
        return Optional.ofNullable(b.fix);
    }

    /** The outline as it would be right, mm, when the check can draw it; shown beside the place. */
    public Optional<Geometry> suggestion() {
        return Optional.ofNullable(b.suggestion);
    }

    /** What tells findings of one rule apart that look alike; those of different causes are never collected into one. */
    public String cause() {
        return b.cause;
    }

    @Override
    public String toString() {
        return b.rule.id() + (b.at == null ? "" : " at " + b.at.x + " " + b.at.y) + ": " + b.message;
    }

    /** Collects what is known of a finding; only rule and message are needed. */
    public static final class Builder {
        private final Rule rule;
        private final String message;
        private Geometry place;
        private Coordinate at;
        private Measure measured;
        private Measure required;
        private List<String> parts = List.of();
        private List<String> elements = List.of();
        private String fix;
        private Geometry suggestion;
        private String cause = "";

        private Builder(Rule rule, String message) {
            this.rule = Objects.requireNonNull(rule, "rule");
            this.message = Objects.requireNonNull(message, "message");
        }

        private Builder(Builder from) {
            rule = from.rule;
            message = from.message;
            place = from.place;
            at = from.at;
            measured = from.measured;
            required = from.required;
            parts = from.parts;
            elements = from.elements;
            fix = from.fix;
            suggestion = from.suggestion;
            cause = from.cause;
        }

        /** The place; the marker stands at a point inside it unless {@link #at} says otherwise. */
        public Builder place(Geometry value) {
            place = Objects.requireNonNull(value, "place");
            if (at == null && !value.isEmpty()) {
                at = value.getInteriorPoint().getCoordinate();
            }
            return this;
        }

        /** The point that the marker stands at. */
        public Builder at(Coordinate value) {
            at = value.copy();
            return this;
        }

        /** What was measured. */
        public Builder measured(Measure value) {
            measured = value;
            return this;
        }

        /** What the rule asks for. */
        public Builder required(Measure value) {
            required = value;
            return this;
        }

        /** Ids of the parts concerned. */
        public Builder parts(String... ids) {
            parts = List.of(ids);
            return this;
        }

        /** Ids of the parts concerned. */
        public Builder parts(List<String> ids) {
            parts = List.copyOf(ids);
            return this;
        }

        /** Ids of the elements concerned; when none are given the host fills in those of the parts. */
        public Builder elements(List<String> ids) {
            elements = List.copyOf(ids);
            return this;
        }

        /** What to do about it, when it can be said more exactly than the rule does. */
        public Builder fix(String value) {
            fix = value;
            return this;
        }

        /** The outline as it would be right, mm. */
        public Builder suggestion(Geometry value) {
            suggestion = Objects.requireNonNull(value, "suggestion");
            return this;
        }

        /** A word for the cause, not shown; for rules that cover several, for instance why something is hidden. */
        public Builder cause(String value) {
            cause = Objects.requireNonNull(value, "cause");
            return this;
        }

        /** The finding; the builder may be used on. */
        public Finding build() {
            return new Finding(new Builder(this));
        }
    }
}
