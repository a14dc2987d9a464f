// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.closeup;

import org.locationtech.jts.geom.Geometry;

/**
 * What works at a place, drawn where it stands.
 *
 * @param shape its area, mm
 * @param words what it is, with its size
 */
public record Tool(Geometry shape, String words) {
}
