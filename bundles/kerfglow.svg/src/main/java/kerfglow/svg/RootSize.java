// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.awt.geom.AffineTransform;
import kerfglow.api.proof.ImportNote.Kind;
import kerfglow.api.proof.ProofException;
import org.w3c.dom.Element;

/**
 * The size of the proof and what its outermost viewport does.
 *
 * @param widthMm on the sign
 * @param heightMm on the sign
 * @param toMm from px to mm on the sign
 * @param fit from user units to px, by the viewBox
 * @param lengths what lengths in the document refer to
 * @param fitsContent true when the file states no size at all, so that the content gives it
 */
record RootSize(double widthMm, double heightMm, AffineTransform toMm, AffineTransform fit, Lengths lengths, boolean fitsContent) {
    private static final double MM_PER_INCH = 25.4;
    /** CSS 2.2, 10.3.2: what a replaced element without size is given. */
    private static final double DEFAULT_WIDTH = 300;
    private static final double DEFAULT_HEIGHT = 150;

    static RootSize of(Drawing drawing) throws ProofException {
        Element svg = drawing.source().root();
        Style style = drawing.cascade().of(svg, drawing.cascade().initial());
        double unitsPerInch = drawing.options().unitsPerInch();
        Lengths lengths = new Lengths(unitsPerInch, DEFAULT_WIDTH, DEFAULT_HEIGHT, style.fontSize());
        double width = stated(drawing, svg, style, "width", lengths);
        double height = stated(drawing, svg, style, "height", lengths);
        Viewport.Box box = viewBox(drawing, svg);
        boolean fitsContent = false;
        if (box != null && (Double.isNaN(width) || Double.isNaN(height))) {
            boolean neither = Double.isNaN(width) && Double.isNaN(height);
            if (neither) { // one of them alone settles the other by the viewBox, so nothing is assumed
                drawing.report().add(Kind.ASSUMED_SIZE, svg, "the proof's width and height are not stated in a unit of length; the viewBox is taken for px");
            }
            double perUnit = neither ? 1 : Double.isNaN(width) ? height / box.height() : width / box.width();
            width = Double.isNaN(width) ? box.width() * perUnit : width;
            height = Double.isNaN(height) ? box.height() * perUnit : height;
        } else if (Double.isNaN(width) || Double.isNaN(height)) {
            drawing.report().add(Kind.ASSUMED_SIZE, svg, "the proof states no size; it is taken to reach from the origin to the end of what is drawn");
            fitsContent = true;
            width = Double.isNaN(width) ? DEFAULT_WIDTH : width;
            height = Double.isNaN(height) ? DEFAULT_HEIGHT : height;
        }
        double mm = MM_PER_INCH / unitsPerInch * drawing.options().scale();
        AffineTransform toMm = AffineTransform.getScaleInstance(mm, mm);
        AffineTransform fit = new AffineTransform();
        Lengths inner = lengths.within(width, height);
        if (box != null) {
            try {
                fit = Viewport.fit(box, new Viewport.Box(0, 0, width, height), svg.getAttributeNS(null, "preserveAspectRatio"));
            } catch (BadValueException e) {
                throw refusal(drawing, "preserveAspectRatio of the proof " + e.getMessage());
            }
            inner = lengths.within(box.width(), box.height());
        }
        return new RootSize(width * mm, height * mm, toMm, fit, inner, fitsContent);
    }

    /** Not a number where it is missing, "auto" or a percentage: nothing is around the proof that it could be a share of. */
    private static double stated(Drawing drawing, Element svg, Style style, String name, Lengths lengths) throws ProofException {
        String text = style.get(name, svg.getAttributeNS(null, name)).strip();
        if (text.isEmpty() || text.equals("auto") || text.endsWith("%")) {
            return Double.NaN;
        }
        double length;
        try {
            length = lengths.parse(text, name.equals("width") ? Lengths.Axis.X : Lengths.Axis.Y);
        } catch (BadValueException e) {
            throw refusal(drawing, name + " of the proof " + e.getMessage());
        }
        if (!(length > 0)) {
            throw refusal(drawing, name + " of the proof is " + text + "; it must be above 0");
        }
        return length;
    }

    private static Viewport.Box viewBox(Drawing drawing, Element svg) throws ProofException {
        String text = svg.getAttributeNS(null, "viewBox").strip();
        if (text.isEmpty()) {
            return null;
        }
        try {
            Viewport.Box box = Viewport.viewBox(text);
            if (box.width() == 0 || box.height() == 0) {
                throw new BadValueException("has no size");
            }
            return box;
        } catch (BadValueException e) {
            throw refusal(drawing, "viewBox of the proof " + e.getMessage());
        }
    }

    private static ProofException refusal(Drawing drawing, String message) {
        return new ProofException(message + "; state the size of the sign", drawing.source().lines().of(drawing.source().root()), 0, null);
    }
}
