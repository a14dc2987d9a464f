// SPDX-License-Identifier: Apache-2.0
/** The check of the drawing itself, before any machine. Nothing here is published. */
package kerfglow.check.artwork;
