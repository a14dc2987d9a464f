// SPDX-License-Identifier: Apache-2.0
package kerfglow.api.proof;

/** Why an element is seen or not. Only {@link #SHOWN} elements become parts. */
public enum Visibility {
    SHOWN,
    /** {@code display: none} on it or around it, or a {@code switch} that picks another branch. */
    NOT_DISPLAYED,
    /** {@code visibility: hidden} or {@code collapse}. */
    HIDDEN,
    /** Opacity, or the opacity of all that it paints with, is nought. */
    TRANSPARENT,
    /** Neither fill nor stroke is painted. */
    UNPAINTED,
    /** Nothing of it is left within its clip path. */
    CLIPPED_AWAY
}
