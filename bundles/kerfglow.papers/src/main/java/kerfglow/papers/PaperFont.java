// SPDX-License-Identifier: Apache-2.0
package kerfglow.papers;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.Map;
import kerfglow.fonts.SansFont;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/** The embedded font of one document: what it can show, and how wide that is. Bold is the same font drawn with an edge. */
final class PaperFont {
    /** Width of the edge of bold letters, as a share of their size; common practice, no source. */
    static final double BOLD_EDGE = 0.035;
    /** Stands for a character that the font does not have: a lozenge, which no text here uses otherwise. */
    private static final String UNKNOWN = "\u25CA";
    /** PDF gives widths in thousandths of the size (ISO 32000-1, 9.2.4). */
    private static final double PER_SIZE = 1000;
    private static final int FIRST_PRINTABLE = 0x20;
    private static final int DELETE = 0x7f;
    private static final int LAST_CONTROL = 0x9f;

    private final PDFont font;
    private final Map<Integer, Double> advances = new HashMap<>();
    private boolean lacking;

    PaperFont(PDDocument document) throws IOException {
        TrueTypeFont letters;
        try (InputStream in = SansFont.open()) {
            letters = new TTFParser(true).parse(new RandomAccessReadBuffer(in));
        }
        letters.setEnableGsub(false); // ligatures: they hide letters from searching, and looking for them takes most of the time
        document.registerTrueTypeFontForClosing(letters);
        font = PDType0Font.load(document, letters, true);
    }

    PDFont font() {
        return font;
    }

    /** Width of a line of text in the unit of its size. Bold reaches half an edge out on either side. */
    double width(String text, double size, boolean bold) {
        double width = text.codePoints().mapToDouble(this::advance).sum() * size;
        return bold ? width + BOLD_EDGE * size : width;
    }

    private double advance(int character) {
        return advances.computeIfAbsent(character, each -> {
            try {
                return font.getStringWidth(shown(Character.toString(each))) / PER_SIZE;
            } catch (IOException damaged) {
                throw new UncheckedIOException(damaged);
            }
        });
    }

    /** The text with a lozenge for what the font does not have, and without control characters. */
    String shown(String text) {
        StringBuilder shown = new StringBuilder(text.length());
        text.codePoints().forEach(character -> {
            if (character < FIRST_PRINTABLE || character >= DELETE && character <= LAST_CONTROL) {
                shown.append(' ');
            } else if (has(character)) {
                shown.appendCodePoint(character);
            } else {
                lacking = true;
                shown.append(UNKNOWN);
            }
        });
        return shown.toString();
    }

    private boolean has(int character) {
        try {
            return font.encode(Character.toString(character)).length > 0;
        } catch (IllegalArgumentException | IOException noGlyph) { // PDFBox says so by throwing
            return false;
        }
    }

    /** True when a lozenge had to stand in for a character. */
    boolean isLacking() {
        return lacking;
    }
}
