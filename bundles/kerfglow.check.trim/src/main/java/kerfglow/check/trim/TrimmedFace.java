// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.trim;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import kerfglow.api.Inspection;
import kerfglow.api.Settings;
import kerfglow.api.proof.Part;
import kerfglow.geometry.LocalWidth;
import kerfglow.geometry.Opening;
import kerfglow.geometry.Stretch;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LinearRing;

/**
 * A face with its moulding, as measured.
 *
 * @param task what was measured
 * @param lit what stays lit between the lips, polygonal
 * @param dark stretches of the middle line along which too little stays lit
 * @param bends bends that are too tight
 * @param lengthsMm the length of each edge, the outline first, mm
 */
record TrimmedFace(Task task, Geometry lit, List<Stretch> dark, List<Curve> bends, List<Double> lengthsMm) {
    /** What is to be measured; reads no settings while it is, so that it can run on any thread. */
    record Task(Part face, Moulding moulding, double leastLitMm, double tipLengthMm, double facingDegrees, Bends bends, double chordErrorMm) {
        private static final double OPPOSITE_DEGREES = 180;
        private static final double TIP_WIDTHS = 3;

        static Task of(Inspection inspection, Part face, Set<String> missing) {
            Settings settings = inspection.settings();
            Moulding moulding = Moulding.of(inspection, face, missing);
            Bends bends = new Bends(moulding.outsideRadiusMm(), moulding.insideRadiusMm(),
                    Math.toRadians(settings.get(TrimSettings.CORNER_ANGLE, face)),
                    settings.get(TrimSettings.CORNER_RADIUS, face), Math.toRadians(settings.get(TrimSettings.LEAST_TURN, face)));
            double leastLit = settings.get(TrimSettings.LEAST_LIT, face);
            double tip = settings.get(TrimSettings.TIP_LENGTH, face);
            return new Task(face, moulding, leastLit, tip > 0 ? tip : TIP_WIDTHS * (leastLit + 2 * moulding.lipMm()),
                    settings.get(TrimSettings.FACING_ANGLE, face), bends, inspection.proof().chordErrorMm());
        }

        /** The width of a stroke that leaves just enough lit, mm. */
        double wideEnoughMm() {
            return leastLitMm + 2 * moulding.lipMm();
        }

        TrimmedFace measure(Runnable pulse) {
            Geometry lit = moulding.lipMm() > 0 ? Opening.erosion(face.shape(), moulding.lipMm(), chordErrorMm) : face.shape();
            pulse.run();
            List<Stretch> dark = LocalWidth.narrowerThan(face.shape(), wideEnoughMm(), OPPOSITE_DEGREES - facingDegrees, pulse).stream()
                    .filter(this::counts).toList();
            List<Curve> found = new ArrayList<>();
            List<Double> lengths = new ArrayList<>();
            LinearRing shell = face.shape().getExteriorRing();
            found.addAll(bends.of(shell, false));
            lengths.add(shell.getLength());
            for (int i = 0; i < face.shape().getNumInteriorRing(); i++) {
                LinearRing counter = face.shape().getInteriorRingN(i);
                found.addAll(bends.of(counter, true));
                lengths.add(counter.getLength());
            }
            return new TrimmedFace(this, lit, dark, found, lengths);
        }

        /** Short tips are corners of letters; a stub shorter than it is wide is a bump. */
        private boolean counts(Stretch stretch) {
            return switch (stretch.kind()) {
                case NECK -> true;
                case TAPER -> stretch.lengthMm() > tipLengthMm;
                case STUB -> stretch.lengthMm() > stretch.widthMm();
            };
        }
    }

    /** What stays lit across a stroke, mm. */
    double litMm(Stretch stretch) {
        return Math.max(0, stretch.widthMm() - 2 * task.moulding().lipMm());
    }

    double lengthMm() {
        return lengthsMm.stream().mapToDouble(Double::doubleValue).sum();
    }

    /** One where the ends of each edge meet, and one for each whole roll that an edge takes. */
    int joints() {
        return lengthsMm.stream().mapToInt(length -> Math.max(1, (int) Math.ceil(length / task.moulding().rollMm()))).sum();
    }
}
