// SPDX-License-Identifier: Apache-2.0
package kerfglow.papers;

import java.io.IOException;
import java.io.OutputStream;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.ToDoubleFunction;
import kerfglow.api.UnitSystem;
import kerfglow.views.Canvas;
import kerfglow.views.Wrap;

/**
 * A document on pages, set from top to bottom: headings that become bookmarks, text, tables, pictures. Written as PDF/A-2u
 * (ISO 19005-2): real text, the font embedded, every page numbered. Lengths are mm on paper, sizes of type are points.
 */
public final class Paper implements AutoCloseable {
    /** Ink for text. */
    public static final int INK = 0x1d2733;
    /** For what matters less. */
    public static final int QUIET = 0x56616d;
    /** For rules between rows. */
    public static final int RULE = 0xc3cad1;
    private static final int SHADE = 0xeef1f4;
    private static final int WHITE = 0xffffff;

    private static final double MM_PER_POINT = 25.4 / 72;
    private static final double BODY_POINTS = 9.5;
    private static final double SMALL_POINTS = 8;
    /** Sizes of headings by level; common practice, no source. */
    private static final double[] HEADING_POINTS = {18, 13, 10.5};
    /** Distance of base lines as a share of the size; common practice, no source. */
    private static final double LEADING = 1.28;
    /** Base line below the top of its line, as a share of the line. */
    private static final double BASELINE = 0.78;
    /** A heading is not left alone at the foot of a page. */
    private static final double KEPT_BELOW_HEADING_MM = 22;
    private static final double CELL_PAD_MM = 1.2;
    private static final double GUTTER_MM = 5;
    private static final double LABEL_MM = 19;
    /** A number of four digits in bold running text, and a gap. */
    private static final double NUMBER_MM = 10;

    private final About about;
    private final PdfFile file;
    private double y;

    /** Sheets that offices have. */
    public enum Size {
        /** ISO 216. */
        A4(210, 297),
        /** ANSI Y14.1 size A. */
        LETTER(215.9, 279.4);

        private final double widthMm;
        private final double heightMm;

        Size(double widthMm, double heightMm) {
            this.widthMm = widthMm;
            this.heightMm = heightMm;
        }

        /** What lies in the printer of somebody who reads these units. */
        public static Size of(UnitSystem units) {
            return units == UnitSystem.INCH ? LETTER : A4;
        }
    }

    /**
     * What a document is.
     *
     * @param title stands in the head of every page and in the file's properties
     * @param subject one line, in the file's properties
     * @param footer one line at the foot of every page beside its number; may be empty
     * @param size of its sheets
     * @param landscape true when the longer side lies
     * @param created stands in the file's properties
     */
    public record About(String title, String subject, String footer, Size size, boolean landscape, Instant created) {
        double widthMm() {
            return landscape ? size.heightMm : size.widthMm;
        }

        double heightMm() {
            return landscape ? size.widthMm : size.heightMm;
        }
    }

    /** How text looks. */
    public enum Style {
        /** Running text. */
        BODY(BODY_POINTS, false, INK),
        /** Running text that is stressed. */
        STRONG(BODY_POINTS, true, INK),
        /** What matters less. */
        SMALL(SMALL_POINTS, false, QUIET);

        private final double sizeMm;
        private final boolean bold;
        private final int rgb;

        Style(double points, boolean bold, int rgb) {
            this.sizeMm = points * MM_PER_POINT;
            this.bold = bold;
            this.rgb = rgb;
        }
    }

    /**
     * A column of a table.
     *
     * @param title its head
     * @param share of the width, in proportion to the other columns
     * @param right true for numbers, which stand at the right edge
     */
    public record Column(String title, double share, boolean right) {
        public Column(String title, double share) {
            this(title, share, false);
        }
    }

    /**
     * A line or more of text with its name to the left.
     *
     * @param label the name; empty to run on below the last one
     * @param text what is said
     */
    public record Labelled(String label, String text) {
    }

    /** Begins a document. */
    public Paper(About about) throws IOException {
        this.about = about;
        file = new PdfFile(about);
        y = file.topMm();
    }

    /** Width between the margins, mm. */
    public double widthMm() {
        return file.rightMm() - file.leftMm();
    }

    /** Height between head and foot of a page, mm. */
    public double pageHeightMm() {
        return file.bottomMm() - file.topMm();
    }

    /** What is left of this page, mm. */
    public double leftMm() {
        return file.bottomMm() - y;
    }

    /** Begins a page, unless this one is still empty. */
    public void newPage() throws IOException {
        if (y > file.topMm()) {
            file.newPage();
            y = file.topMm();
        }
    }

    /** Begins a page unless so much is left of this one, so that what follows stays together. */
    public void together(double heightMm) throws IOException {
        if (leftMm() < Math.min(heightMm, pageHeightMm())) {
            newPage();
        }
    }

    /** Leaves room, but none at the top of a page. */
    public void space(double heightMm) {
        if (y > file.topMm()) {
            y += heightMm;
        }
    }

    /**
     * A heading, and a bookmark that leads to it.
     *
     * @param level 1 for the document or its chapters, 2 and 3 below
     */
    public void heading(int level, String text) throws IOException {
        double size = HEADING_POINTS[level - 1] * MM_PER_POINT;
        List<String> lines = wrap(text, widthMm(), size, true);
        space(size * 0.9);
        together(lines.size() * size * LEADING + KEPT_BELOW_HEADING_MM);
        bookmark(level, text);
        lines(lines, file.leftMm(), size, true, INK);
        y += size * 0.35;
    }

    /** A bookmark alone, to where the next thing will stand. */
    public void bookmark(int level, String text) {
        file.bookmark(level, text, y);
    }

    /** A paragraph over the whole width; line breaks in it are kept. */
    public void paragraph(String text, Style style) throws IOException {
        lines(wrap(text, widthMm(), style.sizeMm, style.bold), file.leftMm(), style.sizeMm, style.bold, style.rgb);
        y += style.sizeMm * 0.5;
    }

    /** A paragraph of running text. */
    public void paragraph(String text) throws IOException {
        paragraph(text, Style.BODY);
    }

    /** A paragraph with its number set apart to the left, so that the number is not read as the first word. */
    public void numbered(int number, String text, Style style) throws IOException {
        List<String> lines = wrap(text, widthMm() - NUMBER_MM, style.sizeMm, style.bold);
        together(style.sizeMm * LEADING);
        file.canvas().text(Integer.toString(number), file.leftMm(), y + style.sizeMm * LEADING * BASELINE, style.sizeMm, style.bold, Canvas.Anchor.START, QUIET);
        lines(lines, file.leftMm() + NUMBER_MM, style.sizeMm, style.bold, style.rgb);
        y += style.sizeMm * 0.5;
    }

    /** Height of labelled text beside a picture of a width, or 0 for none; mm. */
    public double labelledHeightMm(double pictureMm, List<Labelled> texts) {
        double room = widthMm() - (pictureMm > 0 ? pictureMm + GUTTER_MM : 0) - LABEL_MM;
        double size = Style.BODY.sizeMm;
        return texts.stream().mapToDouble(each -> wrap(each.text(), room, size, false).size() * size * LEADING + size * 0.3).sum();
    }

    /** Labelled text over the whole width. */
    public void labelled(List<Labelled> texts) throws IOException {
        beside(0, 0, 1, canvas -> { }, texts);
    }

    /**
     * A picture over the whole width or less.
     *
     * @param widthMm on paper
     * @param heightMm on paper; more than a page is made less, and the width with it
     * @param unitsWide width of the picture in the canvas's own units
     * @param drawing draws it; what reaches out of the picture is cut off
     */
    public void picture(double widthMm, double heightMm, double unitsWide, Consumer<Canvas> drawing) throws IOException {
        double shrink = Math.min(1, pageHeightMm() / heightMm);
        together(heightMm * shrink);
        file.picture(file.leftMm(), y, widthMm * shrink, heightMm * shrink, unitsWide, drawing);
        y += heightMm * shrink + GUTTER_MM / 2;
    }

    /**
     * A picture with labelled text to its right. The text runs on over pages when it must; the picture stays on the first.
     *
     * @param widthMm of the picture; 0 for none
     * @param unitsWide width of the picture in the canvas's own units
     */
    public void beside(double widthMm, double heightMm, double unitsWide, Consumer<Canvas> drawing, List<Labelled> texts) throws IOException {
        double left = file.leftMm() + (widthMm > 0 ? widthMm + GUTTER_MM : 0);
        double size = Style.BODY.sizeMm;
        List<List<String>> wrapped = texts.stream().map(each -> wrap(each.text(), file.rightMm() - left - LABEL_MM, size, false)).toList();
        together(Math.max(heightMm, Math.min(labelledHeightMm(widthMm, texts), pageHeightMm() / 2)));
        double top = y;
        int page = file.pages();
        if (widthMm > 0) {
            file.picture(file.leftMm(), y, widthMm, heightMm, unitsWide, drawing);
        }
        for (int i = 0; i < texts.size(); i++) {
            for (int line = 0; line < wrapped.get(i).size(); line++) {
                together(size * LEADING);
                double baseline = y + size * LEADING * BASELINE;
                if (line == 0) {
                    file.canvas().text(texts.get(i).label(), left, baseline, Style.SMALL.sizeMm, false, Canvas.Anchor.START, QUIET);
                }
                file.canvas().text(wrapped.get(i).get(line), left + LABEL_MM, baseline, size, false, Canvas.Anchor.START, INK);
                y += size * LEADING;
            }
            y += size * 0.3;
        }
        y = file.pages() == page ? Math.max(y, top + heightMm) : y;
        y += size * 0.5;
    }

    /**
     * A table of short rows in two halves of the width: down the left half, then down the right one, then on to the next page. What is
     * left for the last page is shared out evenly. The head stands over each half. Where a row fills a page, the table takes the whole width.
     */
    public void tableInHalves(List<Column> columns, List<List<String>> rows) throws IOException {
        double wide = (widthMm() - GUTTER_MM) / 2;
        List<List<Double>> halves = List.of(edges(columns, file.leftMm(), wide), edges(columns, file.rightMm() - wide, wide));
        List<List<String>> head = cells(columns.stream().map(Column::title).toList(), halves.get(0), true);
        List<List<List<String>>> cells = rows.stream().map(row -> cells(row, halves.get(0), false)).toList();
        if (cells.stream().anyMatch(row -> heightMm(head) + heightMm(row) > pageHeightMm())) {
            table(columns, rows);
            return;
        }
        int next = 0;
        while (next < rows.size()) {
            together(heightMm(head) + heightMm(cells.get(next)));
            double top = y;
            double lowest = y;
            int even = next + (rows.size() - next + 1) / 2;
            for (int half = 0; half < halves.size() && next < rows.size(); half++) {
                int stop = half == 0 ? even : rows.size();
                y = top;
                row(columns, halves.get(half), head, true);
                while (next < stop && leftMm() >= heightMm(cells.get(next))) {
                    row(columns, halves.get(half), cells.get(next++), false);
                }
                lowest = Math.max(lowest, y);
            }
            y = lowest;
        }
        y += GUTTER_MM / 2;
    }

    private static List<Double> edges(List<Column> columns, double leftMm, double widthMm) {
        List<Double> edges = new ArrayList<>(List.of(leftMm));
        double shares = columns.stream().mapToDouble(Column::share).sum();
        columns.forEach(column -> edges.add(edges.get(edges.size() - 1) + widthMm * column.share() / shares));
        return edges;
    }

    /** A table; its head is repeated on every page, long cells run over several lines. */
    public void table(List<Column> columns, List<List<String>> rows) throws IOException {
        List<Double> edges = edges(columns, file.leftMm(), widthMm());
        List<String> head = columns.stream().map(Column::title).toList();
        double rowHeight = Style.SMALL.sizeMm * LEADING + 2 * CELL_PAD_MM;
        together(2 * rowHeight);
        row(columns, edges, cells(head, edges, true), true);
        for (List<String> row : rows) {
            List<List<String>> cells = cells(row, edges, false);
            int left = cells.stream().mapToInt(List::size).max().orElse(1);
            int from = 0;
            while (left > 0) { // a row that is longer than the page is cut between its lines
                double wholeMm = left * Style.SMALL.sizeMm * LEADING + 2 * CELL_PAD_MM;
                if (leftMm() < Math.min(wholeMm, pageHeightMm() / 2)) {
                    newPage();
                    row(columns, edges, cells(head, edges, true), true);
                }
                int take = Math.min(left, (int) Math.floor((leftMm() - 2 * CELL_PAD_MM) / (Style.SMALL.sizeMm * LEADING)));
                int first = from;
                row(columns, edges, cells.stream().map(lines -> lines.subList(Math.min(first, lines.size()), Math.min(first + take, lines.size()))).toList(), false);
                from += take;
                left -= take;
            }
        }
        y += GUTTER_MM / 2;
    }

    private List<List<String>> cells(List<String> row, List<Double> edges, boolean bold) {
        List<List<String>> cells = new ArrayList<>();
        for (int i = 0; i < row.size(); i++) {
            cells.add(wrap(row.get(i), edges.get(i + 1) - edges.get(i) - 2 * CELL_PAD_MM, Style.SMALL.sizeMm, bold));
        }
        return cells;
    }

    private void row(List<Column> columns, List<Double> edges, List<List<String>> cells, boolean head) {
        double size = Style.SMALL.sizeMm;
        double height = heightMm(cells);
        double left = edges.get(0);
        double right = edges.get(edges.size() - 1);
        if (head) {
            file.canvas().rectangle(left, y, right - left, height, SHADE, WHITE, 0);
        }
        for (int i = 0; i < cells.size(); i++) {
            for (int line = 0; line < cells.get(i).size(); line++) {
                double baseline = y + CELL_PAD_MM + size * LEADING * (line + BASELINE);
                boolean number = columns.get(i).right();
                file.canvas().text(cells.get(i).get(line), number ? edges.get(i + 1) - CELL_PAD_MM : edges.get(i) + CELL_PAD_MM, baseline, size, head,
                        number ? Canvas.Anchor.END : Canvas.Anchor.START, INK);
            }
        }
        y += height;
        file.canvas().line(left, y, right, y, RULE, 0.15);
    }

    private static double heightMm(List<List<String>> cells) {
        return Math.max(1, cells.stream().mapToInt(List::size).max().orElse(1)) * Style.SMALL.sizeMm * LEADING + 2 * CELL_PAD_MM;
    }

    private List<String> wrap(String text, double width, double size, boolean bold) {
        ToDoubleFunction<String> measure = line -> file.font().width(line, size, bold);
        List<String> lines = new ArrayList<>();
        for (String line : Wrap.lines(text, width, measure)) {
            String rest = line;
            while (measure.applyAsDouble(rest) > width && rest.codePointCount(0, rest.length()) > 1) { // one long word: broken anywhere
                int end = fitting(rest, width, measure);
                lines.add(rest.substring(0, end));
                rest = rest.substring(end);
            }
            lines.add(rest);
        }
        return lines;
    }

    /** How many characters fit, at least one. */
    private static int fitting(String text, double width, ToDoubleFunction<String> measure) {
        int end = text.offsetByCodePoints(0, 1);
        while (end < text.length() && measure.applyAsDouble(text.substring(0, text.offsetByCodePoints(end, 1))) <= width) {
            end = text.offsetByCodePoints(end, 1);
        }
        return end;
    }

    private void lines(List<String> lines, double left, double size, boolean bold, int rgb) throws IOException {
        for (String line : lines) {
            together(size * LEADING);
            file.canvas().text(line, left, y + size * LEADING * BASELINE, size, bold, Canvas.Anchor.START, rgb);
            y += size * LEADING;
        }
    }

    /** True when a lozenge stands for a character that the font does not have; worth a line in the document. */
    public boolean lacksCharacters() {
        return file.font().isLacking();
    }

    /** Numbers the pages and writes the whole file; the stream stays open. Nothing can be added afterwards. */
    public void write(OutputStream out) throws IOException {
        file.write(out);
    }

    @Override
    public void close() throws IOException {
        file.close();
    }
}
