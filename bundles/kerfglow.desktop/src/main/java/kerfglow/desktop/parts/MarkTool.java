// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import kerfglow.desktop.paint.MarkPainter;
import kerfglow.desktop.paint.Palette;
import kerfglow.desktop.scene.View;
import kerfglow.job.MarkShape;
import kerfglow.job.PointMm;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.locationtech.jts.geom.Coordinate;

/** Draws one mark on the proof: a note by a click, everything else by pulling from one end to the other. */
final class MarkTool implements PointerTool {
    /** What can be drawn. */
    enum Kind { NOTE, ARROW, LINE, RING, BOX, DIMENSION }

    private final Kind kind;
    private final Consumer<MarkShape> drawn;
    private final List<Coordinate> points = new ArrayList<>();
    private boolean done;

    MarkTool(Kind kind, Consumer<MarkShape> drawn) {
        this.kind = kind;
        this.drawn = drawn;
    }

    @Override
    public String words() {
        return kind == Kind.NOTE ? "Click where the note belongs, or press Enter for the middle of what is seen; Esc ends."
                : "Pull from one end to the other, or press Enter for each end when it is in the middle of what is seen; Esc ends.";
    }

    @Override
    public void press(Coordinate atMm, double reachMm) {
        points.clear();
        points.add(atMm);
    }

    @Override
    public void move(Coordinate atMm, double reachMm, boolean held) {
        if (held && !points.isEmpty() && (kind != Kind.LINE || points.get(points.size() - 1).distance(atMm) > reachMm / 4)) {
            points.add(atMm);
        }
    }

    @Override
    public boolean release(Coordinate atMm, double reachMm) {
        move(atMm, reachMm, true);
        Optional<MarkShape> shape = shape();
        points.clear();
        shape.ifPresent(drawn);
        return shape.isPresent();
    }

    @Override
    public boolean key(int keyCode, char character, boolean wide, Coordinate middleMm) {
        if (keyCode != SWT.CR && keyCode != SWT.KEYPAD_CR) {
            return false;
        }
        if (points.isEmpty()) {
            press(middleMm, 0);
            done = kind == Kind.NOTE && release(middleMm, 0);
        } else {
            done = release(middleMm, 0);
        }
        return true;
    }

    @Override
    public boolean isDone() {
        return done;
    }

    /** What the points make; empty while they lie on one spot. */
    private Optional<MarkShape> shape() {
        if (points.isEmpty()) {
            return Optional.empty();
        }
        Coordinate from = points.get(0);
        Coordinate to = points.get(points.size() - 1);
        double across = Math.abs(to.x - from.x);
        double down = Math.abs(to.y - from.y);
        if (kind == Kind.NOTE) {
            return Optional.of(new MarkShape.Note(point(to)));
        }
        if (across + down == 0 || (kind == Kind.RING || kind == Kind.BOX) && across * down == 0) {
            return Optional.empty();
        }
        return Optional.of(switch (kind) {
            case NOTE -> new MarkShape.Note(point(to));
            case ARROW -> new MarkShape.Arrow(point(from), point(to));
            case LINE -> new MarkShape.Line(points.stream().map(MarkTool::point).toList());
            case RING -> new MarkShape.Ring(new PointMm((from.x + to.x) / 2, (from.y + to.y) / 2), across / 2, down / 2);
            case BOX -> new MarkShape.Box(new PointMm(Math.min(from.x, to.x), Math.min(from.y, to.y)), across, down);
            case DIMENSION -> new MarkShape.Dimension(point(from), point(to));
        });
    }

    private static PointMm point(Coordinate at) {
        return new PointMm(at.x, at.y);
    }

    @Override
    public void paint(GC gc, View view, Palette palette) {
        if (points.size() > 1) {
            shape().ifPresent(shape -> MarkPainter.paintShape(gc, shape, view, palette.mark, false));
        }
    }
}
