// SPDX-License-Identifier: Apache-2.0
/**
 * What a check compiles against: its identity, what it is given, and what it answers.
 *
 * <p><b>Units.</b> Lengths are doubles in millimetres at the real size of the sign, x to the right, y down, origin at the top left of the proof;
 * areas mm², angles degrees unless a name says radians; every other number is in the unit of its {@link kerfglow.api.Quantity}.
 *
 * <p><b>Shapes.</b> Plain JTS geometry. What a check is given is valid and must not be changed; what it answers must be finite, valid and not empty.
 *
 * <p><b>Errors.</b> A constructor or method refuses what it cannot use with an {@link java.lang.IllegalArgumentException} whose message names it. Whatever a
 * check throws costs that check's result and nothing else. What could not be measured is no error:
 * {@link kerfglow.api.Outcome#notMeasured} and {@link kerfglow.api.Outcome#withMissing} say it.
 *
 * <p><b>Threads.</b> Everything here is immutable, or safe for several threads. {@link kerfglow.api.Check#inspect} may be called for several proofs at once;
 * {@link kerfglow.api.Inspection#checkpoint} belongs to the thread of the call. {@link kerfglow.api.Workers} share work out.
 *
 * <p><b>Versions.</b> The packages follow OSGi's semantic versioning; the build holds them against the released ones.
 */
package kerfglow.api;
