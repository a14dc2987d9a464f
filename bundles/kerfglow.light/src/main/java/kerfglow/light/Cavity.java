// SPDX-License-Identifier: Apache-2.0
package kerfglow.light;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;

/**
 * A can made ready for light: how its surfaces see each other is reckoned once, so that modules can be moved and lit again in little time.
 * Immutable; {@link #light} may run on several threads.
 */
public final class Cavity {
    /** An emitter is looked from in this many more directions than a patch: it is a point, and what it lights has edges. */
    private static final int DIRECTIONS_OF_EMITTERS = 4;
    private static final int RISES_OF_EMITTERS = 2;

    private final Can can;
    private final Accuracy accuracy;
    private final Outline outline;
    private final Grid grid;
    private final boolean[] inside;
    private final boolean[] lit;
    private final Patches patches;
    private final double[] reflectances;
    /** Both empty when nothing is reflected. */
    private final Optional<Exchange> exchange;
    private final Optional<Gather> gather;

    private Cavity(Can can, Accuracy accuracy, Runnable pulse) {
        this.can = can;
        this.accuracy = accuracy;
        outline = new Outline(can.inside());
        grid = Grid.over(can.inside().getEnvelopeInternal(), accuracy.cellMm());
        inside = Spans.inside(grid, can.inside());
        lit = Spans.inside(grid, can.lit());
        for (int i = 0; i < lit.length; i++) {
            lit[i] &= inside[i];
        }
        double stroke = 2 * can.inside().getArea() / can.inside().getLength();
        patches = Patches.of(can.inside(), outline, can.depthMm(), accuracy.patchShare() * Math.min(can.depthMm(), stroke), accuracy.mostPatches());
        reflectances = new double[patches.size()];
        Arrays.fill(reflectances, 0, patches.plan, can.finish().backReflectance());
        Arrays.fill(reflectances, patches.plan, 2 * patches.plan, can.finish().faceReflectance());
        Arrays.fill(reflectances, 2 * patches.plan, patches.size(), can.finish().wallReflectance());
        boolean black = Arrays.stream(reflectances).allMatch(each -> each == 0);
        exchange = black ? Optional.empty() : Optional.of(new Exchange(outline, patches, can.depthMm(), accuracy.directions(), pulse));
        gather = black ? Optional.empty() : Optional.of(new Gather(outline, patches, can.depthMm(), accuracy.directions(), grid, inside, pulse));
    }

    /**
     * Makes a can ready.
     *
     * @param pulse called often; throws when the work is over
     */
    public static Cavity of(Can can, Accuracy accuracy, Runnable pulse) {
        pulse.run();
        return new Cavity(can, accuracy, pulse);
    }

    public Can can() {
        return can;
    }

    public Accuracy accuracy() {
        return accuracy;
    }

    /** Size of the patches that send light on, mm; larger than asked for where they would have been too many. */
    public double patchMm() {
        return patches.patchMm;
    }

    /** The cells of its maps. */
    public Grid grid() {
        return grid;
    }

    /**
     * The light of modules on the face.
     *
     * @param modules emitters that do not stand inside the can give no light
     * @param pulse called often; throws when the work is over
     */
    public LightMap light(List<LightModule> modules, Runnable pulse) {
        DirectLight direct = new DirectLight(outline, grid, can.depthMm());
        double[] lux = new double[grid.size()];
        for (LightModule module : modules) {
            pulse.run();
            direct.add(module, 1, lux);
        }
        double straight = sum(lux);
        double[] arriving = arriving(modules, pulse);
        double[] all = exchange.map(each -> each.settle(arriving, reflectances, pulse)).orElse(arriving);
        if (gather.isPresent()) {
            double[] radiosity = new double[all.length];
            for (int i = 0; i < all.length; i++) {
                radiosity[i] = all[i] * reflectances[i] / patches.areas[i];
            }
            gather.get().add(radiosity, lux, pulse);
        }
        double total = sum(lux);
        double[] luminance = Smoothing.gaussian(grid, inside, lux, can.finish().spreadMm() / grid.cellMm()).clone();
        for (int i = 0; i < luminance.length; i++) {
            luminance[i] *= can.finish().faceTransmittance() / Math.PI;
        }
        return new LightMap(grid, inside, lit, lux, luminance, total > 0 ? straight / total : 0, balance(arriving, all, total));
    }

    private double sum(double[] lux) {
        double sum = 0;
        for (int i = 0; i < lux.length; i++) {
            sum += inside[i] ? lux[i] : 0;
        }
        return sum;
    }

    /** What the patches receive straight from the emitters, lumen: each emitter's light goes out in equal parcels, so that none is lost. */
    private double[] arriving(List<LightModule> modules, Runnable pulse) {
        double[] arriving = new double[patches.size()];
        Room room = new Room(outline, patches, can.depthMm());
        int directions = DIRECTIONS_OF_EMITTERS * accuracy.directions();
        int rises = accuracy.directions() / RISES_OF_EMITTERS;
        Map<Double, Lattice> beams = new HashMap<>();
        int turn = 0;
        for (LightModule module : modules) {
            pulse.run();
            LightModuleType type = module.type();
            Lattice beam = beams.computeIfAbsent(type.exponent(), Lattice::emitter);
            double parcel = type.fluxLm() / type.emitters() / directions / rises;
            for (Coordinate emitter : module.emitters()) {
                turn++;
                for (int a = 0; outline.contains(emitter.x, emitter.y) && a < directions; a++) {
                    double angle = 2 * Math.PI * (a + Lattice.shift(turn)) / directions;
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

    private LightMap.Balance balance(double[] arriving, double[] all, double totalLux) {
        int cells = 0;
        for (boolean each : inside) {
            cells += each ? 1 : 0;
        }
        double onFace = cells == 0 ? 0 : totalLux / cells * can.inside().getArea() / LightMap.MM2_PER_M2;
        double back = 0;
        double walls = 0;
        for (int i = 0; i < patches.size(); i++) {
            double absorbed = all[i] * (1 - reflectances[i]);
            back += i < patches.plan ? absorbed : 0;
            walls += i < 2 * patches.plan ? 0 : absorbed;
        }
        Finish finish = can.finish();
        return new LightMap.Balance(Arrays.stream(arriving).sum(), back, walls,
                onFace * (1 - finish.faceReflectance() - finish.faceTransmittance()), onFace * finish.faceTransmittance());
    }
}
