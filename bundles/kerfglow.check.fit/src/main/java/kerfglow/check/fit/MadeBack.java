// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import kerfglow.api.Inspection;
import kerfglow.api.SharedSettings;
import kerfglow.api.proof.Part;
import kerfglow.geometry.Inset;
import kerfglow.geometry.LocalWidth;
import kerfglow.geometry.Stretch;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Point;

/**
 * The back that a face needs, where none is drawn: its inset by the clearance, and what becomes of it where the face is narrow.
 *
 * @param face the face
 * @param allowance how much smaller the back is
 * @param shape the back, polygonal; empty when nothing is left
 * @param faults where the back is not what the face is
 */
record MadeBack(Part face, Allowance allowance, Geometry shape, List<Fault> faults) {
    /** A place where the back is not what the face is; {@code widthMm} is the face's least width there, {@code lengthMm} how far. */
    record Fault(Kind kind, Stretch stretch, Geometry place, Coordinate at, double widthMm, double lengthMm) {
        enum Kind { VANISHES, SPLITS, OPENS_COUNTER, LOSES_STROKE, LOSES_TIP }
    }

    /** What is to be made; reads no settings while it is made, so that it can be made on any thread. */
    record Task(Part face, Allowance allowance, Inset.Join join, double mitreLimit, ThinFace thin, double chordErrorMm) {
        static Task of(Inspection inspection, Part face) {
            return new Task(face, Allowance.of(inspection, SharedSettings.BACK_ALLOWANCE, face),
                    Inset.Join.valueOf(inspection.settings().get(SharedSettings.BACK_JOINS, face).toUpperCase(Locale.ROOT)),
                    inspection.settings().get(SharedSettings.BACK_MITRE_LIMIT, face), ThinFace.of(inspection, face), inspection.proof().chordErrorMm());
        }

        MadeBack make(Runnable pulse) {
            Geometry shape = Inset.of(face.shape(), allowance.sideMm(), join, mitreLimit, chordErrorMm);
            pulse.run();
            return new MadeBack(face, allowance, shape, faults(shape, pulse));
        }

        private List<Fault> faults(Geometry shape, Runnable pulse) {
            if (shape.isEmpty()) {
                double widest = LocalWidth.largestDiscMm(face.shape());
                Point within = face.shape().getInteriorPoint();
                return List.of(new Fault(Fault.Kind.VANISHES, null, face.shape(), within.getCoordinate(), widest, 0));
            }
            if (thin.isWhole(face.shape(), shape, allowance.sideMm(), pulse)) {
                return List.of();
            }
            List<Fault> faults = new ArrayList<>();
            NearPieces pieces = new NearPieces(shape);
            for (Stretch stretch : thin.stretches(face.shape(), allowance.sideMm(), pulse)) {
                pulse.run();
                Fault.Kind kind = switch (stretch.kind()) {
                    case TAPER -> Fault.Kind.LOSES_TIP;
                    case STUB -> Fault.Kind.LOSES_STROKE;
                    case NECK -> piecesAtEnds(stretch, pieces, allowance.sideMm()) > 1 ? Fault.Kind.SPLITS : Fault.Kind.OPENS_COUNTER;
                };
                faults.add(new Fault(kind, stretch, stretch.axis(), stretch.at(), stretch.widthMm(), stretch.lengthMm()));
            }
            return faults;
        }
    }

    /** A middle line ends where the face becomes wide enough: on the edge of the back, or one clearance off where a mitre cuts the mouth. */
    private static int piecesAtEnds(Stretch stretch, NearPieces pieces, double reachMm) {
        Set<Integer> near = new TreeSet<>();
        ends(stretch.axis()).forEach(end -> pieces.nearest(end, reachMm).ifPresent(near::add));
        return near.size();
    }

    private static List<Point> ends(Geometry axis) {
        List<Point> ends = new ArrayList<>();
        for (int i = 0; i < axis.getNumGeometries(); i++) {
            if (axis.getGeometryN(i) instanceof LineString line) {
                ends.add(line.getStartPoint());
                ends.add(line.getEndPoint());
            } else if (axis.getGeometryN(i) instanceof Point point) {
                ends.add(point);
            }
        }
        return ends;
    }
}
