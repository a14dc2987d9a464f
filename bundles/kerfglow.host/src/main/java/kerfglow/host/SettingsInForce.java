// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import kerfglow.api.Setting;
import kerfglow.api.Settings;
import kerfglow.api.proof.Part;

/**
 * The values of one run. The command line outweighs the job sheet, that the shop sheet, that the check's default; within one of
 * them the more specific scope wins, and of equals the one that stands last.
 */
final class SettingsInForce implements Settings {
    private record Typed(Object value, GivenValue given) {
    }

    private static final Comparator<GivenValue> WEAKEST_FIRST = Comparator.comparing(GivenValue::origin).thenComparingInt(value -> value.scope().weight());

    private final Map<String, Setting<?>> declared;
    private final Map<String, List<Typed>> strongestFirst = new HashMap<>();

    private SettingsInForce(Map<String, Setting<?>> declared) {
        this.declared = declared;
    }

    /**
     * Reads every given value by the setting that it is for.
     *
     * @param declared every setting that there is
     * @param given values as typed
     * @param remarks told of values in sheets that are for a check that is not installed; those are left alone
     * @throws SheetException when a value is for no setting, cannot be read or is out of range
     */
    static SettingsInForce of(Collection<Setting<?>> declared, List<GivenValue> given, List<String> remarks) throws SheetException {
        Map<String, Setting<?>> byKey = new LinkedHashMap<>();
        declared.forEach(setting -> byKey.put(setting.key(), setting));
        SettingsInForce settings = new SettingsInForce(byKey);
        for (GivenValue value : given.stream().sorted(WEAKEST_FIRST).toList()) { // stable: of equals the last stays last
            Setting<?> setting = byKey.get(value.key());
            if (setting == null && value.origin() != GivenValue.Origin.COMMAND_LINE && byKey.keySet().stream().noneMatch(key -> owner(key).equals(owner(value.key())))) {
                remarks.add(value.from() + ": " + value.key() + " is for a check that is not installed; it is left alone.");
                continue;
            }
            if (setting == null) {
                throw new SheetException(value.from() + ": there is no setting " + value.key() + nearest(value.key(), byKey.keySet()), null);
            }
            if (setting.key().startsWith("host.") && !value.scope().equals(Scope.ALL)) {
                throw new SheetException(value.from() + ": " + value.key() + " holds for everything; take its scope out", null);
            }
            try {
                settings.strongestFirst.computeIfAbsent(value.key(), key -> new ArrayList<>()).add(0, new Typed(setting.parse(value.text()), value));
            } catch (IllegalArgumentException wrong) {
                throw new SheetException(value.from() + ": " + wrong.getMessage(), wrong);
            }
        }
        return settings;
    }

    /** The check that a key belongs to: all but its last word. */
    private static String owner(String key) {
        return key.contains(".") ? key.substring(0, key.lastIndexOf('.')) : key;
    }

    private static String nearest(String key, Set<String> known) {
        List<String> near = known.stream().filter(each -> owner(each).equals(owner(key))).sorted().toList();
        return near.isEmpty() ? "; \"checks\" lists all" : "; there are " + String.join(", ", near);
    }

    @Override
    public <T> T get(Setting<T> setting) {
        return find(setting, scope -> scope.equals(Scope.ALL));
    }

    @Override
    public <T> T get(Setting<T> setting, Part part) {
        return find(setting, scope -> scope.fits(part));
    }

    @SuppressWarnings("unchecked") // the value was made by the very setting's parse
    private <T> T find(Setting<T> setting, Predicate<Scope> holds) {
        requireDeclared(setting);
        for (Typed typed : strongestFirst.getOrDefault(setting.key(), List.of())) {
            if (holds.test(typed.given.scope())) {
                return (T) typed.value;
            }
        }
        return setting.defaultValue();
    }

    private void requireDeclared(Setting<?> setting) {
        if (declared.get(setting.key()) != setting) {
            throw new IllegalArgumentException("the check reads " + setting.key() + " but does not declare it");
        }
    }

    /** True when a sheet or the command line gives a value, be it the default. */
    boolean isGiven(Setting<?> setting) {
        return strongestFirst.containsKey(setting.key());
    }

    /** Every value that can hold in this run, by key, weakest first; a scoped value stands beside the one for everything. */
    List<Result.SettingUsed> used() {
        List<Result.SettingUsed> used = new ArrayList<>();
        for (String key : declared.keySet().stream().sorted().toList()) {
            used.addAll(used(declared.get(key)));
        }
        return used;
    }

    private <T> List<Result.SettingUsed> used(Setting<T> setting) {
        List<Result.SettingUsed> used = new ArrayList<>();
        Set<Scope> stronger = new HashSet<>();
        for (Typed typed : strongestFirst.getOrDefault(setting.key(), List.of())) {
            if (!stronger.contains(Scope.ALL) && stronger.add(typed.given.scope())) {
                used.add(0, new Result.SettingUsed(setting.key(), typed.given.scope().toString(), typed.value, setting.unit(), typed.given.from()));
            }
        }
        if (!stronger.contains(Scope.ALL) && setting.defaultValue() != null) { // without a default there is none in force
            used.add(0, new Result.SettingUsed(setting.key(), Scope.ALL.toString(), setting.defaultValue(), setting.unit(), "check"));
        }
        return used;
    }
}
