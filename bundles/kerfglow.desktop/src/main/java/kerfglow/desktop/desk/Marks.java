// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import kerfglow.job.Job;
import kerfglow.job.Mark;
import kerfglow.job.MarkShape;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/**
 * The reviewers' marks as they are handled on the proof: which one is chosen, and what it becomes while a hand moves it. The job hears of a
 * move when the hand lets go, so that one movement is one step to take back.
 */
public final class Marks {
    private final Supplier<Optional<Job>> job;
    private final Runnable changed;
    private Optional<String> chosen = Optional.empty();
    private int grip = MarkGrips.WHOLE;
    private Optional<Coordinate> held = Optional.empty();
    private Optional<MarkShape> moving = Optional.empty();

    Marks(Supplier<Optional<Job>> job, Runnable changed) {
        this.job = job;
        this.changed = changed;
    }

    /** Another job. */
    void reset() {
        chosen = Optional.empty();
        moving = Optional.empty();
        held = Optional.empty();
        grip = MarkGrips.WHOLE;
    }

    private List<Mark> all() {
        return job.get().map(each -> each.state().marks()).orElse(List.of());
    }

    /** Those that no hand has chosen; the chosen one is {@link #chosen}. */
    public List<Mark> others() {
        return all().stream().filter(mark -> chosen.filter(mark.id()::equals).isEmpty()).toList();
    }

    /** The chosen one, where the hand has it now; absent when none is, or when a step was taken back that made it. */
    public Optional<Mark> chosen() {
        return kept().map(mark -> moving.map(shape -> mark.withShape(shape, mark.modified())).orElse(mark));
    }

    private Optional<Mark> kept() {
        return all().stream().filter(mark -> chosen.filter(mark.id()::equals).isPresent()).findFirst();
    }

    /** The grip that keys move; {@link MarkGrips#WHOLE} for the mark as a whole. */
    public int grip() {
        return grip;
    }

    public void choose(String id) {
        choose(Optional.of(id));
    }

    public void chooseNone() {
        choose(Optional.empty());
    }

    private void choose(Optional<String> id) {
        letGo();
        if (!chosen.equals(id)) {
            chosen = id;
            grip = MarkGrips.WHOLE;
            changed.run();
        }
    }

    /** Goes to the next mark (1) or the one before (-1); from the last to the first. */
    public void step(int by) {
        List<String> ids = all().stream().map(Mark::id).toList();
        if (!ids.isEmpty()) {
            int at = chosen.map(ids::indexOf).filter(each -> each >= 0).orElse(by > 0 ? -1 : 0);
            choose(ids.get(Math.floorMod(at + by, ids.size())));
        }
    }

    /** Goes to the next grip of the chosen mark; after the last comes the whole. */
    public void stepGrip() {
        letGo();
        chosen().ifPresent(mark -> {
            grip = grip + 1 < MarkGrips.of(mark.shape()).size() ? grip + 1 : MarkGrips.WHOLE;
            changed.run();
        });
    }

    /** The mark whose line passes nearest, within reach. */
    public Optional<Mark> near(Coordinate at, double reachMm) {
        return all().stream().filter(mark -> distance(mark.shape(), at) <= reachMm).min(Comparator.comparingDouble(mark -> distance(mark.shape(), at)));
    }

    /** What lies inside a ring or box can be clicked past its line. */
    private static double distance(MarkShape shape, Coordinate at) {
        Geometry outline = shape.outline();
        return (outline.getDimension() == 2 ? outline.getBoundary() : outline).distance(new GeometryFactory().createPoint(at));
    }

    /** True when the chosen mark could be taken hold of there. */
    public boolean isHold(Coordinate at, double reachMm) {
        return gripAt(at, reachMm).isPresent();
    }

    /** Takes hold of the chosen mark, at a grip or at its line; returns false when neither lies there. */
    public boolean take(Coordinate at, double reachMm) {
        OptionalInt taken = gripAt(at, reachMm);
        taken.ifPresent(each -> {
            letGo();
            grip = each;
            held = Optional.of(at);
            changed.run();
        });
        return taken.isPresent();
    }

    private OptionalInt gripAt(Coordinate at, double reachMm) {
        if (chosen().isEmpty()) {
            return OptionalInt.empty();
        }
        MarkShape shape = chosen().get().shape();
        List<Coordinate> grips = MarkGrips.of(shape).stream().map(each -> each.coordinate()).toList();
        OptionalInt nearest = IntStream.range(0, grips.size()).filter(i -> grips.get(i).distance(at) <= reachMm).boxed()
                .min(Comparator.comparingDouble(i -> grips.get(i).distance(at))).map(OptionalInt::of).orElse(OptionalInt.empty());
        return nearest.isPresent() || distance(shape, at) > reachMm ? nearest : OptionalInt.of(MarkGrips.WHOLE);
    }

    /** The hand that took hold has come there. */
    public void pull(Coordinate to) {
        held.ifPresent(from -> kept().ifPresent(mark -> {
            moving = Optional.of(MarkGrips.moved(mark.shape(), grip, to.x - from.x, to.y - from.y));
            changed.run();
        }));
    }

    /** Moves the chosen mark, or its grip, by a step; what was moved so far counts when the key is let go. */
    public void nudge(double dxMm, double dyMm) {
        chosen().ifPresent(mark -> {
            moving = Optional.of(MarkGrips.moved(mark.shape(), grip, dxMm, dyMm));
            changed.run();
        });
    }

    /** The hand is taken off: what it moved becomes a step of the job. */
    public void letGo() {
        held = Optional.empty();
        Optional<MarkShape> moved = moving;
        moving = Optional.empty();
        kept().ifPresent(mark -> moved.filter(shape -> !shape.equals(mark.shape())).ifPresent(shape -> job.get().orElseThrow().reshapeMark(mark.id(), shape)));
    }

    /** The mark stands again where it was taken up; returns false when no hand has it. */
    public boolean putBack() {
        boolean held = this.held.isPresent() || moving.isPresent();
        this.held = Optional.empty();
        moving = Optional.empty();
        if (held) {
            changed.run();
        }
        return held;
    }

    /** Takes the chosen one out. */
    public void remove() {
        Optional<Mark> gone = kept();
        chooseNone();
        gone.ifPresent(mark -> job.get().orElseThrow().removeMark(mark.id()));
    }

    /** What can be done with the chosen one, for a person; absent when none is chosen. */
    public Optional<String> words() {
        return chosen().map(mark -> {
            boolean grips = !MarkGrips.of(mark.shape()).isEmpty();
            return sentence(mark.shape().word()) + " by " + mark.author() + (grip == MarkGrips.WHOLE ? "" : ", grip " + (grip + 1)) + ". Pull it" + (grips ? " or a grip" : "")
                    + "; arrows move it (Shift: farther)" + (grips ? ", H: next grip" : "") + ", M: next mark, Delete takes it out, Esc ends.";
        });
    }

    private static String sentence(String word) {
        return word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1);
    }
}
