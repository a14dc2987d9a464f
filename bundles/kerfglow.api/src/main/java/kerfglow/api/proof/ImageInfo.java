// SPDX-License-Identifier: Apache-2.0
package kerfglow.api.proof;

/**
 * A raster image placed on the proof. Its element's fill area is the rectangle that it covers.
 *
 * @param pixelWidth pixels across, 0 when they cannot be read
 * @param pixelHeight pixels down, 0 when they cannot be read
 * @param widthMm the length of the picture's own x axis on the sign, mm
 * @param heightMm the length of the picture's own y axis on the sign, mm
 * @param embedded true when the pixels are in the file (a data URI); anything else is never fetched
 */
public record ImageInfo(int pixelWidth, int pixelHeight, double widthMm, double heightMm, boolean embedded) {
}
