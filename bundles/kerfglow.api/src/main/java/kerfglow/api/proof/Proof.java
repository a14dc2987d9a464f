// SPDX-License-Identifier: Apache-2.0
package kerfglow.api.proof;

import java.util.List;
import java.util.Objects;

/**
 * One imported SVG file; immutable.
 *
 * @param file the name that the person gave
 * @param sha256 digest of the file's bytes, 64 lower-case hex digits
 * @param widthMm width of the viewport at the real size of the sign, mm
 * @param heightMm height of the viewport at the real size of the sign, mm
 * @param scale how many times larger the sign is than the file says (10 for a file drawn 1:10)
 * @param chordErrorMm how far a flattened curve may lie from the true one, mm at real size
 * @param elements every drawn element in paint order, bottom first, hidden ones too
 * @param notes what was not taken over as drawn
 */
public record Proof(String file, String sha256, double widthMm, double heightMm, double scale, double chordErrorMm,
        List<Element> elements, List<ImportNote> notes) {
    public Proof {
        Objects.requireNonNull(file, "file");
        Objects.requireNonNull(sha256, "sha256");
        elements = List.copyOf(elements);
        notes = List.copyOf(notes);
    }
}
