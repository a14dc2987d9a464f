// SPDX-License-Identifier: Apache-2.0
package kerfglow.views;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import kerfglow.api.Measure;
import kerfglow.api.Quantity;
import kerfglow.api.UnitSystem;
import kerfglow.api.Units;
import kerfglow.host.Result;
import org.locationtech.jts.geom.Coordinate;

/** The words for a finding's places and numbers, the same in every view. */
public final class FindingText {
    /** Places named one by one; the rest are counted. */
    private static final int PLACES_NAMED = 6;
    private static final int NAMES_SHOWN = 8;

    private FindingText() {
    }

    /** Measured against required in one phrase. */
    static String measures(Result.ReportedFinding finding, UnitSystem units) {
        String measured = measured(finding, units);
        String required = required(finding, units);
        return measured.isEmpty() ? "needs " + required : required.isEmpty() ? measured : measured + ", needs " + required;
    }

    /** What was measured, with its unit; shown finer when it would read like what is required; empty when nothing was. */
    public static String measured(Result.ReportedFinding finding, UnitSystem units) {
        return text(finding.measured(), finding, units);
    }

    /** What is required, as {@link #measured}. */
    public static String required(Result.ReportedFinding finding, UnitSystem units) {
        return text(finding.required(), finding, units);
    }

    private static String text(Optional<Measure> measure, Result.ReportedFinding finding, UnitSystem units) {
        boolean alike = finding.measured().isPresent() && finding.required().isPresent()
                && format(finding.measured().get(), units).equals(format(finding.required().get(), units));
        return measure.map(each -> alike ? exact(each) : format(each, units)).orElse("");
    }

    private static String format(Measure measure, UnitSystem units) {
        return Units.format(measure.value(), measure.quantity(), units);
    }

    private static String exact(Measure measure) {
        return String.format(Locale.ROOT, "%.4f %s", measure.value(), measure.quantity().unit()).strip();
    }

    /** Name of the proof's file without its folder, which is nobody's business but this machine's. */
    public static String fileName(Result result) {
        return result.proof().file().replaceFirst(".*[/\\\\]", "");
    }

    /** Parts, elements and places. */
    public static String where(Result.ReportedFinding finding, UnitSystem units) {
        StringBuilder text = new StringBuilder();
        if (!finding.parts().isEmpty()) {
            text.append(finding.parts().size() == 1 ? "part " : "parts ").append(some(finding.parts()));
        }
        if (!finding.elements().isEmpty()) {
            text.append(text.length() == 0 ? "" : ", ").append("drawn as ").append(some(finding.elements()));
        }
        if (!finding.places().isEmpty()) {
            text.append(text.length() == 0 ? "at " : ", at ").append(finding.places().stream().limit(PLACES_NAMED).map(place -> point(place.at(), units))
                    .collect(Collectors.joining("; ")));
            int more = finding.places().size() - PLACES_NAMED;
            text.append(more > 0 ? " and " + more + " more places alike" : "");
        }
        return text.length() == 0 ? "the whole proof" : text.toString();
    }

    private static String some(List<String> names) {
        String text = names.stream().limit(NAMES_SHOWN).collect(Collectors.joining(", "));
        return names.size() > NAMES_SHOWN ? text + " and " + (names.size() - NAMES_SHOWN) + " more" : text;
    }

    static String point(Coordinate at, UnitSystem units) {
        return units == UnitSystem.INCH ? String.format(Locale.ROOT, "%.2f, %.2f in", at.x / Units.MM_PER_INCH, at.y / Units.MM_PER_INCH)
                : String.format(Locale.ROOT, "%.1f, %.1f mm", at.x, at.y);
    }

    /** A value of a setting with its unit, as a person reads it. */
    public static String value(Result.SettingUsed used, UnitSystem units) {
        if (used.value() instanceof Number number && !used.unit().isEmpty()) {
            for (Quantity quantity : Quantity.values()) {
                if (quantity.unit().equals(used.unit())) {
                    return Units.format(number.doubleValue(), quantity, units);
                }
            }
            return number + " " + used.unit();
        }
        return used.value() instanceof Boolean flag ? flag ? "yes" : "no" : used.value() instanceof Number number ? plain(number) : String.valueOf(used.value());
    }

    private static String plain(Number number) {
        return number.doubleValue() == Math.rint(number.doubleValue()) ? Long.toString(Math.round(number.doubleValue())) : number.toString();
    }
}
