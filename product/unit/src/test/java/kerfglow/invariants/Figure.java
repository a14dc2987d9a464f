// SPDX-License-Identifier: Apache-2.0
package kerfglow.invariants;

import java.awt.geom.PathIterator;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.util.AffineTransformation;

/**
 * One shape of a sample, mm.
 *
 * @param id its id in the file
 * @param paint its fill, #rrggbb
 * @param kind how it may be written beside a path
 * @param contours its outlines
 */
record Figure(String id, String paint, Kind kind, List<Contour> contours) {
    /** What a shape is beside a path; a circle's contour is four arcs, as SVG defines it. */
    enum Kind { PATH, POLYGON, RECTANGLE, CIRCLE }

    /**
     * One outline: where it starts, then pieces of 2 numbers (line), 6 (cubic) or 3 (quarter circle: radius and end).
     *
     * @param closed whether it ends with a close command
     */
    record Contour(boolean closed, double[] start, List<double[]> pieces) {
        /** The other way round, and begun elsewhere; only for closed outlines without arcs. */
        Contour turned(int first) {
            if (!closed || pieces.isEmpty() || pieces.stream().anyMatch(piece -> piece.length == 3)) {
                return this;
            }
            List<double[]> ring = new ArrayList<>(pieces);
            double[] end = end(ring.get(ring.size() - 1));
            if (end[0] != start[0] || end[1] != start[1]) {
                ring.add(start);
            }
            List<double[]> back = new ArrayList<>();
            for (int i = 0; i < ring.size(); i++) {
                int at = Math.floorMod(first - i, ring.size());
                double[] piece = ring.get(at);
                double[] to = end(ring.get(Math.floorMod(at - 1, ring.size())));
                back.add(piece.length == 2 ? to : new double[] {piece[2], piece[3], piece[0], piece[1], to[0], to[1]});
            }
            return new Contour(true, end(ring.get(Math.floorMod(first, ring.size()))), back);
        }

        private static double[] end(double[] piece) {
            return new double[] {piece[piece.length - 2], piece[piece.length - 1]};
        }
    }

    /** A rectangle with its sides along the axes. */
    static Figure rectangle(String id, String paint, double x, double y, double width, double height) {
        return new Figure(id, paint, Kind.RECTANGLE, List.of(ring(x, y, x + width, y, x + width, y + height, x, y + height)));
    }

    /** A circle. */
    static Figure circle(String id, String paint, double x, double y, double radius) {
        return new Figure(id, paint, Kind.CIRCLE, List.of(new Contour(true, new double[] {x + radius, y}, List.of(new double[] {radius, x, y + radius},
                new double[] {radius, x - radius, y}, new double[] {radius, x, y - radius}, new double[] {radius, x + radius, y}))));
    }

    /** Rings of corners x, y, x, y ...; one ring may also be written as a polygon. */
    static Figure polygon(String id, String paint, double[]... rings) {
        List<Contour> contours = new ArrayList<>();
        for (double[] each : rings) {
            contours.add(ring(each));
        }
        return new Figure(id, paint, rings.length == 1 ? Kind.POLYGON : Kind.PATH, List.copyOf(contours));
    }

    /** An outline that does not close. */
    static Figure open(String id, String paint, double... corners) {
        return new Figure(id, paint, Kind.PATH, List.of(new Contour(false, new double[] {corners[0], corners[1]}, ring(corners).pieces())));
    }

    /** What Java's own outlines give, quadratics raised to cubics, which is exact. */
    static Figure of(String id, String paint, PathIterator path) {
        List<Contour> contours = new ArrayList<>();
        double[] at = new double[6];
        double[] start = null;
        double[] last = null;
        List<double[]> pieces = new ArrayList<>();
        for (; !path.isDone(); path.next()) {
            switch (path.currentSegment(at)) {
                case PathIterator.SEG_MOVETO -> {
                    start = new double[] {at[0], at[1]};
                    pieces = new ArrayList<>();
                }
                case PathIterator.SEG_LINETO -> pieces.add(new double[] {at[0], at[1]});
                case PathIterator.SEG_QUADTO -> pieces.add(new double[] {(last[0] + 2 * at[0]) / 3, (last[1] + 2 * at[1]) / 3,
                    (at[2] + 2 * at[0]) / 3, (at[3] + 2 * at[1]) / 3, at[2], at[3]});
                case PathIterator.SEG_CUBICTO -> pieces.add(at.clone());
                default -> contours.add(new Contour(true, start, List.copyOf(pieces)));
            }
            last = pieces.isEmpty() ? start : Contour.end(pieces.get(pieces.size() - 1));
        }
        return new Figure(id, paint, Kind.PATH, List.copyOf(contours));
    }

    private static Contour ring(double... corners) {
        List<double[]> pieces = new ArrayList<>();
        for (int i = 2; i < corners.length; i += 2) {
            pieces.add(new double[] {corners[i], corners[i + 1]});
        }
        return new Contour(true, new double[] {corners[0], corners[1]}, List.copyOf(pieces));
    }

    /** The same, every closed outline the other way round and begun elsewhere. */
    Figure turned(int first) {
        return new Figure(id, paint, kind == Kind.RECTANGLE ? Kind.POLYGON : kind, contours.stream().map(contour -> contour.turned(first)).toList());
    }

    /** Path data with a map worked into every number; the map may turn, mirror and scale alike. */
    String data(AffineTransformation map) {
        double[] m = map.getMatrixEntries();
        double scale = Math.sqrt(Math.abs(map.getDeterminant()));
        boolean mirrors = map.getDeterminant() < 0;
        StringBuilder data = new StringBuilder();
        for (Contour contour : contours) {
            data.append('M').append(points(m, contour.start, 0));
            for (double[] piece : contour.pieces) {
                data.append(switch (piece.length) {
                    case 2 -> "L" + points(m, piece, 0);
                    case 3 -> "A" + number(piece[0] * scale) + " " + number(piece[0] * scale) + " 0 0 " + (mirrors ? 0 : 1) + " " + points(m, piece, 1);
                    default -> "C" + points(m, piece, 0);
                });
            }
            data.append(contour.closed ? "Z" : "");
        }
        return data.toString();
    }

    private static String points(double[] m, double[] numbers, int from) {
        StringBuilder text = new StringBuilder();
        for (int i = from; i < numbers.length; i += 2) {
            Coordinate at = new Coordinate(m[0] * numbers[i] + m[1] * numbers[i + 1] + m[2], m[3] * numbers[i] + m[4] * numbers[i + 1] + m[5]);
            text.append(i == from ? "" : " ").append(number(at.x)).append(' ').append(number(at.y));
        }
        return text.toString();
    }

    /** All the digits there are: what is rounded in the file is another drawing. */
    static String number(double value) {
        return new BigDecimal(Double.toString(value)).toPlainString();
    }
}
