// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.vinyl;

import kerfglow.api.Settings;
import kerfglow.api.proof.Part;

/**
 * How long weeding one colour takes: so many seconds for each piece of film and of waste, and so many for each metre of cut. A figure to
 * compare jobs with, no promise.
 *
 * @param filmPieces pieces of film
 * @param wastePieces pieces of waste
 * @param cutMm length of all cuts, mm
 * @param perPiece seconds for a piece
 * @param perMetre seconds for a metre of cut
 */
record Effort(int filmPieces, int wastePieces, double cutMm, double perPiece, double perMetre) {
    private static final double MM_PER_M = 1000;

    static Effort of(Film film, int wastePieces, Settings settings) {
        Part first = film.parts().get(0);
        return new Effort(film.parts().size(), wastePieces, film.cutMm(), settings.get(VinylSettings.SECONDS_PER_PIECE, first),
                settings.get(VinylSettings.SECONDS_PER_METRE, first));
    }

    int pieces() {
        return filmPieces + wastePieces;
    }

    double seconds() {
        return pieces() * perPiece + cutMm / MM_PER_M * perMetre;
    }
}
