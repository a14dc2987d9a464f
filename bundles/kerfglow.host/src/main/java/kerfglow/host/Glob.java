// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import java.util.regex.Pattern;

/** Names as sheets write them: any case, {@code *} for any characters. */
final class Glob {
    private Glob() {
    }

    static boolean matches(String pattern, String name) {
        if (pattern.indexOf('*') < 0) {
            return pattern.strip().equalsIgnoreCase(name.strip());
        }
        String regex = Pattern.quote(pattern.strip()).replace("*", "\\E.*\\Q");
        return Pattern.compile(regex, Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE).matcher(name.strip()).matches();
    }
}
