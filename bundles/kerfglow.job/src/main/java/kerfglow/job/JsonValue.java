// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParseException;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A value of a JSON text (RFC 8259) that still knows where it stands, so that every complaint can name the place. */
final class JsonValue {
    private static final JsonFactory FACTORY = new JsonFactory();

    private final JsonToken token;
    private final String text;
    private final Map<String, JsonValue> fields;
    private final List<JsonValue> items;
    private final int line;
    private final int column;
    private final int start;
    private int end;

    private JsonValue(JsonParser parser) throws IOException {
        token = parser.currentToken();
        text = token.isScalarValue() ? parser.getText() : "";
        line = parser.currentTokenLocation().getLineNr();
        column = parser.currentTokenLocation().getColumnNr();
        start = (int) parser.currentTokenLocation().getCharOffset();
        fields = isObject() ? new LinkedHashMap<>() : Map.of();
        items = isArray() ? new ArrayList<>() : List.of();
    }

    /** The first value of a whole text. */
    static JsonValue first(String text) throws JobProblem {
        return first(text.toCharArray(), 0, new Budget());
    }

    /** What reading may cost in all: each value takes some 150 bytes of memory, and a damaged text is tried again from many places. */
    static final class Budget {
        /** Assumed: ten thousand findings with 25 values each, four times over. */
        private static final int MOST_VALUES = 1_000_000;
        /** Eight times the longest job file. */
        private static final long MOST_CHARACTERS = 8 * StoredJob.MOST_BYTES;
        private int left = MOST_VALUES;
        private long charactersLeft = MOST_CHARACTERS;

        boolean isSpent() {
            return left <= 0 || charactersLeft <= 0;
        }

        private void spend(JsonParser parser) throws JsonParseException {
            if (left-- <= 0) {
                throw new JsonParseException(parser, "more than " + MOST_VALUES + " values (limit on values); this is not a job file");
            }
        }
    }

    /**
     * Reads the first value of a text; what stands after it is left alone.
     *
     * @param from where it begins; offsets, lines and columns count from there
     * @param budget what may still be spent
     * @throws JobProblem naming line and column of the first fault
     */
    static JsonValue first(char[] text, int from, Budget budget) throws JobProblem {
        try (JsonParser parser = FACTORY.createParser(text, from, text.length - from)) {
            try {
                if (parser.nextToken() == null) {
                    throw new JobProblem("the file is empty", 1, 1);
                }
                return read(parser, budget);
            } finally {
                budget.charactersLeft -= parser.currentLocation().getCharOffset();
            }
        } catch (JsonProcessingException broken) {
            int line = broken.getLocation() == null ? 1 : broken.getLocation().getLineNr();
            int column = broken.getLocation() == null ? 1 : broken.getLocation().getColumnNr();
            String what = broken instanceof JsonParseException ? broken.getOriginalMessage() : "the text ends too early";
            throw new JobProblem(what, line, column);
        } catch (IOException never) {
            throw new IllegalStateException("reading from a text", never);
        }
    }

    private static JsonValue read(JsonParser parser, Budget budget) throws IOException {
        budget.spend(parser);
        JsonValue value = new JsonValue(parser);
        if (value.isObject()) {
            while (parser.nextToken() == JsonToken.FIELD_NAME) {
                String name = parser.currentName();
                parser.nextToken();
                value.fields.put(name, read(parser, budget));
            }
        } else if (value.isArray()) {
            while (parser.nextToken() != JsonToken.END_ARRAY) {
                value.items.add(read(parser, budget));
            }
        }
        value.end = (int) parser.currentLocation().getCharOffset();
        return value;
    }

    boolean isObject() {
        return token == JsonToken.START_OBJECT;
    }

    boolean isArray() {
        return token == JsonToken.START_ARRAY;
    }

    int line() {
        return line;
    }

    /** Offset of its first character in the text that it was read from. */
    int start() {
        return start;
    }

    /** Offset after its last character. */
    int end() {
        return end;
    }

    JobProblem wrong(String message) {
        return new JobProblem(message, line, column);
    }

    Map<String, JsonValue> fields() {
        return fields;
    }

    /** The items of an array; another value counts as an array of one, as in JSON-LD. */
    List<JsonValue> items() {
        return isArray() ? items : List.of(this);
    }

    Optional<JsonValue> field(String name) {
        return Optional.ofNullable(fields.get(name)).filter(value -> value.token != JsonToken.VALUE_NULL);
    }

    JsonValue required(String name) throws JobProblem {
        return field(name).orElseThrow(() -> wrong("\"" + name + "\" is missing here"));
    }

    /** The items of an array that may be left out. */
    List<JsonValue> list(String name) {
        return field(name).map(JsonValue::items).orElse(List.of());
    }

    String text() throws JobProblem {
        if (token != JsonToken.VALUE_STRING) {
            throw wrong("a text is wanted here");
        }
        return text;
    }

    /** True when it is this text. */
    boolean says(String words) {
        return token == JsonToken.VALUE_STRING && text.equals(words);
    }

    double number() throws JobProblem {
        if (!token.isNumeric()) {
            throw wrong("a number is wanted here");
        }
        double number = Double.parseDouble(text);
        if (!Double.isFinite(number)) {
            throw wrong("a number that is too large");
        }
        return number;
    }

    String text(String name) throws JobProblem {
        return required(name).text();
    }

    /** A text that may be left out; empty then. */
    String textOr(String name, String otherwise) throws JobProblem {
        Optional<JsonValue> value = field(name);
        return value.isPresent() ? value.get().text() : otherwise;
    }

    double number(String name) throws JobProblem {
        return required(name).number();
    }

    List<String> texts(String name) throws JobProblem {
        List<String> texts = new ArrayList<>();
        for (JsonValue item : list(name)) {
            texts.add(item.text());
        }
        return texts;
    }
}
