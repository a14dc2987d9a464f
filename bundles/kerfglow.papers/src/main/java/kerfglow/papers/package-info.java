// SPDX-License-Identifier: Apache-2.0
/** Documents on pages: the foundation that report and worksheet are set with. */
package kerfglow.papers;
