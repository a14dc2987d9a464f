// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

/**
 * A url() in a property.
 *
 * @param target what stands in the brackets, without quotes
 * @param rest what follows it
 */
record Reference(String target, String rest) {
    private static final int LONGEST_QUOTE = 60;

    /** The reference at the start of the text, or null when there is none. */
    static Reference find(String text) {
        String value = text.strip();
        if (!value.regionMatches(true, 0, "url(", 0, 4)) {
            return null;
        }
        int end = CssText.find(value, 4, ")");
        String target = value.substring(4, end).strip().replaceAll("^[\"']|[\"']$", "").strip();
        return new Reference(target, end < value.length() ? value.substring(end + 1).strip() : "");
    }

    boolean isOutside() {
        return !target.startsWith("#");
    }

    String id() {
        return target.substring(1);
    }

    /** Short enough for a message. */
    String quoted() {
        return "\"" + (target.length() > LONGEST_QUOTE ? target.substring(0, LONGEST_QUOTE) + "..." : target) + "\"";
    }
}
