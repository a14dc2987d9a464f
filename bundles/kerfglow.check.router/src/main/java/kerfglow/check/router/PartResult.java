// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.router;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfglow.api.proof.Part;
import kerfglow.geometry.Residue;
import kerfglow.geometry.Stretch;

/**
 * What was measured on one part.
 *
 * @param task what was asked
 * @param thin stretches below the least width
 * @param left what each bit leaves, by bit
 */
record PartResult(PartTask task, List<Stretch> thin, Map<Bit, List<Residue>> left) {
    Part part() {
        return task.part();
    }

    /** True when the bit passes everywhere; inside corners do not count. */
    boolean fits(Bit bit) {
        return left.get(bit).stream().noneMatch(residue -> residue.kind() == Residue.Kind.GAP);
    }

    List<Residue> left(Optional<Bit> bit) {
        return bit.map(left::get).orElse(List.of());
    }
}
