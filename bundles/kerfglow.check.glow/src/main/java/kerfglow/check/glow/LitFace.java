// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.glow;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import kerfglow.geometry.Opening;
import kerfglow.light.Accuracy;
import kerfglow.light.Can;
import kerfglow.light.Cavity;
import kerfglow.light.Finish;
import kerfglow.light.Levels;
import kerfglow.light.LightMap;
import kerfglow.light.LightModule;
import kerfglow.light.LightModuleType;
import kerfglow.light.Spots;
import kerfglow.light.layout.Layout;
import kerfglow.light.layout.LayoutRequest;
import kerfglow.light.layout.Layouter;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.locationtech.jts.simplify.TopologyPreservingSimplifier;

/**
 * A part with its light, as measured.
 *
 * @param task what was measured
 * @param cans its pieces: one, or more where the inset splits
 */
record LitFace(LitTask task, List<Piece> cans) {
    /** Assumed: so much wiggle of an outline, mm, moves no light. */
    private static final double SMOOTH_MM = 0.05;
    /** A halo is judged on the wall along a strip between these, in stand-offs outside the back. */
    private static final double HALO_FROM = 0.4;
    private static final double HALO_TO = 0.6;
    private static final double HALO_MIDDLE = (HALO_FROM + HALO_TO) / 2;
    /** A halo is shown up to here, in stand-offs; beyond, the wall is dark. */
    private static final double HALO_SHOWN = 4;

    /**
     * One can with its light.
     *
     * @param inside its inner outline; of a halo the back's
     * @param modules what lights it
     * @param how {@code drawn}, {@code placed} or {@code laid out}, by module
     * @param layout what the layout says, where modules were laid out
     * @param map the light that is judged; empty when no cell of it is lit, or no module lights it
     * @param shown the light that is shown: of a halo more than is judged
     * @param spots bright spots
     * @param dark dark patches
     */
    record Piece(Polygon inside, List<LightModule> modules, List<String> how, Optional<Layout> layout, Optional<LightMap> map, Optional<LightMap> shown,
            List<Spots.Spot> spots, List<DarkPatches.Patch> dark) {
        Piece moved(double dx, double dy) {
            return new Piece((Polygon) AffineTransformation.translationInstance(dx, dy).transform(inside), modules.stream().map(each -> each.moved(dx, dy)).toList(), how,
                    layout.map(each -> each.moved(dx, dy)), map.map(each -> each.moved(dx, dy)), shown.map(each -> each.moved(dx, dy)),
                    spots.stream().map(each -> each.moved(dx, dy)).toList(), dark.stream().map(each -> each.moved(dx, dy)).toList());
        }
    }

    static LitFace measure(LitTask task, Runnable pulse) {
        Geometry shape = task.part().shape();
        Geometry lit = task.lipMm() > 0 ? Opening.erosion(shape, task.lipMm(), task.inset().chordErrorMm()) : shape;
        pulse.run();
        List<Polygon> insides = LitTask.polygons(TopologyPreservingSimplifier.simplify(task.inset().in(shape), SMOOTH_MM));
        List<Piece> pieces = new ArrayList<>();
        for (int i = 0; i < insides.size(); i++) {
            Polygon inside = insides.get(i);
            int piece = i;
            List<GivenModule> own = task.given().stream().filter(each -> nearest(insides, each) == piece).toList();
            pieces.add(measure(task, inside, lit, own, pulse));
        }
        return new LitFace(task, pieces);
    }

    /** The light of a twin that lies elsewhere; see {@link Twins}. */
    LitFace moved(LitTask twin, double dx, double dy) {
        return new LitFace(twin, cans.stream().map(each -> each.moved(dx, dy)).toList());
    }

    private static int nearest(List<Polygon> insides, GivenModule module) {
        Geometry centre = insides.get(0).getFactory().createPoint(new Coordinate(module.xMm(), module.yMm()));
        int nearest = 0;
        for (int i = 1; i < insides.size(); i++) {
            nearest = insides.get(i).distance(centre) < insides.get(nearest).distance(centre) ? i : nearest;
        }
        return nearest;
    }

    private static Piece measure(LitTask task, Polygon inside, Geometry lit, List<GivenModule> given, Runnable pulse) {
        LightModuleType type = task.halo() ? atTheBack(task.module().type()) : task.module().type();
        List<LightModule> modules = given.stream().map(each -> each.as(type)).toList();
        List<String> how = given.stream().map(GivenModule::how).toList();
        Optional<Layout> layout = Optional.empty();
        Accuracy accuracy = Accuracy.usual().cellMm(task.cellMm());
        Can can = new Can(inside, task.halo() ? inside : lit, task.depthMm(), task.finish());
        Cavity cavity = Cavity.of(can, accuracy, pulse);
        if (task.given().isEmpty()) {
            LitTask.Distances distances = task.distances();
            Layout found = Layouter.layout(LayoutRequest.of(can, type, task.targets().uniformity()).keepClear(task.keepClear())
                    .contrast(task.targets().contrast(), task.targets().eyeMm())
                    .distances(distances.edgeMm(), distances.clearMm(), distances.gapMm()).cablePitch(task.module().cablePitchMm()), cavity, pulse);
            layout = Optional.of(found);
            modules = found.modules();
            how = modules.stream().map(each -> "laid out").toList();
        }
        if (modules.isEmpty()) {
            return new Piece(inside, modules, how, layout, Optional.empty(), Optional.empty(), List.of(), List.of());
        }
        LightMap map = task.halo() ? halo(task, inside, HALO_FROM, HALO_TO, accuracy, modules, pulse)
                : cavity.light(modules, pulse);
        LightMap shown = task.halo() ? halo(task, inside, 0, HALO_SHOWN, accuracy, modules, pulse) : map;
        if (map.litCells() == 0) {
            return new Piece(inside, modules, how, layout, Optional.empty(), Optional.empty(), List.of(), List.of());
        }
        pulse.run();
        boolean[] cells = lit(map);
        List<Spots.Spot> spots = task.halo() ? HaloSpots.of(shown, shown.seen(task.targets().eyeMm()), aside(task, inside, HALO_MIDDLE).getBoundary(), task.targets().contrast())
                : Spots.of(map.grid(), cells, map.seen(task.targets().eyeMm()), task.targets().contrast());
        pulse.run();
        List<DarkPatches.Patch> dark = DarkPatches.of(map.grid(), cells, map.luminance(), task.targets().uniformity() * map.luminanceLevels().mean(),
                task.targets().leastPatchMm2(), inside.getFactory());
        return new Piece(inside, modules, how, layout, Optional.of(map), Optional.of(shown), spots, dark);
    }

    /** The modules of a halo lie on the back and shine off it. */
    private static LightModuleType atTheBack(LightModuleType type) {
        return new LightModuleType(type.name(), type.fluxLm(), type.beamDegrees(), type.lengthMm(), type.widthMm(), 0, type.emitters(), type.emitterPitchMm());
    }

    /** The wall behind a letter, between two distances from the back's edge; nothing stands between back and wall, and the box about it is out of reach. */
    private static LightMap halo(LitTask task, Polygon back, double from, double to, Accuracy accuracy, List<LightModule> modules, Runnable pulse) {
        double standOff = task.depthMm();
        Envelope box = back.getEnvelopeInternal();
        box.expandBy(standOff * (HALO_SHOWN + 1));
        Polygon wall = (Polygon) back.getFactory().toGeometry(box);
        Geometry strip = aside(task, back, to).difference(aside(task, back, Math.max(from, SMOOTH_MM / standOff)));
        Finish open = new Finish(0, 0, 0, task.finish().faceTransmittance(), 0);
        return Cavity.of(new Can(wall, strip, standOff, open), accuracy, pulse).light(modules, pulse);
    }

    /** The back and all that lies within a number of stand-offs of it. */
    private static Geometry aside(LitTask task, Polygon back, double standOffs) {
        return Opening.dilation(back, standOffs * task.depthMm(), task.inset().chordErrorMm());
    }

    static boolean[] lit(LightMap map) {
        boolean[] lit = new boolean[map.grid().size()];
        for (int i = 0; i < lit.length; i++) {
            lit[i] = map.isLit(i);
        }
        return lit;
    }

    List<LightMap> maps() {
        return cans.stream().flatMap(piece -> piece.map().stream()).toList();
    }

    List<LightModule> modules() {
        return cans.stream().flatMap(piece -> piece.modules().stream()).toList();
    }

    /** True when modules were laid out and the layout itself says that it fell short. */
    boolean isBestFound() {
        return cans.stream().anyMatch(piece -> piece.layout().isPresent() && !piece.layout().get().reached());
    }

    List<Spots.Spot> spots() {
        return cans.stream().flatMap(piece -> piece.spots().stream()).toList();
    }

    List<DarkPatches.Patch> dark() {
        return cans.stream().flatMap(piece -> piece.dark().stream()).toList();
    }

    boolean isLit() {
        return !maps().isEmpty();
    }

    /** Illuminance over all pieces, lux. */
    Levels lux() {
        return together(LightMap::luxLevels);
    }

    /** Luminance over all pieces, cd/m². */
    Levels luminance() {
        return together(LightMap::luminanceLevels);
    }

    private Levels together(Function<LightMap, Levels> levels) {
        Levels all = null;
        double sum = 0;
        double area = 0;
        for (LightMap map : maps()) {
            Levels each = levels.apply(map);
            double own = map.litAreaMm2();
            sum += each.mean() * own;
            area += own;
            boolean darker = all == null || each.least() < all.least();
            boolean brighter = all == null || each.greatest() > all.greatest();
            all = new Levels(darker ? each.least() : all.least(), darker ? each.leastAt() : all.leastAt(), sum / area,
                    brighter ? each.greatest() : all.greatest(), brighter ? each.greatestAt() : all.greatestAt());
        }
        return all;
    }

    /** Area of the lit face, by cells, mm². */
    double litAreaMm2() {
        return maps().stream().mapToDouble(LightMap::litAreaMm2).sum();
    }

    /** Share of the light on the face that comes straight from a module, by area. */
    double directShare() {
        return maps().stream().mapToDouble(map -> map.directShare() * map.litCells()).sum() / maps().stream().mapToDouble(LightMap::litCells).sum();
    }

    /** Share of the modules' light that leaves through the face. */
    double through() {
        double emitted = maps().stream().mapToDouble(map -> map.balance().emitted()).sum();
        return emitted > 0 ? maps().stream().mapToDouble(map -> map.balance().through()).sum() / emitted : 0;
    }

    /** The middle one of the distances from each module to its nearest neighbour, mm; 0 for fewer than two. */
    double pitchMm() {
        List<LightModule> modules = modules();
        if (modules.size() < 2) {
            return 0;
        }
        double[] nearest = new double[modules.size()];
        for (int i = 0; i < nearest.length; i++) {
            nearest[i] = Double.POSITIVE_INFINITY;
            for (int j = 0; j < nearest.length; j++) {
                if (i != j) {
                    nearest[i] = Math.min(nearest[i], Math.hypot(modules.get(i).xMm() - modules.get(j).xMm(), modules.get(i).yMm() - modules.get(j).yMm()));
                }
            }
        }
        Arrays.sort(nearest);
        return nearest[nearest.length / 2];
    }

    GeometryFactory factory() {
        return task.part().shape().getFactory();
    }
}
