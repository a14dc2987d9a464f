// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

/** Counts what an import has spent against its {@link Limits}. One per import. */
final class Budget {
    private final Limits limits;
    private long vertices;
    private long clipShapes;
    private long drawn;
    private double styleMatches;

    Budget(Limits limits) {
        this.limits = limits;
    }

    /** Counts chords before they are made. */
    int steps(double count) {
        vertices += (long) Math.min(count, Integer.MAX_VALUE);
        if (!(count < limits.flattenedVertices()) || vertices > limits.flattenedVertices()) {
            throw new LimitException("the outlines need more than " + limits.flattenedVertices()
                    + " points (limit on flattened points); use a coarser chord error or split the proof");
        }
        return (int) count;
    }

    void clipShape() {
        if (++clipShapes > limits.clipShapes()) {
            throw new LimitException("clip paths need more than " + limits.clipShapes() + " shapes (limit on clip shapes)");
        }
    }

    void styleMatches(double steps) {
        styleMatches += steps;
        if (!(styleMatches <= limits.styleMatches())) {
            throw new LimitException("style rules need more than " + limits.styleMatches()
                    + " steps to match (limit on style matches); use fewer rules or simpler selectors");
        }
    }

    void element(int nesting) {
        if (++drawn > limits.drawnElements()) {
            throw new LimitException("the proof draws more than " + limits.drawnElements()
                    + " elements once use is followed (limit on use expansion)");
        }
        if (nesting > limits.nesting()) {
            throw new LimitException("elements are nested more than " + limits.nesting() + " deep (limit on nesting)");
        }
    }

    boolean allowsDashes(double count) {
        return count <= limits.dashes();
    }
}
