// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.scene;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import kerfglow.api.Severity;

/**
 * Markers gathered for a scale: those nearer to each other than a badge is wide become one badge that says how many it stands for.
 * Gathering depends on the scale alone and not on what is seen, so that badges keep together while the drawing is moved.
 */
public final class Badges {
    /**
     * One badge.
     *
     * @param xMm where it stands: at the first of its markers
     * @param yMm where it stands
     * @param severity the greatest weight among its markers
     * @param markers what it stands for, most severe first
     */
    public record Badge(double xMm, double yMm, Severity severity, List<Marker> markers) {
    }

    /**
     * A place of a finding.
     *
     * @param finding id of the finding
     * @param place which of its places, from 0
     */
    public record Spot(String finding, int place) {
    }

    /** The places whose badge stands for others too. */
    public static Set<Spot> gathered(List<Badge> badges) {
        return badges.stream().filter(badge -> badge.markers().size() > 1).flatMap(badge -> badge.markers().stream())
                .map(marker -> new Spot(marker.finding(), marker.place())).collect(Collectors.toSet());
    }

    private Badges() {
    }

    /**
     * Gathers.
     *
     * @param markers what is to be shown
     * @param pixelsPerMm the scale
     * @param reachPx markers nearer than this to the first of a badge join it
     */
    public static List<Badge> gather(List<Marker> markers, double pixelsPerMm, double reachPx) {
        double reachMm = reachPx / pixelsPerMm;
        List<Marker> severeFirst = new ArrayList<>(markers);
        severeFirst.sort(Comparator.comparing(Marker::severity).reversed().thenComparingInt(Marker::number).thenComparingInt(Marker::place));
        Map<Cell, List<List<Marker>>> grid = new HashMap<>();
        List<List<Marker>> groups = new ArrayList<>();
        for (Marker marker : severeFirst) {
            Cell cell = Cell.of(marker, reachMm);
            List<Marker> group = nearest(marker, cell, grid, reachMm);
            if (group == null) {
                group = new ArrayList<>();
                groups.add(group);
                grid.computeIfAbsent(cell, key -> new ArrayList<>()).add(group);
            }
            group.add(marker);
        }
        return groups.stream().map(group -> new Badge(group.get(0).at().x, group.get(0).at().y, group.get(0).severity(), List.copyOf(group))).toList();
    }

    private static List<Marker> nearest(Marker marker, Cell cell, Map<Cell, List<List<Marker>>> grid, double reachMm) {
        List<Marker> nearest = null;
        double least = reachMm;
        for (long x = cell.x - 1; x <= cell.x + 1; x++) {
            for (long y = cell.y - 1; y <= cell.y + 1; y++) {
                for (List<Marker> group : grid.getOrDefault(new Cell(x, y), List.of())) {
                    double distance = group.get(0).at().distance(marker.at());
                    if (distance < least) {
                        least = distance;
                        nearest = group;
                    }
                }
            }
        }
        return nearest;
    }

    private record Cell(long x, long y) {
        static Cell of(Marker marker, double sizeMm) {
            return new Cell((long) Math.floor(marker.at().x / sizeMm), (long) Math.floor(marker.at().y / sizeMm));
        }
    }
}
