// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.strtree.STRtree;

/** In which directions lines run, from where the nearest neighbours of pieces lie. */
final class Directions {
    /** Pieces of one line are this alike in size, and not farther apart than so many sizes. Assumed. */
    private static final double LEAST_RATIO = 0.4;
    private static final double REACH = 2;

    /** Neighbours in one line lie within this of its direction, radians: heights differ. Assumed. */
    static final double LIKE = Math.toRadians(12);
    private static final int BINS = 36;

    private Directions() {
    }

    /** The one direction that most pieces agree on when it is not level, for then level rows would only cut lines up; empty otherwise. */
    static Optional<Double> plain(List<Piece> pieces, Runnable pulse) {
        List<Double> all = nearest(pieces, pulse);
        return common(pieces, 0, pulse).filter(direction -> {
            long like = all.stream().filter(each -> Math.abs(Math.IEEEremainder(each - direction, Math.PI)) < LIKE).count();
            long level = all.stream().filter(each -> Math.abs(each) < LIKE).count();
            boolean upright = Math.PI / 2 - Math.abs(direction) < LIKE; // may be a stack
            return Math.abs(direction) > LIKE && !upright && like > all.size() / 2 && level < all.size() / 4;
        });
    }

    /** The direction that most pieces have their nearest neighbour in; higher ranks are less common ones; empty beyond the last. */
    static Optional<Double> common(List<Piece> pieces, int rank, Runnable pulse) {
        List<List<Double>> bins = new ArrayList<>();
        for (int i = 0; i < BINS; i++) {
            bins.add(new ArrayList<>());
        }
        nearest(pieces, pulse).forEach(direction -> bins.get((int) Math.min(BINS - 1, (direction / Math.PI + 0.5) * BINS)).add(direction));
        bins.removeIf(List::isEmpty);
        bins.sort(Comparator.comparingInt((List<Double> bin) -> -bin.size())); // stable, so the same from run to run
        return rank >= bins.size() ? Optional.empty() : Optional.of(bins.get(rank).stream().mapToDouble(Double::doubleValue).average().orElseThrow());
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
