// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.section;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.desktop.closeup.ModuleSize;
import kerfglow.desktop.section.Section.Kind;
import kerfglow.desktop.section.Section.Side;
import kerfglow.desktop.section.Section.Stuff;
import org.locationtech.jts.geom.Envelope;

/** Lays the pieces of a build one before the other, from the face of the wall at depth 0 to the front. */
final class SectionMaker {
    /** Assumed: a stroke of a usual letter; the drawing shows the build, not one letter. */
    private static final double STROKE_MM = 36;
    private static final double WALL_MM = 8;
    /** Assumed: how far wall and panel are drawn beyond the stroke. */
    private static final double BEYOND_MM = 7;
    /** Assumed: thinner film cannot be seen at the scale; drawn as thick as this and not dimensioned. */
    private static final double FILM_MM = 0.8;
    /** Assumed: as the lips of mouldings are; drawn alone. */
    private static final double LIP_THICKNESS_MM = 1.5;
    /** Assumed: how far moulding and flexible face reach back over the can; drawn alone. */
    private static final double LEG_REACH_MM = 13;
    /** Assumed: a usual stud; drawn alone. */
    private static final double STUD_MM = 5;
    /** Assumed: the height of an opening in the drawing of a panel. */
    private static final double OPENING_MM = 15;

    private final SectionFacts facts;
    private final List<Section.Piece> pieces = new ArrayList<>();
    private final List<Section.Beam> beams = new ArrayList<>();
    private final List<Section.Measure> measures = new ArrayList<>();
    private final double strokeMm = STROKE_MM;
    private double front;
    private double bottom = STROKE_MM + BEYOND_MM;

    SectionMaker(SectionFacts facts) {
        this.facts = facts;
    }

    Section make() {
        switch (facts.build()) {
            case "halo-lit letters" -> {
                letterPanel();
                halo();
            }
            case "cabinet" -> cabinet();
            case "routed panel" -> routedPanel();
            case "flat cut letters" -> {
                letterPanel();
                flat();
            }
            case "vinyl" -> {
                letterPanel();
                facts.part(Role.FACE).ifPresent(this::face);
            }
            default -> {
                letterPanel();
                letters();
            }
        }
        if (facts.hasFilm()) {
            piece(Kind.FILM, Stuff.FILM, "film", new Envelope(front, front + FILM_MM, strokeMm * 0.3, strokeMm * 0.7));
        }
        pieces.add(0, new Section.Piece(Kind.WALL, Stuff.MASONRY, "wall", true, List.of(new Envelope(-WALL_MM, 0, -BEYOND_MM, bottom))));
        Envelope extent = new Envelope();
        pieces.forEach(piece -> piece.areas().forEach(extent::expandToInclude));
        return new Section(List.copyOf(pieces), List.copyOf(beams), List.copyOf(measures), extent);
    }

    // Builds ------------------------------------------------------------------------------------------------------------------

    /** A panel that letters or film stand on. */
    private void letterPanel() {
        facts.part(Role.PANEL).ifPresent(panel -> {
            double thickness = facts.thicknessMm(panel);
            pieces.add(new Section.Piece(Kind.PANEL, facts.stuff(panel), facts.words(panel), true, List.of(new Envelope(front, front + thickness, -BEYOND_MM, strokeMm + BEYOND_MM))));
            thickness("thickness of the panel", panel, front, strokeMm + BEYOND_MM, Side.BELOW);
            front += thickness;
        });
    }

    /** Face over a can, light behind it. */
    private void letters() {
        Optional<Part> face = facts.part(Role.FACE);
        if (face.isPresent() && facts.depthMm().isPresent()) {
            double inner = can(facts.depthMm().getAsDouble(), false);
            light(inner, front, side(), strokeMm - side());
            facts.lipMm().ifPresent(lip -> moulding(lip, facts.thicknessMm(face.get())));
            face(face.get());
        } else {
            face.ifPresent(this::face);
        }
    }

    /** The can stands off the wall, its front is closed, and the light leaves it behind. */
    private void halo() {
        double wall = front;
        double standOff = facts.setting("glow.stand-off").orElse(0);
        if (standOff > 0) {
            piece(Kind.STAND_OFF, Stuff.METAL, "stand-off, " + facts.length(standOff), stud(wall, wall + standOff, 0.16), stud(wall, wall + standOff, 0.84));
            measures.add(new Section.Measure("back off the wall", standOff, flat(wall, wall + standOff, 0), Side.ABOVE, new Section.Target.OfSetting("glow.stand-off")));
            front += standOff;
        }
        double back = front;
        Optional<Part> face = facts.part(Role.FACE);
        if (facts.depthMm().isPresent()) {
            can(facts.depthMm().getAsDouble(), false);
        }
        light(back, wall, -BEYOND_MM, strokeMm + BEYOND_MM);
        face.ifPresent(this::face);
    }

    private Envelope stud(double from, double to, double share) {
        return new Envelope(from, to, strokeMm * share - STUD_MM / 2, strokeMm * share + STUD_MM / 2);
    }

    /** A frame with a face that is stretched over its front edge and held round the sides. */
    private void cabinet() {
        Optional<Part> face = facts.part(Role.FACE);
        if (facts.depthMm().isEmpty()) {
            face.ifPresent(this::face);
            return;
        }
        double strip = facts.stripMm();
        double inner = can(facts.depthMm().getAsDouble(), true);
        light(inner, front, strip, strokeMm - strip);
        face.ifPresent(part -> {
            double thickness = facts.thicknessMm(part);
            double leg = front - Math.min(LEG_REACH_MM, facts.depthMm().getAsDouble() / 2);
            piece(Kind.FACE, facts.stuff(part), facts.words(part), new Envelope(front, front + thickness, -thickness, strokeMm + thickness),
                    new Envelope(leg, front, -thickness, 0), new Envelope(leg, front, strokeMm, strokeMm + thickness));
            thickness("thickness of the face", part, front, -thickness, Side.ABOVE);
            front += thickness;
        });
    }

    /** A panel with openings, in front of a can where the sign has one, else on the wall; letters with cans of their own stand on it. */
    private void routedPanel() {
        Optional<Part> panel = facts.part(Role.PANEL);
        boolean letters = facts.part(Role.FACE).isPresent();
        if (panel.isEmpty()) {
            letters();
            return;
        }
        boolean box = !letters && facts.depthMm().isPresent();
        double inner = box ? can(facts.depthMm().getAsDouble(), true) : front;
        boolean opening = facts.part(Role.OPENING).isPresent() || facts.part(Role.PUSH_THROUGH).isPresent();
        double thickness = facts.thicknessMm(panel.get());
        double middle = letters ? strokeMm + BEYOND_MM + OPENING_MM / 2 : strokeMm / 2;
        Envelope hole = new Envelope(front, front + thickness, middle - OPENING_MM / 2, middle + OPENING_MM / 2);
        double top = box ? 0 : -BEYOND_MM;
        double end = box ? strokeMm : letters && opening ? hole.getMaxY() + BEYOND_MM : strokeMm + BEYOND_MM;
        bottom = Math.max(bottom, end);
        List<Envelope> cut = opening ? List.of(new Envelope(front, front + thickness, top, hole.getMinY()), new Envelope(front, front + thickness, hole.getMaxY(), end))
                : List.of(new Envelope(front, front + thickness, top, end));
        pieces.add(new Section.Piece(Kind.PANEL, facts.stuff(panel.get()), facts.words(panel.get()), !box, cut));
        if (box) {
            light(inner, front, opening ? hole.getMinY() : facts.stripMm(), opening ? hole.getMaxY() : strokeMm - facts.stripMm());
        }
        thickness("thickness of the panel", panel.get(), front, end, Side.BELOW);
        double panelFront = front + thickness;
        facts.part(Role.PUSH_THROUGH).ifPresent(part -> pushThrough(part, hole));
        front = panelFront;
        if (letters) {
            letters();
        }
    }

    private void pushThrough(Part part, Envelope hole) {
        double allowance = facts.setting("fit.push-through-allowance").orElse(0);
        double gap = facts.isPerSide() ? allowance : allowance / 2;
        double thickness = facts.thicknessMm(part);
        piece(Kind.PUSH_THROUGH, facts.stuff(part), facts.words(part), new Envelope(front, front + thickness, hole.getMinY() + gap, hole.getMaxY() - gap));
        thickness("thickness of the push-through", part, front, hole.getMaxY() - gap, Side.BELOW);
        measures.add(new Section.Measure(facts.isPerSide() ? "room of the push-through, a side" : "room of the push-through", allowance,
                new Envelope(front + thickness, front + thickness, hole.getMinY(), hole.getMinY() + gap), Side.FRONT, new Section.Target.OfSetting("fit.push-through-allowance")));
    }

    /** A plate on the wall or on a panel, on its studs where the proof has holes for them. */
    private void flat() {
        Optional<Part> face = facts.part(Role.FACE);
        if (face.isPresent() && facts.part(Role.HOLE).isPresent()) {
            double into = front - WALL_MM * 0.6;
            double end = front + facts.thicknessMm(face.get()) / 2;
            face(face.get());
            piece(Kind.STUD, Stuff.METAL, "stud", stud(into, end, 0.2), stud(into, end, 0.8));
        } else {
            face.ifPresent(this::face);
        }
    }

    // Pieces ------------------------------------------------------------------------------------------------------------------

    /** How much smaller the back is than the face, on one side, mm. */
    private double side() {
        return facts.isPerSide() ? facts.allowanceMm() : facts.allowanceMm() / 2;
    }

    /**
     * Back and returns; the back is smaller than the face by the allowance, and the returns stand around it.
     *
     * @param frame true when the can is as large as what closes it in front, so that no allowance is between them
     * @return depth of the back's inner side
     */
    private double can(double depth, boolean frame) {
        double strip = facts.stripMm();
        Optional<Part> drawn = facts.part(Role.BACK);
        double back = drawn.map(facts::thicknessMm).orElse(strip);
        double side = frame ? strip : side();
        piece(Kind.BACK, drawn.map(facts::stuff).orElse(Stuff.METAL), drawn.map(facts::words).orElse("back, made from the face"), new Envelope(front, front + back, side, strokeMm - side));
        drawn.ifPresent(part -> thickness("thickness of the back", part, front, strokeMm - side, Side.BELOW));
        piece(Kind.CAN, Stuff.METAL, "return, " + facts.length(strip) + " thick, " + facts.length(depth) + " deep", new Envelope(front, front + depth, side - strip, side),
                new Envelope(front, front + depth, strokeMm - side, strokeMm - side + strip));
        measures.add(new Section.Measure("depth of the returns", depth, flat(front, front + depth, side - strip), Side.ABOVE, new Section.Target.OfSetting("returns.depth")));
        measures.add(new Section.Measure("thickness of the strip", strip, upright(front + depth * 0.62, strokeMm - side, strokeMm - side + strip), Side.WITHIN,
                new Section.Target.OfSetting("returns.thickness")));
        if (!frame && facts.part(Role.FACE).isPresent()) {
            measures.add(new Section.Measure(facts.isPerSide() ? "back smaller than the face, a side" : "back smaller than the face", facts.allowanceMm(),
                    upright(front + back, 0, side), Side.FRONT, new Section.Target.OfSetting("back.allowance")));
        }
        double inner = front + back;
        front += depth;
        return inner;
    }

    /** A module at one depth that shines to another. */
    private void light(double at, double towards, double least, double greatest) {
        if ("none".equals(facts.text("glow.lit"))) {
            return;
        }
        ModuleSize module = facts.module();
        double middle = strokeMm / 2;
        double emits = at + Math.copySign(Math.min(module.heightMm(), Math.abs(towards - at)), towards - at);
        Envelope body = new Envelope(at, emits, middle - module.widthMm() / 2, middle + module.widthMm() / 2);
        piece(Kind.MODULE, Stuff.DEVICE, (module.name().isEmpty() ? "light module" : "light module \"" + module.name() + "\"") + ", " + facts.length(module.widthMm()) + " by "
                + facts.length(module.heightMm()) + " in this view", body);
        beams.add(new Section.Beam(upright(emits, middle - module.widthMm() / 4, middle + module.widthMm() / 4), upright(towards, least, greatest)));
    }

    private void moulding(double lip, double faceThickness) {
        double outer = front + faceThickness + LIP_THICKNESS_MM;
        double leg = Math.max(facts.setting("fit.leg-thickness").orElse(0), LIP_THICKNESS_MM);
        double reach = front - Math.min(LEG_REACH_MM, facts.depthMm().orElse(LEG_REACH_MM) / 2);
        piece(Kind.MOULDING, Stuff.PLASTIC, "edge moulding", new Envelope(front + faceThickness, outer, -leg, lip), new Envelope(reach, outer, -leg, 0),
                new Envelope(front + faceThickness, outer, strokeMm - lip, strokeMm + leg), new Envelope(reach, outer, strokeMm, strokeMm + leg));
        measures.add(new Section.Measure("lip of the moulding", lip, upright(outer, strokeMm - lip, strokeMm), Side.FRONT, new Section.Target.OfSetting("trim.lip")));
    }

    private void face(Part part) {
        double thickness = facts.thicknessMm(part);
        piece(Kind.FACE, facts.stuff(part), facts.words(part), new Envelope(front, front + thickness, 0, strokeMm));
        thickness("thickness of the face", part, front, 0, Side.ABOVE);
        front += thickness;
    }

    private void thickness(String title, Part part, double from, double height, Side side) {
        measures.add(new Section.Measure(title, facts.thicknessMm(part), flat(from, from + facts.thicknessMm(part), height), side,
                new Section.Target.OfThickness(part.role(), part.sheetMaterial().orElse("sheet"))));
    }

    private static Envelope flat(double from, double to, double height) {
        return new Envelope(from, to, height, height);
    }

    private static Envelope upright(double depth, double from, double to) {
        return new Envelope(depth, depth, from, to);
    }

    private void piece(Kind kind, Stuff stuff, String words, Envelope... areas) {
        pieces.add(new Section.Piece(kind, stuff, words, false, List.of(areas)));
    }
}
