// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.glow;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import kerfglow.api.Workers;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.AffineTransformation;

/**
 * Parts that are one part in several places, such as the same letter twice in a word, are laid out and mapped once, where the first of them
 * lies, and what was found is moved along. Turned ones are reckoned each by itself, since the cells of their maps lie otherwise.
 */
final class Twins {
    /** Outlines that differ by less, mm, have the same light. Files give lengths to about this. */
    private static final double SAME_MM = 1e-3;

    private Twins() {
    }

    /** Measures all tasks, in their order. */
    static List<LitFace> measure(List<LitTask> tasks, Workers workers) {
        List<LitTask> firsts = new ArrayList<>();
        Map<LitTask, LitTask> firstOf = new IdentityHashMap<>();
        for (LitTask task : tasks) {
            LitTask first = firsts.stream().filter(each -> alike(each, task)).findFirst().orElse(task);
            firstOf.put(task, first);
            if (first == task) {
                firsts.add(task);
            }
        }
        workers.expect(firsts.size() + tasks.size());
        List<LitFace> measured = workers.map(firsts, task -> LitFace.measure(task, workers::pulse));
        Map<LitTask, LitFace> faces = new IdentityHashMap<>();
        measured.forEach(face -> faces.put(face.task(), face));
        return tasks.stream().map(task -> {
            LitTask first = firstOf.get(task);
            return first == task ? faces.get(task) : faces.get(first).moved(task, right(first, task), down(first, task));
        }).toList();
    }

    private static double right(LitTask from, LitTask to) {
        return box(to).getMinX() - box(from).getMinX();
    }

    private static double down(LitTask from, LitTask to) {
        return box(to).getMinY() - box(from).getMinY();
    }

    private static Envelope box(LitTask task) {
        return task.part().shape().getEnvelopeInternal();
    }

    /** True when modules are to be laid out in both, alike in all but the place. */
    private static boolean alike(LitTask one, LitTask other) {
        boolean same = one.given().isEmpty() && other.given().isEmpty() && one.halo() == other.halo() && one.depthMm() == other.depthMm() && one.lipMm() == other.lipMm()
                && one.inset().equals(other.inset()) && one.finish().equals(other.finish()) && one.module().equals(other.module())
                && one.distances().equals(other.distances()) && one.targets().equals(other.targets()) && Math.abs(one.cellMm() - other.cellMm()) < SAME_MM;
        return same && Math.abs(box(one).getWidth() - box(other).getWidth()) < SAME_MM && Math.abs(box(one).getHeight() - box(other).getHeight()) < SAME_MM
                && moved(one.part().shape(), one, other).equalsExact(other.part().shape(), SAME_MM)
                && moved(one.keepClear(), one, other).equalsExact(other.keepClear(), SAME_MM);
    }

    private static Geometry moved(Geometry geometry, LitTask from, LitTask to) {
        return AffineTransformation.translationInstance(right(from, to), down(from, to)).transform(geometry);
    }
}
