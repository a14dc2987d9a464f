// SPDX-License-Identifier: Apache-2.0
/** What a check compiles against: its identity, what it is given, and what it answers. */
package kerfglow.api;
