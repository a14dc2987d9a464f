// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.mount;

import org.locationtech.jts.geom.Coordinate;

/**
 * Something that hangs on the wall.
 *
 * @param part the id of the part that it belongs to; that of the face for its back, its strip and its modules; empty for none
 * @param what face, back, made back, return strip, modules, ...
 * @param material what it is made of; empty when that does not matter
 * @param massKg its mass
 * @param centre its centre of mass as seen from the front, mm
 */
record Load(String part, String what, String material, double massKg, Coordinate centre) {
}
