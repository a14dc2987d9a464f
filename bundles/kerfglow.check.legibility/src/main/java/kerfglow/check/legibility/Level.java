// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

/**
 * Where a letter ends, up or down, in its upright position.
 *
 * @param along the middle of the end along the line, mm
 * @param height mm, up
 * @param flat true for a straight end between corners, which stands on the line; round and pointed ones overshoot it
 * @param slope of a flat end, rise over run, for setting the line straight; 0 for others
 * @param lengthMm of a flat end, mm; 0 for others
 */
record Level(double along, double height, boolean flat, double slope, double lengthMm) {
}
