// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import kerfglow.api.Severity;
import kerfglow.api.UnitSystem;

/**
 * What the shop owns, stocks and is used to. A YAML file that a person writes; docs/sheets.md lists its keys.
 *
 * @param from the file's name, empty when there is none
 * @param name the shop
 * @param units the units that a person reads, unless the job sheet says otherwise
 * @param stock items by kind, fields as typed; the checks that declare a kind give its fields their types
 * @param settings values for settings
 * @param severities weights that the shop changes, each with a reason
 */
public record ShopSheet(String from, String name, Optional<UnitSystem> units, Map<String, List<RawItem>> stock, List<GivenValue> settings,
        List<SeverityChange> severities) {

    /** A field as typed, and where it stands. */
    public record RawField(String text, String where) {
    }

    /** An item as typed, and where it stands. */
    public record RawItem(Map<String, RawField> fields, String where) {
    }

    /** The shop weighs a rule otherwise than its check does. */
    public record SeverityChange(String rule, Severity severity, String reason, String from) {
    }

    /** A shop of which nothing is known. */
    public static final ShopSheet NONE = new ShopSheet("", "", Optional.empty(), Map.of(), List.of(), List.of());

    private static final Set<String> KEYS = Set.of("name", "units", "stock", "settings", "severity");
    private static final Set<String> SEVERITY_KEYS = Set.of("rule", "severity", "reason");

    /**
     * Reads a shop sheet.
     *
     * @throws SheetException naming file, line and key of the first fault
     */
    public static ShopSheet read(Path file) throws SheetException {
        return of(SheetNode.read(file));
    }

    static ShopSheet of(SheetNode top) throws SheetException {
        Map<String, SheetNode> entries = top.entries(KEYS);
        return new ShopSheet(top.from().replaceAll(" line \\d+$", ""),
                SheetSettings.optional(entries.get("name"), Function.identity()).orElse(""),
                SheetSettings.optional(entries.get("units"), JobSheet::unitSystem),
                stock(entries.get("stock")),
                entries.containsKey("settings") ? SheetSettings.read(entries.get("settings"), GivenValue.Origin.SHOP) : List.of(),
                severities(entries.get("severity")));
    }

    private static Map<String, List<RawItem>> stock(SheetNode section) throws SheetException {
        Map<String, List<RawItem>> stock = new LinkedHashMap<>();
        for (Map.Entry<String, SheetNode> kind : section == null ? Map.<String, SheetNode>of().entrySet() : section.entries().entrySet()) {
            List<RawItem> items = new ArrayList<>();
            for (SheetNode item : kind.getValue().items()) {
                Map<String, RawField> fields = new LinkedHashMap<>();
                for (Map.Entry<String, SheetNode> field : item.entries().entrySet()) {
                    fields.put(field.getKey(), new RawField(field.getValue().text(), field.getValue().from() + ", " + field.getValue().key()));
                }
                items.add(new RawItem(Map.copyOf(fields), item.from() + ", " + item.key()));
            }
            stock.put(kind.getKey(), List.copyOf(items));
        }
        return Map.copyOf(stock);
    }

    private static List<SeverityChange> severities(SheetNode section) throws SheetException {
        List<SeverityChange> changes = new ArrayList<>();
        for (SheetNode item : section == null ? List.<SheetNode>of() : section.items()) {
            Map<String, SheetNode> fields = item.entries(SEVERITY_KEYS);
            for (String key : SEVERITY_KEYS.stream().sorted().toList()) {
                if (!fields.containsKey(key)) {
                    throw item.wrong("\"" + key + "\" is missing; a changed severity needs rule, severity and reason");
                }
            }
            Severity severity = SheetSettings.optional(fields.get("severity"), word -> Stream.of(Severity.values())
                    .filter(each -> each.word().equalsIgnoreCase(word.strip())).findFirst()
                    .orElseThrow(() -> new IllegalArgumentException("\"" + word + "\" is not a severity; known: stop, review, info"))).orElseThrow();
            changes.add(new SeverityChange(fields.get("rule").text(), severity, fields.get("reason").text(), item.from()));
        }
        return List.copyOf(changes);
    }
}
