// SPDX-License-Identifier: Apache-2.0
/** The font that ships. */
package kerfglow.fonts;
