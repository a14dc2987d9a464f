// SPDX-License-Identifier: Apache-2.0
package kerfglow.api.proof;

import java.util.Objects;
import org.locationtech.jts.geom.Geometry;

/**
 * One subpath as the file draws it, before fill rule, stroke and clip.
 *
 * @param path the flattened subpath in mm: a LineString (first point repeated at the end when closed), or a Point for a
 *     subpath that is a single point
 * @param closed true when the file closes it (Z, polygon, rect, circle, ellipse) or it ends exactly where it began
 * @param nodes the nodes of the file in order, as a MultiPoint in mm: ends of its segments, without control points and
 *     without the points that flattening added
 */
public record Outline(Geometry path, boolean closed, Geometry nodes) {
    public Outline {
        Objects.requireNonNull(path, "path");
        Objects.requireNonNull(nodes, "nodes");
    }
}
