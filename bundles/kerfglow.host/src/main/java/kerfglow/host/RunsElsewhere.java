// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

/** A check that only waits while another process works: it takes no processor, so that it does not keep others from theirs however long it lasts. */
public interface RunsElsewhere {
}
