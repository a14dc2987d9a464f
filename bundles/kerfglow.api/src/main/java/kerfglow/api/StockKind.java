// SPDX-License-Identifier: Apache-2.0
package kerfglow.api;

import java.util.List;

/**
 * A kind of thing that the shop sheet lists: router bits, sheets, rolls. A check declares the kinds that it looks at; the shop
 * sheet's section {@code stock} holds a list of items under the kind's name.
 *
 * @param name as the shop sheet writes it, plural, for instance {@code router-bits}
 * @param title what it is
 * @param fields what is known of each item; a field whose default is null must be given. Keys are plain words here
 */
public record StockKind(String name, String title, List<Setting<?>> fields) {
    public StockKind {
        fields = List.copyOf(fields);
    }
}
