// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

/**
 * What a search is after.
 *
 * @param uniformity least over mean
 * @param contrast of a peak over its pass that may remain; infinite for any
 */
record Target(double uniformity, double contrast) {
}
