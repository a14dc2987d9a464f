// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.awt.Shape;
import java.awt.geom.PathIterator;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import kerfglow.api.proof.ImportNote.Kind;
import kerfglow.api.proof.TextRun;
import org.w3c.dom.Element;

/**
 * Turns live text into outlines. Batik lays out a copy of the text whose styles are settled, moved to the origin and enlarged, because
 * its outlines are single precision and font outlines come in fixed fractions of a unit.
 */
final class TextOutlines {
    /**
     * The characters of one text, tspan or textPath element.
     *
     * @param element where they stand
     * @param place its style
     * @param path the outlines in user units
     * @param run what is told about the text
     */
    record Span(Element element, Place place, DrawnPath path, TextRun run) {
    }

    private final Drawing drawing;

    TextOutlines(Drawing drawing) {
        this.drawing = drawing;
    }

    /** @param place with the style and transform of the text element */
    List<Span> spans(Element text, Place place) {
        if (text.getTextContent().isBlank()) {
            return List.of();
        }
        Fonts fonts = drawing.fonts().get();
        if (!(place.style().fontSize() > 0)) {
            drawing.report().add(Kind.BAD_VALUE, text, "the text has no size; it is left out");
            return List.of();
        }
        TextCopy copy = new TextCopy(drawing, fonts, text, place);
        List<TextLayout.Run> runs;
        try {
            runs = TextLayout.runs(copy.document(), fonts);
        } catch (RuntimeException e) { // Batik's many ways to say that it cannot
            drawing.report().add(Kind.UNSUPPORTED, text, "the text cannot be laid out and is left out: " + e.getMessage());
            return List.of();
        }
        List<Span> spans = new ArrayList<>();
        for (TextCopy.Part part : copy.parts()) {
            span(part, copy, fonts, runs, spans);
        }
        return spans;
    }

    private void span(TextCopy.Part part, TextCopy copy, Fonts fonts, List<TextLayout.Run> runs, List<Span> spans) {
        DrawnPath path = new DrawnPath();
        StringBuilder characters = new StringBuilder();
        List<RunHeights> heights = new ArrayList<>();
        for (TextLayout.Run run : runs) {
            if (run.mark() == part.mark()) {
                characters.append(run.text());
                if (!run.text().isBlank()) {
                    heights.add(run.heights());
                }
                for (Shape outline : run.outlines()) {
                    append(outline, copy, path);
                }
            }
        }
        if (characters.toString().isBlank()) {
            return;
        }
        characters.codePoints().filter(c -> !Character.isWhitespace(c) && fonts.lacks(part.font().used(), c)).distinct().forEach(c ->
                drawing.report().add(Kind.UNSUPPORTED, part.element(),
                        String.format("no font here has the character U+%04X; an empty box stands for it", c)));
        if (path.size() == 0) {
            return;
        }
        Place place = part.place();
        double emMm = place.style().fontSize() * Math.hypot(place.toMm().getShearX(), place.toMm().getScaleY());
        TextRun run = new TextRun(characters.toString(), part.font().asked(), part.font().used(), part.font().substituted(), emMm,
                RunHeights.capMm(heights, copy, place.toMm()), RunHeights.xMm(heights, copy, place.toMm()),
                RunHeights.baseLine(heights, copy, place.toMm(), drawing.factory()));
        // Glyphs are nonzero whatever the file says: fill-rule is a property of shapes.
        spans.add(new Span(part.element(), place.styled(place.style().child(Map.of("fill-rule", "nonzero", "clip-rule", "nonzero"),
                place.style().fontSize())), path, run));
    }

    private static void append(Shape outline, TextCopy copy, DrawnPath path) {
        double[] p = new double[6];
        for (PathIterator it = outline.getPathIterator(null); !it.isDone(); it.next()) {
            int kind = it.currentSegment(p);
            for (int i = 0; i < p.length; i += 2) {
                p[i] = copy.x(p[i]);
                p[i + 1] = copy.y(p[i + 1]);
            }
            switch (kind) {
                case PathIterator.SEG_MOVETO -> path.moveTo(p[0], p[1]);
                case PathIterator.SEG_LINETO -> path.lineTo(p[0], p[1]);
                case PathIterator.SEG_QUADTO -> path.quadraticTo(p[0], p[1], p[2], p[3]);
                case PathIterator.SEG_CUBICTO -> path.cubicTo(p[0], p[1], p[2], p[3], p[4], p[5]);
                default -> path.close();
            }
        }
    }
}
