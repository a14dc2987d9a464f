// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.stream.Collectors;
import kerfglow.api.Finding;
import kerfglow.api.StockKind;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.ImportOptions;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Proof;
import kerfglow.api.proof.ProofException;
import kerfglow.api.proof.ProofImporter;
import org.locationtech.jts.geom.GeometryFactory;
import org.osgi.service.component.annotations.Activate;
import org.osgi.service.component.annotations.Component;
import org.osgi.service.component.annotations.Reference;

/** Imports a proof, runs every check over it in parallel and gathers one result. The only road to the checks. */
@Component(service = Runner.class)
public final class Runner {
    private static final GeometryFactory POINTS = new GeometryFactory();

    private final ProofImporter importer;
    private final CheckCatalogue catalogue;

    /** Wired by the framework, or by hand in tests. */
    @Activate
    public Runner(@Reference ProofImporter importer, @Reference CheckCatalogue catalogue) {
        this.importer = importer;
        this.catalogue = catalogue;
    }

    /**
     * Runs.
     *
     * @param request which proof, sheets, settings and checks
     * @param watcher told the progress, asked whether to stop
     * @return the result; checks that threw or overran are rows in it
     * @throws ProofException when the file is not a usable proof
     * @throws SheetException when a sheet or a setting cannot be used
     * @throws CancellationException when the watcher said so
     * @throws InterruptedException when this thread was interrupted
     */
    public Result run(RunRequest request, Watcher watcher) throws ProofException, SheetException, InterruptedException {
        List<String> remarks = new ArrayList<>();
        JobSheet job = jobSheet(request, remarks);
        ShopSheet shop = shopSheet(request, job, remarks);
        List<CheckCatalogue.Entry> all = catalogue.entries();
        List<CheckCatalogue.Entry> chosen = chosen(all, request.only());
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

        Opened opened = open(request.file(), job, settings, watcher, remarks);
        Proof proof = opened.proof();
        List<Part> parts = opened.parts();
        UnitSystem units = job.units().or(shop::units).orElse(UnitSystem.METRIC);

        List<Result.CheckRow> rows = new ArrayList<>();
        List<Result.ReportedFinding> findings = new ArrayList<>();
        Map<String, Part> partsById = parts.stream().collect(Collectors.toMap(Part::id, part -> part));
        for (CheckRun.Ended ended : runAll(chosen, new RunInspection(proof, parts, settings, stock, units), settings, watcher)) {
            rows.add(ended.row());
            findings.addAll(reported(ended.findings(), severities, partsById));
        }
        return new Result(proof, job, shop, units, parts, FindingIds.assign(findings), rows, settings.used(), remarks);
    }

    /** A proof and what it becomes. */
    private record Opened(Proof proof, List<Part> parts) {
    }

    private Opened open(Path file, JobSheet job, SettingsInForce settings, Watcher watcher, List<String> remarks) throws ProofException, SheetException {
        double limitSeconds = settings.get(HostSettings.IMPORT_TIME_LIMIT);
        Deadline deadline = new Deadline(limitSeconds);
        try {
            Proof proof = new ProofOpener(importer).open(file, job, settings, watcher, remarks, deadline);
            watcher.progress("parts", 0);
            List<Part> parts = new PartMaker(job, () -> deadline.require(watcher)).make(proof);
            watcher.progress("parts", 1);
            JobFit.remark(job, proof, parts).ifPresent(remarks::add);
            return new Opened(proof, parts);
        } catch (CancellationException stopped) {
            if (watcher.isCancelled()) {
                throw stopped;
            }
            throw new ProofException("the import took longer than " + limitSeconds + " s; simplify the drawing, or raise " + HostSettings.IMPORT_TIME_LIMIT.key(), 0, 0, stopped);
        }
    }

    private static JobSheet jobSheet(RunRequest request, List<String> remarks) throws SheetException {
        if (request.jobSheet().isPresent()) {
            return JobSheet.read(request.jobSheet().get());
        }
        String name = String.valueOf(request.file().getFileName());
        int point = name.lastIndexOf('.');
        Path beside = request.file().resolveSibling((point > 0 ? name.substring(0, point) : name) + ".job.yaml");
        if (Files.isRegularFile(beside)) {
            remarks.add("The job sheet " + beside.getFileName() + " beside the proof is used.");
            return JobSheet.read(beside);
        }
        remarks.add("No job sheet: every part counts as a face, at the size that the file says.");
        return JobSheet.NONE;
    }

    private static ShopSheet shopSheet(RunRequest request, JobSheet job, List<String> remarks) throws SheetException {
        Optional<Path> path = request.shopSheet().or(job::shopSheet);
        if (path.isEmpty()) {
            remarks.add("No shop sheet: the checks use the stock and the limits that they bring.");
            return ShopSheet.NONE;
        }
        if (request.shopSheet().isEmpty() && !Files.exists(path.get())) {
            throw new SheetException(job.from() + ", shop: there is no file " + path.get().getFileName() + " in " + path.get().normalize().getParent()
                    + "; the path counts from the job sheet", null);
        }
        return ShopSheet.read(path.get());
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

    private static List<CheckRun.Ended> runAll(List<CheckCatalogue.Entry> chosen, RunInspection inspection, SettingsInForce settings, Watcher watcher)
            throws InterruptedException {
        double limitSeconds = settings.get(HostSettings.CHECK_TIME_LIMIT);
        ExecutorService threads = Executors.newFixedThreadPool(Math.max(1, Runtime.getRuntime().availableProcessors()), work -> {
            Thread thread = new Thread(work, "check");
            thread.setDaemon(true); // a check that never ends must not keep the program alive
            return thread;
        });
        try {
            List<CheckRun> runs = new ArrayList<>();
            for (CheckCatalogue.Entry entry : chosen) {
                CheckRun run = new CheckRun(entry, inspection.watchedBy(entry.info().id(), limitSeconds, watcher), limitSeconds);
                runs.add(run);
                threads.execute(run.task());
            }
            List<CheckRun.Ended> ended = new ArrayList<>();
            for (CheckRun run : runs) {
                ended.add(run.await(watcher));
            }
            return ended;
        } finally {
            threads.shutdownNow();
        }
    }

    private static List<Result.ReportedFinding> reported(List<Finding> findings, Severities severities, Map<String, Part> partsById) {
        List<Result.ReportedFinding> reported = new ArrayList<>();
        for (List<Finding> alike : Repeats.collect(findings)) {
            Finding first = alike.get(0);
            Set<String> parts = new LinkedHashSet<>();
            Set<String> elements = new LinkedHashSet<>();
            List<Result.Place> places = new ArrayList<>();
            for (Finding each : alike) {
                parts.addAll(each.parts());
                elements.addAll(each.elements());
                if (each.elements().isEmpty()) {
                    each.parts().forEach(id -> Optional.ofNullable(partsById.get(id)).ifPresent(part -> elements.addAll(part.elements())));
                }
                each.at().ifPresent(at -> places.add(new Result.Place(at, each.place().orElseGet(() -> POINTS.createPoint(at)), each.measured())));
            }
            reported.add(new Result.ReportedFinding("", first.rule(), severities.of(first.rule()), severities.reason(first.rule()), List.copyOf(parts),
                    List.copyOf(elements), first.measured(), first.required(), List.copyOf(places), sentence(first.message()), sentence(first.fix().orElse(first.rule().fix()))));
        }
        return reported;
    }

    /** Checks write with and without a full stop; people read sentences. */
    private static String sentence(String text) {
        String stripped = text.strip();
        return stripped.isEmpty() || ".!?".indexOf(stripped.charAt(stripped.length() - 1)) >= 0 ? stripped : stripped + ".";
    }
}
