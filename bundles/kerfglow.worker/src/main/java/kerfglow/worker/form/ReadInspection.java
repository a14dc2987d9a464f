// SPDX-License-Identifier: Apache-2.0
package kerfglow.worker.form;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleConsumer;
import kerfglow.api.CheckInfo;
import kerfglow.api.Inspection;
import kerfglow.api.PlacedModule;
import kerfglow.api.Setting;
import kerfglow.api.Settings;
import kerfglow.api.StockItem;
import kerfglow.api.StockKind;
import kerfglow.api.Table;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Proof;

/** What {@link GivenForm} wrote, as a check asks for it. */
public final class ReadInspection implements Inspection {
    private final Proof proof;
    private final List<Part> parts;
    private final Map<String, Map<String, Object>> values = new HashMap<>();
    private final Map<String, List<StockItem>> stock = new HashMap<>();
    private final Map<String, List<Table>> tables = new HashMap<>();
    private final UnitSystem units;
    private final Optional<String> build;
    private final List<PlacedModule> modules;
    private final DoubleConsumer checkpoint;

    /**
     * An inspection.
     *
     * @param info of the check, which tells the types of its settings
     * @param node what was written
     * @param checkpoint called at each checkpoint; may throw
     */
    public ReadInspection(CheckInfo info, Proof proof, List<Part> parts, FormNode node, DoubleConsumer checkpoint) {
        this.proof = proof;
        this.parts = parts;
        this.checkpoint = checkpoint;
        info.settings().forEach(setting -> values.put(setting.key(), GivenForm.valuesOf(setting, node.node("settings").node(setting.key()))));
        info.stock().forEach(kind -> stock.put(kind.name(), GivenForm.items(kind, node.node("stock"))));
        node.node("tables").fields().keySet().forEach(check -> tables.put(check, node.node("tables").values(check, Table.class)));
        units = node.value("units", UnitSystem.class);
        build = Optional.ofNullable(node.value("build", String.class));
        modules = node.values("modules", PlacedModule.class);
    }

    @Override
    public Proof proof() {
        return proof;
    }

    @Override
    public List<Part> parts() {
        return parts;
    }

    @Override
    public Settings settings() {
        return new Settings() {
            @Override
            public <T> T get(Setting<T> setting) {
                return find(setting, null);
            }

            @Override
            public <T> T get(Setting<T> setting, Part part) {
                return find(setting, part.id());
            }
        };
    }

    @SuppressWarnings("unchecked") // the value was made by the setting's own type
    private <T> T find(Setting<T> setting, String part) {
        Map<String, Object> byPart = values.get(setting.key());
        if (byPart == null) {
            throw new IllegalArgumentException("the check reads " + setting.key() + " but does not declare it");
        }
        return (T) (byPart.containsKey(part) ? byPart.get(part) : byPart.get(null));
    }

    @Override
    public List<StockItem> stock(StockKind kind) {
        return stock.getOrDefault(kind.name(), List.of());
    }

    @Override
    public Optional<String> build() {
        return build;
    }

    @Override
    public List<PlacedModule> placedModules() {
        return modules;
    }

    @Override
    public List<Table> tables(String check) {
        if (!tables.containsKey(check)) {
            throw new IllegalArgumentException("the check reads tables of " + check + " but does not name it in reads()");
        }
        return tables.get(check);
    }

    @Override
    public UnitSystem units() {
        return units;
    }

    @Override
    public void checkpoint(double fraction) {
        checkpoint.accept(fraction);
    }
}
