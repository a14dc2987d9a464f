// SPDX-License-Identifier: Apache-2.0
/** Strings, conductors and supplies for the light modules, as a plan. One public class, a check; everything else serves it. */
package kerfglow.check.power;
