// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.UnaryOperator;
import kerfglow.api.Quantity;
import kerfglow.api.UnitSystem;
import kerfglow.api.Units;
import kerfglow.desktop.section.SectionEdit;
import kerfglow.host.JobSheet;
import kerfglow.job.SheetEdits;

/**
 * One field of the form about the sign as a whole, with what was entered.
 *
 * @param field which
 * @param text what was entered; empty takes the value out
 * @param layer for a known size, the layer that it is of; empty for all that is shown
 */
public record SheetForm(Field field, String text, Optional<String> layer) {
    /** The fields. */
    public enum Field {
        TITLE("what the sign is"), UNITS("units"), BUILD("how the sign is built"), SHOP("shop sheet"), SCALE("scale"), WIDTH("known width"), HEIGHT("known height");

        private final String word;

        Field(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    /** As the file says it. */
    private static final double REAL_SIZE = 1;
    /** The same bounds as in a job sheet that is written by hand: beyond them a typing error is likelier. */
    private static final double MOST_SCALE = 1000;

    /** The ways to say how large the sign is. */
    public static final List<Field> SIZES = List.of(Field.SCALE, Field.WIDTH, Field.HEIGHT);

    /** What the sheet says now, as a person would enter it. */
    public static String text(Field field, JobSheet sheet, UnitSystem units) {
        return switch (field) {
            case TITLE -> sheet.title();
            case UNITS -> sheet.units().map(each -> each.name().toLowerCase(Locale.ROOT)).orElse("");
            case BUILD -> sheet.build().orElse("");
            case SHOP -> sheet.shopSheet().map(Path::toString).orElse("");
            case SCALE -> Units.format(sheet.scale().orElse(REAL_SIZE), Quantity.RATIO, units);
            case WIDTH, HEIGHT -> sheet.knownDimension().filter(known -> known.horizontal() == (field == Field.WIDTH)).map(known -> Units.format(known.lengthMm(), Quantity.LENGTH, units))
                    .orElse("");
        };
    }

    /** Which of the sizes the sheet gives. */
    public static Field size(JobSheet sheet) {
        return sheet.knownDimension().map(known -> known.horizontal() ? Field.WIDTH : Field.HEIGHT).orElse(Field.SCALE);
    }

    SectionEdit edit() {
        try {
            return new SectionEdit(Optional.empty(), "Change " + field.word(), change(text.strip()));
        } catch (IllegalArgumentException unfit) {
            return new SectionEdit(Optional.of(unfit.getMessage()), "Change " + field.word(), sheet -> sheet);
        }
    }

    private UnaryOperator<JobSheet> change(String given) {
        Optional<String> word = Optional.of(given).filter(each -> !each.isEmpty());
        return switch (field) {
            case TITLE -> sheet -> SheetEdits.withTitle(sheet, given);
            case UNITS -> {
                UnitSystem units = UnitSystem.valueOf(given.toUpperCase(Locale.ROOT));
                yield sheet -> SheetEdits.withUnits(sheet, units);
            }
            case BUILD -> {
                SheetEdits.withBuild(JobSheet.NONE, word); // refuses here what would be refused later
                yield sheet -> SheetEdits.withBuild(sheet, word);
            }
            case SHOP -> sheet -> SheetEdits.withShopSheet(sheet, word.map(Path::of));
            case SCALE -> {
                double scale = scale(given);
                yield sheet -> SheetEdits.withScale(sheet, scale);
            }
            case WIDTH, HEIGHT -> {
                double mm = Units.lengthMm(given);
                if (!(mm > 0)) {
                    throw new IllegalArgumentException("a known size lies above 0");
                }
                JobSheet.Selector selector = new JobSheet.Selector(layer, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
                yield sheet -> SheetEdits.withKnownDimension(sheet, new JobSheet.KnownDimension(selector, field == Field.WIDTH, mm));
            }
        };
    }

    /** {@code 10} or {@code 1:10}; empty is 1. */
    private static double scale(String given) {
        try {
            double value = given.isEmpty() ? REAL_SIZE : Double.parseDouble(given.replaceFirst("^1\\s*:\\s*", ""));
            if (value >= 1 / MOST_SCALE && value <= MOST_SCALE) {
                return value;
            }
        } catch (NumberFormatException notANumber) {
            // falls through to the message, which fits both
        }
        throw new IllegalArgumentException("\"" + given + "\" must be how many times larger the sign is than the drawing, from 0.001 to 1000, for instance 10 or 1:10");
    }
}
