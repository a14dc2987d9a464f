// SPDX-License-Identifier: Apache-2.0
/**
 * What a reviewer decides about a proof, and how it is kept: marks, waivers, sign-offs, the job file, the comparison of two revisions,
 * and the logic of the list of findings. Needs no display and knows no check.
 */
package kerfglow.job;
