// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.glow;

import java.util.List;
import kerfglow.api.Rule;
import kerfglow.api.Severity;

/** What the glow check can report. */
final class GlowRules {
    private static final String REAL_LIGHT = "calculated: inverse square law, cosine law and diffuse reflection in the real outline";

    static final Rule HOT_SPOT = new Rule("glow.hot-spot", Severity.REVIEW,
            "Modules show as bright spots on the face",
            "Where the face shows a bright spot over each module with darker ground between them, the sign looks cheap, and once it hangs nothing helps.",
            "Put modules closer together, make the can deeper, or use a face that spreads more.",
            "Weber contrast of a peak against the highest pass to another one; " + REAL_LIGHT);
    static final Rule DARK_PATCH = new Rule("glow.dark-patch", Severity.REVIEW,
            "A patch of the face stays dark",
            "Stroke ends, corners and serifs that light does not reach make a letter look worn or unlike its drawing at night.",
            "Put a module nearer to it, or turn one so that it points there; whiten what surrounds it.",
            "least over mean luminance as in lighting practice; " + REAL_LIGHT);
    static final Rule UNEVEN = new Rule("glow.uneven", Severity.REVIEW,
            "The face is lit less evenly than wanted",
            "What is bright in one place and dark in another reads as a fault of the sign, even where no single spot shows.",
            "Add modules where it is dark, move the others apart, or make the can deeper.",
            "EN 12464-1 (least over mean) and EN 1838 (least over greatest), as glow.uniformity and glow.least-to-greatest say; " + REAL_LIGHT);
    static final Rule MODULE_EDGE = new Rule("glow.module-edge", Severity.STOP,
            "A light module lies across an edge",
            "It does not fit between the returns, or sits where a stud, a wire or a drain goes through.",
            "Move or turn it, or use a shorter module.",
            "geometry");
    static final Rule SHALLOW = new Rule("glow.shallow", Severity.REVIEW,
            "The can is too shallow for the spacing of its modules",
            "Light from one module meets light from the next only where the face is far enough away; until then each shows by itself.",
            "Make the can deeper or the spacing smaller.",
            "the series of an endless row of such modules, with the share of direct light and the spread of this face");
    static final Rule UNLIT = new Rule("glow.unlit", Severity.STOP,
            "A lit part has no light module",
            "It stays dark.",
            "Use a smaller module, or make the part wider; otherwise say that it is not lit (glow.lit).",
            "geometry");
    static final Rule LAYOUT = new Rule("glow.layout", Severity.INFO,
            "How many light modules the sign takes",
            "The numbers that are ordered and wired.",
            "Count the modules of one letter on a sample before ordering for all.",
            "the layout, or the modules that are drawn or placed");

    static final List<Rule> ALL = List.of(HOT_SPOT, DARK_PATCH, UNEVEN, MODULE_EDGE, SHALLOW, UNLIT, LAYOUT);

    private GlowRules() {
    }
}
