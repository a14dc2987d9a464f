// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.fit;

import java.util.List;
import kerfglow.api.Inspection;
import kerfglow.api.proof.Part;
import kerfglow.geometry.LocalWidth;
import kerfglow.geometry.Stretch;
import org.locationtech.jts.geom.Geometry;

/**
 * Where a face is too narrow for a back: the stretches of its middle line along which it is narrower than twice a clearance.
 *
 * @param tipLengthMm tips no longer than this are corners of letters, mm; 0 for three total allowances
 * @param facingDegrees how far walls may lean and still make a stroke
 */
record ThinFace(double tipLengthMm, double facingDegrees) {
    /** Below this an allowance is none: LocalWidth asks for more than its resolution. */
    private static final double LEAST_LIMIT_MM = 0.01;
    private static final double TIP_ALLOWANCES = 3;
    private static final double OPPOSITE_DEGREES = 180;

    static ThinFace of(Inspection inspection, Part face) {
        return new ThinFace(inspection.settings().get(FitSettings.TIP_LENGTH, face), inspection.settings().get(FitSettings.FACING_ANGLE, face));
    }

    /** How long a tip may be, mm. */
    double tipMm(double sideMm) {
        return tipLengthMm > 0 ? tipLengthMm : TIP_ALLOWANCES * 2 * sideMm;
    }

    /** The stretches that lose more than a corner. */
    List<Stretch> stretches(Geometry face, double sideMm, Runnable pulse) {
        double limit = 2 * sideMm;
        if (limit < LEAST_LIMIT_MM) {
            return List.of();
        }
        double tip = tipMm(sideMm);
        return LocalWidth.narrowerThan(face, limit, OPPOSITE_DEGREES - facingDegrees, pulse).stream().filter(stretch -> switch (stretch.kind()) {
            case NECK -> true;
            case TAPER -> stretch.lengthMm() > tip;
            case STUB -> stretch.lengthMm() > stretch.widthMm();
        }).toList();
    }
}
