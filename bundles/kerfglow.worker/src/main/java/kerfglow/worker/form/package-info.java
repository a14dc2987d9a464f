// SPDX-License-Identifier: Apache-2.0
/** The documented form (docs/own-check.md) in which a proof goes to a worker process and what a check answers comes back. */
package kerfglow.worker.form;
