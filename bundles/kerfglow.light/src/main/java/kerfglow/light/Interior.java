// SPDX-License-Identifier: Apache-2.0
package kerfglow.light;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Polygon;

/**
 * How the surfaces of a can send light on to each other, in patches; reckoned in the frame of its own shape, so that a turned can has the
 * same patches and sends on the same light. May be used by several threads: what it remembers of its last answer changes no answer.
 */
final class Interior {
    /** An emitter is looked from in this many more directions than a patch: it is a point, and what it lights has edges. */
    private static final int DIRECTIONS_OF_EMITTERS = 4;
    private static final int RISES_OF_EMITTERS = 2;
    /** Places, mm, and turns, degrees, are rounded to this, so that the same modules seen from another frame are the same. */
    private static final double ROUNDING = 1e-7;

    final Pose pose;
    final Outline outline;
    final Patches patches;
    final double depthMm;
    final int directions;
    private final double[] reflectances;
    /** Empty when nothing is reflected. */
    private final Optional<Exchange> exchange;

    /** What was asked for last: maps of the same modules in several frames follow each other. */
    private final AtomicReference<Known> last = new AtomicReference<>();

    private record Known(List<LightModule> modules, Received received) {
    }

    /**
     * What patches receive.
     *
     * @param straight from the emitters, lumen
     * @param all from everything, lumen
     */
    record Received(double[] straight, double[] all) {
    }

    Interior(Can can, Accuracy accuracy, Runnable pulse) {
        pose = Pose.of(can.inside());
        depthMm = can.depthMm();
        directions = accuracy.directions();
        Polygon inside = (Polygon) pose.into(can.inside());
        outline = new Outline(inside);
        double stroke = 2 * inside.getArea() / inside.getLength();
        patches = Patches.of(inside, outline, depthMm, accuracy.patchShare() * Math.min(depthMm, stroke), accuracy.mostPatches());
        reflectances = new double[patches.size()];
        Arrays.fill(reflectances, 0, patches.plan, can.finish().backReflectance());
        Arrays.fill(reflectances, patches.plan, 2 * patches.plan, can.finish().faceReflectance());
        Arrays.fill(reflectances, 2 * patches.plan, patches.size(), can.finish().wallReflectance());
        boolean black = Arrays.stream(reflectances).allMatch(each -> each == 0);
        exchange = black ? Optional.empty() : Optional.of(new Exchange(outline, patches, depthMm, directions, pulse));
    }

    boolean isBlack() {
        return exchange.isEmpty();
    }

    /** What patches receive from modules, which are given in the frame, until nothing is left of their light. Not to be changed. */
    Received received(List<LightModule> modules, Runnable pulse) {
        List<LightModule> rounded = modules.stream().map(Interior::rounded).toList();
        Known known = last.get();
        if (known == null || !known.modules().equals(rounded)) {
            double[] straight = straight(rounded, pulse);
            known = new Known(rounded, new Received(straight, exchange.map(each -> each.settle(straight, reflectances, pulse)).orElse(straight)));
            last.set(known);
        }
        return known.received();
    }

    private static LightModule rounded(LightModule module) {
        return new LightModule(rounded(module.xMm()), rounded(module.yMm()), rounded(module.turnDegrees()), module.type());
    }

    private static double rounded(double value) {
        return Math.rint(value / ROUNDING) * ROUNDING + 0.0; // no -0
    }

    /** What a patch keeps of what it receives, as a share. */
    double absorptance(int patch) {
        return 1 - reflectances[patch];
    }

    /** What patches send out, lumen per mm². */
    double[] radiosity(Received received) {
        double[] radiosity = new double[patches.size()];
        for (int i = 0; i < radiosity.length; i++) {
            radiosity[i] = received.all()[i] * reflectances[i] / patches.areas[i];
        }
        return radiosity;
    }

    /** Each emitter's light goes out in equal parcels, so that none is lost. */
    private double[] straight(List<LightModule> modules, Runnable pulse) {
        double[] arriving = new double[patches.size()];
        Room room = new Room(outline, patches, depthMm);
        int around = DIRECTIONS_OF_EMITTERS * directions;
        int rises = directions / RISES_OF_EMITTERS;
        Map<Double, Lattice> beams = new HashMap<>();
        int turn = 0;
        for (LightModule module : modules) {
            pulse.run();
            LightModuleType type = module.type();
            Lattice beam = beams.computeIfAbsent(type.exponent(), Lattice::emitter);
            double parcel = type.fluxLm() / type.emitters() / around / rises;
            for (Coordinate emitter : module.emitters()) {
                turn++;
                for (int a = 0; outline.contains(emitter.x, emitter.y) && a < around; a++) {
                    double angle = 2 * Math.PI * (a + Lattice.shift(turn)) / around;
                    if (room.look(emitter.x, emitter.y, Math.cos(angle), Math.sin(angle))) {
                        for (int r = 0; r < rises; r++) {
                            room.follow(type.heightMm(), 1, beam.at((r + Lattice.shift(a)) / rises));
                            arriving[room.patch()] += parcel;
                        }
                    }
                }
            }
        }
        return arriving;
    }
}
