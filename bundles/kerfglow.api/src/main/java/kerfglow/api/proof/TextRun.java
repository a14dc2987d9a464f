// SPDX-License-Identifier: Apache-2.0
package kerfglow.api.proof;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.locationtech.jts.geom.LineString;

/**
 * The live text behind an element whose outlines were made from a font.
 *
 * @param text the characters, white space collapsed as SVG does
 * @param fontAsked the family that the file names first
 * @param fontUsed the family that the outlines come from
 * @param substituted true when {@code fontUsed} is not a family that the file asks for
 * @param sizeMm the font size (em) at real size, mm
 * @param capHeightMm how high the H of the font that was used stands above the base line, at right angles to it, mm; empty where the
 *     font has none, and where characters came from fonts of several heights
 * @param xHeightMm the same of its x
 * @param baseLine the straight line that all the characters stand on, from the origin of the first to the end of the last, mm; empty on
 *     a path, in several lines, and for turned characters
 */
public record TextRun(String text, String fontAsked, String fontUsed, boolean substituted, double sizeMm, OptionalDouble capHeightMm,
        OptionalDouble xHeightMm, Optional<LineString> baseLine) {
    public TextRun {
        Objects.requireNonNull(text, "text");
        Objects.requireNonNull(fontAsked, "fontAsked");
        Objects.requireNonNull(fontUsed, "fontUsed");
        Objects.requireNonNull(capHeightMm, "capHeightMm");
        Objects.requireNonNull(xHeightMm, "xHeightMm");
        Objects.requireNonNull(baseLine, "baseLine");
    }

    /** A run whose heights are not known. */
    public TextRun(String text, String fontAsked, String fontUsed, boolean substituted, double sizeMm) {
        this(text, fontAsked, fontUsed, substituted, sizeMm, OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty());
    }
}
