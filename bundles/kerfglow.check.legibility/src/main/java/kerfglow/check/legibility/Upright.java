// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;

/**
 * One piece stood upright.
 *
 * @param piece on the sign
 * @param up from the sign to upright
 * @param shape upright: u to the right, v up, mm; a word in one piece on a circle is bent straight
 * @param ends of the shape
 */
record Upright(Piece piece, AffineTransformation up, Polygon shape, Ends ends) {
    static Upright of(Piece piece, Frame frame) {
        AffineTransformation up = frame.upright(piece);
        Polygon shape = (Polygon) up.transform(piece.shape());
        if (frame.form() == Frame.Form.ARCHED && Ends.isWide(shape.getEnvelopeInternal())) {
            shape = frame.unbent(piece.shape());
        }
        return new Upright(piece, up, shape, Ends.of(shape));
    }

    Envelope box() {
        return shape.getEnvelopeInternal();
    }
}
