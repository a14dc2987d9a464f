// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

import java.util.Optional;
import kerfglow.views.PlainText;

/**
 * How the work in the background stands.
 *
 * @param busy true while a file is read or checked
 * @param what the stage, for a person
 * @param fraction how far it is, 0 to 1
 * @param problem what went wrong with the last work, in a sentence that says what to do
 */
public record WorkState(boolean busy, String what, double fraction, Optional<String> problem) {
    public WorkState {
        what = PlainText.of(what); // names of files stand in both
        problem = problem.map(PlainText::of);
    }

    /** Nothing runs, nothing went wrong. */
    public static final WorkState IDLE = new WorkState(false, "", 0, Optional.empty());

    public static WorkState at(String what, double fraction) {
        return new WorkState(true, what, fraction, Optional.empty());
    }

    /** The same work, with something to tell. */
    public WorkState withRemark(String remark) {
        return new WorkState(busy, what, fraction, Optional.of(remark));
    }

    public static WorkState failed(String problem) {
        return new WorkState(false, "", 0, Optional.of(problem));
    }
}
