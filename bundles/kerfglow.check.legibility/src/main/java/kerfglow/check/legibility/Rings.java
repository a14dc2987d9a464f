// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.strtree.STRtree;

/**
 * Takes pieces together that go round more than half of a circle, about as large and about as near to each other as letters. There no
 * one direction has rows, so that lettering round a circle would fall into short ones.
 */
final class Rings {
    /** Fewer pieces go round half a circle only by chance. Assumed. */
    private static final int LEAST_PIECES = 10;
    /** Pieces of a ring are this alike in size. Assumed, as in rows. */
    private static final double LEAST_RATIO = 0.3;
    /** How far middles of letters lie off the circle, in their usual size: half an ascender or a descender. Assumed. */
    private static final double OFF = 0.6;
    private static final double MOSTLY = 0.9;

    private Rings() {
    }

    /** The rings among the pieces. */
    static List<List<Piece>> of(List<Piece> pieces, Runnable pulse) {
        return clusters(pieces, pulse).stream().filter(cluster -> cluster.size() >= LEAST_PIECES && isRing(cluster)).toList();
    }

    private static boolean isRing(List<Piece> cluster) {
        Optional<double[]> circle = CircleFitter.throughPoints(cluster.stream().map(Piece::centre).toList());
        if (circle.isEmpty()) {
            return false;
        }
        Coordinate centre = new Coordinate(circle.get()[0], circle.get()[1]);
        double[] sizes = cluster.stream().mapToDouble(Rings::size).sorted().toArray();
        long near = cluster.stream().filter(piece -> Math.abs(piece.centre().distance(centre) - circle.get()[2]) <= OFF * sizes[sizes.length / 2]).count();
        double[] turns = cluster.stream().mapToDouble(piece -> Math.atan2(piece.centre().y - centre.y, piece.centre().x - centre.x)).sorted().toArray();
        return near >= MOSTLY * cluster.size() && CircleFitter.barest(turns)[1] < Math.PI;
    }

    private static double size(Piece piece) {
        Envelope box = piece.shape().getEnvelopeInternal();
        return Math.max(box.getWidth(), box.getHeight());
    }

    private static List<List<Piece>> clusters(List<Piece> pieces, Runnable pulse) {
        STRtree tree = new STRtree();
        for (int i = 0; i < pieces.size(); i++) {
            tree.insert(pieces.get(i).shape().getEnvelopeInternal(), i);
        }
        boolean[] seen = new boolean[pieces.size()];
        List<List<Piece>> clusters = new ArrayList<>();
        for (int i = 0; i < seen.length; i++) {
            if (!seen[i]) {
                clusters.add(cluster(i, pieces, tree, seen, pulse));
            }
        }
        return clusters;
    }

    private static List<Piece> cluster(int first, List<Piece> pieces, STRtree tree, boolean[] seen, Runnable pulse) {
        List<Integer> members = new ArrayList<>(List.of(first));
        seen[first] = true;
        for (int i = 0; i < members.size(); i++) {
            pulse.run();
            Piece piece = pieces.get(members.get(i));
            Envelope around = piece.shape().getEnvelopeInternal().copy();
            around.expandBy(Rows.MOST_GAP * size(piece));
            for (Object found : tree.query(around)) {
                int k = (Integer) found;
                if (!seen[k] && Math.min(size(piece), size(pieces.get(k))) >= LEAST_RATIO * Math.max(size(piece), size(pieces.get(k)))) {
                    seen[k] = true;
                    members.add(k);
                }
            }
        }
        return members.stream().map(pieces::get).toList();
    }
}
