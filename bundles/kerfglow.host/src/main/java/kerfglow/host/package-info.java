// SPDX-License-Identifier: Apache-2.0
/**
 * Runs the checks over a proof and gathers one result. Knows no check by name. Sheets ({@link kerfglow.host.JobSheet},
 * {@link kerfglow.host.ShopSheet}) say what the drawing cannot; {@link kerfglow.host.Runner} does the work;
 * {@link kerfglow.host.Result} is what every view shows.
 */
package kerfglow.host;
