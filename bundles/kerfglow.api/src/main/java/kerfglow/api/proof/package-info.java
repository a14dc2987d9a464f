// SPDX-License-Identifier: Apache-2.0
/**
 * What was drawn: the proof, its elements and the parts that it becomes. Lengths are millimetres at the real size of the
 * sign, x to the right, y down, origin at the top left of the proof's viewport.
 */
package kerfglow.api.proof;
