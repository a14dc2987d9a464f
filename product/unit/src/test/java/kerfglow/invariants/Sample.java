// SPDX-License-Identifier: Apache-2.0
package kerfglow.invariants;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import kerfglow.api.Check;
import kerfglow.api.Quantity;
import kerfglow.api.Setting;
import kerfglow.api.StockKind;

/**
 * A sign of known faults: shapes in layers, with the sheets that go with them.
 *
 * @param name for messages
 * @param widthMm of its page
 * @param heightMm of its page
 * @param layers shapes by layer, in paint order
 * @param beside what cannot be written as shapes, by layer; empty where there is none
 * @param sheet the job sheet without its settings, lengths marked {@code <60 mm>} so that they can be scaled
 * @param settings values by key: a Double in the unit of its quantity, else its text
 * @param stock items by kind, values as in {@code settings}
 */
record Sample(String name, double widthMm, double heightMm, Map<String, List<Figure>> layers, Map<String, String> beside, String sheet,
        Map<String, Object> settings, Map<String, List<Map<String, Object>>> stock) {

    /**
     * The job sheet of the sign made k times larger: each length k times, each area k² times, whether this sample gives it or a check has
     * it as its default. Heights above ground and of terrain stay: they are lengths of the place where the sign hangs.
     */
    String job(double k) {
        Map<String, String> values = new TreeMap<>();
        for (Check check : AllChecks.ALL) {
            for (Setting<?> setting : check.info().settings()) {
                Object value = settings.getOrDefault(setting.key(), setting.defaultValue());
                boolean isOfThePlace = setting.key().startsWith("mount.asce-") || setting.key().startsWith("mount.terrain-") || setting.key().equals("mount.height");
                if (value != null && (k != 1 && !isOfThePlace || settings.containsKey(setting.key()))) {
                    values.put(setting.key(), text(setting, value, k));
                }
            }
        }
        values.put("host.chord-error", Figure.number(0.02 * k) + " mm"); // the default, as any other length
        StringBuilder job = new StringBuilder(scaledLengths(sheet, k)).append("settings:\n");
        values.forEach((key, value) -> job.append("  ").append(key).append(": ").append(value).append('\n'));
        return job.toString();
    }

    /** The shop sheet, likewise. */
    String shop(double k) {
        Map<String, Setting<?>> fields = new LinkedHashMap<>();
        for (Check check : AllChecks.ALL) {
            for (StockKind kind : check.info().stock()) {
                kind.fields().forEach(field -> fields.put(kind.name() + " " + field.key(), field));
            }
        }
        StringBuilder shop = new StringBuilder("name: a shop\nstock:\n");
        stock.forEach((kind, items) -> {
            shop.append("  ").append(kind).append(":\n");
            for (Map<String, Object> item : items) {
                shop.append("    - {").append(item.entrySet().stream().map(entry -> entry.getKey() + ": "
                        + (entry.getKey().equals("name") ? entry.getValue() : text(fields.get(kind + " " + entry.getKey()), entry.getValue(), k)))
                        .collect(Collectors.joining(", "))).append("}\n");
            }
        });
        return shop.toString();
    }

    private static String text(Setting<?> setting, Object value, double k) {
        if (!(value instanceof Double number)) {
            return value instanceof String text ? '"' + text + '"' : value instanceof Boolean flag ? flag ? "yes" : "no" : value.toString();
        }
        // The light of a module grows with the area that it falls on, so that illuminance stays.
        int power = switch (setting.quantity()) {
            case LENGTH -> 1;
            case AREA, LUMINOUS_FLUX -> 2;
            case MASS -> 3;
            default -> 0;
        };
        String unit = switch (setting.quantity()) {
            case LENGTH -> " mm";
            case AREA -> " mm2";
            default -> "";
        };
        boolean isMark = number < 0; // -1 mm stands for not given
        return Figure.number(isMark ? number : number * Math.pow(k, power)) + unit;
    }

    private static String scaledLengths(String sheet, double k) {
        return java.util.regex.Pattern.compile("<([0-9.]+) mm>").matcher(sheet).replaceAll(found -> Figure.number(Double.parseDouble(found.group(1)) * k) + " mm");
    }
}
