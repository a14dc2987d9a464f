// SPDX-License-Identifier: Apache-2.0
package kerfglow.worker.form;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Reads messages that {@link FormWriter} wrote, one after the other, each no longer than allowed. */
public final class FormReader {
    private final Counted in;
    private final JsonParser json;

    /**
     * A reader.
     *
     * @param in where messages come from
     * @param mostBytes the longest message that is read
     */
    public FormReader(InputStream in, long mostBytes) throws IOException {
        this.in = new Counted(in, mostBytes);
        JsonFactory factory = JsonFactory.builder()
                .streamReadConstraints(StreamReadConstraints.builder().maxStringLength(Integer.MAX_VALUE).build()).build(); // the length of the message bounds it
        json = factory.createParser(this.in);
    }

    /**
     * The next message.
     *
     * @return null at the end
     * @throws IOException when it cannot be read
     * @throws FormException when it is too long or no message
     */
    public FormNode next() throws IOException {
        in.read = 0;
        JsonToken first = json.nextToken();
        if (first == null) {
            return null;
        }
        if (first != JsonToken.START_OBJECT) {
            throw new FormException("a message begins with {, not with " + first);
        }
        return FormNode.of("message", object());
    }

    private Map<String, Object> object() throws IOException {
        Map<String, Object> fields = new LinkedHashMap<>();
        while (json.nextToken() == JsonToken.FIELD_NAME) {
            String name = json.currentName();
            json.nextToken();
            fields.put(name, value());
        }
        return fields;
    }

    private Object value() throws IOException {
        return switch (json.currentToken()) {
            case START_OBJECT -> object();
            case START_ARRAY -> {
                List<Object> values = new ArrayList<>();
                while (json.nextToken() != JsonToken.END_ARRAY) {
                    values.add(value());
                }
                yield values;
            }
            case VALUE_STRING -> json.getText();
            case VALUE_NUMBER_INT -> json.getLongValue();
            case VALUE_NUMBER_FLOAT -> json.getDoubleValue();
            case VALUE_TRUE -> true;
            case VALUE_FALSE -> false;
            default -> null;
        };
    }

    /** Counts what is read for one message, to within the parser's buffer. */
    private static final class Counted extends FilterInputStream {
        private final long most;
        private long read;

        Counted(InputStream in, long most) {
            super(in);
            this.most = most;
        }

        @Override
        public int read(byte[] bytes, int from, int length) throws IOException {
            int got = super.read(bytes, from, length);
            read += Math.max(0, got);
            if (read > most) {
                throw new FormException("a message is longer than " + most / (1 << 20) + " MiB");
            }
            return got;
        }
    }
}
