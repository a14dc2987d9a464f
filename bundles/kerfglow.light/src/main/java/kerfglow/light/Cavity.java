// SPDX-License-Identifier: Apache-2.0
package kerfglow.light;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Polygon;

/**
 * A can made ready for light: how its surfaces see each other is reckoned once, so that modules can be moved and lit again in little time.
 * Immutable; {@link #light} may run on several threads.
 */
public final class Cavity {
    /**
     * Nearer than this to a wall, in cells, the centre of a cell tells nothing of the cell: the facets of the wall cut off what grazes it. Assumed.
     */
    private static final double GRAZING = 0.1;

    private final Can can;
    private final Accuracy accuracy;
    private final Interior interior;
    /** From where this can is to where its interior is reckoned. */
    private final Pose pose;
    private final Outline outline;
    private final Grid grid;
    private final boolean[] inside;
    private final boolean[] lit;
    private final double litAreaMm2;
    /** Empty when nothing is reflected. */
    private final Optional<Gather> gather;

    private Cavity(Can can, Accuracy accuracy, Interior interior, Pose pose, double nodesPerPatch, Runnable pulse) {
        this.can = can;
        this.accuracy = accuracy;
        this.interior = interior;
        this.pose = pose;
        outline = new Outline(can.inside());
        grid = Grid.over(can.inside().getEnvelopeInternal(), accuracy.cellMm());
        inside = Spans.inside(grid, can.inside());
        int litCells = 0;
        lit = Spans.inside(grid, can.lit());
        for (int i = 0; i < lit.length; i++) {
            lit[i] &= inside[i];
            litCells += lit[i] ? 1 : 0;
        }
        leaveOutGrazing();
        litAreaMm2 = litCells * grid.cellMm() * grid.cellMm();
        gather = interior.isBlack() ? Optional.empty() : Optional.of(new Gather(interior, pose, nodesPerPatch, grid, inside, pulse));
    }

    /** Cells whose centres nearly lie on a wall are not judged, unless none would be left. */
    private void leaveOutGrazing() {
        boolean[] judged = lit.clone();
        double near = GRAZING * grid.cellMm();
        boolean any = false;
        for (int i = 0; i < outline.edges(); i++) {
            double toX = outline.ax[i] + outline.ex[i];
            double toY = outline.ay[i] + outline.ey[i];
            int lastRow = grid.row(Math.max(outline.ay[i], toY) + near);
            int lastColumn = grid.column(Math.max(outline.ax[i], toX) + near);
            for (int row = grid.row(Math.min(outline.ay[i], toY) - near); row <= lastRow; row++) {
                for (int column = grid.column(Math.min(outline.ax[i], toX) - near); column <= lastColumn; column++) {
                    int cell = row * grid.columns() + column;
                    judged[cell] &= outline.distance2(i, grid.x(column), grid.y(row)) > near * near;
                }
            }
        }
        for (boolean each : judged) {
            any |= each;
        }
        if (any) {
            System.arraycopy(judged, 0, lit, 0, lit.length);
        }
    }

    /**
     * Makes a can ready.
     *
     * @param pulse called often; throws when the work is over
     */
    public static Cavity of(Can can, Accuracy accuracy, Runnable pulse) {
        pulse.run();
        Interior interior = new Interior(can, accuracy, pulse);
        return new Cavity(can, accuracy, interior, interior.pose, Gather.NODES_PER_PATCH, pulse);
    }

    /**
     * The same can, moved into the frame of its own shape or one turned against that; what its surfaces see of each other is not reckoned again.
     * Turned cans are alike there.
     *
     * @param angle against the shape's own frame, radians; see {@link Pose#further}
     * @param cellMm cell of its maps, mm
     * @param roughly true to read what surfaces send on more coarsely, at a quarter of the cost
     * @param pulse called often; throws when the work is over
     */
    public Cavity inOwnFrame(double angle, double cellMm, boolean roughly, Runnable pulse) {
        Pose frame = pose.further(angle);
        Can moved = new Can((Polygon) frame.into(can.inside()), frame.into(can.lit()), can.depthMm(), can.finish());
        return new Cavity(moved, accuracy.cellMm(cellMm), interior, Pose.turned(angle), roughly ? Gather.FEW_NODES_PER_PATCH : Gather.NODES_PER_PATCH, pulse);
    }

    /** The frame of the can's own shape. */
    public Pose pose() {
        return pose;
    }

    public Can can() {
        return can;
    }

    public Accuracy accuracy() {
        return accuracy;
    }

    /** Size of the patches that send light on, mm; larger than asked for where they would have been too many. */
    public double patchMm() {
        return interior.patches.patchMm;
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
        Interior.Received received = interior.received(modules.stream().map(pose::into).toList(), pulse);
        gather.ifPresent(each -> each.add(interior.radiosity(received), lux, pulse));
        double total = sum(lux);
        double[] luminance = Smoothing.gaussian(grid, inside, lux, can.finish().spreadMm() / grid.cellMm()).clone();
        for (int i = 0; i < luminance.length; i++) {
            luminance[i] *= can.finish().faceTransmittance() / Math.PI;
        }
        return new LightMap(grid, inside, lit, litAreaMm2, lux, luminance, total > 0 ? straight / total : 0, balance(received, total));
    }

    /** The part of it that back, walls and face send on, lux in each cell; see {@link #light}. */
    public double[] sentOn(List<LightModule> modules, Runnable pulse) {
        double[] lux = new double[grid.size()];
        gather.ifPresent(each -> each.add(interior.radiosity(interior.received(modules.stream().map(pose::into).toList(), pulse)), lux, pulse));
        return lux;
    }

    /** True when surfaces send nothing on. */
    public boolean isBlack() {
        return gather.isEmpty();
    }

    /** True when a cell's centre lies on the lit face, and not quite at a wall. */
    public boolean isLit(int cell) {
        return lit[cell];
    }

    /** A map blurred by a Gaussian along the face, within the outline; sigma in mm, 0 changes nothing. */
    public double[] blurred(double[] values, double sigmaMm) {
        return Smoothing.gaussian(grid, inside, values, sigmaMm / grid.cellMm());
    }

    private double sum(double[] lux) {
        double sum = 0;
        for (int i = 0; i < lux.length; i++) {
            sum += inside[i] ? lux[i] : 0;
        }
        return sum;
    }

    private LightMap.Balance balance(Interior.Received received, double totalLux) {
        int cells = 0;
        for (boolean each : inside) {
            cells += each ? 1 : 0;
        }
        double onFace = cells == 0 ? 0 : totalLux / cells * can.inside().getArea() / LightMap.MM2_PER_M2;
        double back = 0;
        double walls = 0;
        int plan = interior.patches.plan;
        for (int i = 0; i < received.all().length; i++) {
            double absorbed = received.all()[i] * interior.absorptance(i);
            back += i < plan ? absorbed : 0;
            walls += i < 2 * plan ? 0 : absorbed;
        }
        Finish finish = can.finish();
        return new LightMap.Balance(Arrays.stream(received.straight()).sum(), back, walls,
                onFace * (1 - finish.faceReflectance() - finish.faceTransmittance()), onFace * finish.faceTransmittance());
    }
}
