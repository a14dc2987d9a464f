// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;

/**
 * All places that a search may choose from: on the centre lines, and in several rows beside them where the stroke is wide, in small steps;
 * only where the plate keeps clear of walls, holes, keep-outs and fixed modules.
 */
final class Sites {
    /** Steps along all centre lines together; few enough to look at all, fine enough that the best place between two is as good. Assumed. */
    private static final double STEPS = 160;
    private static final double LEAST_STEP_MM = 2;
    /** A step is never coarser than this share of the height: coarser ones make the pitches of a long row unlike. Assumed. */
    private static final double COARSEST_STEP = 1.0 / 20;
    /** Rows closer than this, in heights, light nothing that fewer do not; rows farther apart than that leave dark between them. Assumed from the series of the endless row. */
    private static final double CLOSEST_ROWS = 0.6;
    private static final double FARTHEST_ROWS = 1.8;
    /** How much the numbers of rows that are tried differ. Assumed. */
    private static final double ROWS_RATIO = 1.25;
    /** A row's place beside the line is looked for up to this multiple of the inscribed disc; beyond it lies another stroke. Assumed. */
    private static final double ACROSS = 1.3;
    /** Most places; more would only cost time. */
    private static final int MOST = 2400;

    private final LayoutRequest request;
    private final GeometryFactory factory;
    private final double height;
    private final PreparedGeometry room;
    private final Geometry walls;
    private final List<Site> fixed;

    private Sites(LayoutRequest request) {
        this.request = request;
        Geometry inside = request.can().inside();
        factory = inside.getFactory();
        height = request.heightMm();
        Geometry free = request.edgeMm() > 0 ? inside.buffer(-request.edgeMm()) : inside;
        Geometry barred = request.clearMm() > 0 ? request.keepClear().buffer(request.clearMm()) : request.keepClear();
        room = PreparedGeometryFactory.prepare(barred.isEmpty() ? free : free.difference(barred));
        walls = inside.getBoundary();
        fixed = fixed(request);
    }

    /** Where the modules lie that a person put. */
    static List<Site> fixed(LayoutRequest request) {
        return request.fixed().stream().map(each -> new Site(each.xMm(), each.yMm(), Math.toRadians(each.turnDegrees()), -1, 0)).toList();
    }

    /** In the order of the lines; empty where no plate fits. */
    static List<Site> of(LayoutRequest request, List<CentreLine> lines, Runnable pulse) {
        Sites sites = new Sites(request);
        double length = lines.stream().mapToDouble(CentreLine::lengthMm).sum();
        double step = Math.max(LEAST_STEP_MM, Math.min(length / STEPS, sites.height * COARSEST_STEP));
        List<Site> found = sites.along(lines, step, pulse);
        while (found.size() > MOST) {
            step *= Math.max(ROWS_RATIO, (double) found.size() / MOST);
            found = sites.along(lines, step, pulse);
        }
        return found;
    }

    private List<Site> along(List<CentreLine> lines, double step, Runnable pulse) {
        List<Site> found = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            CentreLine line = lines.get(i);
            int steps = Math.max(1, (int) Math.round(line.lengthMm() / step));
            double[] covered = covered(line, steps);
            for (int k = 0; k < steps; k++) {
                pulse.run();
                across(line, i, (k + 0.5) / steps * line.lengthMm(), covered[k], found);
            }
        }
        return found;
    }

    /** At each step the largest inscribed disc of the line that covers it: before a wall at the end, the disc shrinks and the stroke does not. */
    private double[] covered(CentreLine line, int steps) {
        double[] discs = new double[steps];
        for (int k = 0; k < steps; k++) {
            discs[k] = walls.distance(factory.createPoint(line.at((k + 0.5) / steps * line.lengthMm())));
        }
        double[] covered = discs.clone();
        for (int k = 0; k < steps; k++) {
            for (int j = 0; j < steps; j++) {
                if (Math.abs(j - k) * line.lengthMm() / steps <= discs[j]) {
                    covered[k] = Math.max(covered[k], discs[j]);
                }
            }
        }
        return covered;
    }

    private void across(CentreLine line, int index, double along, double disc, List<Site> found) {
        Coordinate at = line.at(along);
        double direction = line.direction(along);
        double left = across(at, direction + Math.PI / 2, disc);
        double right = across(at, direction - Math.PI / 2, disc);
        double width = left + right;
        int most = Math.max(1, (int) Math.floor(width / Math.max(CLOSEST_ROWS * height, request.type().widthMm() + request.gapMm())));
        int least = Math.min(most, Math.max(1, (int) Math.ceil(width / (FARTHEST_ROWS * height))));
        for (int n = least; n <= most; n = Math.max(n + 1, (int) Math.floor(n * ROWS_RATIO))) {
            for (int row = 0; row < n; row++) {
                double beside = n == 1 ? 0 : (row + 0.5) / n * width - right;
                add(new Site(at.x - beside * Math.sin(direction), at.y + beside * Math.cos(direction), direction, index, along), found);
            }
        }
    }

    /** How far the wall is from the line, to one side. */
    private double across(Coordinate at, double direction, double disc) {
        double least = Math.max(disc * ACROSS, LEAST_STEP_MM);
        Coordinate end = new Coordinate(at.x + least * Math.cos(direction), at.y + least * Math.sin(direction));
        for (Coordinate each : factory.createLineString(new Coordinate[] {at, end}).intersection(walls).getCoordinates()) {
            least = Math.min(least, each.distance(at));
        }
        return least;
    }

    private void add(Site site, List<Site> found) {
        boolean point = request.type().lengthMm() <= 0 || request.type().widthMm() <= 0;
        Geometry plate = point ? factory.createPoint(new Coordinate(site.x(), site.y())) : site.module(request.type()).outline(factory);
        if (room.covers(plate) && fixed.stream().allMatch(each -> Site.apart(site, each, request.type(), request.gapMm()))) {
            found.add(site);
        }
    }
}
