// SPDX-License-Identifier: Apache-2.0
package kerfglow.worker.form;

import java.util.Base64;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKBReader;

/**
 * An object of a message. Every getter throws {@link FormException}, naming the field, when it does not hold what is asked for.
 *
 * @param name what it is called, for complaints
 * @param fields as read: strings, longs, doubles, booleans, lists, maps, null
 */
public record FormNode(String name, Map<String, Object> fields) {
    @SuppressWarnings("unchecked") // the reader makes maps with string keys only
    static FormNode of(String name, Object value) {
        if (value instanceof Map<?, ?> map) {
            return new FormNode(name, (Map<String, Object>) map);
        }
        throw new FormException(name + " must be an object");
    }

    /** What a field holds; null when it is absent. */
    public Object raw(String field) {
        return fields.get(field);
    }

    /** The text of a field. */
    public String text(String field) {
        return require(field, String.class);
    }

    /** The whole number of a field. */
    public long whole(String field) {
        return require(field, Long.class);
    }

    /** The number of a field, NaN and infinities among them. */
    public double number(String field) {
        return numberOf(name + "." + field, fields.get(field));
    }

    /** True or false. */
    public boolean flag(String field) {
        return require(field, Boolean.class);
    }

    /** The object of a field. */
    public FormNode node(String field) {
        return of(name + "." + field, fields.get(field));
    }

    /** The list of a field. */
    public List<?> list(String field) {
        return require(field, List.class);
    }

    /** The objects of a field's list. */
    public List<FormNode> nodes(String field) {
        return list(field).stream().map(each -> of(name + "." + field, each)).toList();
    }

    /** The texts of a field's list. */
    public List<String> texts(String field) {
        for (Object each : list(field)) {
            if (!(each instanceof String)) {
                throw new FormException(name + "." + field + " must hold texts, not " + each);
            }
        }
        return list(field).stream().map(String.class::cast).toList();
    }

    /** A value of the API; null when the field is absent. */
    public <T> T value(String field, Class<T> type) {
        return type.cast(FormValue.read(type, fields.get(field), name + "." + field));
    }

    /** A list of values of the API. */
    public <T> List<T> values(String field, Class<T> type) {
        return list(field).stream().map(each -> type.cast(FormValue.read(type, each, name + "." + field))).toList();
    }

    private <T> T require(String field, Class<T> type) {
        Object value = fields.get(field);
        if (!type.isInstance(value)) {
            throw new FormException(name + "." + field + " must be a " + type.getSimpleName().toLowerCase(Locale.ROOT));
        }
        return type.cast(value);
    }

    static double numberOf(String name, Object value) {
        if (value instanceof Number number) {
            return number.doubleValue();
        }
        if (value instanceof String text && List.of("NaN", "Infinity", "-Infinity").contains(text)) {
            return Double.parseDouble(text);
        }
        throw new FormException(name + " must be a number");
    }

    static Geometry geometryOf(String name, Object value) {
        try {
            return new WKBReader().read(Base64.getDecoder().decode((String) value));
        } catch (ParseException | RuntimeException wrong) { // the reader trusts the counts that it finds
            throw new FormException(name + " holds no geometry: " + wrong.getMessage(), wrong);
        }
    }

    static Coordinate coordinateOf(String name, Object value) {
        if (value instanceof List<?> pair && pair.size() == 2) {
            return new Coordinate(numberOf(name, pair.get(0)), numberOf(name, pair.get(1)));
        }
        throw new FormException(name + " must be [x, y]");
    }
}
