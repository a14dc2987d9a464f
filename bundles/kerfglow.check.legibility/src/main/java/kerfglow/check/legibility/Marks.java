// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.locationtech.jts.geom.Envelope;

/** Finds dots, accents and points: small pieces within the reach of a line that are no row of letters of their own. */
final class Marks {
    /** Dots and accents, in heights of the line: how large, and how far above. */
    private static final double MOST_MARK = 0.6;
    private static final double ABOVE = 0.6;
    private static final double BELOW = 0.45;
    /** So many small letters beside a large line are a line of small print. Assumed. */
    private static final int OWN_ROW = 3;

    private Marks() {
    }

    /** The marks of a line among the pieces that are in no line yet. */
    static List<Piece> of(Line line, Collection<Piece> left, double leastConfidence, Runnable pulse) {
        if (line.frame().form() == Frame.Form.STACKED) {
            return List.of();
        }
        List<Piece> marks = new ArrayList<>();
        Envelope reach = line.place().getEnvelopeInternal().copy();
        reach.expandBy(line.model().capMm());
        for (Piece piece : left) {
            if (reach.intersects(piece.shape().getEnvelopeInternal()) && isMark(Upright.of(piece, line.frame()).box(), line)) {
                marks.add(piece);
            }
        }
        Set<Piece> letters = new HashSet<>();
        for (List<Piece> row : Rows.along(marks, line.frame().angle(), pulse)) {
            LineFitter.Fit fit = LineFitter.at(row, line.frame());
            if (row.size() >= OWN_ROW && Likeness.of(fit.model(), row.size()) >= Math.max(leastConfidence, Double.MIN_VALUE)) {
                letters.addAll(row);
            }
        }
        marks.removeAll(letters);
        return marks;
    }

    private static boolean isMark(Envelope box, Line line) {
        double cap = line.model().capMm();
        double base = line.model().base();
        boolean small = box.getHeight() <= MOST_MARK * cap && box.getWidth() <= cap;
        boolean within = box.getMinY() >= base - BELOW * cap && box.getMaxY() <= base + (1 + ABOVE) * cap;
        return small && within && line.letters().stream().anyMatch(letter -> gap(letter.box(), box) <= MOST_MARK * cap);
    }

    /** How far apart two boxes stand along the line; negative where they overlap. */
    static double gap(Envelope a, Envelope b) {
        return Math.max(a.getMinX(), b.getMinX()) - Math.min(a.getMaxX(), b.getMaxX());
    }
}
