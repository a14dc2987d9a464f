// SPDX-License-Identifier: Apache-2.0
/**
 * Measures of flat shapes that a shop asks for and JTS does not answer: local width along the medial axis, the reach of a round
 * bit, unbiased openings and insets, distances along an edge, congruence. Plain JTS geometry in
 * millimetres; nothing is ever changed that is passed in.
 */
package kerfglow.geometry;
