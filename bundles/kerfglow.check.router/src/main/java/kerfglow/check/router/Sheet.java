// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.router;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import kerfglow.api.Inspection;
import kerfglow.api.proof.Part;

/**
 * What a part is cut from.
 *
 * @param material the job sheet's name for it, empty when it names none
 * @param thicknessMm its thickness, mm; NaN when not known
 */
record Sheet(String material, double thicknessMm) {
    /** Two diameters nearer than this are one bit; inch sizes are often rounded to a hundredth of a millimetre. */
    private static final double SAME_DIAMETER_MM = 0.01;

    static Sheet of(Part part) {
        return new Sheet(part.sheetMaterial().orElse(""), part.thicknessMm().orElse(Double.NaN));
    }

    OptionalDouble thickness() {
        return Double.isNaN(thicknessMm) ? OptionalDouble.empty() : OptionalDouble.of(thicknessMm);
    }

    /** The bits that may be used for it, smallest first; each diameter once, with its longest flute. */
    List<Bit> bits(List<Bit> stocked) {
        List<Bit> fitting = stocked.stream().filter(bit -> bit.isFor(material))
                .sorted(Comparator.comparingDouble(Bit::diameterMm).thenComparing(Comparator.comparingDouble(Bit::fluteMm).reversed()))
                .toList();
        return fitting.stream().filter(bit -> fitting.stream()
                .takeWhile(earlier -> earlier != bit)
                .noneMatch(earlier -> bit.diameterMm() - earlier.diameterMm() < SAME_DIAMETER_MM && earlier.fluteMm() >= bit.fluteMm()))
                .toList();
    }

    boolean isReachedBy(Bit bit) {
        return Double.isNaN(thicknessMm) || bit.reaches(thicknessMm);
    }

    /**
     * The bit that findings are about: the one that the job asks for, else the smallest that reaches through, else the smallest.
     *
     * @param wantedMm its diameter, 0 for choose
     */
    Optional<Bit> used(List<Bit> bits, double wantedMm) {
        if (wantedMm > 0) {
            return bits.stream().filter(bit -> Math.abs(bit.diameterMm() - wantedMm) < SAME_DIAMETER_MM).findFirst()
                    .or(() -> Optional.of(Bit.given(wantedMm)));
        }
        return bits.stream().filter(this::isReachedBy).findFirst().or(() -> bits.stream().findFirst());
    }

    /** For a message: {@code acrylic, 3 mm}. */
    String words(Inspection inspection) {
        String name = material.isEmpty() ? "material not named" : material;
        return Double.isNaN(thicknessMm) ? name : name + ", " + inspection.length(thicknessMm);
    }
}
