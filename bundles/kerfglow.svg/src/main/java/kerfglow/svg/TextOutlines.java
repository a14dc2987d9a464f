// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.util.List;
import kerfglow.api.proof.TextRun;
import org.w3c.dom.Element;

final class TextOutlines {
    record Span(Element element, Place place, DrawnPath path, TextRun run) {
    }

    TextOutlines(Drawing drawing) {
    }

    List<Span> spans(Element text, Place place) {
        return List.of();
    }
}
