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
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import kerfglow.api.Measure;
import kerfglow.api.Quantity;
import kerfglow.host.JobSheet;
import kerfglow.host.Result;
import kerfglow.host.SheetException;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;

/**
 * Reads the text of a job file. What cannot be read is told with line and column and left out; each mark, waiver, sign-off and key of the
 * job sheet stands for itself. Where the text is no JSON at all, entries that are whole are still found in it.
 */
final class JobReader {
    /** How each of our entries and the job itself begin. */
    private static final Pattern ENTRY = Pattern.compile("\\{\\s*\"(@context|type)\"");
    private static final Pattern SECTION = Pattern.compile("\"(sheet|proof)\"\\s*:\\s*(?=\\{)");

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
        return new Read(new JobState(proof, reader.sheet.orElse(JobSheet.NONE), reader.marks, reader.waivers, reader.signOffs, reader.seen), List.copyOf(reader.problems),
                reader.previous, reader.saved, reader.format);
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
        attempt(() -> proof = Optional.of(proof(top.required("proof"))));
        attempt(() -> sheet(top.required("sheet")));
        for (String section : List.of("marks", "waivers", "signOffs")) {
            for (JsonValue entry : top.list(section)) {
                attempt(() -> entry(entry));
            }
        }
        if (top.field("seen").isPresent()) {
            attempt(() -> seen = seen(top.required("seen")));
        }
    }

    /** Tries wherever an entry may begin; what is whole there is taken. */
    private void salvage() {
        int taken = 0;
        Matcher entry = ENTRY.matcher(text);
        for (int at = 0; entry.find(at); at = Math.max(entry.end(), taken)) {
            try {
                JsonValue value = JsonValue.first(text.substring(entry.start()));
                if (isEntry(value)) {
                    taken = entry.start() + value.end();
                    entry(value);
                }
            } catch (JobProblem damaged) {
                // told already, by the first fault of the file; what is whole further on is still looked for
            }
        }
        Matcher section = SECTION.matcher(text);
        while (section.find()) {
            try {
                JsonValue value = JsonValue.first(text.substring(section.end()));
                if (section.group(1).equals("proof") && proof.isEmpty()) {
                    proof = Optional.of(proof(value));
                } else if (section.group(1).equals("sheet") && sheet.isEmpty()) {
                    sheet = Optional.of(JobSheet.parse(name, text.substring(section.end(), section.end() + value.end()), folder));
                }
            } catch (JobProblem | SheetException damaged) {
                problems.add("the section \"" + section.group(1) + "\" cannot be read: " + damaged.getMessage());
            }
        }
        problems.add("read from what is whole: " + marks.size() + " marks, " + waivers.size() + " waivers, " + signOffs.size() + " sign-offs"
                + (sheet.isPresent() ? ", the job sheet" : "; not the job sheet") + (proof.isPresent() ? "" : "; not the proof's name"));
    }

    private static boolean isEntry(JsonValue value) throws JobProblem {
        String type = value.textOr("type", "");
        return type.equals("Annotation") || type.startsWith("kerfglow:") && !type.equals("kerfglow:Job");
    }

    private void entry(JsonValue json) throws JobProblem {
        switch (json.textOr("type", "")) {
            case "Annotation" -> marks.add(MarkJson.read(json));
            case "kerfglow:FindingWaiver", "kerfglow:CheckWaiver" -> waivers.add(waiver(json));
            case "kerfglow:SignOff" -> signOffs.add(signOff(json));
            default -> throw json.wrong("an entry of a kind that is not known here: " + json.textOr("type", "none"));
        }
    }

    private static ProofRef proof(JsonValue json) throws JobProblem {
        try {
            Path.of(json.text("file")); // refuses what is no file name here
            return new ProofRef(json.text("file"), json.textOr("sha256", ""), json.number("widthMm"), json.number("heightMm"), json.number("scale"));
        } catch (IllegalArgumentException wrong) {
            throw json.wrong(wrong.getMessage());
        }
    }

    /** The whole sheet, or key by key where one of them is at fault. */
    private void sheet(JsonValue json) {
        String lead = "\n".repeat(json.line() - 1); // so that complaints name the line of the job file
        try {
            sheet = Optional.of(JobSheet.parse(name, lead + text.substring(json.start(), json.end()), folder));
        } catch (SheetException wrong) {
            problems.add(wrong.getMessage());
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

    private static Waiver waiver(JsonValue json) throws JobProblem {
        try {
            if (json.text("type").equals("kerfglow:CheckWaiver")) {
                String word = json.text("status");
                Result.Status status = List.of(Result.Status.values()).stream().filter(each -> each.word().equals(word)).findFirst()
                        .orElseThrow(() -> json.wrong("\"" + word + "\" is not how a check ends"));
                return new Waiver.OfCheck(json.text("id"), json.text("check"), json.text("version"), status, json.text("reason"), json.text("author"), MarkJson.instant(json, "at"));
            }
            return new Waiver.OfFinding(json.text("id"), json.text("finding"), json.textOr("severity", ""), json.textOr("message", ""), finding(json.required("decided")),
                    places(json), json.text("reason"), json.text("author"), MarkJson.instant(json, "at"));
        } catch (IllegalArgumentException wrong) {
            throw json.wrong(wrong.getMessage());
        }
    }

    private static SignOff signOff(JsonValue json) throws JobProblem {
        List<SignOff.OpenItem> open = new ArrayList<>();
        for (JsonValue item : json.list("open")) {
            open.add(new SignOff.OpenItem(item.text("kind"), item.text("of"), item.text("text")));
        }
        JsonValue digests = json.required("digests");
        try {
            return new SignOff(json.text("id"), json.text("author"), MarkJson.instant(json, "at"), open,
                    new SignOff.Digests(digests.text("proof"), digests.text("sheet"), digests.text("settings"), digests.text("checks")), json.textOr("remark", ""));
        } catch (IllegalArgumentException wrong) {
            throw json.wrong(wrong.getMessage());
        }
    }

    private static Snapshot seen(JsonValue json) throws JobProblem {
        List<Snapshot.Outline> outlines = new ArrayList<>();
        for (JsonValue each : json.list("outlines")) {
            outlines.add(new Snapshot.Outline(each.text("part"), each.text("role"), each.text("layer"), geometry(each)));
        }
        List<SeenFinding> findings = new ArrayList<>();
        for (JsonValue each : json.list("findings")) {
            findings.add(finding(each));
        }
        return new Snapshot(outlines, findings, json.number("resolutionMm"));
    }

    private static SeenFinding finding(JsonValue json) throws JobProblem {
        return new SeenFinding(json.text("finding"), json.text("rule"), new TreeSet<>(json.texts("roles")), json.texts("parts"), json.texts("elements"),
                measure(json, "measured"), measure(json, "required"), places(json));
    }

    private static Optional<Measure> measure(JsonValue json, String field) throws JobProblem {
        Optional<JsonValue> value = json.field(field);
        if (value.isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(new Measure(value.get().number("value"), Quantity.valueOf(value.get().text("quantity"))));
        } catch (IllegalArgumentException wrong) {
            throw value.get().wrong("not a measure: " + wrong.getMessage());
        }
    }

    private static List<SeenPlace> places(JsonValue json) throws JobProblem {
        List<SeenPlace> places = new ArrayList<>();
        for (JsonValue each : json.list("places")) {
            places.add(new SeenPlace(new PointMm(each.number("x"), each.number("y")), geometry(each)));
        }
        return places;
    }

    private static Geometry geometry(JsonValue json) throws JobProblem {
        JsonValue wkt = json.required("wkt");
        try {
            return new WKTReader().read(wkt.text());
        } catch (ParseException | IllegalArgumentException wrong) {
            throw wkt.wrong("not a geometry: " + wrong.getMessage());
        }
    }
}
