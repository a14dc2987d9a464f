// SPDX-License-Identifier: Apache-2.0
package kerfglow.papers;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.Map;
import kerfglow.views.Canvas;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.graphics.image.LosslessFactory;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.pdmodel.graphics.state.PDExtendedGraphicsState;
import org.apache.pdfbox.pdmodel.graphics.state.RenderingMode;
import org.apache.pdfbox.util.Matrix;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;

/** Draws on a page of a PDF, as paths and text. The axes of the content stream are those of the canvas: x right, y down. */
final class PdfCanvas implements Canvas {
    /** Points nearer than this on paper to the one before are left out: half a dot of a printer of 1200 dots an inch. */
    private static final double LEAST_STEP_MM = 0.01;
    /** A thousandth of a unit is kept of a coordinate. */
    private static final double DIGITS = 1000;
    /** Line cap and join (ISO 32000-1, tables 54 and 55). */
    private static final int ROUND = 1;
    private static final int BYTE = 0xff;
    private static final float FULL = 255f;
    /** Control points of a quarter circle by a Bézier curve: 4/3 · (√2 − 1), geometry. */
    private static final double QUARTER = 4.0 / 3 * (Math.sqrt(2) - 1);

    private final PDDocument document;
    private final PDPageContentStream stream;
    private final PaperFont font;
    private final double leastStep;
    private final Map<Double, PDExtendedGraphicsState> opacities = new HashMap<>();

    /**
     * A canvas.
     *
     * @param unitMm length of a unit on paper, mm
     */
    PdfCanvas(PDDocument document, PDPageContentStream stream, PaperFont font, double unitMm) {
        this.document = document;
        this.stream = stream;
        this.font = font;
        this.leastStep = LEAST_STEP_MM / unitMm;
    }

    /** Something that writes to the page. */
    private interface Writing {
        void run() throws IOException;
    }

    private void write(Writing writing) {
        try {
            writing.run();
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }

    @Override
    public void area(Geometry units, int rgb, double opacity) {
        write(() -> {
            begin(opacity);
            fillColour(rgb);
            if (path(units)) {
                stream.fillEvenOdd();
            }
            stream.restoreGraphicsState();
        });
    }

    @Override
    public void edge(Geometry units, int rgb, double width, double opacity) {
        write(() -> {
            begin(opacity);
            pen(rgb, width);
            if (path(units)) {
                stream.stroke();
            }
            stream.restoreGraphicsState();
        });
    }

    @Override
    public void rectangle(double x, double y, double width, double height, int fillRgb, int edgeRgb, double edgeWidth) {
        write(() -> {
            colours(fillRgb, edgeRgb, edgeWidth);
            stream.addRect(f(x), f(y), f(width), f(height));
            paint(edgeWidth);
        });
    }

    @Override
    public void circle(double x, double y, double radius, int fillRgb, int edgeRgb, double edgeWidth) {
        write(() -> {
            double c = radius * QUARTER;
            colours(fillRgb, edgeRgb, edgeWidth);
            stream.moveTo(f(x + radius), f(y));
            stream.curveTo(f(x + radius), f(y + c), f(x + c), f(y + radius), f(x), f(y + radius));
            stream.curveTo(f(x - c), f(y + radius), f(x - radius), f(y + c), f(x - radius), f(y));
            stream.curveTo(f(x - radius), f(y - c), f(x - c), f(y - radius), f(x), f(y - radius));
            stream.curveTo(f(x + c), f(y - radius), f(x + radius), f(y - c), f(x + radius), f(y));
            stream.closePath();
            paint(edgeWidth);
        });
    }

    @Override
    public void polygon(double[] corners, int fillRgb, int edgeRgb, double edgeWidth) {
        write(() -> {
            colours(fillRgb, edgeRgb, edgeWidth);
            stream.moveTo(f(corners[0]), f(corners[1]));
            for (int i = 2; i < corners.length; i += 2) {
                stream.lineTo(f(corners[i]), f(corners[i + 1]));
            }
            stream.closePath();
            paint(edgeWidth);
        });
    }

    @Override
    public void line(double x1, double y1, double x2, double y2, int rgb, double width) {
        write(() -> {
            pen(rgb, width);
            stream.moveTo(f(x1), f(y1));
            stream.lineTo(f(x2), f(y2));
            stream.stroke();
        });
    }

    @Override
    public void text(String text, double x, double baseline, double size, boolean bold, Anchor anchor, int rgb) {
        String shown = font.shown(text);
        double width = anchor == Anchor.START ? 0 : font.width(text, size, bold);
        double left = anchor == Anchor.START ? x : anchor == Anchor.MIDDLE ? x - width / 2 : x - width;
        write(() -> {
            stream.saveGraphicsState();
            fillColour(rgb);
            if (bold) {
                pen(rgb, size * PaperFont.BOLD_EDGE);
            }
            stream.beginText();
            stream.setRenderingMode(bold ? RenderingMode.FILL_STROKE : RenderingMode.FILL);
            stream.setFont(font.font(), f(size));
            stream.setTextMatrix(new Matrix(1, 0, 0, -1, f(left), f(baseline))); // letters stand upright although y points down
            stream.showText(shown);
            stream.endText();
            stream.restoreGraphicsState();
        });
    }

    @Override
    public void image(int columns, int[] argb, double x, double y, double width) {
        int rows = argb.length / columns;
        double height = width * rows / columns;
        write(() -> {
            BufferedImage picture = new BufferedImage(columns, rows, BufferedImage.TYPE_INT_ARGB);
            picture.setRGB(0, 0, columns, rows, argb, 0, columns);
            PDImageXObject image = LosslessFactory.createFromImage(document, picture);
            stream.drawImage(image, new Matrix(f(width), 0, 0, f(-height), f(x), f(y + height)));
        });
    }

    @Override
    public void clip(double x, double y, double width, double height) {
        write(() -> {
            stream.saveGraphicsState();
            stream.addRect(f(x), f(y), f(width), f(height));
            stream.clip();
        });
    }

    @Override
    public void unclip() {
        write(stream::restoreGraphicsState);
    }

    private void begin(double opacity) throws IOException {
        stream.saveGraphicsState();
        if (opacity < 1) {
            stream.setGraphicsStateParameters(opacities.computeIfAbsent(opacity, each -> {
                PDExtendedGraphicsState state = new PDExtendedGraphicsState();
                state.setNonStrokingAlphaConstant(each.floatValue());
                state.setStrokingAlphaConstant(each.floatValue());
                return state;
            }));
        }
    }

    private void colours(int fillRgb, int edgeRgb, double edgeWidth) throws IOException {
        fillColour(fillRgb);
        if (edgeWidth > 0) {
            pen(edgeRgb, edgeWidth);
        }
    }

    private void paint(double edgeWidth) throws IOException {
        if (edgeWidth > 0) {
            stream.fillAndStroke();
        } else {
            stream.fill();
        }
    }

    private void fillColour(int rgb) throws IOException {
        stream.setNonStrokingColor((rgb >> 16 & BYTE) / FULL, (rgb >> 8 & BYTE) / FULL, (rgb & BYTE) / FULL);
    }

    private void pen(int rgb, double width) throws IOException {
        stream.setStrokingColor((rgb >> 16 & BYTE) / FULL, (rgb >> 8 & BYTE) / FULL, (rgb & BYTE) / FULL);
        stream.setLineWidth(f(width));
        stream.setLineCapStyle(ROUND);
        stream.setLineJoinStyle(ROUND);
    }

    /** Builds the path; false when the geometry has neither lines nor areas. */
    private boolean path(Geometry geometry) throws IOException {
        boolean any = false;
        for (int i = 0; i < geometry.getNumGeometries(); i++) {
            Geometry each = geometry.getGeometryN(i);
            if (each instanceof Polygon polygon && !polygon.isEmpty()) {
                path(polygon.getExteriorRing());
                for (int hole = 0; hole < polygon.getNumInteriorRing(); hole++) {
                    path(polygon.getInteriorRingN(hole));
                }
                any = true;
            } else if (each instanceof LineString line && !line.isEmpty()) {
                path(line);
                any = true;
            }
        }
        return any;
    }

    private void path(LineString line) throws IOException {
        Coordinate[] points = line.getCoordinates();
        boolean closed = line.isClosed();
        int end = closed ? points.length - 1 : points.length;
        Coordinate last = null;
        for (int i = 0; i < end; i++) {
            if (last == null) {
                stream.moveTo(f(points[i].x), f(points[i].y));
                last = points[i];
            } else if (i == end - 1 || last.distance(points[i]) >= leastStep) {
                stream.lineTo(f(points[i].x), f(points[i].y));
                last = points[i];
            }
        }
        if (closed) {
            stream.closePath();
        }
    }

    private static float f(double value) {
        return (float) (Math.rint(value * DIGITS) / DIGITS);
    }
}
