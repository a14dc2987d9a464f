// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.fit;

import java.util.List;
import java.util.stream.Stream;
import kerfglow.api.proof.Part;

/**
 * Outer parts and the inner parts that belong to them: mostly one of each; several where a letter has one back for two pieces, or
 * one face over two backs.
 *
 * @param outers faces or openings, in the order of the proof
 * @param inners backs or push-throughs, in the order of the proof
 */
record Pair(List<Part> outers, List<Part> inners) {
    Pair {
        outers = List.copyOf(outers);
        inners = List.copyOf(inners);
    }

    List<String> ids() {
        return Stream.concat(inners.stream(), outers.stream()).map(Part::id).toList();
    }

    List<String> elements() {
        return Stream.concat(inners.stream(), outers.stream()).flatMap(part -> part.elements().stream()).distinct().toList();
    }
}
