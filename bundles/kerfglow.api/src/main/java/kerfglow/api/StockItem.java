// SPDX-License-Identifier: Apache-2.0
package kerfglow.api;

import org.osgi.annotation.versioning.ProviderType;

/** One thing that the shop owns or stocks. */
@ProviderType
public interface StockItem {
    /** What the shop sheet calls it, or its place in the list. */
    String name();

    /** The value of a field of its kind. */
    <T> T get(Setting<T> field);
}
