// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import java.util.Optional;
import java.util.StringJoiner;
import java.util.function.Supplier;
import kerfglow.api.Quantity;
import kerfglow.api.UnitSystem;
import kerfglow.api.Units;
import kerfglow.desktop.closeup.Dimension;
import kerfglow.desktop.paint.CloseUpPainter;
import kerfglow.desktop.paint.Palette;
import kerfglow.desktop.scene.Gauge;
import kerfglow.desktop.scene.View;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.locationtech.jts.geom.Coordinate;

/**
 * Measures on the proof. Pulled, it gives the distance between two points, which snap to corners and outlines; resting on a shape it gives the
 * stroke's width, the height of the shape, and at an outline the radius or the angle.
 */
final class MeasureTool implements PointerTool {
    /** Keys cannot be set down as finely as a pointer; nearer than this a corner or outline is meant. */
    private static final double KEY_REACH_MM = 2;

    private final Supplier<Gauge> gauge;
    private final Supplier<UnitSystem> units;
    private Optional<Coordinate> from = Optional.empty();
    private Optional<Coordinate> to = Optional.empty();
    private Optional<Gauge.Stroke> stroke = Optional.empty();
    private Optional<Gauge.Snap> snap = Optional.empty();

    MeasureTool(Supplier<Gauge> gauge, Supplier<UnitSystem> units) {
        this.gauge = gauge;
        this.units = units;
    }

    @Override
    public String words() {
        StringJoiner words = new StringJoiner(", ");
        if (from.isPresent() && to.isPresent() && from.get().distance(to.get()) > 0) {
            words.add("distance " + length(from.get().distance(to.get())) + " (" + length(Math.abs(to.get().x - from.get().x)) + " across, "
                    + length(Math.abs(to.get().y - from.get().y)) + " down)");
        } else {
            stroke.ifPresent(each -> words.add("stroke " + length(each.widthMm()) + " wide").add("shape " + length(each.heightMm()) + " high"));
        }
        snap.ifPresent(each -> {
            each.angleDegrees().ifPresent(angle -> words.add("corner of " + Units.format(angle, Quantity.ANGLE, units.get())));
            each.radiusMm().ifPresent(radius -> words.add("radius " + length(radius)));
        });
        return words.length() == 0 ? "Measuring: rest on a shape, or pull from one point to another; by keys, Enter takes the middle of what is seen. Esc ends." : words.toString();
    }

    private String length(double mm) {
        return Units.format(mm, Quantity.LENGTH, units.get());
    }

    @Override
    public void press(Coordinate atMm, double reachMm) {
        look(atMm, reachMm);
        from = Optional.of(snap.map(Gauge.Snap::at).orElse(atMm));
        to = Optional.empty();
    }

    @Override
    public void move(Coordinate atMm, double reachMm, boolean held) {
        look(atMm, reachMm);
        if (held) {
            to = Optional.of(snap.map(Gauge.Snap::at).orElse(atMm));
        }
    }

    @Override
    public boolean key(int keyCode, char character, boolean wide, Coordinate middleMm) {
        if (keyCode != SWT.CR && keyCode != SWT.KEYPAD_CR) {
            return false;
        }
        if (from.isEmpty() || to.isPresent()) {
            press(middleMm, KEY_REACH_MM);
        } else {
            move(middleMm, KEY_REACH_MM, true);
        }
        return true;
    }

    private void look(Coordinate atMm, double reachMm) {
        snap = gauge.get().snap(atMm, reachMm);
        stroke = gauge.get().stroke(atMm);
    }

    @Override
    public boolean release(Coordinate atMm, double reachMm) {
        move(atMm, reachMm, true);
        if (from.isPresent() && to.isPresent() && from.get().distance(to.get()) < reachMm / 4) {
            from = Optional.empty(); // a click ends the distance
            to = Optional.empty();
        }
        return false;
    }

    @Override
    public void paint(GC gc, View view, Palette palette) {
        if (from.isPresent() && to.isPresent()) {
            paint(gc, new Dimension(from.get(), to.get()), view, palette);
        } else {
            stroke.ifPresent(each -> paint(gc, new Dimension(each.from(), each.to()), view, palette));
        }
        snap.ifPresent(each -> {
            gc.setForeground(palette.mark);
            gc.setLineWidth(2);
            gc.drawOval((int) Math.round(view.toPixelX(each.at().x)) - 5, (int) Math.round(view.toPixelY(each.at().y)) - 5, 10, 10);
        });
    }

    private void paint(GC gc, Dimension dimension, View view, Palette palette) {
        CloseUpPainter.paintDimension(gc, dimension, view, length(dimension.from().distance(dimension.to())), palette.mark);
    }
}
