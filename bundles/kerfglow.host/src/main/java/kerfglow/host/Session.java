// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.stream.Collectors;
import kerfglow.api.Finding;
import kerfglow.api.StockKind;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.ProofException;
import kerfglow.api.proof.ProofImporter;
import org.locationtech.jts.geom.GeometryFactory;

/**
 * Runs the checks again and again over a proof that hardly changes: what was imported is kept while file and scale stay, and a check
 * runs again only when something that it was given has changed. The first run does all. For one thread at a time.
 */
public final class Session {
    private static final GeometryFactory POINTS = new GeometryFactory();

    private final CheckCatalogue catalogue;
    private final ProofMemory proofs;
    private final CheckMemory checks = new CheckMemory();
    /** The places of the findings that were reported last; of a finding that was not made again the place is the same object. */
    private Map<Finding, Result.Place> places = new IdentityHashMap<>();

    Session(ProofImporter importer, CheckCatalogue catalogue) {
        this.catalogue = catalogue;
        this.proofs = new ProofMemory(importer);
    }

    /**
     * Runs what is not known yet.
     *
     * @param request which proof, sheets, settings and checks
     * @param watcher told the progress and each check that ended, asked whether to stop
     * @return the result; checks that threw or overran are rows in it
     * @throws ProofException when the file is not a usable proof
     * @throws SheetException when a sheet or a setting cannot be used
     * @throws CancellationException when the watcher said so
     * @throws InterruptedException when this thread was interrupted
     */
    public Result run(RunRequest request, Watcher watcher) throws ProofException, SheetException, InterruptedException {
        List<String> remarks = new ArrayList<>();
        Sheets sheets = Sheets.of(request, remarks);
        JobSheet job = sheets.job();
        ShopSheet shop = sheets.shop();
        List<CheckCatalogue.Entry> all = catalogue.entries();
        List<CheckCatalogue.Entry> chosen = chosen(all, request.only());
        if (chosen.size() < all.size()) {
            remarks.add("Not every check ran, as was asked for; left out: " + all.stream().filter(entry -> !chosen.contains(entry)).map(entry -> entry.info().id())
                    .collect(Collectors.joining(", ")) + ".");
        }
        catalogue.refused().forEach(refused -> remarks.add("The check bundle " + refused.bundle() + " is not used: " + refused.why() + "."));

        List<GivenValue> given = new ArrayList<>(shop.settings());
        given.addAll(job.settings());
        for (String text : request.settings()) {
            given.add(SheetSettings.fromCommandLine(text));
        }
        SettingsInForce settings = SettingsInForce.of(CheckCatalogue.settings(all), given, remarks);
        List<StockKind> kinds = all.stream().flatMap(entry -> entry.info().stock().stream()).toList();
        StockList stock = StockList.of(kinds, shop, remarks);
        Severities severities = Severities.of(all, shop, remarks);
        watcher.given(job, shop, settings.used());

        ProofMemory.Opened opened = proofs.open(request.file(), job, settings, watcher);
        remarks.addAll(opened.remarks());
        List<Part> parts = opened.parts();
        UnitSystem units = job.units().or(shop::units).orElse(UnitSystem.METRIC);
        watcher.opened(opened.proof(), parts, units);

        List<Result.CheckRow> rows = new ArrayList<>();
        List<Result.ReportedFinding> findings = new ArrayList<>();
        Map<String, Part> partsById = parts.stream().collect(Collectors.toMap(Part::id, part -> part));
        Map<Finding, Result.Place> now = new IdentityHashMap<>();
        RunInspection inspection = new RunInspection(opened.proof(), parts, settings, stock, units, job);
        new CheckQueue(checks, inspection, watcher).run(chosen, ended -> {
            List<Result.ReportedFinding> reported = reported(ended.groups(), severities, partsById, now);
            rows.add(ended.row());
            findings.addAll(reported);
            watcher.ended(ended.row(), FindingIds.assign(reported)); // rules belong to one check, so that these ids are the final ones
        });
        places = now;
        rows.sort((a, b) -> a.check().compareTo(b.check()));
        return new Result(opened.proof(), job, shop, units, parts, FindingIds.assign(findings), rows, settings.used(), remarks);
    }

    private static List<CheckCatalogue.Entry> chosen(List<CheckCatalogue.Entry> all, List<String> only) throws SheetException {
        Set<String> known = all.stream().map(entry -> entry.info().id()).collect(Collectors.toSet());
        for (String id : only) {
            if (!known.contains(id)) {
                throw new SheetException("there is no check " + id + "; there are " + known.stream().sorted().collect(Collectors.joining(", ")), null);
            }
        }
        return only.isEmpty() ? all : all.stream().filter(entry -> only.contains(entry.info().id())).toList();
    }

    private List<Result.ReportedFinding> reported(List<List<Finding>> groups, Severities severities, Map<String, Part> partsById, Map<Finding, Result.Place> now) {
        List<Result.ReportedFinding> reported = new ArrayList<>();
        for (List<Finding> alike : groups) {
            Finding first = alike.get(0);
            Set<String> parts = new LinkedHashSet<>();
            Set<String> elements = new LinkedHashSet<>();
            List<Result.Place> own = new ArrayList<>();
            for (Finding each : alike) {
                parts.addAll(each.parts());
                elements.addAll(each.elements());
                if (each.elements().isEmpty()) {
                    each.parts().forEach(id -> Optional.ofNullable(partsById.get(id)).ifPresent(part -> elements.addAll(part.elements())));
                }
                each.at().ifPresent(at -> {
                    Result.Place known = places.get(each);
                    Result.Place place = known != null ? known : new Result.Place(at, each.place().orElseGet(() -> POINTS.createPoint(at)), each.measured(), each.suggestion());
                    now.put(each, place);
                    own.add(place);
                });
            }
            reported.add(new Result.ReportedFinding("", first.rule(), severities.of(first.rule()), severities.reason(first.rule()), List.copyOf(parts),
                    List.copyOf(elements), first.measured(), first.required(), List.copyOf(own), sentence(first.message()), sentence(first.fix().orElse(first.rule().fix()))));
        }
        return reported;
    }

    /** Checks write with and without a full stop; people read sentences. */
    private static String sentence(String text) {
        String stripped = text.strip();
        return stripped.isEmpty() || ".!?".indexOf(stripped.charAt(stripped.length() - 1)) >= 0 ? stripped : stripped + ".";
    }
}
