// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.section;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import kerfglow.api.Setting;
import kerfglow.api.Units;
import kerfglow.host.JobSheet;
import kerfglow.host.Scope;
import kerfglow.job.SheetEdits;

/**
 * What a typed dimension changes in the job sheet.
 *
 * @param problem what is wrong with the text; empty when it can be used
 * @param name the name of the step, for undo
 * @param change the change; leaves the sheet as it is when there is a problem
 */
public record SectionEdit(Optional<String> problem, String name, UnaryOperator<JobSheet> change) {
    /** Assumed: no sheet of a sign is thicker. */
    private static final double MOST_THICKNESS_MM = 500;

    /**
     * Reads what was typed at a dimension.
     *
     * @param measure the dimension
     * @param text as typed, with a unit
     * @param settings every setting that there is
     */
    public static SectionEdit of(Section.Measure measure, String text, List<Setting<?>> settings) {
        String name = "Change " + measure.title();
        try {
            if (measure.target() instanceof Section.Target.OfSetting target) {
                return ofSetting(name, target.key(), text, Scope.ALL, settings);
            }
            Section.Target.OfThickness target = (Section.Target.OfThickness) measure.target();
            double mm = Units.lengthMm(text);
            if (!(mm > 0 && mm <= MOST_THICKNESS_MM)) {
                throw new IllegalArgumentException("a thickness lies above 0 and up to " + MOST_THICKNESS_MM + " mm");
            }
            Scope scope = new Scope(Optional.of(target.role()), Optional.empty(), OptionalDouble.empty(), Optional.empty(), Optional.empty());
            JobSheet.MaterialRule rule = new JobSheet.MaterialRule(scope, Optional.empty(), target.material(), OptionalDouble.of(mm));
            return new SectionEdit(Optional.empty(), name, sheet -> SheetEdits.withMaterial(sheet, rule));
        } catch (IllegalArgumentException unfit) {
            return new SectionEdit(Optional.of(unfit.getMessage()), name, sheet -> sheet);
        }
    }

    /** Reads a value for a setting, for everything or for some parts. */
    public static SectionEdit ofSetting(String name, String key, String text, Scope scope, List<Setting<?>> settings) {
        Optional<Setting<?>> setting = settings.stream().filter(each -> each.key().equals(key)).findFirst();
        if (setting.isEmpty()) {
            return new SectionEdit(Optional.of("no check that is installed knows " + key), name, sheet -> sheet);
        }
        try {
            setting.get().parse(text);
            return new SectionEdit(Optional.empty(), name, sheet -> SheetEdits.withSetting(sheet, key, text.strip(), scope));
        } catch (IllegalArgumentException unfit) {
            return new SectionEdit(Optional.of(unfit.getMessage()), name, sheet -> sheet);
        }
    }
}
