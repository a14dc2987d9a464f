// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.scene;

import kerfglow.api.Severity;
import org.locationtech.jts.geom.Coordinate;

/**
 * One place of one finding, as a point on the proof.
 *
 * @param finding id of the finding
 * @param place which of its places, from 0
 * @param number the finding's number in the list, from 1
 * @param severity its weight
 * @param at where it stands, mm
 */
public record Marker(String finding, int place, int number, Severity severity, Coordinate at) {
}
