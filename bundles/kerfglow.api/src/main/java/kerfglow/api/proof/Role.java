// SPDX-License-Identifier: Apache-2.0
package kerfglow.api.proof;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What a drawn part becomes in the shop. */
public enum Role {
    /** Cut from sheet; the side that is seen, often lit. */
    FACE(true),
    /** Cut from sheet; closes the can behind the face. */
    BACK(true),
    /** A sheet from which openings are cut. Its material is the panel without its openings and holes. */
    PANEL(true),
    /** Routed out of a panel: the waste is the opening itself. */
    OPENING(true),
    /** Goes through its opening with a clearance. */
    PUSH_THROUGH(true),
    /** Film, in paint order. */
    VINYL(false),
    /** Printed film, in paint order. */
    PRINT(false),
    /** A drawn return outline, used instead of a derived one. */
    RETURN(false),
    /** A light, by its centre and turn. */
    MODULE(false),
    /** A stud, wire or drain hole: drilled, taken out of the part below it. */
    HOLE(false),
    /** No module and no seam here; cuts nothing. */
    KEEP_OUT(false),
    /** Dimensions, title block, swatches: drawn faintly, counted, never checked. */
    NOTE(false),
    /** Left over; never checked. */
    UNUSED(false);

    private final boolean routed;

    Role(boolean routed) {
        this.routed = routed;
    }

    /** True when a router bit cuts this role's outline out of sheet. */
    public boolean isRouted() {
        return routed;
    }

    /** True when shapes of this role are geometry of the sign, false for notes and leftovers. */
    public boolean isChecked() {
        return this != NOTE && this != UNUSED;
    }

    /** The word that job sheets, reports and JSON use, for instance {@code push-through}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The role of a word as {@link #word()} writes it, in any case. */
    public static Optional<Role> of(String word) {
        return Arrays.stream(values()).filter(role -> role.word().equalsIgnoreCase(word.strip())).findFirst();
    }
}
