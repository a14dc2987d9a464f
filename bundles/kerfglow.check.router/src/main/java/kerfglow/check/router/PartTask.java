// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.router;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import kerfglow.api.Settings;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.geometry.BitReach;
import kerfglow.geometry.LocalWidth;
import kerfglow.geometry.Residue;
import kerfglow.geometry.Stretch;
import org.locationtech.jts.geom.LinearRing;

/**
 * What is to be measured on one part, with the settings that hold for it. Reads no settings while it measures, so that it can run
 * on any thread.
 *
 * @param part the part
 * @param sheet what it is cut from
 * @param bits the bits for that, smallest first; may be empty
 * @param used the bit that findings are about; empty when there is none
 * @param isNamed true when the job asks for that bit and no other
 * @param leastStrokeMm least width of its strokes; for an opening the bit's diameter, 0 when there is no bit
 * @param taperLengthMm how long a stroke may be that ends, in a tip or blunt
 * @param facingDegrees least angle between contacts of opposite walls
 * @param leftDepthMm how deep anything may stay uncut
 */
record PartTask(Part part, Sheet sheet, List<Bit> bits, Optional<Bit> used, boolean isNamed, double leastStrokeMm,
        double taperLengthMm, double facingDegrees, double leftDepthMm) {
    private static final double OPPOSITE_DEGREES = 180;

    static PartTask of(Part part, List<Bit> stocked, Settings settings) {
        Sheet sheet = Sheet.of(part);
        List<Bit> bits = sheet.bits(stocked);
        double wanted = settings.get(RouterSettings.BIT_DIAMETER, part);
        Optional<Bit> used = sheet.used(bits, wanted);
        double least = part.role() == Role.OPENING ? used.map(Bit::diameterMm).orElse(0.0)
                : settings.get(RouterSettings.LEAST_STROKE, part);
        double taper = settings.get(RouterSettings.TAPER_LENGTH, part);
        return new PartTask(part, sheet, bits, used, wanted > 0, least, taper > 0 ? taper : least,
                OPPOSITE_DEGREES - settings.get(RouterSettings.FACING_ANGLE, part), settings.get(RouterSettings.LEFT_DEPTH, part));
    }

    /**
     * Measures.
     *
     * @param isCut which rings of a cut-out part are its own to cut; those of a panel that an opening stands for are not
     * @param pulse called often; may throw
     */
    PartResult measure(Predicate<LinearRing> isCut, Runnable pulse) {
        List<Stretch> thin = leastStrokeMm > 0
                ? LocalWidth.narrowerThan(part.shape(), leastStrokeMm, facingDegrees, pulse).stream().filter(this::counts).toList()
                : List.of();
        Map<Bit, List<Residue>> left = new LinkedHashMap<>();
        bits.forEach(bit -> left.put(bit, left(bit, isCut, pulse)));
        used.ifPresent(bit -> left.computeIfAbsent(bit, given -> left(given, isCut, pulse)));
        return new PartResult(this, thin, left);
    }

    private List<Residue> left(Bit bit, Predicate<LinearRing> isCut, Runnable pulse) {
        BitReach reach = new BitReach(bit.diameterMm(), leftDepthMm, facingDegrees, pulse);
        return part.role() == Role.OPENING ? reach.inOpening(part.shape()) : reach.aroundPart(part.shape(), isCut);
    }

    /** What ends short, in a tip or blunt, is the corner of a letter or a bump. */
    private boolean counts(Stretch stretch) {
        return stretch.kind() == Stretch.Kind.NECK || stretch.lengthMm() > taperLengthMm;
    }
}
