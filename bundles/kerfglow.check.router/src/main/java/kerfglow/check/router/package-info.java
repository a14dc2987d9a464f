// SPDX-License-Identifier: Apache-2.0
/** What a router bit cannot cut. One public class, a check; everything else serves it. */
package kerfglow.check.router;
