// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import kerfglow.api.PlacedModule;
import kerfglow.api.Quantity;
import kerfglow.api.Units;
import kerfglow.desktop.desk.Desk;
import kerfglow.desktop.desk.Lights;
import kerfglow.desktop.paint.LightPainter;
import kerfglow.desktop.paint.Palette;
import kerfglow.desktop.scene.View;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.locationtech.jts.geom.Coordinate;

/** Places light modules by hand: pulling moves one, a click on a free place adds one; keys do the same. */
final class LightTool implements PointerTool {
    private static final double STEP_MM = 1;
    private static final double WIDE_STEP_MM = 10;
    private static final double TURN_DEGREES = 15;
    /** A module is longer than a node; it is taken hold of from farther. */
    private static final double REACH_FACTOR = 2;

    private final Desk desk;
    private Optional<Lights.Light> chosen = Optional.empty();
    private Optional<Coordinate> pulled = Optional.empty();
    private Optional<Coordinate> pressed = Optional.empty();

    LightTool(Desk desk) {
        this.desk = desk;
    }

    @Override
    public String words() {
        return chosen.map(light -> "Module at " + length(light.module().xMm()) + ", " + length(light.module().yMm()) + ", turned "
                + Units.format(light.module().turnDegrees(), Quantity.ANGLE, desk.units()) + (light.isPlaced() ? ", placed by hand" : ", laid out")
                + ". Pull it; arrows move it (Shift: farther), R turns, Delete takes out, N: next, Esc ends.")
                .orElse("Pull a module, or click a free place for one more. Keys: N and P choose one, A adds one in the middle, Esc ends.");
    }

    private String length(double mm) {
        return Units.format(mm, Quantity.LENGTH, desk.units());
    }

    @Override
    public void press(Coordinate atMm, double reachMm) {
        pressed = Optional.of(atMm);
        pulled = Optional.empty();
        chosen = Lights.of(desk).near(atMm, reachMm * REACH_FACTOR);
    }

    @Override
    public void move(Coordinate atMm, double reachMm, boolean held) {
        if (held && chosen.isPresent() && pressed.filter(from -> from.distance(atMm) > reachMm / 4).isPresent()) {
            pulled = Optional.of(atMm);
        }
    }

    @Override
    public boolean release(Coordinate atMm, double reachMm) {
        boolean still = pressed.filter(from -> from.distance(atMm) <= reachMm / 2).isPresent();
        if (chosen.isPresent() && pulled.isPresent()) {
            perform(Lights.of(desk).moved(chosen.get(), pulled.get()));
        } else if (chosen.isEmpty() && still) {
            perform(Lights.of(desk).with(atMm));
        }
        pulled = Optional.empty();
        pressed = Optional.empty();
        return false;
    }

    private void perform(Lights.Edit edit) {
        desk.job().ifPresent(job -> job.changeSheet(edit.name(), edit.change()));
        chosen = at(edit.index());
    }

    private Optional<Lights.Light> at(OptionalInt index) {
        return index.isEmpty() ? Optional.empty() : Lights.of(desk).all().stream().filter(light -> light.index().equals(index)).findFirst();
    }

    @Override
    public boolean key(int keyCode, char character, boolean wide, Coordinate middleMm) {
        chosen = chosen.filter(Lights.of(desk).all()::contains); // undo may have taken it away
        double step = wide ? WIDE_STEP_MM : STEP_MM;
        switch (keyCode) {
            case SWT.ARROW_LEFT -> nudge(-step, 0);
            case SWT.ARROW_RIGHT -> nudge(step, 0);
            case SWT.ARROW_UP -> nudge(0, -step);
            case SWT.ARROW_DOWN -> nudge(0, step);
            case SWT.DEL -> chosen.ifPresent(light -> perform(Lights.of(desk).without(light)));
            default -> {
                switch (Character.toLowerCase(character)) {
                    case 'n' -> step(1);
                    case 'p' -> step(-1);
                    case 'r' -> chosen.ifPresent(light -> perform(Lights.of(desk).turned(light, TURN_DEGREES)));
                    case 'a' -> perform(Lights.of(desk).with(middleMm));
                    default -> {
                        return false;
                    }
                }
            }
        }
        return true;
    }

    private void nudge(double dx, double dy) {
        chosen.ifPresent(light -> perform(Lights.of(desk).moved(light, new Coordinate(light.module().xMm() + dx, light.module().yMm() + dy))));
    }

    private void step(int by) {
        List<Lights.Light> all = Lights.of(desk).all();
        if (!all.isEmpty()) {
            int at = chosen.map(all::indexOf).orElse(by > 0 ? -1 : 0);
            chosen = Optional.of(all.get(Math.floorMod(at + by, all.size())));
        }
    }

    @Override
    public void paint(GC gc, View view, Palette palette) {
        for (Lights.Light light : Lights.of(desk).all()) {
            boolean own = chosen.filter(light::equals).isPresent();
            PlacedModule module = own && pulled.isPresent() ? light.module().at(pulled.get().x, pulled.get().y, light.module().turnDegrees()) : light.module();
            LightPainter.paint(gc, module, light.isPlaced(), own, view, palette);
        }
    }
}
