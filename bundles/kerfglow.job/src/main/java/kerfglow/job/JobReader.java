// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import kerfglow.host.JobSheet;
import kerfglow.host.SheetException;

/**
 * Reads the text of a job file. What cannot be read is told with line and column and left out; each mark, waiver, sign-off and key of the
 * job sheet stands for itself. Where the text is no JSON at all, entries that are whole are still found in it.
 */
final class JobReader {
    /** How each of our entries and the job itself begin. */
    private static final Pattern ENTRY = Pattern.compile("\\{\\s*\"(@context|type)\"");
    private static final Pattern SECTION = Pattern.compile("\"(sheet|proof)\"\\s*:\\s*(?=\\{)");

    /** As many as fit a screen; assumed. */
    private static final int MOST_PROBLEMS = 20;
    /** Several times the keys that there are; each is tried with all before it. */
    private static final int MOST_KEYS = 50;

    private final String name;
    private final String text;
    private final Path folder;
    private final List<String> problems = new ArrayList<>();
    private Optional<ProofRef> proof = Optional.empty();
    private Optional<JobSheet> sheet = Optional.empty();
    private final List<Mark> marks = new ArrayList<>();
    private final List<Waiver> waivers = new ArrayList<>();
    private final List<SignOff> signOffs = new ArrayList<>();
    private Snapshot seen = Snapshot.NONE;
    private String previous = "";
    private String saved = "";
    private int format = JobJson.FORMAT;

    private JobReader(String name, String text, Path folder) {
        this.name = name;
        this.text = text;
        this.folder = folder;
    }

    /**
     * What was read.
     *
     * @param state the job; where the proof is not named, its file is the job file's own name with the ending .svg
     * @param problems what could not be read, one sentence each; empty for a whole file
     * @param previous digest of the file that this one took the place of
     * @param saved when it was written, as it stands there
     * @param format of the file
     */
    record Read(JobState state, List<String> problems, String previous, String saved, int format) {
    }

    static Read read(String name, byte[] bytes, Path folder) {
        String text = new String(bytes, StandardCharsets.UTF_8);
        JobReader reader = new JobReader(name, text, folder);
        reader.requireUtf8(bytes);
        try {
            JsonValue top = JsonValue.first(text);
            reader.whole(top);
            if (!text.substring(top.end()).isBlank()) {
                reader.problems.add("something stands after the end of the job");
            }
        } catch (JobProblem broken) {
            reader.problems.add(broken.told());
            reader.salvage();
        }
        ProofRef proof = reader.proof.orElseGet(() -> ProofRef.of(name.replaceFirst("\\.[^.]*$", "") + ".svg"));
        return new Read(new JobState(proof, reader.sheet.orElse(JobSheet.NONE), reader.marks, reader.waivers, reader.signOffs, reader.seen), reader.told(),
                reader.previous, reader.saved, reader.format);
    }

    /** Nobody reads thousands of sentences. */
    private List<String> told() {
        List<String> told = new ArrayList<>(problems.subList(0, Math.min(MOST_PROBLEMS, problems.size())));
        if (problems.size() > MOST_PROBLEMS) {
            told.add("and " + (problems.size() - MOST_PROBLEMS) + " more");
        }
        return List.copyOf(told);
    }

    /** Bytes that are no text would otherwise turn into question marks in silence. */
    private void requireUtf8(byte[] bytes) {
        CharBuffer read = CharBuffer.allocate(bytes.length);
        if (StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes), read, true).isError()) {
            long line = 1 + read.flip().chars().filter(character -> character == '\n').count();
            problems.add("line " + line + ": bytes that are not UTF-8 text");
        }
    }

    private interface Reading {
        void run() throws JobProblem;
    }

    private void attempt(Reading reading) {
        try {
            reading.run();
        } catch (JobProblem wrong) {
            problems.add(wrong.told());
        }
    }

    private void whole(JsonValue top) throws JobProblem {
        if (!top.isObject() || !top.textOr("type", "").equals("kerfglow:Job")) {
            throw top.wrong("this is not a job file: it does not begin as one");
        }
        attempt(() -> format = (int) top.number("format"));
        attempt(() -> previous = top.textOr("previous", ""));
        attempt(() -> saved = top.textOr("saved", ""));
        attempt(() -> proof = Optional.of(EntryReader.proof(top.required("proof"))));
        attempt(() -> sheet(top.required("sheet")));
        for (String section : List.of("marks", "waivers", "signOffs")) {
            for (JsonValue entry : top.list(section)) {
                attempt(() -> entry(entry));
            }
        }
        if (top.field("seen").isPresent()) {
            attempt(() -> seen = EntryReader.seen(top.required("seen")));
        }
    }

    /** Tries wherever an entry may begin; what is whole there is taken. */
    private void salvage() {
        int taken = 0;
        char[] characters = text.toCharArray();
        JsonValue.Budget budget = new JsonValue.Budget();
        Matcher entry = ENTRY.matcher(text);
        for (int at = 0; !budget.isSpent() && entry.find(at); at = Math.max(entry.end(), taken)) {
            try {
                JsonValue value = JsonValue.first(characters, entry.start(), budget);
                if (isEntry(value)) {
                    taken = entry.start() + value.end();
                    entry(value);
                }
            } catch (JobProblem damaged) {
                // told already, by the first fault of the file; what is whole further on is still looked for
            }
        }
        Matcher section = SECTION.matcher(text);
        while (!budget.isSpent() && section.find()) {
            try {
                JsonValue value = JsonValue.first(characters, section.end(), budget);
                if (section.group(1).equals("proof") && proof.isEmpty()) {
                    proof = Optional.of(EntryReader.proof(value));
                } else if (section.group(1).equals("sheet") && sheet.isEmpty()) {
                    sheet = Optional.of(JobSheet.parse(name, text.substring(section.end(), section.end() + value.end()), folder));
                }
            } catch (JobProblem | SheetException damaged) {
                problems.add("the section \"" + section.group(1) + "\" cannot be read: " + damaged.getMessage());
            }
        }
        if (budget.isSpent()) {
            problems.add("it is too damaged to be looked through to its end (limit on values)");
        }
        problems.add("read from what is whole: marks " + marks.size() + ", waivers " + waivers.size() + ", sign-offs " + signOffs.size()
                + (sheet.isPresent() ? ", the job sheet" : "; not the job sheet") + (proof.isPresent() ? "" : "; not the proof's name"));
    }

    private static boolean isEntry(JsonValue value) throws JobProblem {
        String type = value.textOr("type", "");
        return type.equals("Annotation") || type.startsWith("kerfglow:") && !type.equals("kerfglow:Job");
    }

    private void entry(JsonValue json) throws JobProblem {
        switch (json.textOr("type", "")) {
            case "Annotation" -> marks.add(MarkJson.read(json));
            case "kerfglow:FindingWaiver", "kerfglow:CheckWaiver" -> waivers.add(EntryReader.waiver(json));
            case "kerfglow:SignOff" -> signOffs.add(EntryReader.signOff(json));
            default -> throw json.wrong("an entry of a kind that is not known here: " + json.textOr("type", "none"));
        }
    }

    /** The whole sheet, or key by key where one of them is at fault. */
    private void sheet(JsonValue json) {
        String lead = "\n".repeat(json.line() - 1); // so that complaints name the line of the job file
        try {
            sheet = Optional.of(JobSheet.parse(name, lead + text.substring(json.start(), json.end()), folder));
        } catch (SheetException wrong) {
            problems.add(wrong.getMessage());
            if (json.fields().size() > MOST_KEYS) {
                problems.add("the job sheet is left out: it has " + json.fields().size() + " keys, more than " + MOST_KEYS + " (limit on keys)");
                return;
            }
            StringBuilder good = new StringBuilder();
            for (Map.Entry<String, JsonValue> field : json.fields().entrySet()) {
                String pair = '"' + field.getKey() + "\": " + text.substring(field.getValue().start(), field.getValue().end());
                String more = good + (good.length() == 0 ? "" : ", ") + pair;
                try {
                    sheet = Optional.of(JobSheet.parse(name, "{" + more + "}", folder));
                    good = new StringBuilder(more);
                } catch (SheetException thisOne) {
                    problems.add("of the job sheet, \"" + field.getKey() + "\" is left out");
                }
            }
        }
    }
}
