// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.util.ArrayList;
import java.util.List;

/** Cuts CSS text at its braces and separators, minding strings and brackets: CSS Syntax 3, section 5, as far as SVG needs it. */
final class CssText {
    /** @param prelude what stands before the braces, stripped; @param body what stands in them, empty for a statement */
    record Block(String prelude, String body) {
    }

    private CssText() {
    }

    static String withoutComments(String text) {
        StringBuilder out = new StringBuilder(text.length());
        int at = 0;
        while (at < text.length()) {
            int start = text.indexOf("/*", at);
            if (start < 0) {
                break;
            }
            out.append(text, at, start).append(' ');
            int end = text.indexOf("*/", start + 2);
            at = end < 0 ? text.length() : end + 2;
        }
        return out.append(text, Math.min(at, text.length()), text.length()).toString();
    }

    /** Parts between separators outside strings and brackets. */
    static List<String> split(String text, char separator) {
        List<String> parts = new ArrayList<>();
        int from = 0;
        while (from <= text.length()) {
            int end = find(text, from, String.valueOf(separator));
            parts.add(text.substring(from, end));
            from = end + 1;
        }
        return parts;
    }

    static List<Block> blocks(String text) {
        List<Block> blocks = new ArrayList<>();
        int from = 0;
        while (from < text.length()) {
            int end = find(text, from, "{;");
            String prelude = text.substring(from, end).strip();
            if (end < text.length() && text.charAt(end) == '{') {
                int close = find(text, end + 1, "}");
                blocks.add(new Block(prelude, text.substring(end + 1, close)));
                from = close + 1;
            } else {
                if (!prelude.isEmpty()) {
                    blocks.add(new Block(prelude, ""));
                }
                from = end + 1;
            }
        }
        return blocks;
    }

    /** The first of the wanted characters from here on that is in no string and no bracket; the length when there is none. */
    static int find(String text, int from, String wanted) {
        int depth = 0;
        char quote = 0;
        for (int i = from; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == '\\') {
                i++;
            } else if (quote != 0) {
                quote = c == quote ? 0 : quote;
            } else if (c == '"' || c == '\'') {
                quote = c;
            } else if (depth == 0 && wanted.indexOf(c) >= 0) {
                return i;
            } else if (c == '(' || c == '[' || c == '{') {
                depth++;
            } else if (c == ')' || c == ']' || c == '}') {
                depth = Math.max(0, depth - 1);
            }
        }
        return text.length();
    }
}
