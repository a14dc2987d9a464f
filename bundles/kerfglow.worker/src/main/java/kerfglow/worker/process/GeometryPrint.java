// SPDX-License-Identifier: Apache-2.0
package kerfglow.worker.process;

import java.util.List;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Proof;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.CoordinateSequenceFilter;
import org.locationtech.jts.geom.Geometry;

/** A number that is another one once any coordinate of a proof or its parts has changed (but by a chance of one in 2 to the 64). */
final class GeometryPrint implements CoordinateSequenceFilter {
    /** Odd, so that no digit is lost: D. E. Knuth's multiplier of a linear congruential generator (MMIX). */
    private static final long MIX = 6364136223846793005L;

    private long print;

    private GeometryPrint() {
    }

    static long of(Proof proof, List<Part> parts) {
        GeometryPrint all = new GeometryPrint();
        for (Element element : proof.elements()) {
            all.add(element.fillArea());
            all.add(element.strokeArea());
            element.outlines().forEach(outline -> {
                all.add(outline.path());
                all.add(outline.nodes());
            });
        }
        for (Part part : parts) {
            all.add(part.shape());
            all.add(part.drilled());
        }
        return all.print;
    }

    private void add(Geometry geometry) {
        geometry.apply(this);
        mix(geometry.getNumPoints());
    }

    @Override
    public void filter(CoordinateSequence points, int i) {
        mix(Double.doubleToRawLongBits(points.getX(i)));
        mix(Double.doubleToRawLongBits(points.getY(i)));
    }

    private void mix(long value) {
        print = (print ^ value) * MIX + 1;
    }

    @Override
    public boolean isDone() {
        return false;
    }

    @Override
    public boolean isGeometryChanged() {
        return false;
    }
}
