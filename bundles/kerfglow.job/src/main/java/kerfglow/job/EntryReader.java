// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import kerfglow.api.Measure;
import kerfglow.api.Quantity;
import kerfglow.host.Result;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;

/** Reads what stands in a job file beside marks and sheet: the proof, waivers, sign-offs, and what the last run showed. */
final class EntryReader {
    private EntryReader() {
    }

    static ProofRef proof(JsonValue json) throws JobProblem {
        try {
            Path.of(json.text("file")); // refuses what is no file name here
            return new ProofRef(json.text("file"), json.textOr("sha256", ""), json.number("widthMm"), json.number("heightMm"), json.number("scale"));
        } catch (IllegalArgumentException wrong) {
            throw json.wrong(wrong.getMessage());
        }
    }

    static Waiver waiver(JsonValue json) throws JobProblem {
        try {
            if (json.text("type").equals("kerfglow:CheckWaiver")) {
                String word = json.text("status");
                Result.Status status = Arrays.stream(Result.Status.values()).filter(each -> each.word().equals(word)).findFirst()
                        .orElseThrow(() -> json.wrong("\"" + word + "\" is not how a check ends"));
                return new Waiver.OfCheck(json.text("id"), json.text("check"), json.text("version"), status, json.text("reason"), json.text("author"), MarkJson.instant(json, "at"));
            }
            return new Waiver.OfFinding(json.text("id"), json.text("finding"), json.textOr("severity", ""), json.textOr("message", ""), finding(json.required("decided")),
                    places(json), json.text("reason"), json.text("author"), MarkJson.instant(json, "at"));
        } catch (IllegalArgumentException wrong) {
            throw json.wrong(wrong.getMessage());
        }
    }

    static SignOff signOff(JsonValue json) throws JobProblem {
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

    static Snapshot seen(JsonValue json) throws JobProblem {
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
        return new SeenFinding(json.text("finding"), json.text("rule"), json.textOr("message", ""), new TreeSet<>(json.texts("roles")), json.texts("parts"), json.texts("elements"),
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
            Geometry geometry = new WKTReader().read(wkt.text());
            if (!Arrays.stream(geometry.getCoordinates()).allMatch(point -> Double.isFinite(point.x) && Double.isFinite(point.y))) {
                throw wkt.wrong("a geometry that is not finite");
            }
            return geometry;
        } catch (ParseException | IllegalArgumentException | StackOverflowError wrong) { // the last for collections nested without end
            throw wkt.wrong("not a geometry: " + wrong.getMessage());
        }
    }
}
