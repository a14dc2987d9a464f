// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.section;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.host.Result;
import kerfglow.host.Scope;
import org.locationtech.jts.geom.Envelope;

/**
 * A section through one stroke of the sign, from the wall to the front, to scale from the values in force. Depth runs to the right from the
 * face of the wall, height downward across the stroke; both mm. Only what the job says is there is drawn.
 *
 * @param pieces from the wall to the front
 * @param measures the dimensions that can be changed
 * @param extent of everything drawn, mm
 */
public record Section(List<Piece> pieces, List<Measure> measures, Envelope extent) {
    /** What a piece is; the word is for people. */
    public enum Kind {
        WALL("wall", List.of("mount", "legibility")),
        BACK("back", List.of("back", "fit")),
        CAN("return", List.of("returns")),
        MODULE("light module", List.of("glow", "power")),
        FACE("face", List.of("router", "sheet")),
        PANEL("panel", List.of("router", "sheet")),
        MOULDING("edge moulding", List.of("trim")),
        FILM("film", List.of("vinyl", "print"));

        private final String word;
        private final List<String> owners;

        Kind(String word, List<String> owners) {
            this.word = word;
            this.owners = owners;
        }

        public String word() {
            return word;
        }

        /** First words of the settings that shape or judge the piece. */
        public List<String> owners() {
            return owners;
        }
    }

    /**
     * A piece as rectangles.
     *
     * @param kind what it is
     * @param areas where it is cut, mm
     */
    public record Piece(Kind kind, List<Envelope> areas) {
    }

    /**
     * A dimension that can be changed.
     *
     * @param title what it is
     * @param valueMm what it is now
     * @param along from where to where it is drawn, mm; a flat envelope
     * @param target what is written into the job sheet when it is changed
     */
    public record Measure(String title, double valueMm, Envelope along, Target target) {
    }

    /** Where a dimension comes from. */
    public sealed interface Target {
        /** A setting, for everything. */
        record OfSetting(String key) implements Target {
        }

        /** The thickness of the material of a role. */
        record OfThickness(Role role, String material) implements Target {
        }
    }

    /** Assumed: a stroke of a usual letter; the drawing shows the build, not one letter. */
    private static final double STROKE_MM = 36;
    private static final double WALL_MM = 8;
    /** Assumed: thinner film cannot be seen at the scale; drawn as thick as this and not dimensioned. */
    private static final double FILM_MM = 0.8;
    /** Assumed: a usual light module. */
    private static final double MODULE_HEIGHT_MM = 15;
    private static final double MODULE_DEPTH_MM = 7;
    private static final double LIP_THICKNESS_MM = 1.5;

    /**
     * The section of a checked proof.
     *
     * @param result the run, for parts, materials and settings
     */
    public static Section of(Result result) {
        return new Maker(result).make();
    }

    /** Lays the pieces one before the other. */
    private static final class Maker {
        private final Result result;
        private final List<Piece> pieces = new ArrayList<>();
        private final List<Measure> measures = new ArrayList<>();
        private double front;

        Maker(Result result) {
            this.result = result;
        }

        Section make() {
            piece(Kind.WALL, new Envelope(-WALL_MM, 0, -STROKE_MM * 0.2, STROKE_MM * 1.2));
            Optional<Part> face = part(Role.FACE);
            Optional<Part> panel = part(Role.PANEL);
            OptionalDouble depth = setting("returns.depth");
            if (panel.isPresent()) {
                double thickness = thickness(panel.get());
                piece(Kind.PANEL, new Envelope(front, front + thickness, -STROKE_MM * 0.2, STROKE_MM * 1.2));
                thicknessMeasure("thickness of the panel", panel.get(), front, STROKE_MM * 1.2);
                front += thickness;
            }
            boolean can = face.isPresent() && depth.isPresent() && depth.getAsDouble() > 0;
            if (can) {
                layCan(depth.getAsDouble(), thickness(face.get()));
            }
            face.ifPresent(part -> layFace(part, can));
            if (part(Role.VINYL).isPresent() || part(Role.PRINT).isPresent()) {
                piece(Kind.FILM, new Envelope(front, front + FILM_MM, STROKE_MM * 0.3, STROKE_MM * 0.7));
            }
            Envelope extent = new Envelope();
            pieces.forEach(piece -> piece.areas().forEach(extent::expandToInclude));
            return new Section(List.copyOf(pieces), List.copyOf(measures), extent);
        }

        /** Back, returns and a module; the back is smaller than the face by the allowance, and the returns stand around it. */
        private void layCan(double depth, double faceThickness) {
            double allowance = setting("back.allowance").orElse(0);
            double side = isPerSide() ? allowance : allowance / 2;
            double strip = setting("returns.thickness").orElse(1);
            double back = part(Role.BACK).map(this::thickness).orElse(strip);
            piece(Kind.BACK, new Envelope(front, front + back, side, STROKE_MM - side));
            part(Role.BACK).ifPresent(part -> thicknessMeasure("thickness of the back", part, front, STROKE_MM - side));
            measures.add(new Measure(isPerSide() ? "back smaller than the face, a side" : "back smaller than the face", allowance,
                    new Envelope(front + back / 2, front + back / 2, 0, side), new Target.OfSetting("back.allowance")));
            piece(Kind.CAN, new Envelope(front, front + depth, side - strip, side), new Envelope(front, front + depth, STROKE_MM - side, STROKE_MM - side + strip));
            measures.add(new Measure("depth of the returns", depth, new Envelope(front, front + depth, 0, 0), new Target.OfSetting("returns.depth")));
            measures.add(new Measure("thickness of the strip", strip, new Envelope(front + depth * 0.6, front + depth * 0.6, STROKE_MM - side, STROKE_MM - side + strip),
                    new Target.OfSetting("returns.thickness")));
            double middle = STROKE_MM / 2;
            piece(Kind.MODULE, new Envelope(front + back, front + back + MODULE_DEPTH_MM, middle - MODULE_HEIGHT_MM / 2, middle + MODULE_HEIGHT_MM / 2));
            front += depth;
            OptionalDouble lip = setting("trim.lip");
            if (lip.isPresent()) {
                layMoulding(lip.getAsDouble(), faceThickness);
            }
        }

        private void layMoulding(double lip, double faceThickness) {
            double outer = front + faceThickness + LIP_THICKNESS_MM;
            double leg = Math.max(setting("fit.leg-thickness").orElse(0), LIP_THICKNESS_MM);
            double reach = front - 3 * faceThickness;
            piece(Kind.MOULDING, new Envelope(front + faceThickness, outer, -leg, lip), new Envelope(reach, outer, -leg, 0),
                    new Envelope(front + faceThickness, outer, STROKE_MM - lip, STROKE_MM + leg), new Envelope(reach, outer, STROKE_MM, STROKE_MM + leg));
            measures.add(new Measure("lip of the moulding", lip, new Envelope(outer, outer, STROKE_MM - lip, STROKE_MM), new Target.OfSetting("trim.lip")));
        }

        private void layFace(Part face, boolean can) {
            double thickness = thickness(face);
            piece(Kind.FACE, new Envelope(front, front + thickness, 0, STROKE_MM));
            thicknessMeasure("thickness of the face", face, front, can ? 0 : STROKE_MM);
            front += thickness;
        }

        private void thicknessMeasure(String title, Part part, double from, double height) {
            measures.add(new Measure(title, thickness(part), new Envelope(from, from + thickness(part), height, height),
                    new Target.OfThickness(part.role(), part.sheetMaterial().orElse("sheet"))));
        }

        private void piece(Kind kind, Envelope... areas) {
            pieces.add(new Piece(kind, List.of(areas)));
        }

        /** Of several the thickest stock: the drawing shows one stroke. */
        private Optional<Part> part(Role role) {
            return result.parts().stream().filter(part -> part.role() == role)
                    .max((a, b) -> Double.compare(a.thicknessMm().orElse(0), b.thicknessMm().orElse(0)));
        }

        /** Assumed where the job names no thickness: 3 mm, and the dimension asks for it. */
        private double thickness(Part part) {
            return part.thicknessMm().orElse(3);
        }

        private boolean isPerSide() {
            return result.settings().stream().anyMatch(used -> used.key().equals("back.allowance-kind") && used.scope().equals(Scope.ALL.toString())
                    && "per side".equals(used.value()));
        }

        private OptionalDouble setting(String key) {
            return result.settings().stream().filter(used -> used.key().equals(key) && used.scope().equals(Scope.ALL.toString()) && used.value() instanceof Number)
                    .mapToDouble(used -> ((Number) used.value()).doubleValue()).findFirst();
        }
    }
}
