// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.artwork;

import kerfglow.api.proof.Element;
import kerfglow.api.proof.Outline;
import kerfglow.api.proof.Part;
import org.locationtech.jts.geom.Coordinate;

/**
 * One outline that a blade or a bit is to follow.
 *
 * @param index place among all of them
 * @param element what it belongs to
 * @param part the first part that the element is in
 * @param outline as the file draws it
 * @param points its flattened points without repeats, at least two; first and last are equal when it closes by coming back
 */
record Contour(int index, Element element, Part part, Outline outline, Coordinate[] points) {
    /**
     * What is cut in the same run: the parts of one role; a panel with its openings and holes; film of one colour. Nothing is
     * known of unassigned parts, so only those of one layer and colour count as cut together.
     */
    String run() {
        if (!part.isAssigned()) {
            return "layer " + part.layer() + " " + part.paint();
        }
        return switch (part.role()) {
            case PANEL, OPENING, HOLE -> "panel";
            case VINYL, PRINT -> part.role().word() + " " + part.paint();
            default -> part.role().word();
        };
    }

    boolean isRing() {
        return points[0].equals2D(points[points.length - 1]);
    }

    /** Distance along it to each of its points, mm. */
    double[] stations() {
        double[] stations = new double[points.length];
        for (int i = 1; i < points.length; i++) {
            stations[i] = stations[i - 1] + points[i].distance(points[i - 1]);
        }
        return stations;
    }
}
