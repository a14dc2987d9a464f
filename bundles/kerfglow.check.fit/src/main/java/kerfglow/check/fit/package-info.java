// SPDX-License-Identifier: Apache-2.0
/** The check of what fits when face meets back. */
package kerfglow.check.fit;
