// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import kerfglow.api.PlacedModule;
import kerfglow.api.Quantity;
import kerfglow.api.UnitSystem;
import kerfglow.api.Units;
import kerfglow.api.proof.Role;

/**
 * Everything about this one sign that is not in the artwork. A YAML file that a person writes; docs/sheets.md lists its keys.
 *
 * @param from the file's name, empty when there is none
 * @param title what the sign is
 * @param shopSheet the shop sheet that it names
 * @param units the units that a person reads
 * @param scale sign size divided by drawing size; empty when it is 1 or comes from the known dimension
 * @param knownDimension a width or height on the sign that is known, from which the scale follows
 * @param build how the sign is made
 * @param roles what becomes what; the first that fits wins
 * @param materials what is cut from what; the first that fits wins
 * @param knockOut 0xRRGGBB of colours that take out what lies below them in their layer
 * @param settings values for settings
 * @param modules light modules that a person placed
 */
public record JobSheet(String from, String title, Optional<Path> shopSheet, Optional<UnitSystem> units, OptionalDouble scale,
        Optional<KnownDimension> knownDimension, Optional<String> build, List<RoleRule> roles, List<MaterialRule> materials,
        Set<Integer> knockOut, List<GivenValue> settings, List<PlacedModule> modules) {

    /** How a sign is made; the words of the key {@code build}. */
    public static final List<String> BUILDS = List.of("face-lit letters", "halo-lit letters", "cabinet", "routed panel", "flat cut letters", "vinyl");

    /**
     * Which shapes a role rule is about; all that is given must fit, {@code *} stands for any characters.
     *
     * @param layer name of the layer
     * @param label label of the element
     * @param id id of the element or of a group around it
     * @param fillRgb 0xRRGGBB of the paint
     * @param dataPart value of {@code data-part}
     */
    public record Selector(Optional<String> layer, Optional<String> label, Optional<String> id, Optional<Integer> fillRgb, Optional<String> dataPart) {
    }

    /** Shapes that become a role. */
    public record RoleRule(Selector selector, Role role) {
    }

    /**
     * A length on the sign that is known.
     *
     * @param selector which shapes; none given means all that is shown
     * @param horizontal true for their width, false for their height
     * @param lengthMm at real size, mm
     */
    public record KnownDimension(Selector selector, boolean horizontal, double lengthMm) {
    }

    /** Parts that are cut from a material. */
    public record MaterialRule(Scope scope, Optional<Integer> fillRgb, String material, OptionalDouble thicknessMm) {
    }

    /** A job without a sheet: real size, no roles, no settings. */
    public static final JobSheet NONE = new JobSheet("", "", Optional.empty(), Optional.empty(), OptionalDouble.empty(), Optional.empty(), Optional.empty(),
            List.of(), List.of(), Set.of(), List.of(), List.of());

    private static final Set<String> KEYS = Set.of("title", "shop", "units", "scale", "known-dimension", "build", "roles", "materials", "knock-out", "settings", "modules");
    private static final Set<String> MODULE_KEYS = Set.of("x", "y", "turn", "string");
    private static final Set<String> ROLE_KEYS = Set.of("layer", "label", "id", "fill", "data-part", "role");
    private static final Set<String> KNOWN_KEYS = Set.of("layer", "label", "id", "fill", "data-part", "width", "height");
    private static final Set<String> MATERIAL_KEYS = Set.of("role", "layer", "part", "fill", "material", "thickness");
    private static final int HEX = 16;
    /** Drawings are made from 1000 times too large to 1000 times too small; beyond that a typing error is likelier. */
    private static final double MOST_SCALE = 1000;

    /**
     * Reads a job sheet.
     *
     * @throws SheetException naming file, line and key of the first fault
     */
    public static JobSheet read(Path file) throws SheetException {
        return of(SheetNode.read(file), file.toAbsolutePath().getParent());
    }

    /**
     * Reads a job sheet that is part of another file.
     *
     * @param name of the file, for complaints
     * @param text the sheet, YAML or JSON
     * @param folder what its paths count from
     * @throws SheetException naming line and key of the first fault
     */
    public static JobSheet parse(String name, String text, Path folder) throws SheetException {
        return of(SheetNode.parse(name, text), folder);
    }

    static JobSheet of(SheetNode top, Path folder) throws SheetException {
        Map<String, SheetNode> entries = top.entries(KEYS);
        SheetNode scale = entries.get("scale");
        SheetNode known = entries.get("known-dimension");
        if (scale != null && known != null) {
            throw known.wrong("give scale or known-dimension, not both");
        }
        List<GivenValue> settings = entries.containsKey("settings") ? SheetSettings.read(entries.get("settings"), GivenValue.Origin.JOB) : List.of();
        return new JobSheet(top.from().replaceAll(" line \\d+$", ""),
                SheetSettings.optional(entries.get("title"), Function.identity()).orElse(""),
                SheetSettings.optional(entries.get("shop"), name -> folder.resolve(name)),
                SheetSettings.optional(entries.get("units"), JobSheet::unitSystem),
                SheetSettings.optional(scale, JobSheet::scale).map(OptionalDouble::of).orElse(OptionalDouble.empty()),
                known == null ? Optional.empty() : Optional.of(knownDimension(known)),
                SheetSettings.optional(entries.get("build"), JobSheet::build),
                roles(entries.get("roles")), materials(entries.get("materials")), colours(entries.get("knock-out")), settings,
                modules(entries.get("modules")));
    }

    static UnitSystem unitSystem(String word) {
        return switch (word.strip().toLowerCase(Locale.ROOT)) {
            case "metric", "mm" -> UnitSystem.METRIC;
            case "inch", "inches", "in" -> UnitSystem.INCH;
            default -> throw new IllegalArgumentException("\"" + word + "\" is not known; write metric or inch");
        };
    }

    /** {@code 10}, {@code 1:10} or {@code 0.5}. */
    private static double scale(String text) {
        String number = text.strip().replaceFirst("^1\\s*:\\s*", "");
        try {
            double value = Double.parseDouble(number);
            if (value >= 1 / MOST_SCALE && value <= MOST_SCALE) {
                return value;
            }
        } catch (NumberFormatException notANumber) {
            // falls through to the message, which fits both
        }
        throw new IllegalArgumentException("\"" + text + "\" must be how many times larger the sign is than the drawing, from 0.001 to 1000, "
                + "for instance 10 or 1:10");
    }

    private static String build(String word) {
        return BUILDS.stream().filter(each -> each.equalsIgnoreCase(word.strip())).findFirst()
                .orElseThrow(() -> new IllegalArgumentException("\"" + word + "\" is not a build; known: " + String.join(", ", BUILDS)));
    }

    private static KnownDimension knownDimension(SheetNode node) throws SheetException {
        Map<String, SheetNode> fields = node.entries(KNOWN_KEYS);
        if (fields.containsKey("width") == fields.containsKey("height")) {
            throw node.wrong("give either width or height");
        }
        boolean horizontal = fields.containsKey("width");
        SheetNode length = fields.get(horizontal ? "width" : "height");
        double lengthMm = SheetSettings.length(length).orElseThrow();
        if (!(lengthMm > 0)) {
            throw length.wrong("must be above 0");
        }
        return new KnownDimension(selector(fields), horizontal, lengthMm);
    }

    private static List<RoleRule> roles(SheetNode section) throws SheetException {
        List<RoleRule> rules = new ArrayList<>();
        for (SheetNode item : section == null ? List.<SheetNode>of() : section.items()) {
            Map<String, SheetNode> fields = item.entries(ROLE_KEYS);
            if (!fields.containsKey("role")) {
                throw item.wrong("\"role\" is missing");
            }
            if (fields.size() == 1) {
                throw item.wrong("say which shapes: layer, label, id, fill or data-part; layer: \"*\" for all");
            }
            rules.add(new RoleRule(selector(fields), SheetSettings.role(fields.get("role"))));
        }
        return List.copyOf(rules);
    }

    private static Selector selector(Map<String, SheetNode> fields) throws SheetException {
        return new Selector(SheetSettings.optional(fields.get("layer"), Function.identity()), SheetSettings.optional(fields.get("label"), Function.identity()),
                SheetSettings.optional(fields.get("id"), Function.identity()), SheetSettings.optional(fields.get("fill"), JobSheet::colour),
                SheetSettings.optional(fields.get("data-part"), Function.identity()));
    }

    private static List<MaterialRule> materials(SheetNode section) throws SheetException {
        List<MaterialRule> rules = new ArrayList<>();
        for (SheetNode item : section == null ? List.<SheetNode>of() : section.items()) {
            Map<String, SheetNode> fields = item.entries(MATERIAL_KEYS);
            if (!fields.containsKey("material")) {
                throw item.wrong("\"material\" is missing");
            }
            Map<String, SheetNode> scope = new HashMap<>(fields);
            scope.keySet().retainAll(Set.of("role", "layer", "part"));
            OptionalDouble thickness = SheetSettings.length(fields.get("thickness"));
            if (thickness.isPresent() && !(thickness.getAsDouble() > 0)) {
                throw fields.get("thickness").wrong("must be above 0");
            }
            rules.add(new MaterialRule(SheetSettings.scope(scope), SheetSettings.optional(fields.get("fill"), JobSheet::colour),
                    fields.get("material").text(), thickness));
        }
        return List.copyOf(rules);
    }

    private static List<PlacedModule> modules(SheetNode section) throws SheetException {
        List<PlacedModule> modules = new ArrayList<>();
        for (SheetNode item : section == null ? List.<SheetNode>of() : section.items()) {
            Map<String, SheetNode> fields = item.entries(MODULE_KEYS);
            double turn = SheetSettings.optional(fields.get("turn"), text -> Units.parse(text, Quantity.ANGLE)).orElse(0.0);
            modules.add(new PlacedModule(coordinate(item, fields.get("x"), "x"), coordinate(item, fields.get("y"), "y"), turn,
                    fields.containsKey("string") ? fields.get("string").text() : ""));
        }
        return List.copyOf(modules);
    }

    private static double coordinate(SheetNode item, SheetNode field, String name) throws SheetException {
        return SheetSettings.length(field).orElseThrow(() -> item.wrong("\"" + name + "\" is missing; a module needs x and y, lengths from the upper left corner of the proof"));
    }

    private static Set<Integer> colours(SheetNode section) throws SheetException {
        Set<Integer> colours = new LinkedHashSet<>();
        for (SheetNode item : section == null ? List.<SheetNode>of() : section.items()) {
            colours.add(SheetSettings.optional(item, JobSheet::colour).orElseThrow());
        }
        return Set.copyOf(colours);
    }

    private static int colour(String text) {
        String digits = text.strip().replaceFirst("^#", "");
        if (digits.matches("[0-9a-fA-F]{3}")) {
            digits = digits.replaceAll("(.)", "$1$1");
        }
        if (!digits.matches("[0-9a-fA-F]{6}")) {
            throw new IllegalArgumentException("\"" + text + "\" is not a colour; write it as \"#rrggbb\", in quotes");
        }
        return Integer.parseInt(digits, HEX);
    }
}
