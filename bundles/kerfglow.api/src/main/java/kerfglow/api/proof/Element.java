// SPDX-License-Identifier: Apache-2.0
package kerfglow.api.proof;

import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/**
 * One drawn element of the proof, with style, transforms, clip and {@code use} resolved. An element that {@code use} shows
 * several times stands here once for each time. Immutable, provided that nobody changes the geometry.
 */
public final class Element {
    /** Where the outline of an element comes from. */
    public enum Origin { SHAPE, TEXT, IMAGE }

    private final Builder b;

    private Element(Builder b) {
        this.b = b;
    }

    /**
     * Starts an element.
     *
     * @param id unique in the proof: the file's id, made unique, or the tag and a running number
     */
    public static Builder builder(String id) {
        return new Builder(id);
    }

    /** Unique in the proof. */
    public String id() {
        return b.id;
    }

    /** Local name of the element in the file, for instance {@code path}. */
    public String tag() {
        return b.tag;
    }

    /** Name of the layer that it lies in. */
    public String layer() {
        return b.layer;
    }

    /** The label that its author gave it (a label attribute or a title), or empty. */
    public String label() {
        return b.label;
    }

    /** The value of {@code data-part} on it or the nearest group around it, or empty. */
    public String dataPart() {
        return b.dataPart;
    }

    /** The ids of the element and of the groups around it in the file, innermost first; for job sheets that name an id. */
    public List<String> idPath() {
        return b.idPath;
    }

    /** Line in the file, 0 where it is not known. */
    public int line() {
        return b.line;
    }

    /** Place in paint order, 0 at the bottom. */
    public int order() {
        return b.order;
    }

    public Origin origin() {
        return b.origin;
    }

    public Paint fill() {
        return b.fill;
    }

    public Paint stroke() {
        return b.stroke;
    }

    /** Present when the fill is a gradient whose course is known. */
    public Optional<Gradient> fillGradient() {
        return Optional.ofNullable(b.fillGradient);
    }

    /** Present when the stroke is a gradient whose course is known. */
    public Optional<Gradient> strokeGradient() {
        return Optional.ofNullable(b.strokeGradient);
    }

    /** Stroke width on the sign, mm (for a skewed stroke the mean of both axes); 0 without a stroke. */
    public double strokeWidthMm() {
        return b.strokeWidthMm;
    }

    /** The area that its fill paints, after fill rule and clip: valid, polygonal, possibly empty. */
    public Geometry fillArea() {
        return b.fillArea;
    }

    /** The area that its stroke paints, after clip: valid, polygonal, possibly empty. */
    public Geometry strokeArea() {
        return b.strokeArea;
    }

    /** The subpaths as drawn. Empty for images. */
    public List<Outline> outlines() {
        return b.outlines;
    }

    public Visibility visibility() {
        return b.visibility;
    }

    public Set<Effect> effects() {
        return b.effects;
    }

    /** Present when it is live text. */
    public Optional<TextRun> text() {
        return Optional.ofNullable(b.text);
    }

    /** Present when it is an image. */
    public Optional<ImageInfo> image() {
        return Optional.ofNullable(b.image);
    }

    @Override
    public String toString() {
        return b.tag + " " + b.id;
    }

    /** Collects what is known of an element; everything but the id has a default. */
    public static final class Builder {
        private static final Geometry NOTHING = new GeometryFactory().createPolygon();
        private final String id;
        private String tag = "path";
        private String layer = "";
        private String label = "";
        private String dataPart = "";
        private List<String> idPath = List.of();
        private int line;
        private int order;
        private Origin origin = Origin.SHAPE;
        private Paint fill = Paint.colour(0);
        private Paint stroke = Paint.NONE;
        private Gradient fillGradient;
        private Gradient strokeGradient;
        private double strokeWidthMm;
        private Geometry fillArea = NOTHING;
        private Geometry strokeArea = NOTHING;
        private List<Outline> outlines = List.of();
        private Visibility visibility = Visibility.SHOWN;
        private Set<Effect> effects = Set.of();
        private TextRun text;
        private ImageInfo image;

        private Builder(String id) {
            this.id = Objects.requireNonNull(id, "id");
        }

        private Builder(Builder from) {
            id = from.id;
            tag = from.tag;
            layer = from.layer;
            label = from.label;
            dataPart = from.dataPart;
            idPath = from.idPath;
            line = from.line;
            order = from.order;
            origin = from.origin;
            fill = from.fill;
            stroke = from.stroke;
            fillGradient = from.fillGradient;
            strokeGradient = from.strokeGradient;
            strokeWidthMm = from.strokeWidthMm;
            fillArea = from.fillArea;
            strokeArea = from.strokeArea;
            outlines = from.outlines;
            visibility = from.visibility;
            effects = from.effects;
            text = from.text;
            image = from.image;
        }

        public Builder tag(String value) {
            tag = Objects.requireNonNull(value, "tag");
            return this;
        }

        public Builder layer(String value) {
            layer = Objects.requireNonNull(value, "layer");
            return this;
        }

        public Builder label(String value) {
            label = Objects.requireNonNull(value, "label");
            return this;
        }

        public Builder dataPart(String value) {
            dataPart = Objects.requireNonNull(value, "dataPart");
            return this;
        }

        public Builder idPath(List<String> value) {
            idPath = List.copyOf(value);
            return this;
        }

        public Builder line(int value) {
            line = value;
            return this;
        }

        public Builder order(int value) {
            order = value;
            return this;
        }

        public Builder origin(Origin value) {
            origin = Objects.requireNonNull(value, "origin");
            return this;
        }

        public Builder fill(Paint value) {
            fill = Objects.requireNonNull(value, "fill");
            return this;
        }

        public Builder stroke(Paint value, double widthMm) {
            stroke = Objects.requireNonNull(value, "stroke");
            strokeWidthMm = widthMm;
            return this;
        }

        public Builder fillGradient(Gradient value) {
            fillGradient = value;
            return this;
        }

        public Builder strokeGradient(Gradient value) {
            strokeGradient = value;
            return this;
        }

        public Builder fillArea(Geometry value) {
            fillArea = Objects.requireNonNull(value, "fillArea");
            return this;
        }

        public Builder strokeArea(Geometry value) {
            strokeArea = Objects.requireNonNull(value, "strokeArea");
            return this;
        }

        public Builder outlines(List<Outline> value) {
            outlines = List.copyOf(value);
            return this;
        }

        public Builder visibility(Visibility value) {
            visibility = Objects.requireNonNull(value, "visibility");
            return this;
        }

        public Builder effects(Set<Effect> value) {
            effects = value.isEmpty() ? Set.of() : java.util.Collections.unmodifiableSet(EnumSet.copyOf(value));
            return this;
        }

        public Builder text(TextRun value) {
            text = value;
            return this;
        }

        public Builder image(ImageInfo value) {
            image = value;
            return this;
        }

        public Element build() {
            return new Element(new Builder(this));
        }
    }
}
