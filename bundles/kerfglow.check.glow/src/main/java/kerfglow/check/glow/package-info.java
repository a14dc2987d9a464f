// SPDX-License-Identifier: Apache-2.0
/** The check of the light on lit faces and round halo-lit letters. */
package kerfglow.check.glow;
