// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.awt.geom.AffineTransform;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import kerfglow.api.proof.Element.Builder;
import kerfglow.api.proof.Element.Origin;
import kerfglow.api.proof.ImageInfo;
import kerfglow.api.proof.ImportNote.Kind;
import kerfglow.api.proof.Paint;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.w3c.dom.Element;

/** Where an image lies and how many pixels it has: SVG 2, 12.3. */
final class Pictures {
    private final Drawing drawing;

    Pictures(Drawing drawing) {
        this.drawing = drawing;
    }

    /** Nothing when the picture has no size, which a note says. @param start begins the element once it is sure to be one */
    Optional<Builder> paint(Element image, Place place, Supplier<Builder> start) {
        Shapes shapes = drawing.shapes();
        Style style = place.style();
        String href = Names.href(image);
        boolean embedded = Images.isEmbedded(href);
        Images.Size pixels = embedded ? Images.size(href).orElse(new Images.Size(0, 0)) : new Images.Size(0, 0);
        if (embedded && pixels.width() == 0) {
            drawing.report().add(Kind.UNSUPPORTED, image, "the pixels of this picture cannot be counted; it is no PNG, JPEG or GIF in base64");
        }
        double width = shapes.autoSize(image, style, "width", place.lengths(), Lengths.Axis.X);
        double height = shapes.autoSize(image, style, "height", place.lengths(), Lengths.Axis.Y);
        double aspect = pixels.width() == 0 ? 1 : (double) pixels.width() / pixels.height();
        if (Double.isNaN(width)) {
            width = Double.isNaN(height) ? pixels.width() : height * aspect;
        }
        if (Double.isNaN(height)) {
            height = Double.isNaN(width) ? pixels.height() : width / aspect;
        }
        if (width == 0 || height == 0) {
            drawing.report().add(Kind.BAD_VALUE, image, "this picture has no size and draws nothing; it is left out");
            return Optional.empty();
        }
        Viewport.Box port = new Viewport.Box(shapes.place(image, style, "x", place.lengths(), Lengths.Axis.X),
                shapes.place(image, style, "y", place.lengths(), Lengths.Axis.Y), width, height);
        Viewport.Box box = pixels.width() == 0 ? port : new Viewport.Box(0, 0, pixels.width(), pixels.height());
        AffineTransform fit = new AffineTransform();
        String ratio = image.getAttributeNS(null, "preserveAspectRatio");
        if (pixels.width() != 0) {
            try {
                fit = Viewport.fit(box, port, ratio);
            } catch (BadValueException e) {
                drawing.report().badValue(image, "preserveAspectRatio", e.getMessage(), "the picture is shown in its frame");
                box = port;
            }
        }
        Place moved = place.moved(fit);
        Geometry area = Areas.rectangle(box.x(), box.y(), box.width(), box.height(), moved.toMm(), drawing.factory());
        if (Viewport.isSlice(ratio.toLowerCase(Locale.ROOT))) {
            area = Areas.common(area, Areas.rectangle(port.x(), port.y(), port.width(), port.height(), place.toMm(), drawing.factory()));
        }
        if (area.isEmpty()) {
            drawing.report().add(Kind.BAD_VALUE, image, "this picture is flattened to a line or lies more than 1000 km away; it covers nothing");
        }
        Geometry seen = place.clip().of(area);
        Coordinate origin = Areas.point(box.x(), box.y(), moved.toMm());
        ImageInfo info = new ImageInfo(pixels.width(), pixels.height(),
                origin.distance(Areas.point(box.x() + box.width(), box.y(), moved.toMm())),
                origin.distance(Areas.point(box.x(), box.y() + box.height(), moved.toMm())), embedded);
        // A picture is no flat colour: as a paint it is told as a pattern.
        return Optional.of(start.get().origin(Origin.IMAGE).image(info).fill(new Paint(Paint.Kind.PATTERN, 0)).fillArea(seen)
                .visibility(Painter.visibility(place, true, true, seen.isEmpty() && !area.isEmpty())).effects(place.effects()));
    }
}
