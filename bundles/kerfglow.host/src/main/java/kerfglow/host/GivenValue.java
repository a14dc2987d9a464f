// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import java.util.Objects;

/**
 * A value that a sheet or the command line gives for a setting, as typed.
 *
 * @param key the setting
 * @param text the value as typed
 * @param scope what it holds for
 * @param origin who gave it; a later origin outweighs an earlier one
 * @param from where it stands, for people: "shop.yaml line 12"
 */
public record GivenValue(String key, String text, Scope scope, Origin origin, String from) {
    /** Who gives values, weakest first. */
    public enum Origin { CHECK, SHOP, JOB, COMMAND_LINE }

    public GivenValue {
        Objects.requireNonNull(key, "key");
        Objects.requireNonNull(text, "text");
        Objects.requireNonNull(scope, "scope");
        Objects.requireNonNull(origin, "origin");
        Objects.requireNonNull(from, "from");
    }
}
