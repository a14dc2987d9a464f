// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.section;

import java.util.List;
import kerfglow.api.proof.Role;
import kerfglow.host.Result;
import org.locationtech.jts.geom.Envelope;

/**
 * A section through one stroke of the sign, from the wall to the front, to scale from the values in force. Depth runs to the right from the
 * face of the wall, height downward across the stroke; both mm. Only what the job says is there is drawn.
 *
 * @param pieces from the wall to the front
 * @param beams where the light goes
 * @param measures the dimensions that can be changed
 * @param extent of all pieces, mm
 */
public record Section(List<Piece> pieces, List<Beam> beams, List<Measure> measures, Envelope extent) {
    /** What a piece is; the word is for people. */
    public enum Kind {
        WALL("wall", List.of("mount", "legibility")),
        STAND_OFF("stand-off", List.of("glow", "mount")),
        STUD("stud", List.of("mount")),
        BACK("back", List.of("back", "fit")),
        CAN("return", List.of("returns")),
        MODULE("light module", List.of("glow", "power")),
        PANEL("panel", List.of("router", "sheet")),
        PUSH_THROUGH("push-through", List.of("fit", "router")),
        FACE("face", List.of("router", "sheet")),
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

    /** What a piece is made of, as far as a drawing tells materials apart. */
    public enum Stuff { MASONRY, METAL, PLASTIC, FILM, DEVICE }

    /**
     * A piece as rectangles.
     *
     * @param kind what it is
     * @param stuff how it is toned and hatched
     * @param words what it is and of what, for a person
     * @param goesOn true when it goes on above and below of what is drawn
     * @param areas where it is cut, mm
     */
    public record Piece(Kind kind, Stuff stuff, String words, boolean goesOn, List<Envelope> areas) {
    }

    /**
     * Light on its way from a module to what it lights.
     *
     * @param from where it starts, an envelope without width
     * @param to where it arrives
     */
    public record Beam(Envelope from, Envelope to) {
    }

    /** On which side of the drawing a dimension stands; beside the piece itself where there is room within. */
    public enum Side { ABOVE, BELOW, FRONT, WITHIN }

    /**
     * A dimension that can be changed.
     *
     * @param title what it is
     * @param valueMm what it is now
     * @param along from where to where it is measured, mm; a flat envelope
     * @param side where its line stands
     * @param target what is written into the job sheet when it is changed
     */
    public record Measure(String title, double valueMm, Envelope along, Side side, Target target) {
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

    /**
     * The section of a checked proof.
     *
     * @param result the run, for build, parts, materials, stock and settings
     */
    public static Section of(Result result) {
        return new SectionMaker(new SectionFacts(result)).make();
    }
}
