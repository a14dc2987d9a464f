// SPDX-License-Identifier: Apache-2.0
/** Finds the lettering of a proof and says from how far it reads. One public class, a check; everything else serves it. */
package kerfglow.check.legibility;
