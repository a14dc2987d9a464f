// SPDX-License-Identifier: Apache-2.0
/** What a sign weighs, how large it is, and what the wind does to it, as estimates. One public class, a check; everything else serves it. */
package kerfglow.check.mount;
