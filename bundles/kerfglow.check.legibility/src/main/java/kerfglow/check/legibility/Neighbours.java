// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.strtree.STRtree;

/** Where the nearest neighbours of pieces lie, for lines that run in any direction. */
final class Neighbours {
    /** Pieces of one line are this alike in size, and not farther apart than so many sizes. Assumed. */
    private static final double LEAST_RATIO = 0.4;
    private static final double REACH = 2;

    private Neighbours() {
    }

    /** For each piece the direction to its nearest neighbour of like size, radians clockwise from the right, in -pi/2 to pi/2. */
    static List<Double> nearest(List<Piece> pieces, Runnable pulse) {
        STRtree tree = new STRtree();
        pieces.forEach(piece -> tree.insert(piece.shape().getEnvelopeInternal(), piece));
        List<Double> directions = new ArrayList<>();
        for (Piece piece : pieces) {
            pulse.run();
            double size = size(piece);
            Envelope around = new Envelope(piece.centre());
            around.expandBy(REACH * size);
            Piece nearest = piece;
            for (Object found : tree.query(around)) {
                Piece other = (Piece) found;
                double ratio = Math.min(size, size(other)) / Math.max(size, size(other));
                if (other != piece && ratio >= LEAST_RATIO
                        && (nearest == piece || piece.centre().distance(other.centre()) < piece.centre().distance(nearest.centre()))) {
                    nearest = other;
                }
            }
            if (nearest != piece) {
                directions.add(direction(piece.centre(), nearest.centre()));
            }
        }
        return directions;
    }

    private static double size(Piece piece) {
        return piece.shape().getEnvelopeInternal().getDiameter();
    }

    private static double direction(Coordinate from, Coordinate to) {
        double dx = to.x - from.x;
        double dy = to.y - from.y;
        return dx < 0 ? Math.atan2(-dy, -dx) : Math.atan2(dy, dx); // there and back are one direction
    }
}
