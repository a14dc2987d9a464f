// SPDX-License-Identifier: Apache-2.0
/**
 * A shop's own checks: bundles in a folder, each run in a worker process of its own, seen by the host as ordinary checks. A bundle is
 * code that the shop trusts: the process keeps its faults from the rest, it is no cage for malice.
 */
package kerfglow.dropins;
