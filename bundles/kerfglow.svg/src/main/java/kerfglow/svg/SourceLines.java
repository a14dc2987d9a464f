// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.util.IdentityHashMap;
import java.util.Map;
import org.w3c.dom.Element;

/** Where elements stand in the file. */
final class SourceLines {
    private final Map<Element, Integer> lines = new IdentityHashMap<>();

    void put(Element element, int line) {
        lines.put(element, line);
    }

    /** The line of the element's tag, 0 where it is not known. */
    int of(Element element) {
        return lines.getOrDefault(element, 0);
    }
}
