// SPDX-License-Identifier: Apache-2.0
package kerfglow.worker.form;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.OutputStream;
import java.lang.reflect.RecordComponent;
import java.nio.ByteBuffer;
import java.util.Collection;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import kerfglow.api.Finding;
import kerfglow.api.Setting;
import kerfglow.api.Table;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.Part;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.WKBWriter;

/**
 * Writes values of the API as JSON, one message a line. A record is an object whose fields are its components by name, an enumeration
 * its name, a geometry its well-known binary (OGC 06-103r4) in base64, so that no digit is lost; what is absent is null.
 */
public final class FormWriter {
    private static final JsonFactory FACTORY = new JsonFactory();

    private final JsonGenerator json;

    /** A writer onto a stream, which is flushed after each message. */
    public FormWriter(OutputStream out) throws IOException {
        json = FACTORY.createGenerator(out);
        json.setRootValueSeparator(null);
    }

    /**
     * Writes one message.
     *
     * @param kind what it is
     * @param fields its further fields in order
     * @throws IOException when the other side is gone
     */
    public synchronized void message(String kind, Map<String, ?> fields) throws IOException {
        json.writeStartObject();
        json.writeStringField("kind", kind);
        fields(fields);
        json.writeEndObject();
        json.writeRaw('\n');
        json.flush();
    }

    private void fields(Map<?, ?> fields) throws IOException {
        for (Map.Entry<?, ?> field : fields.entrySet()) {
            json.writeFieldName(field.getKey().toString());
            value(field.getValue());
        }
    }

    private void value(Object value) throws IOException {
        if (value == null) {
            json.writeNull();
        } else if (value instanceof String text) {
            json.writeString(text);
        } else if (value instanceof Enum<?> word) {
            json.writeString(word.name());
        } else if (value instanceof Boolean flag) {
            json.writeBoolean(flag);
        } else if (value instanceof Integer || value instanceof Long) {
            json.writeNumber(((Number) value).longValue());
        } else if (value instanceof Double number) {
            json.writeNumber(number);
        } else if (value instanceof Optional<?> optional) {
            value(optional.orElse(null));
        } else if (value instanceof OptionalDouble optional) {
            value(optional.isPresent() ? (Object) optional.getAsDouble() : null);
        } else if (value instanceof Collection<?> many) {
            json.writeStartArray();
            for (Object each : many) {
                value(each);
            }
            json.writeEndArray();
        } else if (value instanceof Map<?, ?> map) {
            json.writeStartObject();
            fields(map);
            json.writeEndObject();
        } else {
            ofTheApi(value);
        }
    }

    private void ofTheApi(Object value) throws IOException {
        if (value instanceof Geometry geometry) {
            json.writeBinary(new WKBWriter().write(geometry));
        } else if (value instanceof Coordinate at) {
            json.writeArray(new double[] {at.x, at.y}, 0, 2);
        } else if (value instanceof int[] numbers) {
            ByteBuffer bytes = ByteBuffer.allocate(numbers.length * Integer.BYTES);
            bytes.asIntBuffer().put(numbers);
            json.writeBinary(bytes.array());
        } else if (value instanceof Element element) {
            value(ElementForm.fields(element));
        } else if (value instanceof Part part) {
            value(PartForm.fields(part));
        } else if (value instanceof Finding finding) {
            value(FindingForm.fields(finding));
        } else if (value instanceof Setting<?> setting) {
            value(SettingForm.fields(setting));
        } else if (value instanceof Table table) {
            value(TableForm.fields(table));
        } else if (value instanceof Record object) {
            object(object);
        } else {
            throw new FormException("there is no form for " + value.getClass().getName());
        }
    }

    private void object(Record value) throws IOException {
        json.writeStartObject();
        for (RecordComponent component : value.getClass().getRecordComponents()) {
            json.writeFieldName(component.getName());
            try {
                value(component.getAccessor().invoke(value));
            } catch (ReflectiveOperationException closed) {
                throw new FormException("there is no form for " + value.getClass().getName(), closed);
            }
        }
        json.writeEndObject();
    }
}
