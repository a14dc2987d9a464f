// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import kerfglow.api.Setting;
import kerfglow.api.StockItem;
import kerfglow.api.StockKind;

/** The shop's stock, read by the kinds that the checks declare. Two checks may declare the same kind with different fields. */
final class StockList {
    private static final String NAME = "name";

    private record Item(String name, Map<String, Object> values) implements StockItem {
        @Override
        @SuppressWarnings("unchecked") // the value was made by the field's own parse
        public <T> T get(Setting<T> field) {
            return (T) values.get(field.key());
        }
    }

    private final Map<String, List<StockItem>> byKind = new HashMap<>();

    /**
     * Reads the stock of a shop sheet.
     *
     * @param declared every kind that a check looks at
     * @param shop the shop sheet
     * @param remarks told of kinds that no installed check looks at; those are left alone
     * @throws SheetException when an item has a field that no check declares, leaves out one that is needed, or gives a value
     *     that cannot be read
     */
    static StockList of(List<StockKind> declared, ShopSheet shop, List<String> remarks) throws SheetException {
        Map<String, Map<String, Setting<?>>> fieldsByKind = new LinkedHashMap<>();
        for (StockKind kind : declared) {
            Map<String, Setting<?>> fields = fieldsByKind.computeIfAbsent(kind.name(), name -> new LinkedHashMap<>());
            kind.fields().forEach(field -> fields.putIfAbsent(field.key(), field));
        }
        StockList list = new StockList();
        for (Map.Entry<String, List<ShopSheet.RawItem>> kind : shop.stock().entrySet()) {
            Map<String, Setting<?>> fields = fieldsByKind.get(kind.getKey());
            if (fields == null) {
                String where = kind.getValue().isEmpty() ? shop.from() + ", stock." + kind.getKey() : kind.getValue().get(0).where();
                remarks.add(where + ": no installed check looks at this kind of stock; known: " + String.join(", ", new TreeSet<>(fieldsByKind.keySet())) + ".");
                continue;
            }
            List<StockItem> items = new ArrayList<>();
            for (ShopSheet.RawItem raw : kind.getValue()) {
                items.add(item(raw, fields, kind.getKey() + " " + (items.size() + 1)));
            }
            list.byKind.put(kind.getKey(), List.copyOf(items));
        }
        return list;
    }

    private static StockItem item(ShopSheet.RawItem raw, Map<String, Setting<?>> fields, String fallbackName) throws SheetException {
        Set<String> known = new TreeSet<>(fields.keySet());
        known.add(NAME);
        for (Map.Entry<String, ShopSheet.RawField> given : raw.fields().entrySet()) {
            if (!known.contains(given.getKey())) {
                throw new SheetException(given.getValue().where() + ": unknown key; known here: " + String.join(", ", known), null);
            }
        }
        Map<String, Object> values = new HashMap<>();
        for (Setting<?> field : fields.values()) {
            ShopSheet.RawField given = raw.fields().get(field.key());
            if (given == null && field.defaultValue() == null) {
                throw new SheetException(raw.where() + ": \"" + field.key() + "\" (" + field.title() + ") is missing", null);
            }
            try {
                values.put(field.key(), given == null ? field.defaultValue() : field.parse(given.text()));
            } catch (IllegalArgumentException wrong) {
                throw new SheetException(given.where() + ": " + wrong.getMessage(), wrong);
            }
        }
        ShopSheet.RawField name = raw.fields().get(NAME);
        return new Item(name == null ? fallbackName : name.text(), values);
    }

    List<StockItem> items(StockKind kind) {
        return byKind.getOrDefault(kind.name(), List.of());
    }
}
