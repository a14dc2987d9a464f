// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Predicate;
import kerfglow.api.PlacedModule;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.host.GivenValue;
import kerfglow.host.JobSheet;
import kerfglow.host.Scope;

/** Changes to a job sheet; each gives a new sheet and leaves the old one as it is. */
public final class SheetEdits {
    /** Where a value of a job file comes from, for people. */
    public static final String FROM = "job file";

    private SheetEdits() {
    }

    public static JobSheet withTitle(JobSheet sheet, String title) {
        Draft draft = new Draft(sheet);
        draft.title = title;
        return draft.sheet();
    }

    /** The shop sheet; none takes it out. */
    public static JobSheet withShopSheet(JobSheet sheet, Optional<Path> file) {
        Draft draft = new Draft(sheet);
        draft.shopSheet = file.map(Path::toAbsolutePath);
        return draft.sheet();
    }

    public static JobSheet withUnits(JobSheet sheet, UnitSystem units) {
        Draft draft = new Draft(sheet);
        draft.units = Optional.of(units);
        return draft.sheet();
    }

    /** How many times larger the sign is than the drawing; takes out the known dimension. */
    public static JobSheet withScale(JobSheet sheet, double scale) {
        if (!(scale > 0 && Double.isFinite(scale))) {
            throw new IllegalArgumentException("the scale must be above 0: " + scale);
        }
        Draft draft = new Draft(sheet);
        draft.scale = OptionalDouble.of(scale);
        draft.knownDimension = Optional.empty();
        return draft.sheet();
    }

    /** "This is 3.2 m wide"; takes out the scale. */
    public static JobSheet withKnownDimension(JobSheet sheet, JobSheet.KnownDimension known) {
        if (!(known.lengthMm() > 0 && Double.isFinite(known.lengthMm()))) {
            throw new IllegalArgumentException("a known dimension must be above 0: " + known.lengthMm() + " mm");
        }
        Draft draft = new Draft(sheet);
        draft.scale = OptionalDouble.empty();
        draft.knownDimension = Optional.of(known);
        return draft.sheet();
    }

    /** One of {@link JobSheet#BUILDS}; none takes it out. */
    public static JobSheet withBuild(JobSheet sheet, Optional<String> build) {
        build.filter(word -> !JobSheet.BUILDS.contains(word)).ifPresent(word -> {
            throw new IllegalArgumentException("\"" + word + "\" is not a build; known: " + String.join(", ", JobSheet.BUILDS));
        });
        Draft draft = new Draft(sheet);
        draft.build = build;
        return draft.sheet();
    }

    /** A rule of roles that outweighs all others; an older one with the same selector goes. */
    public static JobSheet withRole(JobSheet sheet, JobSheet.Selector selector, Role role) {
        Draft draft = new Draft(withoutRole(sheet, selector));
        draft.roles.add(0, new JobSheet.RoleRule(selector, role));
        return draft.sheet();
    }

    public static JobSheet withoutRole(JobSheet sheet, JobSheet.Selector selector) {
        Draft draft = new Draft(sheet);
        draft.roles.removeIf(rule -> rule.selector().equals(selector));
        return draft.sheet();
    }

    /** The role of every shape of a layer. */
    public static JobSheet withRoleOfLayer(JobSheet sheet, String layer, Role role) {
        return withRole(sheet, new JobSheet.Selector(Optional.of(layer), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty()), role);
    }

    /** The role of the shapes that one part is made of. */
    public static JobSheet withRoleOfPart(JobSheet sheet, Part part, Role role) {
        JobSheet changed = sheet;
        for (String element : part.elements()) {
            changed = withRole(changed, new JobSheet.Selector(Optional.empty(), Optional.empty(), Optional.of(element), Optional.empty(), Optional.empty()), role);
        }
        return changed;
    }

    /** A rule of materials that outweighs all others; an older one for the same parts goes. */
    public static JobSheet withMaterial(JobSheet sheet, JobSheet.MaterialRule rule) {
        Draft draft = new Draft(sheet);
        draft.materials.removeIf(each -> each.scope().equals(rule.scope()) && each.fillRgb().equals(rule.fillRgb()));
        draft.materials.add(0, rule);
        return draft.sheet();
    }

    /** Whether a colour takes out what lies below it in its layer. */
    public static JobSheet withKnockOut(JobSheet sheet, int rgb, boolean knocksOut) {
        Draft draft = new Draft(sheet);
        if (knocksOut) {
            draft.knockOut.add(rgb);
        } else {
            draft.knockOut.remove(rgb);
        }
        return draft.sheet();
    }

    /**
     * A value for a setting; an older one of the same scope goes. The value is read when the checks run.
     *
     * @param key the setting, for instance {@code returns.depth}
     * @param text the value as a person types it, with its unit
     */
    public static JobSheet withSetting(JobSheet sheet, String key, String text, Scope scope) {
        Draft draft = new Draft(withoutSetting(sheet, key, scope));
        draft.settings.add(new GivenValue(key, text, scope, GivenValue.Origin.JOB, FROM));
        return draft.sheet();
    }

    public static JobSheet withoutSetting(JobSheet sheet, String key, Scope scope) {
        Draft draft = new Draft(sheet);
        Predicate<GivenValue> same = value -> value.key().equals(key) && value.scope().equals(scope);
        draft.settings.removeIf(same);
        return draft.sheet();
    }

    /** With one light module more, placed by hand. */
    public static JobSheet withModule(JobSheet sheet, PlacedModule module) {
        Draft draft = new Draft(sheet);
        draft.modules.add(module);
        return draft.sheet();
    }

    /**
     * With a module moved or turned.
     *
     * @param index its place in {@link JobSheet#modules()}
     */
    public static JobSheet withModule(JobSheet sheet, int index, PlacedModule module) {
        Draft draft = new Draft(sheet);
        draft.modules.set(index, module);
        return draft.sheet();
    }

    /** With these modules and no others, for instance to go on by hand from where a layout put them. */
    public static JobSheet withModules(JobSheet sheet, List<PlacedModule> modules) {
        Draft draft = new Draft(sheet);
        draft.modules.clear();
        draft.modules.addAll(modules);
        return draft.sheet();
    }

    public static JobSheet withoutModule(JobSheet sheet, int index) {
        Draft draft = new Draft(sheet);
        draft.modules.remove(index);
        return draft.sheet();
    }

    /** The fields of a sheet in the making; the one place that knows them all. */
    private static final class Draft {
        private final String from;
        private String title;
        private Optional<Path> shopSheet;
        private Optional<UnitSystem> units;
        private OptionalDouble scale;
        private Optional<JobSheet.KnownDimension> knownDimension;
        private Optional<String> build;
        private final List<JobSheet.RoleRule> roles;
        private final List<JobSheet.MaterialRule> materials;
        private final Set<Integer> knockOut;
        private final List<GivenValue> settings;
        private final List<PlacedModule> modules;

        Draft(JobSheet sheet) {
            from = sheet.from();
            title = sheet.title();
            shopSheet = sheet.shopSheet();
            units = sheet.units();
            scale = sheet.scale();
            knownDimension = sheet.knownDimension();
            build = sheet.build();
            roles = new ArrayList<>(sheet.roles());
            materials = new ArrayList<>(sheet.materials());
            knockOut = new HashSet<>(sheet.knockOut());
            settings = new ArrayList<>(sheet.settings());
            modules = new ArrayList<>(sheet.modules());
        }

        JobSheet sheet() {
            return new JobSheet(from, title, shopSheet, units, scale, knownDimension, build, List.copyOf(roles), List.copyOf(materials), Set.copyOf(knockOut),
                    List.copyOf(settings), List.copyOf(modules));
        }
    }
}
