// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.scene;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.Paint;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Proof;
import kerfglow.api.proof.Role;
import kerfglow.api.proof.Visibility;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;

/** Makes the scene of a proof: one figure for each area that an element paints. */
public final class SceneMaker {
    /** A page without extent still needs a place on the canvas. */
    private static final double LEAST_PAGE_MM = 1;

    private SceneMaker() {
    }

    /**
     * Prepares a proof.
     *
     * @param proof what was drawn; what is not shown is left out
     * @param parts what it becomes, for the roles; empty while that is not known
     */
    public static Scene scene(Proof proof, List<Part> parts) {
        Map<String, Set<Role>> roles = new HashMap<>();
        for (Part part : parts) {
            part.elements().forEach(id -> roles.computeIfAbsent(id, key -> EnumSet.noneOf(Role.class)).add(part.role()));
        }
        List<Figure> figures = new ArrayList<>();
        for (Element element : proof.elements()) {
            if (element.visibility() == Visibility.SHOWN) {
                Set<Role> becomes = roles.getOrDefault(element.id(), Set.of());
                add(figures, element, becomes, element.fillArea(), element.fill());
                add(figures, element, becomes, element.strokeArea(), element.stroke());
            }
        }
        return new Scene(figures, new Envelope(0, Math.max(LEAST_PAGE_MM, proof.widthMm()), 0, Math.max(LEAST_PAGE_MM, proof.heightMm())));
    }

    private static void add(List<Figure> figures, Element element, Set<Role> roles, Geometry area, Paint paint) {
        boolean image = element.origin() == Element.Origin.IMAGE;
        if (area.isEmpty() || !(image || paint.isPainted())) {
            return;
        }
        boolean faint = !roles.isEmpty() && roles.stream().noneMatch(Role::isChecked);
        figures.add(new Figure(figures.size(), element.id(), element.layer(), roles, image ? Figure.Kind.IMAGE : faint ? Figure.Kind.FAINT : Figure.Kind.PAINTED,
                paint.rgb(), area, area.getEnvelopeInternal(), Outlines.of(area)));
    }
}
