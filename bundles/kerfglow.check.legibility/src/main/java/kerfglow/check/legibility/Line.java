// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import kerfglow.api.proof.Part;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.util.AffineTransformation;

/**
 * A line of lettering.
 *
 * @param frame how it runs
 * @param model its levels
 * @param letters along the line
 * @param marks dots, accents and points that belong to it and say nothing of its height
 * @param confidence that it is lettering, 0 to 1
 */
record Line(Frame frame, LineModel model, List<Upright> letters, List<Piece> marks, double confidence) {
    /** Straight bits that a word's bent level is drawn in. */
    private static final int ARC = 24;

    static Line of(Frame frame, LineModel model, List<Piece> marks, double confidence) {
        List<Upright> letters = new ArrayList<>(model.members());
        letters.sort(Comparator.comparingDouble(letter -> letter.box().centre().x));
        return new Line(frame, model, List.copyOf(letters), List.copyOf(marks), confidence);
    }

    Line with(LineModel other) {
        return new Line(frame, other, letters, marks, confidence);
    }

    boolean isJoined() {
        return LineModel.isJoined(letters);
    }

    List<Piece> pieces() {
        List<Piece> pieces = new ArrayList<>(letters.stream().map(Upright::piece).toList());
        pieces.addAll(marks);
        return pieces;
    }

    List<Part> parts() {
        return pieces().stream().map(Piece::part).toList();
    }

    /** The part that scoped settings are asked for. */
    Part first() {
        return letters.get(0).piece().part();
    }

    /** All of its outlines, mm on the sign. */
    Geometry place() {
        List<Geometry> shapes = new ArrayList<>(pieces().stream().map(piece -> (Geometry) piece.shape()).toList());
        return factory().buildGeometry(shapes);
    }

    /** A level above the base line as it runs on the sign, mm: one line, or one for each letter of a stack. */
    Geometry level(double heightMm) {
        List<LineString> lines = new ArrayList<>();
        List<Coordinate> along = new ArrayList<>();
        for (Upright letter : letters) {
            if (frame.form() == Frame.Form.ARCHED && Ends.isWide(letter.box())) {
                for (int i = 0; i <= ARC; i++) {
                    along.add(frame.bent(letter.box().getMinX() + i * letter.box().getWidth() / ARC, model.base() + heightMm));
                }
                continue;
            }
            AffineTransformation back = Frame.inverse(letter.up());
            Coordinate left = back.transform(new Coordinate(letter.box().getMinX(), model.base() + heightMm), new Coordinate());
            Coordinate right = back.transform(new Coordinate(letter.box().getMaxX(), model.base() + heightMm), new Coordinate());
            along.add(left);
            along.add(right);
            if (frame.form() == Frame.Form.STACKED) {
                lines.add(factory().createLineString(along.toArray(new Coordinate[0])));
                along.clear();
            }
        }
        if (!along.isEmpty()) {
            lines.add(factory().createLineString(along.toArray(new Coordinate[0])));
        }
        return factory().buildGeometry(lines);
    }

    private GeometryFactory factory() {
        return letters.get(0).piece().shape().getFactory();
    }
}
