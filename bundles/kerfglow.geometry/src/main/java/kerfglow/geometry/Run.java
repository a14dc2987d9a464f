// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import java.util.ArrayList;
import java.util.List;

/** Spans that follow one another along a ring without a break: one side of a narrow place. */
final class Run {
    final List<Span> spans = new ArrayList<>();
    /** True when it goes all the way round its ring. */
    final boolean closed;
    private Run parent = this;

    /** The run that a span belongs to: from its first span, or from here when there is none. */
    Run(Span anySpan) {
        Span first = anySpan;
        while (first.previous != null && first.previous != anySpan) {
            first = first.previous;
        }
        closed = first.previous != null;
        if (closed) {
            first = anySpan;
        }
        Span span = first;
        do {
            spans.add(span);
            span.run = this;
            span = span.next;
        } while (span != null && span != first);
    }

    Disc start() {
        return spans.get(0).first();
    }

    Disc end() {
        return spans.get(spans.size() - 1).last();
    }

    /** The run that stands for all that this one was joined with. */
    Run root() {
        Run root = this;
        while (root.parent != root) {
            root.parent = root.parent.parent;
            root = root.parent;
        }
        return root;
    }

    void join(Run other) {
        other.root().parent = root();
    }
}
