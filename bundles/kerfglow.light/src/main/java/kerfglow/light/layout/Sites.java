// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;

/**
 * All places that a search may choose from: on the centre lines, and in several rows beside them where the stroke is wide, in small steps;
 * only where the plate keeps clear of walls, holes, keep-outs and fixed modules. Even rows add places of their own.
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
    /** Discs for even rows are measured every so many least steps. */
    private static final double DISC_STEPS = 3;
    /** Most places; more would only cost time. */
    private static final int MOST = 2400;

    private final LayoutRequest request;
    private final GeometryFactory factory;
    private final double height;
    private final PreparedGeometry room;
    private final WallLines walls;
    private final List<Site> fixed;
    private final List<CentreLine> lines;
    private final List<Site> found = new ArrayList<>();
    private final Map<CentreLine, double[]> discs = new HashMap<>();
    private final Map<Site, Integer> added = new HashMap<>();

    private Sites(LayoutRequest request, List<CentreLine> lines) {
        this.request = request;
        this.lines = lines;
        Polygon inside = request.can().inside();
        factory = inside.getFactory();
        height = request.heightMm();
        Geometry free = request.edgeMm() > 0 ? inside.buffer(-request.edgeMm()) : inside;
        Geometry barred = request.clearMm() > 0 ? request.keepClear().buffer(request.clearMm()) : request.keepClear();
        room = PreparedGeometryFactory.prepare(barred.isEmpty() ? free : free.difference(barred));
        walls = new WallLines(inside);
        fixed = fixed(request);
    }

    /** Where the modules lie that a person put. */
    static List<Site> fixed(LayoutRequest request) {
        return request.fixed().stream().map(each -> new Site(each.xMm(), each.yMm(), Math.toRadians(each.turnDegrees()), -1, 0)).toList();
    }

    static Sites of(LayoutRequest request, List<CentreLine> lines, Runnable pulse) {
        Sites sites = new Sites(request, lines);
        double length = lines.stream().mapToDouble(CentreLine::lengthMm).sum();
        double step = Math.max(LEAST_STEP_MM, Math.min(length / STEPS, sites.height * COARSEST_STEP));
        sites.along(step, pulse);
        while (sites.found.size() > MOST) {
            step *= Math.max(ROWS_RATIO, (double) sites.found.size() / MOST);
            sites.found.clear();
            sites.along(step, pulse);
        }
        return sites;
    }

    /** In the order of the lines, then those that were added; empty where no plate fits. */
    List<Site> list() {
        return Collections.unmodifiableList(found);
    }

    List<CentreLine> lines() {
        return lines;
    }

    /**
     * Rows side by side at a place of a line, about as far apart as is asked for.
     *
     * @param edge how far the outer rows are from the walls, in steps from row to row
     * @return their sites, new ones added; where the plate does not fit the nearest one that there is, or none
     */
    List<Integer> rows(int line, double along, double apartMm, double edge) {
        CentreLine centre = lines.get(line);
        Coordinate at = centre.at(along);
        double direction = centre.direction(along);
        double disc = disc(centre, along);
        double left = across(at, direction + Math.PI / 2, disc);
        double right = across(at, direction - Math.PI / 2, disc);
        int n = (int) Math.round((left + right) / apartMm);
        List<Integer> rows = new ArrayList<>();
        if (n < 2) {
            nearest(at, apartMm / 2).ifPresent(rows::add);
            return rows;
        }
        double step = (left + right) / (n - 1 + 2 * edge);
        for (int row = 0; row < n; row++) {
            double beside = (row + edge) * step - right;
            Site site = new Site(at.x - beside * Math.sin(direction), at.y + beside * Math.cos(direction), direction, line, along);
            (isFree(site) ? OptionalInt.of(added.computeIfAbsent(site, this::added)) : nearest(new Coordinate(site.x(), site.y()), step / 2)).ifPresent(rows::add);
        }
        return rows;
    }

    private int added(Site site) {
        found.add(site);
        return found.size() - 1;
    }

    private OptionalInt nearest(Coordinate at, double within) {
        int best = -1;
        double least = within * within;
        for (int i = 0; i < found.size(); i++) {
            double dx = found.get(i).x() - at.x;
            double dy = found.get(i).y() - at.y;
            double distance2 = dx * dx + dy * dy;
            if (distance2 < least) {
                least = distance2;
                best = i;
            }
        }
        return best < 0 ? OptionalInt.empty() : OptionalInt.of(best);
    }

    /** The largest inscribed disc of a line that covers a place of it; see {@link #covered}. */
    private double disc(CentreLine line, double along) {
        int steps = discs.computeIfAbsent(line, each -> covered(each, Math.max(1, (int) Math.round(each.lengthMm() / LEAST_STEP_MM / DISC_STEPS)))).length;
        return discs.get(line)[Math.max(0, Math.min(steps - 1, (int) (along / line.lengthMm() * steps)))];
    }

    private void along(double step, Runnable pulse) {
        for (int i = 0; i < lines.size(); i++) {
            CentreLine line = lines.get(i);
            int steps = Math.max(1, (int) Math.round(line.lengthMm() / step));
            double[] covered = covered(line, steps);
            for (int k = 0; k < steps; k++) {
                pulse.run();
                across(line, i, (k + 0.5) / steps * line.lengthMm(), covered[k]);
            }
        }
    }

    /** At each step the largest inscribed disc of the line that covers it: before a wall at the end, the disc shrinks and the stroke does not. */
    private double[] covered(CentreLine line, int steps) {
        double[] discs = new double[steps];
        for (int k = 0; k < steps; k++) {
            discs[k] = walls.distance(line.at((k + 0.5) / steps * line.lengthMm()));
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

    private void across(CentreLine line, int index, double along, double disc) {
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
                Site site = new Site(at.x - beside * Math.sin(direction), at.y + beside * Math.cos(direction), direction, index, along);
                if (isFree(site)) {
                    found.add(site);
                }
            }
        }
    }

    /** How far the wall is from the line, to one side. */
    private double across(Coordinate at, double direction, double disc) {
        double most = Math.max(disc * ACROSS, LEAST_STEP_MM);
        return Math.min(most, walls.along(at.x, at.y, Math.cos(direction), Math.sin(direction)));
    }

    private boolean isFree(Site site) {
        boolean point = request.type().lengthMm() <= 0 || request.type().widthMm() <= 0;
        Geometry plate = point ? factory.createPoint(new Coordinate(site.x(), site.y())) : site.module(request.type()).outline(factory);
        return room.covers(plate) && fixed.stream().allMatch(each -> Site.apart(site, each, request.type(), request.gapMm()));
    }
}
