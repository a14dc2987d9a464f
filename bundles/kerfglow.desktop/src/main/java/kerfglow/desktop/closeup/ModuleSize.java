// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.closeup;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import kerfglow.api.Units;
import kerfglow.host.Result;
import kerfglow.host.Scope;
import kerfglow.host.ShopSheet;

/**
 * How large a light module is.
 *
 * @param name as the shop sheet calls it; empty when none is stocked
 * @param lengthMm its long side
 * @param widthMm its short side
 * @param heightMm how far the emitting surface stands above what it is fixed to
 */
public record ModuleSize(String name, double lengthMm, double widthMm, double heightMm) {
    private static final String STOCK = "light-modules";

    /**
     * The stocked module of a name, or the first where the name is empty; where none is stocked, what the settings say.
     *
     * @return empty when no check knows of modules
     */
    public static Optional<ModuleSize> of(Result result, String name) {
        return result.shop().stock().getOrDefault(STOCK, List.of()).stream().map(ShopSheet.RawItem::fields)
                .filter(fields -> name.isBlank() || fields.containsKey("name") && fields.get("name").text().strip().equalsIgnoreCase(name.strip())).findFirst()
                .flatMap(fields -> stocked(fields, result)).or(() -> given(result));
    }

    /** The one that is used in general. */
    public static Optional<ModuleSize> of(Result result) {
        return of(result, result.settings().stream().filter(used -> used.key().equals("glow.module") && used.scope().equals(Scope.ALL.toString()))
                .map(used -> String.valueOf(used.value())).findFirst().orElse(""));
    }

    private static Optional<ModuleSize> stocked(Map<String, ShopSheet.RawField> fields, Result result) {
        OptionalDouble length = length(fields, "length");
        OptionalDouble width = length(fields, "width");
        OptionalDouble height = length(fields, "emitter-height");
        return length.isEmpty() || width.isEmpty() ? Optional.empty() : Optional.of(new ModuleSize(Optional.ofNullable(fields.get("name")).map(ShopSheet.RawField::text).orElse(""),
                length.getAsDouble(), width.getAsDouble(), height.orElse(setting(result, "glow.emitter-height").orElse(0))));
    }

    private static OptionalDouble length(Map<String, ShopSheet.RawField> fields, String key) {
        try {
            return fields.containsKey(key) ? OptionalDouble.of(Units.lengthMm(fields.get(key).text())) : OptionalDouble.empty();
        } catch (IllegalArgumentException unread) { // the run says so; here it is as if it were not given
            return OptionalDouble.empty();
        }
    }

    private static Optional<ModuleSize> given(Result result) {
        OptionalDouble length = setting(result, "glow.module-length");
        OptionalDouble width = setting(result, "glow.module-width");
        return length.isEmpty() || width.isEmpty() ? Optional.empty()
                : Optional.of(new ModuleSize("", length.getAsDouble(), width.getAsDouble(), setting(result, "glow.emitter-height").orElse(0)));
    }

    private static OptionalDouble setting(Result result, String key) {
        return new ShopFacts(result).setting(key);
    }
}
