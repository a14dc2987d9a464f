// SPDX-License-Identifier: Apache-2.0
package kerfglow.worksheet;

import java.util.List;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.outlines.ResultRow;
import kerfglow.views.Canvas;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;

/** The whole sign to scale: what is cut, numbers of letters, centres of modules, overall dimensions. */
final class SignDrawing {
    private static final List<Role> ORDER = List.of(Role.PANEL, Role.BACK, Role.OPENING, Role.FACE, Role.PUSH_THROUGH, Role.VINYL, Role.PRINT, Role.HOLE);
    private static final int WHITE = 0xffffff;
    private static final int SHEET = 0xe8ebee;
    private static final int FILM = 0xc9d6e2;
    private static final int LIGHT = 0xc06000;
    private static final double MODULE_MM = 0.6;
    private static final double LABEL_MM = 2.2;
    private static final double HALF = 0.5;

    private final Worksheet sheet;
    private final ScaledView view;

    /** @param heightMm of the picture, at most */
    SignDrawing(Worksheet sheet, double widthMm, double heightMm) {
        this.sheet = sheet;
        Envelope seen = new Envelope();
        sheet.reviewed().result().parts().stream().filter(part -> ORDER.contains(part.role())).forEach(part -> seen.expandToInclude(part.shape().getEnvelopeInternal()));
        this.view = ScaledView.fitting(seen.isNull() ? new Envelope(0, 1, 0, 1) : seen, widthMm, heightMm);
    }

    double widthMm() {
        return view.rightMm() + ScaledView.PEN_MM;
    }

    double heightMm() {
        return view.bottomMm() + 2 * ScaledView.DIMENSION_MM - ScaledView.PEN_MM;
    }

    void draw(Canvas canvas) {
        UnitSystem units = sheet.reviewed().result().units();
        for (Role role : ORDER) {
            for (Part part : sheet.reviewed().result().parts()) {
                if (part.role() == role) {
                    canvas.area(view.at(part.shape()), fill(role), role == Role.VINYL || role == Role.PRINT ? HALF : 1);
                    canvas.edge(view.at(part.shape()), role == Role.BACK ? ScaledView.QUIET : ScaledView.INK, ScaledView.PEN_MM / 2, 1);
                }
            }
        }
        for (ResultRow row : ResultRow.of(sheet.reviewed().result(), "glow", "modules")) {
            Coordinate at = view.at(new Coordinate(row.number("x"), row.number("y")));
            if (Double.isFinite(at.x) && Double.isFinite(at.y)) {
                canvas.circle(at.x, at.y, MODULE_MM, LIGHT, LIGHT, 0);
            }
        }
        for (LetterSheet letter : sheet.letters()) {
            Coordinate at = view.at(letter.part().shape().getInteriorPoint().getCoordinate());
            canvas.text(letter.part().id(), at.x, at.y + LABEL_MM * 0.35, LABEL_MM, true, Canvas.Anchor.MIDDLE, ScaledView.INK);
        }
        view.dimensions(canvas, units);
    }

    private static int fill(Role role) {
        return switch (role) {
            case PANEL, BACK -> SHEET;
            case VINYL, PRINT -> FILM;
            default -> WHITE;
        };
    }
}
