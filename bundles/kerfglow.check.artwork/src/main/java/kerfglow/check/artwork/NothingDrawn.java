// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.artwork;

import java.util.List;
import kerfglow.api.Finding;
import kerfglow.api.Measure;
import kerfglow.api.Rule;
import kerfglow.api.Severity;

/** A proof in which nothing becomes a part: no check has anything to say, and that must not read as a pass. */
final class NothingDrawn {
    static final Rule RULE = new Rule("artwork.nothing-drawn", Severity.STOP, "Nothing in the proof becomes a part",
            "No check measures anything, so a run without other findings says nothing about the sign.",
            "See that the right file was exported with its shapes shown, and that the job sheet does not make notes of everything.", "geometry");

    private NothingDrawn() {
    }

    static List<Finding> find(Artwork artwork) {
        if (!artwork.inspection().parts().isEmpty()) {
            return List.of();
        }
        int drawn = artwork.elements().size();
        String message = drawn == 0 ? "The proof holds no shape at all"
                : "The proof holds " + (drawn == 1 ? "1 shape" : drawn + " shapes") + ", but none that is shown becomes a part: they are notes, unused, images or not seen";
        return List.of(Finding.of(RULE, message).measured(Measure.count(0)).required(Measure.count(1)).build());
    }
}
