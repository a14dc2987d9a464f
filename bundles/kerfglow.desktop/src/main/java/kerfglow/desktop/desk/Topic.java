// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

/** What can change on the desk; a pane listens to what it shows. */
public enum Topic {
    /** Another proof lies on the desk, or none. */
    PROOF,
    /** Findings came in, or went. */
    FINDINGS,
    /** Another finding was chosen. */
    CHOICE,
    /** Other findings are listed: filter or order changed. */
    LISTED,
    /** Layers, roles, edges, overlays: what of the proof is shown, and how. */
    SHOWN,
    /** How far the work in the background is, or what went wrong. */
    WORK,
    /** Light or dark. */
    LOOK
}
