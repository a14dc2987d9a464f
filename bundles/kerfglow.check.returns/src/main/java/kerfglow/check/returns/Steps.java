// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.returns;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import kerfglow.geometry.OutlinePiece;
import kerfglow.geometry.OutlinePieces;
import org.locationtech.jts.geom.Coordinate;

/**
 * Turns the pieces of an outline into what a bender does: corners, and roundings so small that they count as corners, become folds;
 * neighbouring ones that turn the same way become one fold.
 */
final class Steps {
    /** A drawn rounding that turns farther, radians (150 degrees), is the end of a stroke and no corner: its legs never meet. Assumed. */
    private static final double MOST_ROUNDED_TURN = Math.toRadians(150);
    /** The legs of sharper corners meet too far off to say how long they are; their setback is that of this turn, 170 degrees. Assumed. */
    private static final double MOST_SETBACK_TURN = Math.toRadians(170);

    private final Contour contour;
    private final Tooling tooling;
    private final List<Step> steps = new ArrayList<>();

    private Steps(Contour contour, Tooling tooling) {
        this.contour = contour;
        this.tooling = tooling;
    }

    /** The steps in the direction of the contour. */
    static List<Step> of(Contour contour, Tooling tooling, double chordErrorMm) {
        List<OutlinePiece> pieces = new ArrayList<>(OutlinePieces.of(contour.ring(), chordErrorMm, tooling.fitMm()));
        Steps steps = new Steps(contour, tooling);
        int start = 0;
        for (int i = 0; i < pieces.size(); i++) {
            // begin outside every corner
            boolean longer = pieces.get(i).lengthMm() > pieces.get(start).lengthMm();
            start = !steps.isTight(pieces.get(i)) && (longer || steps.isTight(pieces.get(start))) ? i : start;
        }
        Collections.rotate(pieces, -start);
        steps.addAll(pieces);
        return steps.steps;
    }

    private void addAll(List<OutlinePiece> pieces) {
        for (int i = 0; i < pieces.size();) {
            int end = isTight(pieces.get(i)) ? endOfCorner(pieces, i) : i + 1;
            List<OutlinePiece> run = pieces.subList(i, end);
            double turn = run.stream().mapToDouble(OutlinePiece::turn).sum();
            boolean drawnRound = run.stream().anyMatch(this::isDrawnRound);
            boolean bends = Math.toDegrees(Math.abs(turn)) >= tooling.cornerAngle();
            if (isTight(run.get(0)) && bends && !(drawnRound && Math.abs(turn) > MOST_ROUNDED_TURN)) {
                steps.add(corner(run, turn));
            } else {
                run.forEach(this::plain);
            }
            i = end;
        }
    }

    /** A corner, or a rounding of the line no larger than the setting; where the line was inset, corners into the can are rounder by that. */
    private boolean isTight(OutlinePiece piece) {
        double limit = tooling.cornerRadiusMm() + (piece.turn() < 0 ? contour.insetMm() : 0);
        return switch (piece.kind()) {
            case STRAIGHT -> false;
            case CORNER -> piece.degrees() >= tooling.cornerAngle();
            case ARC -> piece.radiusMm() <= limit + tooling.fitMm();
        };
    }

    /** An arc that is rounder than the inset makes a sharp corner. */
    private boolean isDrawnRound(OutlinePiece piece) {
        return piece.kind() == OutlinePiece.Kind.ARC && piece.radiusMm() > (piece.turn() < 0 ? contour.insetMm() : 0) + tooling.fitMm();
    }

    /** The end of a run of tight pieces that turn one way, with no more than a corner's radius between them. */
    private int endOfCorner(List<OutlinePiece> pieces, int from) {
        double way = Math.signum(pieces.get(from).turn());
        int end = from + 1;
        double between = 0;
        for (int i = from + 1; i < pieces.size(); i++) {
            OutlinePiece piece = pieces.get(i);
            if (isTight(piece) && Math.signum(piece.turn()) == way) {
                end = i + 1;
                between = 0;
            } else if (isTight(piece) || piece.kind() == OutlinePiece.Kind.ARC || (between += piece.lengthMm()) > tooling.cornerRadiusMm()) {
                break;
            }
        }
        return end;
    }

    private Step corner(List<OutlinePiece> run, double turn) {
        List<Coordinate> points = new ArrayList<>();
        double residual = 0;
        double along = 0;
        for (OutlinePiece piece : run) {
            points.addAll(List.of(piece.line().getCoordinates()));
            residual = Math.max(residual, piece.residualMm());
            along += piece.lengthMm();
        }
        Coordinate[] line = points.toArray(new Coordinate[0]);
        if (180 - Math.toDegrees(Math.abs(turn)) < tooling.leastAngle()) {
            return new Step(Step.Kind.MEETING, line, turn, 0, residual, along, along);
        }
        double angle = Math.copySign(Math.min(Math.abs(turn), MOST_SETBACK_TURN), turn);
        // two equal legs over the chord of what is rounded off
        double legs = line[0].distance(line[line.length - 1]) / Math.cos(angle / 2);
        return new Step(Step.Kind.FOLD, line, turn, 0, residual, legs, legs + tooling.foldMm(angle, turn > 0));
    }

    private void plain(OutlinePiece piece) {
        Coordinate[] points = piece.line().getCoordinates();
        if (piece.kind() == OutlinePiece.Kind.ARC) {
            steps.add(new Step(Step.Kind.CURVE, points, piece.turn(), piece.radiusMm(), piece.residualMm(), piece.lengthMm(),
                    tooling.curveMm(piece.radiusMm(), piece.turn(), piece.turn() > 0)));
            return;
        }
        double strip = piece.lengthMm() + tooling.kinkMm(piece.turn(), piece.turn() > 0);
        steps.add(new Step(Step.Kind.STRAIGHT, points, piece.turn(), Double.POSITIVE_INFINITY, piece.residualMm(), piece.lengthMm(), strip));
    }
}
