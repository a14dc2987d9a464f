// SPDX-License-Identifier: Apache-2.0
/** What cannot be cut, weeded or laid in film, and how much film a sign takes. One public class, a check; everything else serves it. */
package kerfglow.check.vinyl;
