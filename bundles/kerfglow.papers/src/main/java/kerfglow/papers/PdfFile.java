// SPDX-License-Identifier: Apache-2.0
package kerfglow.papers;

import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.GregorianCalendar;
import java.util.List;
import java.util.function.Consumer;
import kerfglow.views.Canvas;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.PageMode;
import org.apache.pdfbox.pdmodel.common.PDMetadata;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.graphics.color.PDOutputIntent;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageXYZDestination;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDDocumentOutline;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineNode;
import org.apache.pdfbox.util.Matrix;

/** The pages, bookmarks and properties of one PDF/A-2u file. Places are mm from the upper left corner of a page. */
final class PdfFile implements AutoCloseable {
    private static final double POINTS_PER_MM = 72 / 25.4;
    private static final double SIDE_MM = 16;
    private static final double TOP_MM = 22;
    private static final double BOTTOM_MM = 18;
    private static final double HEAD_SIZE_MM = 2.8;
    private static final double HEAD_BASELINE_MM = 13;
    private static final String PROGRAM = "Kerfglow";

    private final Paper.About about;
    private final PDDocument document = new PDDocument();
    private final PaperFont font;
    private final PDDocumentOutline outline = new PDDocumentOutline();
    private final List<PDOutlineNode> open = new ArrayList<>(List.of(outline));
    private PDPage page;
    private PDPageContentStream stream;
    private PdfCanvas canvas;

    PdfFile(Paper.About about) throws IOException {
        this.about = about;
        font = new PaperFont(document);
        newPage();
    }

    double leftMm() {
        return SIDE_MM;
    }

    double rightMm() {
        return about.widthMm() - SIDE_MM;
    }

    double topMm() {
        return TOP_MM;
    }

    double bottomMm() {
        return about.heightMm() - BOTTOM_MM;
    }

    PaperFont font() {
        return font;
    }

    int pages() {
        return document.getNumberOfPages();
    }

    /** The page as a canvas in mm. */
    Canvas canvas() {
        return canvas;
    }

    void newPage() throws IOException {
        if (stream != null) {
            stream.close();
        }
        page = new PDPage(new PDRectangle((float) (about.widthMm() * POINTS_PER_MM), (float) (about.heightMm() * POINTS_PER_MM)));
        document.addPage(page);
        stream = new PDPageContentStream(document, page);
        stream.transform(upright());
        canvas = new PdfCanvas(document, stream, font, 1);
    }

    /** From mm, y down, to PDF's points, y up. */
    private Matrix upright() {
        return new Matrix((float) POINTS_PER_MM, 0, 0, (float) -POINTS_PER_MM, 0, (float) (about.heightMm() * POINTS_PER_MM));
    }

    void picture(double leftMm, double topMm, double widthMm, double heightMm, double unitsWide, Consumer<Canvas> drawing) throws IOException {
        double unitMm = widthMm / unitsWide;
        stream.saveGraphicsState();
        stream.transform(new Matrix((float) unitMm, 0, 0, (float) unitMm, (float) leftMm, (float) topMm));
        PdfCanvas inside = new PdfCanvas(document, stream, font, unitMm);
        inside.clip(0, 0, unitsWide, heightMm / unitMm);
        drawing.accept(inside);
        inside.unclip();
        stream.restoreGraphicsState();
    }

    void bookmark(int level, String text, double topMm) {
        PDPageXYZDestination destination = new PDPageXYZDestination();
        destination.setPage(page);
        destination.setLeft(0);
        destination.setTop((int) Math.ceil((about.heightMm() - topMm) * POINTS_PER_MM));
        PDOutlineItem item = new PDOutlineItem();
        item.setTitle(text);
        item.setDestination(destination);
        while (open.size() > level) {
            open.remove(open.size() - 1);
        }
        open.get(open.size() - 1).addLast(item);
        open.add(item);
    }

    /** Heads and page numbers, properties, and all of it written. */
    void write(OutputStream out) throws IOException {
        stream.close();
        stream = null;
        for (int i = 0; i < document.getNumberOfPages(); i++) {
            number(i);
        }
        if (outline.hasChildren()) {
            outline.openNode();
            document.getDocumentCatalog().setDocumentOutline(outline);
            document.getDocumentCatalog().setPageMode(PageMode.USE_OUTLINES);
        }
        describe();
        document.save(out);
    }

    private void number(int index) throws IOException {
        try (PDPageContentStream over = new PDPageContentStream(document, document.getPage(index), PDPageContentStream.AppendMode.APPEND, true, true)) {
            over.transform(upright());
            PdfCanvas edge = new PdfCanvas(document, over, font, 1);
            double foot = about.heightMm() - HEAD_BASELINE_MM + HEAD_SIZE_MM;
            String number = "page " + (index + 1) + " of " + document.getNumberOfPages();
            edge.text(fit(about.title(), rightMm() - leftMm()), leftMm(), HEAD_BASELINE_MM, HEAD_SIZE_MM, false, Canvas.Anchor.START, Paper.QUIET);
            edge.line(leftMm(), HEAD_BASELINE_MM + 2, rightMm(), HEAD_BASELINE_MM + 2, Paper.RULE, 0.15);
            edge.text(fit(about.footer(), rightMm() - leftMm() - 1.5 * font.width(number, HEAD_SIZE_MM, false)), leftMm(), foot, HEAD_SIZE_MM, false, Canvas.Anchor.START, Paper.QUIET);
            edge.text(number, rightMm(), foot, HEAD_SIZE_MM, false, Canvas.Anchor.END, Paper.QUIET);
        }
    }

    /** The text, cut with an ellipsis when it is wider than its line. */
    private String fit(String text, double widthMm) {
        if (font.width(text, HEAD_SIZE_MM, false) <= widthMm) {
            return text;
        }
        int end = text.length();
        while (end > 0 && font.width(text.substring(0, end) + "…", HEAD_SIZE_MM, false) > widthMm) {
            end = text.offsetByCodePoints(end, -1);
        }
        return text.substring(0, end).stripTrailing() + "…";
    }

    /** Properties in both forms, which must agree (ISO 19005-2, 6.6.3), and what the colours mean. */
    private void describe() throws IOException {
        Instant created = about.created().truncatedTo(ChronoUnit.SECONDS);
        GregorianCalendar calendar = GregorianCalendar.from(created.atZone(ZoneOffset.UTC));
        PDDocumentInformation information = document.getDocumentInformation();
        information.setTitle(about.title());
        information.setSubject(about.subject());
        information.setCreator(PROGRAM);
        information.setProducer(PROGRAM);
        information.setCreationDate(calendar);
        information.setModificationDate(calendar);
        document.getDocumentCatalog().setLanguage("en");
        document.setDocumentId(created.toEpochMilli());
        PDMetadata metadata = new PDMetadata(document);
        metadata.importXMPMetadata(xmp(created).getBytes(StandardCharsets.UTF_8));
        metadata.getCOSObject().removeItem(COSName.FILTER); // ISO 19005-2, 6.6.2: readable without decoding
        document.getDocumentCatalog().setMetadata(metadata);
        try (InputStream profile = new ByteArrayInputStream(ICC_Profile.getInstance(ColorSpace.CS_sRGB).getData())) {
            PDOutputIntent intent = new PDOutputIntent(document, profile);
            intent.setInfo("sRGB IEC61966-2.1");
            intent.setOutputConditionIdentifier("sRGB IEC61966-2.1");
            intent.setRegistryName("");
            document.getDocumentCatalog().addOutputIntent(intent);
        }
    }

    /** ISO 16684-1; the schema for the level is that of ISO 19005-2, 6.6.4. */
    private String xmp(Instant created) {
        return """
                <?xpacket begin="\uFEFF" id="W5M0MpCehiHzreSzNTczkc9d"?>
                <x:xmpmeta xmlns:x="adobe:ns:meta/">
                 <rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
                  <rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/"
                    xmlns:pdf="http://ns.adobe.com/pdf/1.3/" xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/">
                   <dc:format>application/pdf</dc:format>
                   <dc:title><rdf:Alt><rdf:li xml:lang="x-default">%1$s</rdf:li></rdf:Alt></dc:title>
                   <dc:description><rdf:Alt><rdf:li xml:lang="x-default">%2$s</rdf:li></rdf:Alt></dc:description>
                   <dc:language><rdf:Bag><rdf:li>en</rdf:li></rdf:Bag></dc:language>
                   <xmp:CreatorTool>%3$s</xmp:CreatorTool>
                   <xmp:CreateDate>%4$s</xmp:CreateDate>
                   <xmp:ModifyDate>%4$s</xmp:ModifyDate>
                   <pdf:Producer>%3$s</pdf:Producer>
                   <pdfaid:part>2</pdfaid:part>
                   <pdfaid:conformance>U</pdfaid:conformance>
                  </rdf:Description>
                 </rdf:RDF>
                </x:xmpmeta>
                <?xpacket end="w"?>
                """.formatted(escape(about.title()), escape(about.subject()), PROGRAM, created);
    }

    private static String escape(String text) {
        StringBuilder safe = new StringBuilder();
        text.codePoints().forEach(each -> {
            switch (each) {
                case '<' -> safe.append("&lt;");
                case '>' -> safe.append("&gt;");
                case '&' -> safe.append("&amp;");
                default -> safe.appendCodePoint(each >= ' ' ? each : ' ');
            }
        });
        return safe.toString();
    }

    @Override
    public void close() throws IOException {
        if (stream != null) {
            stream.close();
        }
        document.close();
    }
}
