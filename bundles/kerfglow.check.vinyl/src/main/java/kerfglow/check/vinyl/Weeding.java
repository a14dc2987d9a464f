// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.vinyl;

import java.util.ArrayList;
import java.util.List;
import kerfglow.api.Settings;
import kerfglow.api.proof.Part;
import kerfglow.geometry.LocalWidth;
import kerfglow.geometry.Stretch;
import org.locationtech.jts.geom.Polygon;

/**
 * What of one colour is too small or too thin.
 *
 * @param smallFilm pieces of film that are too small
 * @param smallWaste pieces of waste that are too small
 * @param thinFilm strokes of film that are too thin; small pieces are left out
 * @param thinWaste slivers of waste that are too thin; small pieces are left out
 * @param wastePieces how many pieces of waste there are
 */
record Weeding(List<Part> smallFilm, List<Polygon> smallWaste, List<ThinStroke> thinFilm, List<Stretch> thinWaste, int wastePieces) {
    private static final double OPPOSITE_DEGREES = 180;
    /** A tip may be thin over so many least widths: 2 atan(1/6) = 18.9 degrees and wider run out faster. */
    private static final double TIP_WIDTHS = 3;
    /** Sizes are compared to this, mm: rounding of coordinates. */
    private static final double RESOLUTION_MM = 0.001;

    /** A thin stroke of a piece. */
    record ThinStroke(Part part, Stretch stretch) {
    }

    /** The limits for one piece. */
    record Limits(double pieceMm, double strokeMm, double wasteMm, double tipMm, double facingDegrees, double borderMm) {
        static Limits of(Settings settings, Part part) {
            double stroke = settings.get(VinylSettings.LEAST_STROKE, part);
            double tip = settings.get(VinylSettings.TIP_LENGTH, part);
            return new Limits(settings.get(VinylSettings.LEAST_PIECE, part), stroke, settings.get(VinylSettings.LEAST_WASTE, part),
                    tip > 0 ? tip : TIP_WIDTHS * stroke, OPPOSITE_DEGREES - settings.get(VinylSettings.FACING_ANGLE, part),
                    settings.get(VinylSettings.SPACING, part));
        }
    }

    /** The side of a square as large as a piece, mm. */
    static double sideMm(Polygon piece) {
        return Math.sqrt(piece.getArea());
    }

    /**
     * Measures one colour.
     *
     * @param limits those that hold for each of its parts, in their order; waste is measured by those of the first
     * @param pulse called often; may throw
     */
    static Weeding of(Film film, List<Limits> limits, Runnable pulse) {
        List<Part> smallFilm = new ArrayList<>();
        List<ThinStroke> thinFilm = new ArrayList<>();
        for (int i = 0; i < film.parts().size(); i++) {
            pulse.run();
            Part part = film.parts().get(i);
            Limits own = limits.get(i);
            if (sideMm(part.shape()) < own.pieceMm() - RESOLUTION_MM) {
                smallFilm.add(part);
            } else {
                thin(part.shape(), own.strokeMm(), own, pulse).forEach(stretch -> thinFilm.add(new ThinStroke(part, stretch)));
            }
        }
        Limits common = limits.get(0);
        List<Polygon> smallWaste = new ArrayList<>();
        List<Stretch> thinWaste = new ArrayList<>();
        List<Polygon> waste = film.waste(common.borderMm());
        for (Polygon piece : waste) {
            if (sideMm(piece) < common.pieceMm() - RESOLUTION_MM) {
                smallWaste.add(piece);
            } else {
                thinWaste.addAll(thin(piece, common.wasteMm(), common, pulse));
            }
        }
        return new Weeding(smallFilm, smallWaste, thinFilm, thinWaste, waste.size());
    }

    private static List<Stretch> thin(Polygon piece, double leastMm, Limits limits, Runnable pulse) {
        return leastMm <= RESOLUTION_MM ? List.of() : LocalWidth.narrowerThan(piece, leastMm, limits.facingDegrees(), pulse).stream()
                .filter(stretch -> stretch.kind() == Stretch.Kind.NECK || stretch.lengthMm() > limits.tipMm()).toList();
    }
}
