// SPDX-License-Identifier: Apache-2.0
package kerfglow.api.proof;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

/**
 * One connected piece of the union of the shapes that share role, layer and paint. Immutable, provided that nobody changes
 * the geometry.
 */
public final class Part {
    /** What a part was drawn as; a part can come from several. */
    public enum Source { SHAPE, STROKE, TEXT }

    private final Builder b;

    private Part(Builder b) {
        this.b = b;
    }

    /**
     * Starts a part.
     *
     * @param id unique in the run and the same from run to run, for instance {@code p12}
     * @param role what it becomes
     * @param shape its outline and counters, mm; valid and not empty
     */
    public static Builder builder(String id, Role role, Polygon shape) {
        return new Builder(id, role, shape);
    }

    public String id() {
        return b.id;
    }

    public Role role() {
        return b.role;
    }

    /** False when no job sheet and no {@code data-part} gave the role, so that it counts as a face for want of better. */
    public boolean isAssigned() {
        return b.assigned;
    }

    public String layer() {
        return b.layer;
    }

    public Paint paint() {
        return b.paint;
    }

    /** Place in paint order of the lowest element that it is made of. */
    public int order() {
        return b.order;
    }

    /** The outline that is cut: for a panel without its openings; drilled holes still filled. Valid, not empty, mm. */
    public Polygon shape() {
        return b.shape;
    }

    /** The holes that are drilled into it, as parts of role hole; empty when there are none. Polygonal, mm. */
    public Geometry drilled() {
        return b.drilled;
    }

    /** What is left of the sheet: the shape without its drilled holes. Polygonal, mm. */
    public Geometry material() {
        return b.drilled.isEmpty() ? b.shape : b.shape.difference(b.drilled);
    }

    /** The ids of the elements that it is made of. */
    public List<String> elements() {
        return b.elements;
    }

    public Set<Source> sources() {
        return b.sources;
    }

    /** The material that the job sheet names for it. */
    public Optional<String> sheetMaterial() {
        return Optional.ofNullable(b.sheetMaterial);
    }

    /** The thickness of that material, mm. */
    public OptionalDouble thicknessMm() {
        return b.thicknessMm;
    }

    @Override
    public String toString() {
        return b.role.word() + " " + b.id;
    }

    /** Collects what is known of a part. */
    public static final class Builder {
        private final String id;
        private final Role role;
        private final Polygon shape;
        private boolean assigned = true;
        private String layer = "";
        private Paint paint = Paint.colour(0);
        private int order;
        private Geometry drilled;
        private List<String> elements = List.of();
        private Set<Source> sources = Set.of(Source.SHAPE);
        private String sheetMaterial;
        private OptionalDouble thicknessMm = OptionalDouble.empty();

        private Builder(String id, Role role, Polygon shape) {
            this.id = Objects.requireNonNull(id, "id");
            this.role = Objects.requireNonNull(role, "role");
            this.shape = Objects.requireNonNull(shape, "shape");
            this.drilled = shape.getFactory().createPolygon();
        }

        private Builder(Builder from) {
            id = from.id;
            role = from.role;
            shape = from.shape;
            assigned = from.assigned;
            layer = from.layer;
            paint = from.paint;
            order = from.order;
            drilled = from.drilled;
            elements = from.elements;
            sources = from.sources;
            sheetMaterial = from.sheetMaterial;
            thicknessMm = from.thicknessMm;
        }

        public Builder assigned(boolean value) {
            assigned = value;
            return this;
        }

        public Builder layer(String value) {
            layer = Objects.requireNonNull(value, "layer");
            return this;
        }

        public Builder paint(Paint value) {
            paint = Objects.requireNonNull(value, "paint");
            return this;
        }

        public Builder order(int value) {
            order = value;
            return this;
        }

        public Builder drilled(Geometry value) {
            drilled = Objects.requireNonNull(value, "drilled");
            return this;
        }

        public Builder elements(List<String> value) {
            elements = List.copyOf(value);
            return this;
        }

        public Builder sources(Set<Source> value) {
            sources = Set.copyOf(value);
            return this;
        }

        public Builder sheetMaterial(String value) {
            sheetMaterial = value;
            return this;
        }

        public Builder thicknessMm(double value) {
            thicknessMm = OptionalDouble.of(value);
            return this;
        }

        public Part build() {
            return new Part(new Builder(this));
        }
    }
}
