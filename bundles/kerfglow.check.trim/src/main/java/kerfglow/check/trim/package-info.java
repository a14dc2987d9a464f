// SPDX-License-Identifier: Apache-2.0
/** The check of the edge moulding round lit faces. */
package kerfglow.check.trim;
