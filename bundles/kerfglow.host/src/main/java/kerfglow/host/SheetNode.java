// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;
import org.snakeyaml.engine.v2.nodes.Tag;

/** A place in a sheet (YAML 1.2) that still knows its file, line and key, so that every complaint can name them. */
final class SheetNode {
    /** A sheet is typed by hand; a longer one is not a sheet. */
    private static final int MAX_CHARACTERS = 2_000_000;
    /** Deeper than any sheet here; stops a file made to exhaust the stack. */
    private static final int MAX_DEPTH = 20;

    /** The longest sentence that says what would be right names the roles or the keys and has some 300 characters. Assumed. */
    private static final int MOST_QUOTED = 600;

    private final String file;
    private final String key;
    private final Node node;

    private SheetNode(String file, String key, Node node) {
        this.file = file;
        this.key = key;
        this.node = node;
    }

    /**
     * Reads a sheet.
     *
     * @throws SheetException when it is missing, not YAML, or not a list of keys at the top
     */
    static SheetNode read(Path path) throws SheetException {
        String name = String.valueOf(path.getFileName());
        try {
            byte[] bytes = InputFile.read(path, MAX_CHARACTERS, "a sheet");
            return parse(name, StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString());
        } catch (NoSuchFileException missing) {
            throw new SheetException(path + ": there is no such file", missing);
        } catch (CharacterCodingException wrong) {
            throw new SheetException(name + ": not UTF-8 text; save the sheet as UTF-8", wrong);
        } catch (IOException unreadable) {
            throw new SheetException(path + ": cannot be read: " + unreadable.getMessage(), unreadable);
        }
    }

    static SheetNode parse(String name, String text) throws SheetException {
        LoadSettings settings = LoadSettings.builder().setLabel(name).setAllowDuplicateKeys(false).setCodePointLimit(MAX_CHARACTERS)
                .setMaxAliasesForCollections(0).build();
        try {
            Optional<Node> root = new Compose(settings).composeString(text);
            if (root.isEmpty()) {
                throw new SheetException(name + ": the sheet is empty", null);
            }
            SheetNode top = new SheetNode(name, "", root.get());
            top.requireShallow(root.get(), MAX_DEPTH);
            if (!(root.get() instanceof MappingNode)) {
                throw top.wrong("the sheet must be a list of keys with values, for instance \"units: metric\"");
            }
            return top;
        } catch (MarkedYamlEngineException broken) {
            String where = broken.getProblemMark().map(mark -> ", line " + (mark.getLine() + 1) + ", column " + (mark.getColumn() + 1)).orElse("");
            throw new SheetException(name + where + ": " + broken.getProblem() + "; check indentation and quotes here", broken);
        } catch (YamlEngineException | StackOverflowError broken) {
            throw new SheetException(name + ": not readable as a sheet (" + broken.getMessage() + ")", broken);
        }
    }

    private void requireShallow(Node each, int left) throws SheetException {
        if (left == 0) {
            throw new SheetNode(file, key, each).wrong("nested deeper than " + MAX_DEPTH + " levels");
        }
        if (each instanceof MappingNode mapping) {
            for (NodeTuple tuple : mapping.getValue()) {
                requireShallow(tuple.getValueNode(), left - 1);
            }
        } else if (each instanceof SequenceNode sequence) {
            for (Node child : sequence.getValue()) {
                requireShallow(child, left - 1);
            }
        }
    }

    int line() {
        return node.getStartMark().map(mark -> mark.getLine() + 1).orElse(0);
    }

    String key() {
        return key;
    }

    /** File and line, for "from" in results. */
    String from() {
        return file + " line " + line();
    }

    /** A complaint about this place. */
    SheetException wrong(String message) {
        return wrong(message, null);
    }

    SheetException wrong(String message, Throwable cause) {
        return new SheetException(file + ", line " + line() + (key.isEmpty() ? "" : ", " + shortened(key)) + ": " + shortened(message), cause);
    }

    /** A complaint quotes what stands there, which may be a whole sheet. */
    private static String shortened(String text) {
        return text.length() <= MOST_QUOTED ? text : text.substring(0, MOST_QUOTED / 2) + " ... " + text.substring(text.length() - MOST_QUOTED / 2);
    }

    boolean isList() {
        return node instanceof SequenceNode;
    }

    boolean isMap() {
        return node instanceof MappingNode;
    }

    /** The text of a plain value. */
    String text() throws SheetException {
        if (!(node instanceof ScalarNode scalar)) {
            throw wrong("one value is wanted here, not a list or a group of keys");
        }
        if (scalar.getTag().equals(Tag.NULL)) {
            throw wrong("no value here; a value that begins with # must stand in quotes, for instance \"#ff0000\"");
        }
        return scalar.getValue();
    }

    /** The items of a list; a single value counts as a list of one. */
    List<SheetNode> items() {
        if (!(node instanceof SequenceNode sequence)) {
            return List.of(this);
        }
        List<SheetNode> items = new ArrayList<>();
        for (Node item : sequence.getValue()) {
            items.add(new SheetNode(file, key, item));
        }
        return items;
    }

    /** The values of a group of keys, in order. */
    Map<String, SheetNode> entries() throws SheetException {
        if (!(node instanceof MappingNode mapping)) {
            throw wrong("a group of keys with values is wanted here");
        }
        Map<String, SheetNode> entries = new LinkedHashMap<>();
        for (NodeTuple tuple : mapping.getValue()) {
            String name = new SheetNode(file, key, tuple.getKeyNode()).text();
            String path = key.isEmpty() ? name : key + "." + name;
            if (entries.put(name, new SheetNode(file, path, tuple.getValueNode())) != null) {
                throw new SheetNode(file, path, tuple.getKeyNode()).wrong("stands here a second time; take one of them out");
            }
        }
        return entries;
    }

    /** The values of a group of keys, of which only these are known. */
    Map<String, SheetNode> entries(Set<String> known) throws SheetException {
        Map<String, SheetNode> entries = entries();
        for (Map.Entry<String, SheetNode> entry : entries.entrySet()) {
            if (!known.contains(entry.getKey())) {
                throw entry.getValue().wrong("unknown key; known here: " + String.join(", ", known.stream().sorted().toList()));
            }
        }
        return entries;
    }
}
