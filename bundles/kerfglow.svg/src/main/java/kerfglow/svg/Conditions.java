// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.util.Locale;
import org.w3c.dom.Element;

/** Conditional processing: SVG 2, 5.10. */
final class Conditions {
    private Conditions() {
    }

    /** No extension is known; features all hold, as SVG 2 says; the language is the machine's. */
    static boolean hold(Element element) {
        if (element.hasAttributeNS(null, "requiredExtensions")) {
            return false;
        }
        if (!element.hasAttributeNS(null, "systemLanguage")) {
            return true;
        }
        String user = Locale.getDefault().toLanguageTag().toLowerCase(Locale.ROOT);
        for (String asked : element.getAttributeNS(null, "systemLanguage").toLowerCase(Locale.ROOT).split(",")) {
            String language = asked.strip();
            if (!language.isEmpty() && (user.equals(language) || user.startsWith(language + "-") || language.startsWith(user + "-"))) {
                return true;
            }
        }
        return false;
    }
}
