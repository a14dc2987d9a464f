// SPDX-License-Identifier: Apache-2.0
package kerfglow.api;

import java.util.List;
import java.util.Locale;
import java.util.Objects;

/**
 * A typed value that a shop or a job can give: for everything, or for a role, material, thickness, layer or part.
 *
 * @param <T> Double for quantities (in {@link Quantity#unit()}), Integer for counts, Boolean for flags, String for choices
 *     and text
 */
public final class Setting<T> {
    /** What its values are. */
    public enum Type {
        /** A Double in the unit of the quantity. */
        NUMBER,
        /** An Integer. */
        COUNT,
        /** A Boolean. */
        FLAG,
        /** A String, one of a few. */
        CHOICE,
        /** A String. */
        TEXT
    }

    private final String key;
    private final String title;
    private final Type type;
    private final Quantity quantity;
    private final T defaultValue;
    private final double min;
    private final double max;
    private final List<String> choices;
    private final String reason;
    private final String source;

    private Setting(String key, String title, Type type, Quantity quantity, T defaultValue, double min, double max,
            List<String> choices, String reason, String source) {
        this.key = requireText(key, "key", key);
        this.title = requireText(key, "title", title);
        this.type = type;
        this.quantity = quantity;
        this.min = min;
        this.max = max;
        this.choices = List.copyOf(choices);
        this.reason = requireText(key, "reason", reason);
        this.source = requireText(key, "source", source);
        this.defaultValue = defaultValue == null ? null : requireAllowed(defaultValue);
    }

    /**
     * A quantity.
     *
     * @param key {@code check.setting}, lower case with hyphens
     * @param title what it is, a noun phrase
     * @param quantity what it measures; min, max and default are in its unit
     * @param defaultValue used when nobody gives another; null only for a field of a {@link StockKind} that must be given, and for a
     *     setting that has no value until somebody gives one, read with {@link Settings#given}
     * @param min least value allowed
     * @param max greatest value allowed
     * @param reason why the default is what it is
     * @param source the published source, or "common practice, no source", or "geometry"
     */
    public static Setting<Double> number(String key, String title, Quantity quantity, Double defaultValue, double min, double max,
            String reason, String source) {
        return new Setting<>(key, title, Type.NUMBER, quantity, defaultValue, min, max, List.of(), reason, source);
    }

    /** A length, mm; see {@link #number}. */
    public static Setting<Double> lengthMm(String key, String title, Double defaultMm, double minMm, double maxMm, String reason,
            String source) {
        return number(key, title, Quantity.LENGTH, defaultMm, minMm, maxMm, reason, source);
    }

    /** A whole number; see {@link #number}. */
    public static Setting<Integer> count(String key, String title, Integer defaultValue, int min, int max, String reason,
            String source) {
        return new Setting<>(key, title, Type.COUNT, Quantity.COUNT, defaultValue, min, max, List.of(), reason, source);
    }

    /** Yes or no. */
    public static Setting<Boolean> flag(String key, String title, Boolean defaultValue, String reason, String source) {
        return new Setting<>(key, title, Type.FLAG, Quantity.RATIO, defaultValue, 0, 1, List.of("yes", "no"), reason, source);
    }

    /** One of a few words. */
    public static Setting<String> choice(String key, String title, String defaultValue, List<String> choices, String reason,
            String source) {
        return new Setting<>(key, title, Type.CHOICE, Quantity.RATIO, defaultValue, 0, 0, choices, reason, source);
    }

    /** Free text. */
    public static Setting<String> text(String key, String title, String defaultValue, String reason, String source) {
        return new Setting<>(key, title, Type.TEXT, Quantity.RATIO, defaultValue, 0, 0, List.of(), reason, source);
    }

    /** {@code check.setting}, as sheets write it. */
    public String key() {
        return key;
    }

    /** What it is, a noun phrase. */
    public String title() {
        return title;
    }

    /** What its values are. */
    public Type type() {
        return type;
    }

    /** Least value of a number or count; without meaning for others. */
    public double min() {
        return min;
    }

    /** Greatest value of a number or count; without meaning for others. */
    public double max() {
        return max;
    }

    /** The words of a choice; {@code yes} and {@code no} for a flag; empty for others. */
    public List<String> choices() {
        return choices;
    }

    /** What a number measures; without meaning for flags, choices and text. */
    public Quantity quantity() {
        return quantity;
    }

    /** Null only for a field of a stock kind that must be given, and for a setting without a value of its own. */
    public T defaultValue() {
        return defaultValue;
    }

    /** Why the default is what it is. */
    public String reason() {
        return reason;
    }

    /** Where the default comes from. */
    public String source() {
        return source;
    }

    /**
     * Reads a value as a person writes it.
     *
     * @throws IllegalArgumentException when it cannot be read or lies outside the range; the message names key, value and range
     */
    @SuppressWarnings("unchecked") // the type field and T agree by construction in the factories above
    public T parse(String text) {
        try {
            return requireAllowed((T) switch (type) {
                case NUMBER -> (Object) Units.parse(text, quantity);
                case COUNT -> (Object) (int) Units.parse(text, quantity);
                case FLAG -> (Object) flagOf(text);
                case CHOICE, TEXT -> (Object) text.strip();
            });
        } catch (IllegalArgumentException wrong) {
            throw wrong.getMessage().startsWith(key + ":") ? wrong : new IllegalArgumentException(key + ": " + wrong.getMessage(), wrong);
        }
    }

    private static Boolean flagOf(String text) {
        return switch (text.strip().toLowerCase(Locale.ROOT)) {
            case "yes", "true", "on" -> true;
            case "no", "false", "off" -> false;
            default -> throw new IllegalArgumentException("\"" + text + "\" must be yes or no");
        };
    }

    /**
     * The value itself when the range allows it.
     *
     * @throws IllegalArgumentException when it does not; the message names key, value and range
     */
    public T requireAllowed(T value) {
        Objects.requireNonNull(value, key);
        if (value instanceof Number number && !(number.doubleValue() >= min && number.doubleValue() <= max)) {
            throw new IllegalArgumentException(key + ": " + format(value, UnitSystem.METRIC) + " is outside " + range(UnitSystem.METRIC));
        }
        if (type == Type.CHOICE && !choices.contains(value)) {
            throw new IllegalArgumentException(key + ": \"" + value + "\" is not one of " + String.join(", ", choices));
        }
        return value;
    }

    /** The value for a person. */
    public String format(T value, UnitSystem system) {
        if (value instanceof Number number) {
            return Units.format(number.doubleValue(), quantity, system);
        }
        return value instanceof Boolean flag ? flag ? "yes" : "no" : String.valueOf(value);
    }

    /** The range for a person, for instance {@code 0.1 mm to 25 mm}. */
    public String range(UnitSystem system) {
        return switch (type) {
            case NUMBER, COUNT -> Units.format(min, quantity, system) + " to " + Units.format(max, quantity, system);
            case FLAG, CHOICE -> String.join(", ", choices);
            case TEXT -> "text";
        };
    }

    /** The unit that values are kept in, empty where there is none. */
    public String unit() {
        return type == Type.NUMBER ? quantity.unit() : "";
    }

    private static String requireText(String key, String name, String text) {
        if (text == null || text.isBlank()) {
            throw new IllegalArgumentException("setting " + key + " has no " + name);
        }
        return text;
    }
}
