// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.awt.geom.AffineTransform;
import java.util.List;
import kerfglow.api.proof.ImportNote.Kind;
import org.w3c.dom.Element;

/** The transform of an element, from attribute or property, about its origin: CSS Transforms 1, sections 6 to 8. */
final class Transforms {
    private Transforms() {
    }

    static Place applied(Element element, Place styled, Drawing drawing) {
        String text = styled.style().get("transform", "none");
        if (text.equals("none")) {
            return styled;
        }
        try {
            AffineTransform transform = TransformList.parse(text, styled.lengths());
            String origin = styled.style().get("transform-origin", "");
            if (!origin.isEmpty()) {
                if (styled.style().get("transform-box", "view-box").matches("fill-box|content-box|stroke-box|border-box")) {
                    drawing.report().add(Kind.UNSUPPORTED, element, "transform-box is not followed; the viewport's box is used");
                }
                transform = aboutOrigin(transform, origin, styled.lengths());
            }
            return styled.moved(transform);
        } catch (BadValueException e) {
            drawing.report().badValue(element, "transform", e.getMessage(), "the transform is left out");
            return styled;
        }
    }

    private static AffineTransform aboutOrigin(AffineTransform transform, String origin, Lengths lengths) throws BadValueException {
        List<String> words = List.of(origin.strip().split("\\s+"));
        String first = words.get(0);
        String second = words.size() > 1 ? words.get(1) : "center";
        boolean swapped = first.equals("top") || first.equals("bottom") || second.equals("left") || second.equals("right");
        return TransformList.about(transform, offset(swapped ? second : first, lengths, Lengths.Axis.X),
                offset(swapped ? first : second, lengths, Lengths.Axis.Y));
    }

    private static double offset(String word, Lengths lengths, Lengths.Axis axis) throws BadValueException {
        return switch (word) {
            case "left", "top" -> 0;
            case "center" -> lengths.parse("50%", axis);
            case "right", "bottom" -> lengths.parse("100%", axis);
            default -> lengths.parse(word, axis);
        };
    }
}
