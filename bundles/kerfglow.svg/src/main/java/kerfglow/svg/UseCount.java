// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.util.IdentityHashMap;
import java.util.Map;
import kerfglow.api.proof.ProofException;
import org.w3c.dom.Element;

/** Counts what use would draw before anything is drawn, so that a file that multiplies itself is refused at once. */
final class UseCount {
    private static final long UNDER_WAY = -1;
    private final SvgSource source;
    private final Limits limits;
    private final Map<Element, Long> counts = new IdentityHashMap<>();

    private UseCount(SvgSource source, Limits limits) {
        this.source = source;
        this.limits = limits;
    }

    /** @return elements drawn once use is followed */
    static long check(SvgSource source, Limits limits) throws ProofException {
        UseCount count = new UseCount(source, limits);
        long all = count.of(source.root(), 0);
        if (all > limits.drawnElements()) {
            throw new ProofException("the proof draws more than "
                    + limits.drawnElements() + " elements once use is followed (limit on use expansion); draw repeated artwork once", 0, 0, null);
        }
        return all;
    }

    private long of(Element element, int nesting) throws ProofException {
        Long known = counts.get(element);
        if (known != null && known != UNDER_WAY) {
            return known;
        }
        if (known != null) {
            throw new ProofException("use " + Report.name(element) + " leads back to itself (use loop); draw it without the loop",
                    source.lines().of(element), 0, null);
        }
        if (nesting > 2 * limits.nesting()) {
            throw new ProofException("use leads more than " + limits.nesting() + " elements deep (limit on nesting)",
                    source.lines().of(element), 0, null);
        }
        counts.put(element, UNDER_WAY);
        long count = 1;
        for (Element child : Names.children(element)) {
            count = sum(count, of(child, nesting + 1));
        }
        String href = Names.isSvg(element, "use") ? Names.href(element) : "";
        Element target = href.startsWith("#") ? source.byId().get(href.substring(1)) : null;
        if (target != null) {
            count = sum(count, of(target, nesting + 1));
        }
        counts.put(element, count);
        return count;
    }

    private static long sum(long a, long b) {
        long sum = a + b;
        return sum < 0 ? Long.MAX_VALUE : sum;
    }
}
