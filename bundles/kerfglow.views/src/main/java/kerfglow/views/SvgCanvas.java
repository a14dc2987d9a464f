// SPDX-License-Identifier: Apache-2.0
package kerfglow.views;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Base64;
import java.util.Locale;
import javax.imageio.ImageIO;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;

/** Draws as SVG 1.1 text. */
final class SvgCanvas implements Canvas {
    /** Points nearer than this to the one before are left out: nobody sees a seventh of a pixel. */
    private static final double LEAST_STEP = 0.15;
    /** Pixels across that pages are read at; a step is judged by it when the picture counts in another unit. */
    private static final double COMMON_WIDTH = 1200;

    private final StringBuilder out = new StringBuilder();
    private final String idPrefix;
    private final double leastStep;
    private int clips;

    private SvgCanvas(String idPrefix, double leastStep) {
        this.idPrefix = idPrefix;
        this.leastStep = leastStep;
    }

    /** A file of its own, in pixels. */
    static SvgCanvas file(double width, double height, String title) {
        SvgCanvas canvas = new SvgCanvas("", LEAST_STEP);
        canvas.out.append(String.format(Locale.ROOT, "<?xml version=\"1.0\" encoding=\"UTF-8\"?>%n"
                + "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%1$.0f\" height=\"%2$.0f\" viewBox=\"0 0 %1$.0f %2$.0f\" font-family=\"sans-serif\">%n", width, height));
        canvas.out.append("<title>").append(escape(title)).append("</title>\n");
        return canvas;
    }

    /**
     * An element inside a page.
     *
     * @param idPrefix begins the ids in it, so that several stand in one page
     * @param title what it shows, for who cannot see it
     */
    static SvgCanvas inside(double width, double height, String idPrefix, String title) {
        SvgCanvas canvas = new SvgCanvas(idPrefix, LEAST_STEP * width / COMMON_WIDTH);
        canvas.out.append("<svg viewBox=\"0 0 ").append(n(width)).append(' ').append(n(height)).append("\" role=\"img\" font-family=\"sans-serif\"><title>").append(escape(title))
                .append("</title>\n");
        return canvas;
    }

    String text() {
        return out + "</svg>\n";
    }

    @Override
    public void area(Geometry pixels, int rgb, double opacity) {
        String path = path(pixels);
        if (!path.isEmpty()) {
            out.append("<path d=\"").append(path).append("\" fill-rule=\"evenodd\" fill=\"").append(colour(rgb)).append('"').append(opacity("fill-opacity", opacity)).append("/>\n");
        }
    }

    @Override
    public void edge(Geometry pixels, int rgb, double width, double opacity) {
        String path = path(pixels);
        if (!path.isEmpty()) {
            out.append("<path d=\"").append(path).append("\" fill=\"none\" stroke-linejoin=\"round\" stroke-linecap=\"round\"").append(stroke(rgb, width))
                    .append(opacity("stroke-opacity", opacity)).append("/>\n");
        }
    }

    @Override
    public void rectangle(double x, double y, double width, double height, int fillRgb, int edgeRgb, double edgeWidth) {
        out.append("<rect x=\"").append(n(x)).append("\" y=\"").append(n(y)).append("\" width=\"").append(n(width)).append("\" height=\"").append(n(height))
                .append("\" fill=\"").append(colour(fillRgb)).append('"').append(stroke(edgeRgb, edgeWidth)).append("/>\n");
    }

    @Override
    public void circle(double x, double y, double radius, int fillRgb, int edgeRgb, double edgeWidth) {
        out.append("<circle cx=\"").append(n(x)).append("\" cy=\"").append(n(y)).append("\" r=\"").append(n(radius)).append("\" fill=\"").append(colour(fillRgb)).append('"')
                .append(stroke(edgeRgb, edgeWidth)).append("/>\n");
    }

    @Override
    public void polygon(double[] corners, int fillRgb, int edgeRgb, double edgeWidth) {
        out.append("<polygon points=\"");
        for (int i = 0; i < corners.length; i++) {
            out.append(i == 0 ? "" : " ").append(n(corners[i]));
        }
        out.append("\" fill=\"").append(colour(fillRgb)).append('"').append(stroke(edgeRgb, edgeWidth)).append("/>\n");
    }

    @Override
    public void line(double x1, double y1, double x2, double y2, int rgb, double width) {
        out.append("<line x1=\"").append(n(x1)).append("\" y1=\"").append(n(y1)).append("\" x2=\"").append(n(x2)).append("\" y2=\"").append(n(y2)).append('"')
                .append(stroke(rgb, width)).append("/>\n");
    }

    @Override
    public void text(String text, double x, double baseline, double size, boolean bold, Anchor anchor, int rgb) {
        out.append("<text x=\"").append(n(x)).append("\" y=\"").append(n(baseline)).append("\" font-size=\"").append(n(size)).append('"')
                .append(bold ? " font-weight=\"bold\"" : "").append(anchor == Anchor.START ? "" : " text-anchor=\"" + anchor.name().toLowerCase(Locale.ROOT) + "\"")
                .append(" fill=\"").append(colour(rgb)).append("\">").append(escape(text)).append("</text>\n");
    }

    @Override
    public void image(int columns, int[] argb, double x, double y, double width) {
        ByteArrayOutputStream png = new ByteArrayOutputStream();
        try {
            ImageIO.write(ImageCanvas.picture(columns, argb), "png", png);
        } catch (IOException impossible) { // it is written to memory
            throw new UncheckedIOException(impossible);
        }
        out.append("<image x=\"").append(n(x)).append("\" y=\"").append(n(y)).append("\" width=\"").append(n(width)).append("\" height=\"")
                .append(n(width * (argb.length / columns) / columns)).append("\" preserveAspectRatio=\"none\" href=\"data:image/png;base64,")
                .append(Base64.getEncoder().encodeToString(png.toByteArray())).append("\"/>\n");
    }

    @Override
    public void clip(double x, double y, double width, double height) {
        clips++;
        out.append("<clipPath id=\"").append(idPrefix).append('c').append(clips).append("\"><rect x=\"").append(n(x)).append("\" y=\"").append(n(y)).append("\" width=\"").append(n(width))
                .append("\" height=\"").append(n(height)).append("\"/></clipPath>\n<g clip-path=\"url(#").append(idPrefix).append('c').append(clips).append(")\">\n");
    }

    @Override
    public void unclip() {
        out.append("</g>\n");
    }

    private String path(Geometry geometry) {
        StringBuilder path = new StringBuilder();
        for (int i = 0; i < geometry.getNumGeometries(); i++) {
            Geometry each = geometry.getGeometryN(i);
            if (each instanceof Polygon polygon && !polygon.isEmpty()) {
                line(polygon.getExteriorRing(), path);
                for (int hole = 0; hole < polygon.getNumInteriorRing(); hole++) {
                    line(polygon.getInteriorRingN(hole), path);
                }
            } else if (each instanceof LineString line && !line.isEmpty()) {
                line(line, path);
            }
        }
        return path.toString();
    }

    private void line(LineString line, StringBuilder path) {
        Coordinate[] points = line.getCoordinates();
        boolean closed = line.isClosed();
        int end = closed ? points.length - 1 : points.length;
        Coordinate last = null;
        for (int i = 0; i < end; i++) {
            if (last == null || i == end - 1 || last.distance(points[i]) >= leastStep) {
                path.append(last == null ? 'M' : 'L').append(n(points[i].x)).append(' ').append(n(points[i].y));
                last = points[i];
            }
        }
        path.append(closed ? "Z" : "");
    }

    private static String stroke(int rgb, double width) {
        return width > 0 ? " stroke=\"" + colour(rgb) + "\" stroke-width=\"" + n(width) + "\"" : "";
    }

    private static String opacity(String name, double opacity) {
        return opacity < 1 ? " " + name + "=\"" + n(opacity) + "\"" : "";
    }

    private static String colour(int rgb) {
        return String.format(Locale.ROOT, "#%06x", rgb);
    }

    /** To a hundredth, without needless digits; by hand, since a drawing has half a million numbers. */
    private static String n(double value) {
        long hundredths = Math.round(value * 100);
        StringBuilder text = new StringBuilder();
        if (hundredths < 0) {
            text.append('-');
            hundredths = -hundredths;
        }
        text.append(hundredths / 100);
        if (hundredths % 100 != 0) {
            text.append('.').append(hundredths / 10 % 10);
            if (hundredths % 10 != 0) {
                text.append(hundredths % 10);
            }
        }
        return text.toString();
    }

    private static String escape(String text) {
        StringBuilder safe = new StringBuilder();
        text.codePoints().forEach(c -> {
            switch (c) {
                case '<' -> safe.append("&lt;");
                case '>' -> safe.append("&gt;");
                case '&' -> safe.append("&amp;");
                case '"' -> safe.append("&quot;");
                default -> safe.appendCodePoint(c == '\n' ? ' ' : PlainText.isPlain(c) ? c : '?');
            }
        });
        return safe.toString();
    }
}
