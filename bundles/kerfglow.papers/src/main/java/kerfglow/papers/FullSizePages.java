// SPDX-License-Identifier: Apache-2.0
package kerfglow.papers;

import java.io.IOException;
import java.io.OutputStream;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.GregorianCalendar;
import java.util.function.Consumer;
import kerfglow.views.Canvas;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.util.Matrix;

/** A PDF whose pages are drawn at full size: a unit of the canvas is a mm on paper. Pages may be of any size up to {@link #MOST_MM}, one by one. */
public final class FullSizePages implements AutoCloseable {
    /** A page is no longer than 14400 points (ISO 32000-1, annex C), a little over five metres. */
    public static final double MOST_MM = 14_400 * 25.4 / 72;

    private static final double POINTS_PER_MM = 72 / 25.4;
    private static final String PROGRAM = "Kerfglow";

    private final PDDocument document = new PDDocument();
    private final PaperFont font;

    /**
     * Begins a document.
     *
     * @param title in the file's properties
     * @param subject in the file's properties
     * @param created in the file's properties
     */
    public FullSizePages(String title, String subject, Instant created) throws IOException {
        font = new PaperFont(document);
        PDDocumentInformation information = document.getDocumentInformation();
        information.setTitle(title);
        information.setSubject(subject);
        information.setCreator(PROGRAM);
        information.setProducer(PROGRAM);
        GregorianCalendar calendar = GregorianCalendar.from(created.atZone(ZoneOffset.UTC));
        information.setCreationDate(calendar);
        information.setModificationDate(calendar);
        document.getDocumentCatalog().setLanguage("en");
        document.setDocumentId(created.toEpochMilli());
    }

    /**
     * A page.
     *
     * @param widthMm up to {@link #MOST_MM}
     * @param heightMm up to {@link #MOST_MM}
     * @param drawing draws on it, in mm from its upper left corner, y down
     */
    public void page(double widthMm, double heightMm, Consumer<Canvas> drawing) throws IOException {
        if (!(widthMm > 0 && heightMm > 0 && widthMm <= MOST_MM && heightMm <= MOST_MM)) {
            throw new IllegalArgumentException("a page is above 0 and up to " + MOST_MM + " mm wide and high: " + widthMm + " by " + heightMm);
        }
        PDPage page = new PDPage(new PDRectangle((float) (widthMm * POINTS_PER_MM), (float) (heightMm * POINTS_PER_MM)));
        document.addPage(page);
        try (PDPageContentStream stream = new PDPageContentStream(document, page)) {
            stream.transform(new Matrix((float) POINTS_PER_MM, 0, 0, (float) -POINTS_PER_MM, 0, (float) (heightMm * POINTS_PER_MM)));
            drawing.accept(new PdfCanvas(document, stream, font, 1));
        }
    }

    /** Width of a line of text, mm. */
    public double width(String text, double sizeMm) {
        return font.width(text, sizeMm, false);
    }

    /** Writes it all; the stream stays open. */
    public void write(OutputStream out) throws IOException {
        document.save(out);
    }

    @Override
    public void close() throws IOException {
        document.close();
    }
}
