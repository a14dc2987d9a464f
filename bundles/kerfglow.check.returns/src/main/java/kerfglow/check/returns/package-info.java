// SPDX-License-Identifier: Apache-2.0
/** What a bender cannot form, and how long the strip of each return is. One public class, a check; everything else serves it. */
package kerfglow.check.returns;
