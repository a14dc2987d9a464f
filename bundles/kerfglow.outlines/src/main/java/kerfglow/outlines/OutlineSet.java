// SPDX-License-Identifier: Apache-2.0
package kerfglow.outlines;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.host.Result;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;

/**
 * All outlines of a result at the real size of the sign, a layer a kind. Axes are those of the proof: x right, y down.
 *
 * <p>What the checks made (backs, joints, places of modules, seams) is taken from their tables; nothing is computed again but the arcs.
 *
 * @param title of the job, or the file's name
 * @param widthMm of the proof
 * @param heightMm of the proof
 * @param layers those that hold something
 */
public record OutlineSet(String title, double widthMm, double heightMm, List<OutlineLayer> layers) {
    /** Ids of layers that can be turned over for cutting from behind. */
    public static final List<String> CUT_LAYERS = List.of("faces", "backs", "backs-made", "panels", "openings", "push-throughs");
    private static final Map<Role, String> NAMES = names();

    public OutlineSet {
        layers = List.copyOf(layers);
    }

    private static Map<Role, String> names() {
        Map<Role, String> names = new LinkedHashMap<>();
        names.put(Role.FACE, "Faces");
        names.put(Role.BACK, "Backs");
        names.put(Role.PANEL, "Panels");
        names.put(Role.OPENING, "Openings");
        names.put(Role.PUSH_THROUGH, "Push-throughs");
        names.put(Role.RETURN, "Drawn returns");
        return names;
    }

    /**
     * The outlines of a result.
     *
     * @param fromBehind ids of layers that are cut from behind, and so turned over about the middle of the proof, with the holes in their parts
     */
    public static OutlineSet of(Result result, Set<String> fromBehind) {
        return new Maker(result, fromBehind).make();
    }

    private static final class Maker {
        private final Result result;
        private final Set<String> fromBehind;
        private final ArcPaths arcs;
        private final List<OutlineLayer> layers = new ArrayList<>();

        Maker(Result result, Set<String> fromBehind) {
            this.result = result;
            this.fromBehind = fromBehind;
            this.arcs = new ArcPaths(result.proof().chordErrorMm());
        }

        OutlineSet make() {
            for (Map.Entry<Role, String> entry : NAMES.entrySet()) {
                List<CutPath> paths = new ArrayList<>();
                parts(entry.getKey()).forEach(part -> paths.addAll(entry.getKey() == Role.PANEL ? panel(part) : arcs.of(part.shape())));
                add(id(entry.getValue()), entry.getValue(), paths, List.of());
                if (entry.getKey() == Role.BACK) {
                    add("backs-made", "Backs made", rows("fit", "made-backs", "shape").stream().flatMap(shape -> arcs.of(shape).stream()).toList(), List.of());
                }
            }
            holes();
            film();
            add("module-centres", "Module centres", List.of(), modules());
            add("return-joints", "Return joints", List.of(), rows("returns", "strips", "joint").stream().map(joint -> point(joint.getCoordinate())).toList());
            add("sheet-seams", "Sheet seams", rows("sheet", "seams", "line").stream().flatMap(line -> arcs.of(line).stream()).toList(), List.of());
            String title = result.job().title().isBlank() ? Path.of(result.proof().file()).getFileName().toString() : result.job().title();
            return new OutlineSet(title, result.proof().widthMm(), result.proof().heightMm(), layers);
        }

        private static String id(String name) {
            return name.toLowerCase(Locale.ROOT).replace(' ', '-');
        }

        private List<Part> parts(Role role) {
            return result.parts().stream().filter(part -> part.role() == role).toList();
        }

        private List<Geometry> rows(String check, String table, String column) {
            return ResultRow.of(result, check, table).stream().map(row -> row.geometry(column)).flatMap(Optional::stream).toList();
        }

        private void add(String id, String name, List<CutPath> paths, List<CutPath.Vertex> points) {
            OutlineLayer layer = new OutlineLayer(id, name, "", paths, points);
            if (!layer.isEmpty()) {
                layers.add(fromBehind.contains(id) ? layer.mirrored(result.proof().widthMm()) : layer);
            }
        }

        /** Openings have a layer of their own, and an edge in two layers would be cut twice. */
        private List<CutPath> panel(Part panel) {
            List<CutPath> paths = new ArrayList<>(List.of(arcs.ring(panel.shape().getExteriorRing())));
            for (int i = 0; i < panel.shape().getNumInteriorRing(); i++) {
                LinearRing ring = panel.shape().getInteriorRingN(i);
                Geometry inside = ring.getFactory().createPolygon(ring).getInteriorPoint();
                if (parts(Role.OPENING).stream().noneMatch(opening -> opening.shape().getEnvelopeInternal().contains(inside.getCoordinate()) && filled(opening).contains(inside))) {
                    paths.add(arcs.ring(ring));
                }
            }
            return paths;
        }

        private static Polygon filled(Part opening) {
            return opening.shape().getFactory().createPolygon(opening.shape().getExteriorRing());
        }

        private void holes() {
            List<CutPath> seen = new ArrayList<>();
            List<CutPath> turned = new ArrayList<>();
            for (Part hole : parts(Role.HOLE)) {
                boolean behind = result.parts().stream().filter(part -> !part.drilled().isEmpty() && part.drilled().intersects(hole.shape().getInteriorPoint()))
                        .anyMatch(part -> fromBehind.contains(id(NAMES.getOrDefault(part.role(), ""))));
                (behind ? turned : seen).addAll(arcs.of(hole.shape()));
            }
            add("holes", "Holes", seen, List.of());
            if (!turned.isEmpty()) {
                layers.add(new OutlineLayer("holes", "Holes", "", turned, List.of()).mirrored(result.proof().widthMm()));
            }
        }

        private void film() {
            Map<String, List<CutPath>> byColour = new LinkedHashMap<>();
            parts(Role.VINYL).forEach(part -> byColour.computeIfAbsent(part.paint().toString(), colour -> new ArrayList<>()).addAll(arcs.of(part.shape())));
            byColour.forEach((colour, paths) -> add("film-" + colour.replace("#", ""), "Film " + colour, paths, List.of()));
        }

        /** Where the check of light placed them; without it, where they are drawn. */
        private List<CutPath.Vertex> modules() {
            List<CutPath.Vertex> placed = ResultRow.of(result, "glow", "modules").stream().filter(row -> Double.isFinite(row.number("x")) && Double.isFinite(row.number("y")))
                    .map(row -> new CutPath.Vertex(row.number("x"), row.number("y"), 0)).toList();
            return !placed.isEmpty() ? placed : parts(Role.MODULE).stream().map(part -> point(part.shape().getCentroid().getCoordinate())).toList();
        }

        private static CutPath.Vertex point(Coordinate at) {
            return new CutPath.Vertex(at.x, at.y, 0);
        }
    }
}
