// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

/** What can change on the desk; a pane listens to what it shows. */
public enum Topic {
    /** Another proof lies on the desk, or another revision of it. */
    PROOF,
    /** Findings came in or went, or something was decided about them. */
    FINDINGS,
    /** Another finding was chosen. */
    CHOICE,
    /** Other findings are listed: filter or order changed. */
    LISTED,
    /** Another mark was chosen, or a hand moves the chosen one. */
    MARK,
    /** The proof is to be looked at elsewhere. */
    AIM,
    /** Layers, roles, edges, overlays: what of the proof is shown, and how. */
    SHOWN,
    /** The job: its sheet, marks, waivers, sign-offs, what can be undone, whether it is saved. */
    JOB,
    /** How far the work in the background is, or what went wrong. */
    WORK,
    /** Light or dark, and how large a pixel is. */
    LOOK
}
