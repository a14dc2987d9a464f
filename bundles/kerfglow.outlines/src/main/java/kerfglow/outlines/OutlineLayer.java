// SPDX-License-Identifier: Apache-2.0
package kerfglow.outlines;

import java.util.List;

/**
 * What is cut or marked of one kind.
 *
 * @param id lower case with hyphens
 * @param name in words
 * @param note what a person must know of it, for instance that it is mirrored; empty for none
 * @param paths lines, in the order of the parts
 * @param points places alone, such as centres of modules
 */
public record OutlineLayer(String id, String name, String note, List<CutPath> paths, List<CutPath.Vertex> points) {
    public OutlineLayer {
        paths = List.copyOf(paths);
        points = List.copyOf(points);
    }

    /** The same turned over for cutting from behind, and said so. */
    OutlineLayer mirrored(double aboutMm) {
        return new OutlineLayer(id + "-mirrored", name + ", mirrored", "mirrored, to be cut from behind", paths.stream().map(path -> path.mirrored(aboutMm)).toList(),
                points.stream().map(point -> new CutPath.Vertex(aboutMm - point.xMm(), point.yMm(), 0)).toList());
    }

    boolean isEmpty() {
        return paths.isEmpty() && points.isEmpty();
    }
}
