// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

/**
 * Something about the job file that stays in sight until the person has answered or read it.
 *
 * @param kind what it is about
 * @param words what, where, and what to do
 */
public record Notice(Kind kind, String words) {
    /** What a notice is about. */
    public enum Kind {
        /** What was entered before the window ended last time is offered. */
        OFFER,
        /** The job file is damaged. */
        DAMAGED,
        /** The job cannot be saved where it lies: another window holds it, or nothing can be written there. */
        UNSAVABLE,
        /** Something that was done, and what was not. */
        TOLD
    }
}
