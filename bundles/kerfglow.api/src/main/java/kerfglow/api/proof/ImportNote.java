// SPDX-License-Identifier: Apache-2.0
package kerfglow.api.proof;

import java.util.Objects;

/**
 * Something in the file that was not taken over as drawn. Nothing is dropped without one.
 *
 * @param kind what sort of thing it is
 * @param element the id of the element, as in {@link Element#id()} where it became one, else the file's id or tag
 * @param line the line in the file, 0 where it is not known
 * @param message what was found and what was done about it, one sentence
 */
public record ImportNote(Kind kind, String element, int line, String message) {
    /** The sorts of note. */
    public enum Kind {
        /** A reference to another file or to the network; never followed. */
        REFUSED_REFERENCE,
        /** Script or event handler; never run. */
        SCRIPT,
        /** Animation; the still state is used. */
        ANIMATION,
        /** An element or property that is not understood or not supported. */
        UNSUPPORTED,
        /** A value that cannot be read or used (not a number, infinite, negative size); what depends on it was left out. */
        BAD_VALUE,
        /** The size of the sign was not stated and had to be assumed. */
        ASSUMED_SIZE
    }

    public ImportNote {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(element, "element");
        Objects.requireNonNull(message, "message");
    }
}
