// SPDX-License-Identifier: Apache-2.0
package kerfglow.worker.form;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import kerfglow.api.CheckInfo;
import kerfglow.api.Inspection;
import kerfglow.api.Setting;
import kerfglow.api.StockItem;
import kerfglow.api.StockKind;
import kerfglow.api.proof.Part;

/** What a check is given beside the proof and its parts: settings, stock, units, build, modules and the tables that it reads. */
public final class GivenForm {
    private GivenForm() {
    }

    /** The fields. A setting's value for one part stands beside the one for everything where it differs. */
    public static Map<String, Object> fields(CheckInfo info, List<String> reads, Inspection inspection) {
        Map<String, Object> settings = new LinkedHashMap<>();
        info.settings().forEach(setting -> settings.put(setting.key(), values(setting, inspection)));
        Map<String, Object> stock = new LinkedHashMap<>();
        info.stock().forEach(kind -> stock.put(kind.name(), inspection.stock(kind).stream().map(item -> item(kind, item)).toList()));
        Map<String, Object> tables = new LinkedHashMap<>();
        reads.forEach(check -> tables.put(check, inspection.tables(check)));
        Map<String, Object> fields = new LinkedHashMap<>();
        fields.put("settings", settings);
        fields.put("stock", stock);
        fields.put("units", inspection.units());
        fields.put("build", inspection.build());
        fields.put("modules", inspection.placedModules());
        fields.put("tables", tables);
        return fields;
    }

    private static <T> Map<String, Object> values(Setting<T> setting, Inspection inspection) {
        T value = inspection.settings().get(setting);
        Map<String, Object> parts = new LinkedHashMap<>();
        for (Part part : inspection.parts()) {
            T here = inspection.settings().get(setting, part);
            if (!Objects.equals(value, here)) {
                parts.put(part.id(), here);
            }
        }
        Map<String, Object> values = new LinkedHashMap<>();
        values.put("value", value);
        values.put("parts", parts);
        return values;
    }

    private static Map<String, Object> item(StockKind kind, StockItem item) {
        Map<String, Object> fields = new LinkedHashMap<>();
        kind.fields().forEach(field -> fields.put(field.key(), item.get(field)));
        return Map.of("name", item.name(), "fields", fields);
    }

    /** The values of a setting by part; the one for everything under null. */
    static Map<String, Object> valuesOf(Setting<?> setting, FormNode read) {
        Map<String, Object> byPart = new HashMap<>();
        byPart.put(null, SettingForm.valueOf(setting, read.raw("value")));
        read.node("parts").fields().forEach((part, value) -> byPart.put(part, SettingForm.valueOf(setting, value)));
        return byPart;
    }

    static List<StockItem> items(StockKind kind, FormNode stock) {
        List<StockItem> items = new ArrayList<>();
        for (FormNode read : stock.nodes(kind.name())) {
            Map<String, Object> values = new HashMap<>();
            kind.fields().forEach(field -> values.put(field.key(), SettingForm.valueOf(field, read.node("fields").raw(field.key()))));
            items.add(new Item(read.text("name"), values));
        }
        return items;
    }

    private record Item(String name, Map<String, Object> values) implements StockItem {
        @Override
        @SuppressWarnings("unchecked") // the value was made by the field's own type
        public <T> T get(Setting<T> field) {
            return (T) values.get(field.key());
        }
    }
}
