// SPDX-License-Identifier: Apache-2.0
package kerfglow.api.proof;

/** What a cutter cannot follow: the element keeps its outline, the effect is left out and reported. */
public enum Effect { GRADIENT, PATTERN, MASK, FILTER, PARTIAL_OPACITY, BLEND_MODE, MARKER }
