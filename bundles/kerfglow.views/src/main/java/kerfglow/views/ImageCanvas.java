// SPDX-License-Identifier: Apache-2.0
package kerfglow.views;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.font.FontRenderContext;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import org.locationtech.jts.awt.ShapeWriter;
import org.locationtech.jts.geom.Geometry;

/** Draws into a raster image. */
final class ImageCanvas implements Canvas {
    private static final int OPAQUE = 255;
    private static final FontRenderContext CONTEXT = new FontRenderContext(null, true, true);
    /** Other renderers' sans-serif runs wider than ours by up to about this. */
    private static final double FONT_SLACK = 1.06;

    private final BufferedImage image;
    private final Graphics2D graphics;

    ImageCanvas(int width, int height) {
        image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        graphics = image.createGraphics();
        graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        graphics.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        graphics.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        graphics.setRenderingHint(RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
    }

    BufferedImage image() {
        graphics.dispose();
        return image;
    }

    static Font font(double size, boolean bold) {
        return new Font(Font.SANS_SERIF, bold ? Font.BOLD : Font.PLAIN, 1).deriveFont((float) size);
    }

    /** Width that a text may need, in pixels: a little more than here, since other renderers' sans-serif runs wider. */
    static double roomFor(String text, double size, boolean bold) {
        return FONT_SLACK * font(size, bold).getStringBounds(text, CONTEXT).getWidth();
    }

    @Override
    public void area(Geometry pixels, int rgb, double opacity) {
        graphics.setColor(colour(rgb, opacity));
        graphics.fill(new ShapeWriter().toShape(pixels));
    }

    @Override
    public void edge(Geometry pixels, int rgb, double width, double opacity) {
        stroke(new ShapeWriter().toShape(pixels), rgb, width, opacity);
    }

    @Override
    public void rectangle(double x, double y, double width, double height, int fillRgb, int edgeRgb, double edgeWidth) {
        paint(new Rectangle2D.Double(x, y, width, height), fillRgb, edgeRgb, edgeWidth);
    }

    @Override
    public void circle(double x, double y, double radius, int fillRgb, int edgeRgb, double edgeWidth) {
        paint(new Ellipse2D.Double(x - radius, y - radius, 2 * radius, 2 * radius), fillRgb, edgeRgb, edgeWidth);
    }

    @Override
    public void polygon(double[] corners, int fillRgb, int edgeRgb, double edgeWidth) {
        Path2D path = new Path2D.Double();
        for (int i = 0; i < corners.length; i += 2) {
            if (i == 0) {
                path.moveTo(corners[i], corners[i + 1]);
            } else {
                path.lineTo(corners[i], corners[i + 1]);
            }
        }
        path.closePath();
        paint(path, fillRgb, edgeRgb, edgeWidth);
    }

    @Override
    public void line(double x1, double y1, double x2, double y2, int rgb, double width) {
        stroke(new Line2D.Double(x1, y1, x2, y2), rgb, width, 1);
    }

    @Override
    public void text(String text, double x, double baseline, double size, boolean bold, Anchor anchor, int rgb) {
        graphics.setFont(font(size, bold));
        double width = graphics.getFontMetrics().getStringBounds(text, graphics).getWidth();
        double left = anchor == Anchor.START ? x : anchor == Anchor.MIDDLE ? x - width / 2 : x - width;
        graphics.setColor(colour(rgb, 1));
        graphics.drawString(text, (float) left, (float) baseline);
    }

    @Override
    public void image(int columns, int[] argb, double x, double y, double width) {
        graphics.drawImage(picture(columns, argb), new AffineTransform(width / columns, 0, 0, width / columns, x, y), null);
    }

    /** The cells as an image, one pixel a cell. */
    static BufferedImage picture(int columns, int[] argb) {
        BufferedImage picture = new BufferedImage(columns, argb.length / columns, BufferedImage.TYPE_INT_ARGB);
        picture.setRGB(0, 0, columns, argb.length / columns, argb, 0, columns);
        return picture;
    }

    @Override
    public void clip(double x, double y, double width, double height) {
        graphics.setClip(new Rectangle2D.Double(x, y, width, height));
    }

    @Override
    public void unclip() {
        graphics.setClip(null);
    }

    private void paint(Shape shape, int fillRgb, int edgeRgb, double edgeWidth) {
        graphics.setColor(colour(fillRgb, 1));
        graphics.fill(shape);
        if (edgeWidth > 0) {
            stroke(shape, edgeRgb, edgeWidth, 1);
        }
    }

    private void stroke(Shape shape, int rgb, double width, double opacity) {
        graphics.setColor(colour(rgb, opacity));
        graphics.setStroke(new BasicStroke((float) width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        graphics.draw(shape);
    }

    private static Color colour(int rgb, double opacity) {
        return new Color(rgb >> 16 & OPAQUE, rgb >> 8 & OPAQUE, rgb & OPAQUE, (int) Math.round(opacity * OPAQUE));
    }
}
