// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;
import org.w3c.dom.Element;

/**
 * Which groups are layers. A layer is the outermost group with a name (label or id). A group that stands alone around everything is
 * unwrapped as long as there is a named group in it; without one it is the only layer that the file has, and stays. Where somebody has
 * labelled it, groups with an id alone do not count: programs number their groups by themselves, and the label is what people see.
 */
final class Layers {
    /** The layer of shapes that lie in no named group. */
    static final String ROOT = "(root)";
    private static final Set<String> NEVER_DRAWN = Set.of("defs", "title", "desc", "metadata", "style", "script", "symbol", "clipPath",
            "mask", "marker", "pattern", "linearGradient", "radialGradient", "filter", "view", "font", "cursor");
    private final Set<Element> unwrapped = Collections.newSetFromMap(new IdentityHashMap<>());

    Layers(Element root) {
        Element at = root;
        while (true) {
            List<Element> drawn = drawnChildren(at);
            if (drawn.size() != 1 || !isGroup(drawn.get(0))
                    || !holdsNamedGroup(drawn.get(0), !Names.label(drawn.get(0)).isEmpty())) {
                return;
            }
            at = drawn.get(0);
            unwrapped.add(at);
        }
    }

    /** The name of the layer that the element begins, or empty when it begins none. */
    String begunBy(Element element) {
        return isGroup(element) && !unwrapped.contains(element) ? Names.layerName(element) : "";
    }

    private static boolean isGroup(Element element) {
        return Names.isSvg(element, "g");
    }

    private static List<Element> drawnChildren(Element element) {
        List<Element> drawn = new ArrayList<>();
        for (Element child : Names.children(element)) {
            if (Names.isSvg(child) && !NEVER_DRAWN.contains(child.getLocalName())) {
                drawn.add(child);
            }
        }
        return drawn;
    }

    private static boolean holdsNamedGroup(Element element, boolean byLabel) {
        for (Element child : drawnChildren(element)) {
            if (isGroup(child) && (!(byLabel ? Names.label(child) : Names.layerName(child)).isEmpty() || holdsNamedGroup(child, byLabel))) {
                return true;
            }
        }
        return false;
    }
}
