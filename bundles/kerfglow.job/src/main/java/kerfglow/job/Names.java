// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.util.UUID;

/** Ids, and what must not be left empty. */
final class Names {
    private Names() {
    }

    /** A URN of a random UUID (RFC 9562), so that the marks of two job files never share an id by chance. */
    static String newId() {
        return "urn:uuid:" + UUID.randomUUID();
    }

    static void requireGiven(String what, String text) {
        if (text == null || text.isBlank()) {
            throw new IllegalArgumentException(what + " is missing");
        }
    }
}
