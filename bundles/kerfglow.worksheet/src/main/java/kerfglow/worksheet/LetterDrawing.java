// SPDX-License-Identifier: Apache-2.0
package kerfglow.worksheet;

import kerfglow.api.UnitSystem;
import kerfglow.views.Canvas;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;

/** One letter to scale as it is seen from the front: outline, made back, joints, bends with their numbers, centres of modules. */
final class LetterDrawing {
    private static final int FACE = 0xf3f5f7;
    private static final int BACK = 0x3d7ea6;
    private static final int JOINT = 0xb3152b;
    private static final int LIGHT = 0xc06000;
    private static final double DOT_MM = 0.55;
    private static final double NUMBER_MM = 2.3;
    /** How far inside the letter a number stands from its bend. */
    private static final double AWAY_MM = 2.2;

    private final LetterSheet letter;
    private final ScaledView view;

    LetterDrawing(LetterSheet letter, double widthMm, double heightMm) {
        this.letter = letter;
        Envelope seen = new Envelope(letter.part().shape().getEnvelopeInternal());
        this.view = ScaledView.fitting(seen, widthMm, heightMm);
    }

    double widthMm() {
        return view.rightMm() + ScaledView.PEN_MM;
    }

    double heightMm() {
        return view.bottomMm() + 2 * ScaledView.DIMENSION_MM - ScaledView.PEN_MM;
    }

    void draw(Canvas canvas, UnitSystem units) {
        canvas.area(view.at(letter.part().shape()), FACE, 1);
        letter.drawing().backs().forEach(back -> canvas.edge(view.at(back), BACK, ScaledView.PEN_MM, 1));
        canvas.edge(view.at(letter.part().shape()), ScaledView.INK, ScaledView.PEN_MM, 1);
        for (Coordinate module : letter.drawing().modules()) {
            Coordinate at = view.at(module);
            canvas.rectangle(at.x - DOT_MM * 2, at.y - DOT_MM, DOT_MM * 4, DOT_MM * 2, LIGHT, LIGHT, 0);
        }
        Coordinate middle = view.at(letter.part().shape().getCentroid().getCoordinate());
        for (LetterSheet.Numbered bend : letter.drawing().bends()) {
            Coordinate at = view.at(bend.at());
            canvas.circle(at.x, at.y, DOT_MM, ScaledView.INK, ScaledView.INK, 0);
            double length = Math.max(at.distance(middle), 1);
            canvas.text(bend.number(), at.x + (middle.x - at.x) / length * AWAY_MM, at.y + (middle.y - at.y) / length * AWAY_MM + NUMBER_MM * 0.35, NUMBER_MM, false,
                    Canvas.Anchor.MIDDLE, ScaledView.INK);
        }
        for (Coordinate joint : letter.drawing().joints()) {
            Coordinate at = view.at(joint);
            canvas.circle(at.x, at.y, DOT_MM * 1.8, JOINT, JOINT, 0);
            canvas.text("J", at.x, at.y - DOT_MM * 2.5, NUMBER_MM * 1.3, true, Canvas.Anchor.MIDDLE, JOINT);
        }
        view.dimensions(canvas, units);
    }
}
