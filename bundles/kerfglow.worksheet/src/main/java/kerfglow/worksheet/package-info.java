// SPDX-License-Identifier: Apache-2.0
/** What the floor works from, made of a result: the production worksheet and the mounting pattern. */
package kerfglow.worksheet;
