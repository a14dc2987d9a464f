// SPDX-License-Identifier: Apache-2.0
package kerfglow.views;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.Paint;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.api.proof.Visibility;
import kerfglow.host.Result;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.simplify.DouglasPeuckerSimplifier;

/** What a proof shows, bottom first, without vertices that cannot be seen at a scale; kept, since many close-ups share a scale. */
final class ProofShapes {
    private static final double FAINT = 0.35;
    private static final int IMAGE = 0xd9dde2;

    private final Result result;
    private final Map<Double, List<Area>> byTolerance = new HashMap<>();

    /**
     * One area.
     *
     * @param shape mm
     * @param image true for the box of an image, which is crossed out
     */
    record Area(Geometry shape, int rgb, double opacity, boolean image) {
    }

    ProofShapes(Result result) {
        this.result = result;
    }

    Result result() {
        return result;
    }

    /** The areas, each no farther than this from the true one, mm. */
    List<Area> within(double toleranceMm) {
        return byTolerance.computeIfAbsent(toleranceMm, this::areas);
    }

    private List<Area> areas(double toleranceMm) {
        Set<String> faint = new HashSet<>();
        for (Part part : result.parts()) {
            if (part.role() == Role.NOTE || part.role() == Role.UNUSED) {
                faint.addAll(part.elements());
            }
        }
        List<Area> areas = new ArrayList<>();
        for (Element element : result.proof().elements()) {
            if (element.visibility() != Visibility.SHOWN) {
                continue;
            }
            double opacity = faint.contains(element.id()) ? FAINT : 1;
            if (element.origin() == Element.Origin.IMAGE) {
                areas.add(new Area(element.fillArea(), IMAGE, 1, true));
            } else {
                add(areas, element.fillArea(), element.fill(), opacity, toleranceMm);
                add(areas, element.strokeArea(), element.stroke(), opacity, toleranceMm);
            }
        }
        return areas;
    }

    private static void add(List<Area> areas, Geometry area, Paint paint, double opacity, double toleranceMm) {
        if (!area.isEmpty() && paint.isPainted()) {
            areas.add(new Area(plain(area, toleranceMm), paint.rgb(), opacity, false));
        }
    }

    /** In an order of its own, since unions begin their rings where they please from run to run, and pictures of the same thing are to be the same. */
    private static Geometry plain(Geometry area, double toleranceMm) {
        DouglasPeuckerSimplifier simplifier = new DouglasPeuckerSimplifier(area.norm());
        simplifier.setDistanceTolerance(toleranceMm);
        simplifier.setEnsureValid(false); // it is filled by the even-odd rule, and making it valid costs more than drawing it
        return simplifier.getResultGeometry();
    }
}
