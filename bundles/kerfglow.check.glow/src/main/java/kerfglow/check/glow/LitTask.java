// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.glow;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import kerfglow.api.Inspection;
import kerfglow.api.Quantity;
import kerfglow.api.Settings;
import kerfglow.api.SharedSettings;
import kerfglow.api.Table;
import kerfglow.api.TableInfo.Column;
import kerfglow.api.Units;
import kerfglow.api.proof.Part;
import kerfglow.geometry.Inset;
import kerfglow.light.Finish;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

/**
 * One part that is to be lit, with all that it takes; reads no settings while it is measured, so that this can run on any thread.
 *
 * @param part the face, or the letter whose halo it is
 * @param halo true when its modules shine on the wall behind it
 * @param depthMm from the back to the face, or to the wall, mm
 * @param inset how the can's inner outline follows from the part's
 * @param lipMm how much of the face the edge moulding covers, mm
 * @param finish what the surfaces do with light
 * @param module what lights it
 * @param given modules that are drawn or placed in it; empty when they are to be laid out
 * @param keepClear holes and keep-outs in it, mm
 * @param distances that laid out modules keep
 * @param targets how even it is to be
 * @param cellMm cell of its map, mm
 */
record LitTask(Part part, boolean halo, double depthMm, BackLine inset, double lipMm, Finish finish, ModuleChoice module, List<GivenModule> given,
        Geometry keepClear, Distances distances, Targets targets, double cellMm) {
    private static final String TRIM = "trim";
    /** Maps of very large parts get larger cells. Assumed: as many as stay within the memory that a check may take. */
    private static final double MOST_CELLS = 1_000_000;

    /** Assumed: so many cells make the strip of a halo that is judged more than one cell wide. */
    private static final double CELLS_A_STAND_OFF = 8;

    /** The line of the returns within the outline of the face. */
    record BackLine(double sideMm, Inset.Join join, double mitreLimit, double chordErrorMm) {
        static BackLine of(Inspection inspection, Part part) {
            Settings settings = inspection.settings();
            double given = settings.get(SharedSettings.BACK_ALLOWANCE, part);
            boolean total = settings.get(SharedSettings.BACK_ALLOWANCE_KIND, part).equals(SharedSettings.IN_TOTAL);
            Inset.Join join = switch (settings.get(SharedSettings.BACK_JOINS, part)) {
                case SharedSettings.ROUND -> Inset.Join.ROUND;
                case SharedSettings.BEVEL -> Inset.Join.BEVEL;
                default -> Inset.Join.MITRE;
            };
            return new BackLine(total ? given / 2 : given, join, settings.get(SharedSettings.BACK_MITRE_LIMIT, part), inspection.proof().chordErrorMm());
        }

        Geometry in(Geometry face) {
            return Inset.of(face, sideMm, join, mitreLimit, chordErrorMm);
        }
    }

    /** What laid out modules keep clear of. */
    record Distances(double edgeMm, double clearMm, double gapMm) {
    }

    /**
     * The task of one part.
     *
     * @param missing told what cannot be, with the allowed range
     * @return empty when it cannot be lit as it is described
     */
    static Optional<LitTask> of(Inspection inspection, Part part, boolean halo, List<GivenModule> given, Geometry keepClear, Set<String> missing) {
        Settings settings = inspection.settings();
        Optional<Double> depth = halo ? Optional.of(settings.get(GlowSettings.STAND_OFF, part)) : settings.given(SharedSettings.RETURN_DEPTH, part);
        if (depth.isEmpty()) {
            missing.add("No depth is given for the returns of " + name(part) + " (returns.depth), so its light was not reckoned.");
            return Optional.empty();
        }
        ModuleChoice module = ModuleChoice.of(inspection, part, missing);
        if (!halo && module.type().heightMm() >= depth.get()) {
            missing.add("The emitters stand " + inspection.length(module.type().heightMm()) + " above the back, which leaves nothing of the depth of "
                    + inspection.length(depth.get()) + " of " + name(part) + " (glow.emitter-height or the stock's emitter-height; it must be less than returns.depth).");
            return Optional.empty();
        }
        double reflectance = settings.get(GlowSettings.FACE_REFLECTANCE, part);
        double transmittance = settings.get(GlowSettings.TRANSMITTANCE, part);
        if (!halo && reflectance + transmittance > 1) {
            missing.add("glow.face-reflectance " + ratio(reflectance, inspection) + " and glow.face-transmittance " + ratio(transmittance, inspection) + " of "
                    + name(part) + " add up to " + ratio(reflectance + transmittance, inspection) + "; together they are at most 1.");
            return Optional.empty();
        }
        // a wall sends on what falls on it, as a face that lets its reflectance through would
        Finish finish = halo ? new Finish(0, 0, 0, settings.get(GlowSettings.OUTSIDE, part), 0)
                : new Finish(settings.get(GlowSettings.BACK, part), settings.get(GlowSettings.WALLS, part), reflectance, transmittance, settings.get(GlowSettings.SPREAD, part));
        double wanted = settings.get(GlowSettings.CELL, part);
        double cell = Math.max(halo ? Math.min(wanted, depth.get() / CELLS_A_STAND_OFF) : wanted, Math.sqrt(part.shape().getEnvelope().getArea() / MOST_CELLS));
        Distances distances = new Distances(settings.get(GlowSettings.EDGE, part), settings.get(GlowSettings.CLEAR, part), settings.get(GlowSettings.GAP, part));
        return Optional.of(new LitTask(part, halo, depth.get(), BackLine.of(inspection, part), halo ? 0 : lip(inspection, part), finish, module, given, keepClear,
                distances, Targets.of(settings, part), cell));
    }

    private static String ratio(double value, Inspection inspection) {
        return Units.format(value, Quantity.RATIO, inspection.units());
    }

    /** The lip that check trim measured for this face; 0 where it has no moulding. */
    private static double lip(Inspection inspection, Part part) {
        Optional<Table> faces = inspection.table(TRIM, "faces");
        if (faces.isEmpty()) {
            return 0;
        }
        List<String> columns = faces.get().info().columns().stream().map(Column::id).toList();
        int face = columns.indexOf("face");
        int lip = columns.indexOf("lip");
        return face < 0 || lip < 0 ? 0 : faces.get().rows().stream().filter(row -> part.id().equals(row.get(face)) && row.get(lip) instanceof Double)
                .mapToDouble(row -> (Double) row.get(lip)).findFirst().orElse(0);
    }

    static String name(Part part) {
        return part.role().word() + " " + part.id() + (part.layer().isBlank() ? "" : " on layer \"" + part.layer() + "\"");
    }

    /** Polygons of a polygonal geometry. */
    static List<Polygon> polygons(Geometry area) {
        List<Polygon> polygons = new ArrayList<>();
        for (int i = 0; i < area.getNumGeometries(); i++) {
            if (area.getGeometryN(i) instanceof Polygon polygon && !polygon.isEmpty()) {
                polygons.add(polygon);
            }
        }
        return polygons;
    }
}
