// SPDX-License-Identifier: Apache-2.0
/** What runs in the worker process: a framework with the published bundles, one bundle of a shop, and the conversation with the host. */
package kerfglow.worker.process;
