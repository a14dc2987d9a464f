// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.scene;

import java.util.Set;
import kerfglow.api.proof.Role;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;

/**
 * One painted area of the proof, ready to draw.
 *
 * @param order place in paint order, 0 at the bottom
 * @param element id of the element that paints it
 * @param layer its layer
 * @param roles what it becomes; empty for what becomes nothing
 * @param kind whether it is painted, stands for an image, or is drawn faintly because it is no geometry of the sign
 * @param rgb 0xRRGGBB
 * @param area the area itself, mm
 * @param extent its bounds, mm
 * @param outlines its rings at several levels of detail
 */
public record Figure(int order, String element, String layer, Set<Role> roles, Kind kind, int rgb, Geometry area, Envelope extent, Outlines outlines) {
    /** How a figure is drawn. */
    public enum Kind { PAINTED, IMAGE, FAINT }

    public Figure {
        roles = Set.copyOf(roles);
    }
}
