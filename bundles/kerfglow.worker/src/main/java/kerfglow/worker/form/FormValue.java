// SPDX-License-Identifier: Apache-2.0
package kerfglow.worker.form;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Base64;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import kerfglow.api.Setting;
import kerfglow.api.Table;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.Part;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;

/** Makes values of the API out of what {@link FormReader} read; the other half of {@link FormWriter}. */
final class FormValue {
    private FormValue() {
    }

    /**
     * A value of the type.
     *
     * @param type of the API, or of what its records are made of
     * @param value as read
     * @param name what it is called, for complaints
     * @throws FormException when it cannot be made
     */
    static Object read(Type type, Object value, String name) {
        if (type instanceof ParameterizedType generic) {
            return ofGeneric(generic, value, name);
        }
        Class<?> wanted = (Class<?>) type;
        if (wanted == OptionalDouble.class) {
            return value == null ? OptionalDouble.empty() : OptionalDouble.of(FormNode.numberOf(name, value));
        }
        if (wanted == double.class || wanted == Double.class) {
            return FormNode.numberOf(name, value);
        }
        if (value == null) {
            if (wanted.isPrimitive()) {
                throw new FormException(name + " is missing");
            }
            return null;
        }
        if (wanted == int.class || wanted == Integer.class) {
            return (int) FormNode.numberOf(name, value);
        }
        if (wanted == boolean.class || wanted == String.class) {
            if (value.getClass() != (wanted == String.class ? String.class : Boolean.class)) {
                throw new FormException(name + " must be a " + wanted.getSimpleName().toLowerCase(Locale.ROOT));
            }
            return value;
        }
        if (wanted.isEnum()) {
            return Arrays.stream(wanted.getEnumConstants()).filter(each -> ((Enum<?>) each).name().equals(value)).findFirst()
                    .orElseThrow(() -> new FormException(name + " cannot be " + value));
        }
        return ofTheApi(wanted, value, name);
    }

    private static Object ofGeneric(ParameterizedType type, Object value, String name) {
        Class<?> raw = (Class<?>) type.getRawType();
        Type of = type.getActualTypeArguments()[0];
        if (raw == Setting.class) {
            return SettingForm.read(FormNode.of(name, value));
        }
        if (raw == Optional.class) {
            return Optional.ofNullable(value == null ? null : read(of, value, name));
        }
        if (!(value instanceof List<?> values) || raw != List.class && raw != Set.class) {
            throw new FormException(name + " must be a list");
        }
        List<Object> read = new ArrayList<>(values.size());
        values.forEach(each -> read.add(read(of, each, name)));
        return raw == Set.class ? new LinkedHashSet<>(read) : read;
    }

    private static Object ofTheApi(Class<?> type, Object value, String name) {
        if (Geometry.class.isAssignableFrom(type)) {
            Geometry geometry = FormNode.geometryOf(name, value);
            if (!type.isInstance(geometry)) {
                throw new FormException(name + " must be a " + type.getSimpleName().toLowerCase(Locale.ROOT));
            }
            return geometry;
        }
        if (type == Coordinate.class) {
            return FormNode.coordinateOf(name, value);
        }
        if (type == int[].class) {
            ByteBuffer bytes = ByteBuffer.wrap(Base64.getDecoder().decode((String) value));
            int[] numbers = new int[bytes.remaining() / Integer.BYTES];
            bytes.asIntBuffer().get(numbers);
            return numbers;
        }
        FormNode node = FormNode.of(name, value);
        return type == Element.class ? ElementForm.read(node) : type == Part.class ? PartForm.read(node) : type == Table.class ? TableForm.read(node) : record(type, node);
    }

    private static Object record(Class<?> type, FormNode node) {
        RecordComponent[] components = type.getRecordComponents();
        if (components == null) {
            throw new FormException("there is no form for " + type.getName());
        }
        Class<?>[] types = new Class<?>[components.length];
        Object[] values = new Object[components.length];
        for (int i = 0; i < components.length; i++) {
            types[i] = components[i].getType();
            values[i] = read(components[i].getGenericType(), node.raw(components[i].getName()), node.name() + "." + components[i].getName());
        }
        try {
            return type.getConstructor(types).newInstance(values);
        } catch (InvocationTargetException refused) {
            throw new FormException(node.name() + ": " + refused.getCause().getMessage(), refused.getCause());
        } catch (ReflectiveOperationException closed) {
            throw new FormException("there is no form for " + type.getName(), closed);
        }
    }
}
