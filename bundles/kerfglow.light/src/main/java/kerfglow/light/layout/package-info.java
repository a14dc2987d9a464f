// SPDX-License-Identifier: Apache-2.0
/** Lays out light modules: few of them, on the strokes' centre lines or in rows, until the target is met. {@link kerfglow.light.layout.Layouter} is the way in. */
package kerfglow.light.layout;
