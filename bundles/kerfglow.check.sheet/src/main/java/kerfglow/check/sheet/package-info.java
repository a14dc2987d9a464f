// SPDX-License-Identifier: Apache-2.0
/** Whether parts fit the sheets that are stocked, and how many sheets. One public class, a check; everything else serves it. */
package kerfglow.check.sheet;
