// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import kerfglow.api.Severity;
import kerfglow.check.artwork.ArtworkCheck;
import kerfglow.check.router.RouterCheck;
import kerfglow.host.CheckCatalogue;
import kerfglow.host.JobSheet;
import kerfglow.host.Result;
import kerfglow.host.RunRequest;
import kerfglow.host.Runner;
import kerfglow.host.Watcher;
import kerfglow.svg.SvgImporter;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.util.AffineTransformation;

/** The demo proof with real checks, decided on, kept, and revised by a transform in its SVG, so that the motion is known. */
class DemoJobTest {
    private static final Path TESTDATA = Path.of(System.getProperty("testdata"));
    private static final String SHIFTED = "translate(37.5 12.25) rotate(3)";

    @TempDir
    private Path folder;
    private Runner runner;
    private Path proof;
    private Path path;
    private String svg;

    @BeforeEach
    void checks() throws Exception {
        CheckCatalogue catalogue = new CheckCatalogue();
        catalogue.add(new RouterCheck(), "router", "1.0.0");
        catalogue.add(new ArtworkCheck(), "artwork", "1.0.0");
        runner = new Runner(new SvgImporter(), catalogue);
        svg = Files.readString(TESTDATA.resolve("skelderfen.svg"));
        proof = Files.writeString(folder.resolve("skelderfen.svg"), svg);
        path = folder.resolve("skelderfen.kerfglow");
    }

    private Result run(JobSheet sheet) throws Exception {
        return runner.run(RunRequest.of(proof, sheet), Watcher.NONE);
    }

    /** What tells a fault apart however the artwork lies on the page. */
    private static List<Object> fault(Result.ReportedFinding finding) {
        return List.of(finding.rule().id(), finding.elements());
    }

    @Test
    void decisions_come_back_from_the_job_file_and_follow_the_artwork_when_it_is_shifted_and_turned_on_the_page() throws Exception {
        JobSheet sheet = JobSheet.read(TESTDATA.resolve("skelderfen.job.yaml"));
        Result result = run(sheet);
        Job job = new Job(JobState.of(ProofRef.of("skelderfen.svg"), sheet), Clock.systemUTC());
        job.show(result);
        List<Result.ReportedFinding> faults = result.findings().stream().filter(finding -> finding.severity() != Severity.INFO).toList();
        assertTrue(faults.size() > 20, "the demo has faults");
        faults.forEach(finding -> job.waive(finding, "why", "Rhea"));
        assertEquals(List.of(), job.signOff("Rhea", ""));
        try (JobFile file = JobFile.open(path, JobFile.Options.of(problem -> { }))) {
            file.save(job.state(), false);
        }

        JobState kept = JobFile.readWhole(path);
        ReviewedResult same = ReviewedResult.of(kept, result);
        assertFalse(same.has(Severity.REVIEW));
        assertEquals(List.of(), same.signOffs().get(0).voidBecause());

        int open = svg.indexOf('>', svg.indexOf("<svg")) + 1;
        Files.writeString(proof, svg.substring(0, open) + "<g transform=\"" + SHIFTED + "\">" + svg.substring(open).replace("</svg>", "</g></svg>"));
        ReviewedResult revised = ReviewedResult.of(kept, run(kept.sheet()));
        assertTrue(revised.isNewRevision());
        AffineTransformation found = Alignment.best(kept.seen(), Snapshot.of(revised.result()));
        Coordinate corner = new Coordinate(3200, 2000);
        assertEquals(0, found.transform(corner, new Coordinate()).distance(
                AffineTransformation.rotationInstance(Math.toRadians(3)).translate(37.5, 12.25).transform(corner, new Coordinate())), 0.01);
        Set<Object> before = faults.stream().map(DemoJobTest::fault).collect(Collectors.toSet());
        List<String> lost = revised.result().findings().stream().filter(finding -> before.contains(fault(finding)) && !revised.decision(finding).isWaived())
                .map(finding -> finding.message() + " " + revised.decision(finding).why()).toList();
        assertEquals(List.of(), lost);
        assertTrue(revised.result().findings().stream().filter(finding -> revised.decision(finding).isWaived()).count() > 20, "and there are many that follow");
        assertEquals(List.of(), ProofComparison.of(result, revised.result(), List.of()).outlines(), "no outline changed");
        assertEquals("The proof changed since.", revised.signOffs().get(0).voidBecause().get(0));
    }
}
