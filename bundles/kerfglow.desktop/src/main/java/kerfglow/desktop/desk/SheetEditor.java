// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.StringJoiner;
import java.util.function.Consumer;
import kerfglow.api.CheckInfo;
import kerfglow.api.Quantity;
import kerfglow.api.Setting;
import kerfglow.api.Units;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.desktop.section.Section;
import kerfglow.desktop.section.SectionEdit;
import kerfglow.host.CheckCatalogue;
import kerfglow.host.JobSheet;
import kerfglow.host.Result;
import kerfglow.host.Scope;
import kerfglow.job.SheetEdits;

/** The settings that there are, what they are now, who uses them, and how a person changes them. */
public final class SheetEditor {
    private final Desk desk;
    private final CheckCatalogue catalogue;
    private final List<Consumer<Section.Kind>> openers = new ArrayList<>();

    public SheetEditor(Desk desk, CheckCatalogue catalogue) {
        this.desk = desk;
        this.catalogue = catalogue;
    }

    /** Told of which piece the settings are wanted. */
    public void onOpen(Consumer<Section.Kind> opener) {
        openers.add(opener);
    }

    /** Opens the settings of a piece. */
    public void open(Section.Kind kind) {
        openers.forEach(each -> each.accept(kind));
    }

    /** Every setting of every check, shared ones once. */
    public List<Setting<?>> settings() {
        Map<String, Setting<?>> byKey = new LinkedHashMap<>();
        catalogue.entries().forEach(entry -> entry.info().settings().forEach(setting -> byKey.putIfAbsent(setting.key(), setting)));
        return List.copyOf(byKey.values());
    }

    /** The settings of a piece of the section. */
    public List<Setting<?>> settings(Section.Kind kind) {
        return settings().stream().filter(setting -> kind.owners().contains(setting.key().substring(0, setting.key().indexOf('.')))).toList();
    }

    /** What holds for everything, or what was given for some parts alone; absent when there is no such value, or nothing was checked yet. */
    public Optional<Result.SettingUsed> now(Setting<?> setting, Scope scope) {
        return desk.result().stream().flatMap(result -> result.settings().stream())
                .filter(used -> used.key().equals(setting.key()) && used.scope().equals(scope.toString())).findFirst();
    }

    /** The value as a person reads it; empty when there is none. */
    public <T> String text(Setting<T> setting, Scope scope) {
        return now(setting, scope).map(used -> {
            @SuppressWarnings("unchecked") // the value was made by the very setting's parse
            T value = (T) used.value();
            return setting.format(value, desk.units());
        }).orElse("");
    }

    /** Ids of the checks that would run again when a setting changes. */
    public List<String> users(Setting<?> setting) {
        return catalogue.entries().stream().map(CheckCatalogue.Entry::info).filter(info -> info.settings().stream().anyMatch(each -> each.key().equals(setting.key())))
                .map(CheckInfo::id).toList();
    }

    /** True when the job's own sheet gives it a value for just this. */
    public boolean isJobs(Setting<?> setting, Scope scope) {
        return desk.job().filter(job -> job.state().sheet().settings().stream().anyMatch(given -> given.key().equals(setting.key()) && given.scope().equals(scope)))
                .isPresent();
    }

    /** Gives a setting the typed value; returns what is wrong with it, else empty. */
    public Optional<String> change(Setting<?> setting, String text, Scope scope) {
        return perform(SectionEdit.ofSetting("Change " + setting.title(), setting.key(), text, scope, settings()));
    }

    /** Gives a dimension of the section the typed value; returns what is wrong with it, else empty. */
    public Optional<String> change(Section.Measure measure, String text) {
        return perform(SectionEdit.of(measure, text, settings()));
    }

    /** Says what a layer becomes; empty leaves it to the drawing again. */
    public void becomes(String layer, Optional<Role> role) {
        JobSheet.Selector selector = new JobSheet.Selector(Optional.of(layer), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
        desk.job().ifPresent(job -> job.changeSheet("Change role of layer", sheet -> role.map(each -> SheetEdits.withRole(sheet, selector, each))
                .orElseGet(() -> SheetEdits.withoutRole(sheet, selector))));
    }

    /** Says what the parts of the chosen finding become. */
    public void chosenPartsBecome(Role role) {
        List<Part> chosen = chosenParts();
        if (!chosen.isEmpty()) {
            desk.job().ifPresent(job -> job.changeSheet("Change role of part", sheet -> {
                JobSheet changed = sheet;
                for (Part part : chosen) {
                    changed = SheetEdits.withRoleOfPart(changed, part, role);
                }
                return changed;
            }));
        }
    }

    /** The parts that the chosen finding is about. */
    public List<Part> chosenParts() {
        List<String> ids = desk.findings().choice().map(choice -> choice.finding().parts()).orElse(List.of());
        return desk.parts().stream().filter(part -> ids.contains(part.id())).toList();
    }

    /**
     * What a value can be given for: everything, each role, material, thickness and layer that there is, each part that the chosen finding is
     * about, and what else the job sheet gives a value for.
     */
    public List<Scope> scopes() {
        List<Part> checked = desk.parts().stream().filter(part -> part.role().isChecked()).toList();
        Set<Scope> scopes = new LinkedHashSet<>(List.of(Scope.ALL));
        checked.stream().map(Part::role).distinct().sorted().forEach(role -> scopes.add(scope(Optional.of(role), Optional.empty(), OptionalDouble.empty(), Optional.empty(), Optional.empty())));
        checked.stream().flatMap(part -> part.sheetMaterial().stream()).distinct().sorted()
                .forEach(material -> scopes.add(scope(Optional.empty(), Optional.of(material), OptionalDouble.empty(), Optional.empty(), Optional.empty())));
        checked.stream().flatMap(part -> part.thicknessMm().stream().boxed()).distinct().sorted()
                .forEach(mm -> scopes.add(scope(Optional.empty(), Optional.empty(), OptionalDouble.of(mm), Optional.empty(), Optional.empty())));
        checked.stream().map(Part::layer).filter(layer -> !layer.isEmpty()).distinct()
                .forEach(layer -> scopes.add(scope(Optional.empty(), Optional.empty(), OptionalDouble.empty(), Optional.of(layer), Optional.empty())));
        chosenParts().forEach(part -> scopes.add(scope(Optional.empty(), Optional.empty(), OptionalDouble.empty(), Optional.empty(),
                Optional.of(part.elements().isEmpty() ? part.id() : part.elements().get(0))))); // an element keeps its name when the drawing changes
        desk.job().ifPresent(job -> job.state().sheet().settings().forEach(given -> scopes.add(given.scope())));
        return List.copyOf(scopes);
    }

    private static Scope scope(Optional<Role> role, Optional<String> material, OptionalDouble thicknessMm, Optional<String> layer, Optional<String> part) {
        return new Scope(role, material, thicknessMm, layer, part);
    }

    /** What a value holds for, as a person reads it. */
    public String words(Scope scope) {
        if (scope.equals(Scope.ALL)) {
            return "for everything";
        }
        StringJoiner words = new StringJoiner(", ", "only for ", "");
        scope.role().ifPresent(role -> words.add("role " + role.word()));
        scope.material().ifPresent(material -> words.add("material " + material));
        scope.thicknessMm().ifPresent(mm -> words.add("thickness " + Units.format(mm, Quantity.LENGTH, desk.units())));
        scope.layer().ifPresent(layer -> words.add("layer " + layer));
        scope.part().ifPresent(part -> words.add("part " + part));
        return words.toString();
    }

    /** How many parts a scope takes in. */
    public long count(Scope scope) {
        return desk.parts().stream().filter(part -> part.role().isChecked() && scope.fits(part)).count();
    }

    /** Reads what was typed into the job sheet's form; returns what is wrong with it, else empty. */
    public Optional<String> change(SheetForm form) {
        return perform(form.edit());
    }

    private Optional<String> perform(SectionEdit edit) {
        if (edit.problem().isEmpty()) {
            desk.job().ifPresent(job -> job.changeSheet(edit.name(), edit.change()));
        }
        return edit.problem();
    }

    /** Takes the job's own value out, so that the shop's or the check's holds. */
    public void reset(Setting<?> setting, Scope scope) {
        desk.job().ifPresent(job -> job.changeSheet("Reset " + setting.title(), sheet -> SheetEdits.withoutSetting(sheet, setting.key(), scope)));
    }
}
