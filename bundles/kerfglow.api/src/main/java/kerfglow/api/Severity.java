// SPDX-License-Identifier: Apache-2.0
package kerfglow.api;

import java.util.Locale;

/** How much a finding weighs. Each rule has a default; the shop sheet may change it with a reason. */
public enum Severity {
    /** A number for the floor. */
    INFO,
    /** A person must decide. */
    REVIEW,
    /** It cannot be made, or it will fail. */
    STOP;

    /** {@code stop}, {@code review} or {@code info}, as sheets, reports and JSON write it. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
