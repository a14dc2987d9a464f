// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.util.AffineTransformation;

/** What a mark looks like on the proof. Lengths in mm at the real size of the sign, y down. */
public sealed interface MarkShape {
    /** Straight pieces that a ring is drawn with where a polygon is wanted; on a ring of 1 m within 0.2 mm (geometry). */
    int RING_PIECES = 160;

    /** The word for it in job files and for people: {@code note}, {@code arrow}, {@code line}, {@code ring}, {@code box} or {@code dimension}. */
    String word();

    /** Its outline or line, mm; for hit tests and to see what it lies on. */
    Geometry outline();

    /** The point that its text hangs at. */
    PointMm anchor();

    /** The same after a motion or a change of scale. Rings and boxes keep their axes; turned, they grow to hold what they held. */
    MarkShape moved(AffineTransformation motion);

    /** A note with an anchor. */
    record Note(PointMm at) implements MarkShape {
        @Override
        public String word() {
            return "note";
        }

        @Override
        public Geometry outline() {
            return new GeometryFactory().createPoint(at.coordinate());
        }

        @Override
        public PointMm anchor() {
            return at;
        }

        @Override
        public MarkShape moved(AffineTransformation motion) {
            return new Note(at.moved(motion));
        }
    }

    /** An arrow; {@code tip} is what it points at. */
    record Arrow(PointMm from, PointMm tip) implements MarkShape {
        @Override
        public String word() {
            return "arrow";
        }

        @Override
        public Geometry outline() {
            return line(List.of(from, tip));
        }

        @Override
        public PointMm anchor() {
            return tip;
        }

        @Override
        public MarkShape moved(AffineTransformation motion) {
            return new Arrow(from.moved(motion), tip.moved(motion));
        }
    }

    /** A freehand line through at least two points. */
    record Line(List<PointMm> points) implements MarkShape {
        public Line {
            points = List.copyOf(points);
            if (points.size() < 2) {
                throw new IllegalArgumentException("a line needs at least two points");
            }
        }

        @Override
        public String word() {
            return "line";
        }

        @Override
        public Geometry outline() {
            return line(points);
        }

        @Override
        public PointMm anchor() {
            return points.get(0);
        }

        @Override
        public MarkShape moved(AffineTransformation motion) {
            return new Line(points.stream().map(point -> point.moved(motion)).toList());
        }
    }

    /** An ellipse with upright axes. */
    record Ring(PointMm centre, double radiusXMm, double radiusYMm) implements MarkShape {
        public Ring {
            requirePositive(radiusXMm, radiusYMm);
        }

        @Override
        public String word() {
            return "ring";
        }

        @Override
        public Geometry outline() {
            Coordinate[] points = new Coordinate[RING_PIECES + 1];
            for (int i = 0; i < RING_PIECES; i++) {
                double angle = 2 * Math.PI * i / RING_PIECES;
                points[i] = new Coordinate(centre.xMm() + radiusXMm * Math.cos(angle), centre.yMm() + radiusYMm * Math.sin(angle));
            }
            points[RING_PIECES] = points[0].copy();
            return new GeometryFactory().createPolygon(points);
        }

        @Override
        public PointMm anchor() {
            return new PointMm(centre.xMm(), centre.yMm() - radiusYMm);
        }

        @Override
        public MarkShape moved(AffineTransformation motion) {
            Envelope extent = motion.transform(outline()).getEnvelopeInternal();
            return new Ring(centre.moved(motion), extent.getWidth() / 2, extent.getHeight() / 2);
        }
    }

    /** A rectangle with upright sides. */
    record Box(PointMm topLeft, double widthMm, double heightMm) implements MarkShape {
        public Box {
            requirePositive(widthMm, heightMm);
        }

        @Override
        public String word() {
            return "box";
        }

        @Override
        public Geometry outline() {
            return new GeometryFactory().toGeometry(new Envelope(topLeft.xMm(), topLeft.xMm() + widthMm, topLeft.yMm(), topLeft.yMm() + heightMm));
        }

        @Override
        public PointMm anchor() {
            return topLeft;
        }

        @Override
        public MarkShape moved(AffineTransformation motion) {
            Envelope extent = motion.transform(outline()).getEnvelopeInternal();
            return new Box(new PointMm(extent.getMinX(), extent.getMinY()), extent.getWidth(), extent.getHeight());
        }
    }

    /** A dimension between two points; what it reads is their distance. */
    record Dimension(PointMm from, PointMm to) implements MarkShape {
        @Override
        public String word() {
            return "dimension";
        }

        @Override
        public Geometry outline() {
            return line(List.of(from, to));
        }

        @Override
        public PointMm anchor() {
            return new PointMm((from.xMm() + to.xMm()) / 2, (from.yMm() + to.yMm()) / 2);
        }

        @Override
        public MarkShape moved(AffineTransformation motion) {
            return new Dimension(from.moved(motion), to.moved(motion));
        }

        /** What the dimension reads, mm. */
        public double lengthMm() {
            return from.coordinate().distance(to.coordinate());
        }
    }

    private static Geometry line(List<PointMm> points) {
        List<Coordinate> line = new ArrayList<>();
        points.forEach(point -> line.add(point.coordinate()));
        return new GeometryFactory().createLineString(line.toArray(new Coordinate[0]));
    }

    private static void requirePositive(double a, double b) {
        if (!(a > 0 && b > 0 && Double.isFinite(a) && Double.isFinite(b))) { // also refuses NaN
            throw new IllegalArgumentException("both extents must be above 0: " + a + ", " + b + " mm");
        }
    }
}
