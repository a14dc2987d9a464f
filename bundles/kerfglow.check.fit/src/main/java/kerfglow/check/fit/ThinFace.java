// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.fit;

import java.util.List;
import kerfglow.api.Inspection;
import kerfglow.api.proof.Part;
import kerfglow.geometry.EdgeDistance;
import kerfglow.geometry.LocalWidth;
import kerfglow.geometry.Stretch;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

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
    /**
     * The point of a right corner stands 1.41 clearances off. The end of a lost stroke or tip stands off its own length at least, and a
     * stub worth telling is one clearance long and at most two wide, narrowing by no more than its walls may lean: 1.7 clearances.
     */
    private static final double CERTAIN_CLEARANCES = 1.5;
    private static final double OPPOSITE_DEGREES = 180;

    static ThinFace of(Inspection inspection, Part face) {
        return new ThinFace(inspection.settings().get(FitSettings.TIP_LENGTH, face), inspection.settings().get(FitSettings.FACING_ANGLE, face));
    }

    /** How long a tip may be, mm. */
    double tipMm(double sideMm) {
        return tipLengthMm > 0 ? tipLengthMm : TIP_ALLOWANCES * 2 * sideMm;
    }

    /**
     * True when a back is certain to lose nothing, without looking for stretches: it has as many pieces less counters as the face, so
     * that no neck is cut, and lies so near to every point of the face's edge that no stroke or tip worth telling can be lost.
     */
    boolean isWhole(Polygon face, Geometry back, double sideMm, Runnable pulse) {
        double near = CERTAIN_CLEARANCES * sideMm;
        if (sideMm == 0 || back.isEmpty() || tipMm(sideMm) < near || back.getNumGeometries() - holes(back) != 1 - face.getNumInteriorRing()) {
            return false;
        }
        EdgeDistance toBack = new EdgeDistance(back);
        boolean whole = toBack.isWithin(face.getExteriorRing(), near, pulse);
        for (int i = 0; i < face.getNumInteriorRing() && whole; i++) {
            whole = toBack.isWithin(face.getInteriorRingN(i), near, pulse);
        }
        return whole;
    }

    private static int holes(Geometry back) {
        int holes = 0;
        for (int i = 0; i < back.getNumGeometries(); i++) {
            holes += ((Polygon) back.getGeometryN(i)).getNumInteriorRing();
        }
        return holes;
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
            case STUB -> stretch.lengthMm() > Math.max(stretch.widthMm(), sideMm);
        }).toList();
    }
}
