// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.router;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import kerfglow.api.Inspection;
import kerfglow.api.proof.Element;
import kerfglow.api.SharedSettings;
import kerfglow.api.proof.Part;

/**
 * Parts that come from strokes no wider than a hairline: drawn to say where to cut, not as strips of material, so that a width, an area
 * or a corner of them means nothing.
 */
final class CutLines {
    private final Inspection inspection;
    private final Map<String, Element> elements = new HashMap<>();

    CutLines(Inspection inspection) {
        this.inspection = inspection;
        inspection.proof().elements().forEach(element -> elements.put(element.id(), element));
    }

    boolean contain(Part part) {
        if (!part.sources().equals(Set.of(Part.Source.STROKE))) {
            return false;
        }
        double widest = part.elements().stream().map(elements::get).filter(Objects::nonNull).mapToDouble(Element::strokeWidthMm).max()
                .orElseGet(() -> meanWidthMm(part));
        return widest <= inspection.settings().get(SharedSettings.HAIRLINE, part) + RouterSettings.RESOLUTION_MM;
    }

    /** Of a strip: twice its area over the length of its edges, exact for a closed line. For a part whose elements are not known. */
    private static double meanWidthMm(Part part) {
        return 2 * part.shape().getArea() / part.shape().getLength();
    }

    /** One sentence for all of them. */
    static String words(List<Part> lines) {
        return lines.size() == 1
                ? "The " + RouterFindings.name(lines.get(0)) + " is a line no wider than a hairline: a drawn cut line, not a strip of material, and not measured."
                : lines.size() + " parts are lines no wider than a hairline: drawn cut lines, not strips of material, and not measured.";
    }
}
