// SPDX-License-Identifier: Apache-2.0
package kerfglow.light;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import org.locationtech.jts.algorithm.distance.DistanceToPoint;
import org.locationtech.jts.algorithm.distance.PointPairDistance;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;

/**
 * The plainest layout: modules a depth apart, those farthest from the walls first. It tries nothing out and turns nothing, so it stands in
 * where no better layout is at hand.
 */
public final class SimpleLayout implements ModuleLayout {
    /** Assumed: from this pitch to depth on, bare Lambertian modules in rows begin to show; about 0.95 of least to greatest. */
    private static final double PITCH_TO_DEPTH = 1;
    /** Places that are tried, in a module's pitch. */
    private static final double TRIES_PER_PITCH = 8;

    @Override
    public Result layOut(Task task, Runnable pulse) {
        double pitch = PITCH_TO_DEPTH * (task.can().depthMm() - task.type().heightMm());
        Grid grid = Grid.over(task.can().inside().getEnvelopeInternal(), pitch / TRIES_PER_PITCH);
        boolean[] inside = Spans.inside(grid, task.can().inside());
        boolean[] barred = Spans.inside(grid, task.keepClear());
        List<Place> places = new ArrayList<>();
        double half = Math.hypot(task.type().lengthMm(), task.type().widthMm()) / 2;
        for (int i = 0; i < inside.length; i++) {
            if (inside[i] && !barred[i]) {
                Coordinate at = grid.at(i);
                pulse.run();
                double room = distance(task.can().inside().getBoundary(), at);
                if (room >= half && (task.keepClear().isEmpty() || distance(task.keepClear().getBoundary(), at) >= half)) {
                    places.add(new Place(at, Math.min(room, pitch / 2)));
                }
            }
        }
        places.sort(Comparator.comparingDouble(Place::room).reversed()); // stable: from the top left among equals
        List<LightModule> modules = new ArrayList<>();
        for (Place place : places) {
            if (modules.stream().allMatch(each -> Math.hypot(each.xMm() - place.at.x, each.yMm() - place.at.y) >= pitch)) {
                modules.add(new LightModule(place.at.x, place.at.y, 0, task.type()));
            }
        }
        return new Result(modules, Collections.nCopies(modules.size(), 1), modules.size() > 1 ? pitch : 0);
    }

    private record Place(Coordinate at, double room) {
    }

    private static double distance(Geometry to, Coordinate from) {
        PointPairDistance nearest = new PointPairDistance();
        DistanceToPoint.computeDistance(to, from, nearest);
        return nearest.getDistance();
    }
}
