// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.util.Comparator;
import kerfglow.api.Measure;

/** How the list of findings is sorted. What is equal keeps the order of the result. */
public enum FindingOrder {
    /** Most severe first, as in the result. */
    SEVERITY(Comparator.comparing((FindingItem item) -> item.finding().severity()).reversed()),
    /** From left to right over the sign, then top to bottom; what concerns the whole proof first. */
    PLACE(Comparator.comparingDouble((FindingItem item) -> item.finding().places().isEmpty() ? Double.NEGATIVE_INFINITY : item.finding().places().get(0).at().x)
            .thenComparingDouble(item -> item.finding().places().isEmpty() ? Double.NEGATIVE_INFINITY : item.finding().places().get(0).at().y)),
    /** By check, then rule. */
    CHECK(Comparator.comparing(FindingItem::check).thenComparing(item -> item.finding().rule().id())),
    /** Farthest from what is required first, as a share of it; what is not measured last. */
    SHORTFALL(Comparator.comparingDouble(FindingOrder::share).reversed());

    private final Comparator<FindingItem> comparator;

    FindingOrder(Comparator<FindingItem> comparator) {
        this.comparator = comparator;
    }

    Comparator<FindingItem> comparator() {
        return comparator.thenComparingInt(FindingItem::number);
    }

    private static double share(FindingItem item) {
        double required = item.finding().required().map(Measure::value).orElse(0.0);
        return item.finding().measured().filter(measured -> required != 0).map(measured -> Math.abs(required - measured.value()) / Math.abs(required)).orElse(-1.0);
    }
}
