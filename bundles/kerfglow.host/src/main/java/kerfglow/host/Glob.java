// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

/** Names as sheets write them: any case, {@code *} for any characters. */
final class Glob {
    private Glob() {
    }

    /** Takes time that grows with the product of both lengths at most; a regular expression could take for ever on a name that was made for it. */
    static boolean matches(String pattern, String name) {
        String wanted = pattern.strip();
        String given = name.strip();
        if (wanted.indexOf('*') < 0) {
            return wanted.equalsIgnoreCase(given);
        }
        int at = 0;
        int star = -1;
        int resume = 0;
        int want = 0;
        while (at < given.length()) {
            if (want < wanted.length() && wanted.charAt(want) == '*') {
                star = want++;
                resume = at;
            } else if (want < wanted.length() && given.regionMatches(true, at, wanted, want, 1)) {
                want++;
                at++;
            } else if (star >= 0) { // the last star takes one character more
                want = star + 1;
                at = ++resume;
            } else {
                return false;
            }
        }
        return wanted.substring(want).chars().allMatch(rest -> rest == '*');
    }
}
