// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import kerfglow.api.Units;
import kerfglow.api.proof.Role;

/** The section {@code settings}, which job sheets and shop sheets share, and the scopes in it. */
final class SheetSettings {
    private static final Set<String> SCOPE_KEYS = Set.of("role", "material", "thickness", "layer", "part");
    private static final Set<String> ENTRY_KEYS = Stream.concat(SCOPE_KEYS.stream(), Stream.of("value")).collect(Collectors.toUnmodifiableSet());

    private SheetSettings() {
    }

    static List<GivenValue> read(SheetNode section, GivenValue.Origin origin) throws SheetException {
        List<GivenValue> values = new ArrayList<>();
        for (Map.Entry<String, SheetNode> entry : section.entries().entrySet()) {
            for (SheetNode item : entry.getValue().items()) {
                if (item.isMap()) {
                    Map<String, SheetNode> fields = item.entries(ENTRY_KEYS);
                    SheetNode value = fields.get("value");
                    if (value == null) {
                        throw item.wrong("\"value\" is missing");
                    }
                    values.add(new GivenValue(entry.getKey(), value.text(), scope(fields), origin, value.from()));
                } else {
                    values.add(new GivenValue(entry.getKey(), item.text(), Scope.ALL, origin, item.from()));
                }
            }
        }
        return values;
    }

    /** The scope that the given keys describe. */
    static Scope scope(Map<String, SheetNode> fields) throws SheetException {
        return new Scope(optional(fields.get("role"), SheetSettings::role), optional(fields.get("material"), Function.identity()),
                length(fields.get("thickness")), optional(fields.get("layer"), Function.identity()), optional(fields.get("part"), Function.identity()));
    }

    /** Reads what the command line writes: {@code KEY=VALUE} or {@code KEY[role=face,material=acrylic]=VALUE}. */
    static GivenValue fromCommandLine(String text) throws SheetException {
        int bracket = text.indexOf('[');
        int equals = text.indexOf('=');
        Scope scope = Scope.ALL;
        String key;
        String value;
        if (bracket >= 0 && bracket < equals) {
            int end = text.indexOf("]=", bracket);
            if (end < 0) {
                throw new SheetException("--set " + text + ": write KEY[role=face,layer=Letters]=VALUE", null);
            }
            StringBuilder yaml = new StringBuilder("{");
            for (String pair : text.substring(bracket + 1, end).split(",")) {
                yaml.append(yaml.length() > 1 ? ", " : "").append(pair.replaceFirst("=", ": \"").strip()).append('"');
            }
            scope = scope(SheetNode.parse("--set", yaml.append('}').toString()).entries(SCOPE_KEYS));
            key = text.substring(0, bracket);
            value = text.substring(end + 2);
        } else if (equals > 0) {
            key = text.substring(0, equals);
            value = text.substring(equals + 1);
        } else {
            throw new SheetException("--set " + text + ": write KEY=VALUE, for instance --set host.check-time-limit=30", null);
        }
        return new GivenValue(key.strip(), value.strip(), scope, GivenValue.Origin.COMMAND_LINE, "command line");
    }

    private static Role role(String word) {
        return Role.of(word).orElseThrow(() -> new IllegalArgumentException("\"" + word + "\" is not a role; known: "
                + Stream.of(Role.values()).map(Role::word).collect(Collectors.joining(", "))));
    }

    static Role role(SheetNode node) throws SheetException {
        return optional(node, SheetSettings::role).orElseThrow();
    }

    static OptionalDouble length(SheetNode node) throws SheetException {
        return optional(node, Units::lengthMm).map(OptionalDouble::of).orElse(OptionalDouble.empty());
    }

    static <T> Optional<T> optional(SheetNode node, Function<String, T> read) throws SheetException {
        if (node == null) {
            return Optional.empty();
        }
        try {
            return Optional.of(read.apply(node.text()));
        } catch (IllegalArgumentException wrong) {
            throw node.wrong(wrong.getMessage(), wrong);
        }
    }
}
