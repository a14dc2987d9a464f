// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.io.IOException;

/** A job file cannot be read or written. The message names the file and says what to do. */
public final class JobFileException extends IOException {
    private static final long serialVersionUID = 1L;

    /** What stands in the way. */
    public enum Kind {
        /** There is no such file, or it cannot be opened. */
        UNREADABLE,
        /** It cannot be written here. */
        UNWRITABLE,
        /** It changed on disk since it was read; saving again with "overwrite" writes over it. */
        CHANGED_ON_DISK,
        /** Somebody else has it open for changes. */
        HELD,
        /** A newer program wrote it. */
        NEWER,
        /** It is damaged, and what can be read of it is not enough here. */
        DAMAGED
    }

    private final Kind kind;

    JobFileException(Kind kind, String message, Throwable cause) {
        super(message, cause);
        this.kind = kind;
    }

    public Kind kind() {
        return kind;
    }
}
