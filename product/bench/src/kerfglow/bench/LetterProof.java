// SPDX-License-Identifier: Apache-2.0
package kerfglow.bench;

import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.Shape;
import java.awt.font.FontRenderContext;
import java.awt.geom.AffineTransform;
import java.awt.geom.PathIterator;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/** Writes a proof of many serif letters, outlined, no two of them alike, as a designer's program would. */
final class LetterProof {
    /** From Debian's package fonts-dejavu-core; product/verify installs it. */
    private static final File SERIF = new File("/usr/share/fonts/truetype/dejavu/DejaVuSerif.ttf");
    /** The rounder ones: they flatten to most vertices. */
    private static final String LETTERS = "BCDGJOPQRSUabcdefghmnopqrsu0235689&";
    /** Of the letters of the benchmarks that do not say another. */
    static final double HEIGHT_MM = 300;
    private static final int COLUMNS = 50;
    private static final double CELL_HEIGHTS = 2;
    /** Largest difference in size between letters, so that nothing can be measured once for several. */
    private static final double SPREAD = 0.02;

    private LetterProof() {
    }

    static Path write(Path file, int letters) throws IOException, FontFormatException {
        return write(file, letters, HEIGHT_MM);
    }

    static Path write(Path file, int letters, double heightMm) throws IOException, FontFormatException {
        double cellMm = CELL_HEIGHTS * heightMm;
        FontRenderContext context = new FontRenderContext(null, true, true);
        Font unit = Font.createFont(Font.TRUETYPE_FONT, SERIF).deriveFont(1000f);
        int rows = (letters + COLUMNS - 1) / COLUMNS;
        StringBuilder svg = new StringBuilder();
        svg.append(String.format(Locale.ROOT, "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%1$.0fmm\" height=\"%2$.0fmm\" viewBox=\"0 0 %1$.0f %2$.0f\"><g id=\"Letters\">%n",
                COLUMNS * cellMm, rows * cellMm));
        for (int i = 0; i < letters; i++) {
            Shape outline = unit.createGlyphVector(context, String.valueOf(LETTERS.charAt(i % LETTERS.length()))).getOutline();
            double scale = heightMm / outline.getBounds2D().getHeight() * (1 + SPREAD * i / letters);
            AffineTransform place = AffineTransform.getTranslateInstance(i % COLUMNS * cellMm + cellMm * 0.15, i / COLUMNS * cellMm + cellMm * 0.75);
            place.scale(scale, scale);
            svg.append("<path d=\"").append(data(outline.getPathIterator(place))).append("\"/>\n");
        }
        return Files.writeString(file, svg.append("</g></svg>\n"));
    }

    private static String data(PathIterator path) {
        StringBuilder data = new StringBuilder();
        double[] at = new double[6];
        for (; !path.isDone(); path.next()) {
            int points = switch (path.currentSegment(at)) {
                case PathIterator.SEG_MOVETO -> command(data, 'M', 1);
                case PathIterator.SEG_LINETO -> command(data, 'L', 1);
                case PathIterator.SEG_QUADTO -> command(data, 'Q', 2);
                case PathIterator.SEG_CUBICTO -> command(data, 'C', 3);
                default -> command(data, 'Z', 0);
            };
            for (int i = 0; i < 2 * points; i++) {
                data.append(i == 0 ? "" : " ").append(String.format(Locale.ROOT, "%.4f", at[i]));
            }
        }
        return data.toString();
    }

    private static int command(StringBuilder data, char letter, int points) {
        data.append(letter);
        return points;
    }
}
