// SPDX-License-Identifier: Apache-2.0
package kerfglow.bench;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import kerfglow.api.Check;
import kerfglow.api.proof.ImportOptions;
import kerfglow.api.proof.Part;
import kerfglow.check.artwork.ArtworkCheck;
import kerfglow.check.fit.FitCheck;
import kerfglow.check.legibility.LegibilityCheck;
import kerfglow.check.mount.MountCheck;
import kerfglow.check.returns.ReturnsCheck;
import kerfglow.check.router.RouterCheck;
import kerfglow.check.sheet.SheetCheck;
import kerfglow.check.trim.TrimCheck;
import kerfglow.check.vinyl.VinylCheck;
import kerfglow.host.CheckCatalogue;
import kerfglow.host.Result;
import kerfglow.host.RunRequest;
import kerfglow.host.Runner;
import kerfglow.host.Watcher;
import kerfglow.svg.SvgImporter;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/**
 * Import with each check of a proof of serif letters, held against what plain JTS needs for one opening of the same parts in the same
 * run. Absolute times vary from machine to machine, the ratio does not.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(value = 1, jvmArgsAppend = {"-Xmx4g", "-XX:+UseParallelGC", "-Djava.awt.headless=true"})
@Warmup(iterations = 2)
@Measurement(iterations = 3)
public class CheckBenchmark {
    /** What import with one check may take, in openings. */
    private static final double MOST_OPENINGS = 3;
    /** What import with all checks of geometry at once may take, in openings; packing into sheets is apart. */
    private static final double MOST_OPENINGS_OF_ALL = 8;
    private static final List<String> GEOMETRIC = List.of("artwork", "fit", "legibility", "mount", "returns", "router", "trim", "vinyl");
    /** A 1/8 in bit. */
    private static final double RADIUS_MM = 25.4 / 16;
    private static final int QUADRANT_SEGMENTS = 16;

    /** How many letters. */
    @Param("2000")
    public int letters;

    private Path proof;
    private Path job;
    private Runner runner;
    private List<Geometry> parts;

    /** Writes the proof and takes the parts for the plain opening. */
    @Setup
    public void write() throws Exception {
        proof = LetterProof.write(Files.createTempFile("letters", ".svg"), letters);
        proof.toFile().deleteOnExit();
        job = Files.writeString(Files.createTempFile("letters", ".job.yaml"), "roles: [{layer: Letters, role: face}]\nsettings: {returns.depth: 100 mm}\n");
        job.toFile().deleteOnExit();
        CheckCatalogue catalogue = new CheckCatalogue();
        for (Check check : List.of(new ArtworkCheck(), new FitCheck(), new LegibilityCheck(), new MountCheck(), new ReturnsCheck(), new RouterCheck(), new SheetCheck(), new TrimCheck(), new VinylCheck())) {
            catalogue.add(check, "kerfglow.check." + check.info().id(), "bench");
        }
        runner = new Runner(new SvgImporter(), catalogue);
        Result result = run(List.of("router"));
        parts = result.parts().stream().map(Part::shape).map(Geometry.class::cast).toList();
        System.out.printf(Locale.ROOT, "%n%d parts, %d vertices, %d findings, %d places%n", parts.size(), parts.stream().mapToInt(Geometry::getNumPoints).sum(),
                result.findings().size(), result.findings().stream().mapToInt(Result.ReportedFinding::count).sum());
    }

    /** The whole way from file to findings of router. */
    @Benchmark
    public Result importAndRouter() throws Exception {
        return run(List.of("router"));
    }

    /** The whole way from file to findings of fit. */
    @Benchmark
    public Result importAndFit() throws Exception {
        return run(List.of("fit"));
    }

    /** The whole way from file to findings of returns. */
    @Benchmark
    public Result importAndReturns() throws Exception {
        return run(List.of("returns"));
    }

    /** The whole way from file to findings of sheet. */
    @Benchmark
    public Result importAndSheet() throws Exception {
        return run(List.of("sheet"));
    }

    /** The whole way from file to findings of trim. */
    @Benchmark
    public Result importAndTrim() throws Exception {
        return run(List.of("trim"));
    }

    /** The whole way from file to findings of all checks of geometry. */
    @Benchmark
    public Result importAndAllGeometry() throws Exception {
        return run(GEOMETRIC);
    }

    private Result run(List<String> checks) throws Exception {
        return runner.run(new RunRequest(proof, Optional.of(job), Optional.empty(), List.of(), checks), Watcher.NONE);
    }

    /** Import alone. */
    @Benchmark
    public Object importAlone() throws Exception {
        return new SvgImporter().read(proof, ImportOptions.defaults());
    }

    /** Plain JTS: one opening of the waste's complement, part by part, and what it leaves, on one thread. */
    @Benchmark
    public double plainOpening() {
        BufferParameters round = new BufferParameters(QUADRANT_SEGMENTS);
        round.setSimplifyFactor(0);
        double left = 0;
        for (Geometry part : parts) {
            Geometry opened = BufferOp.bufferOp(BufferOp.bufferOp(part, -RADIUS_MM, round), RADIUS_MM, round);
            left += OverlayNGRobust.overlay(part, opened, OverlayNG.DIFFERENCE).getArea();
        }
        return left;
    }

    /** Runs all and prints the ratios; ends with status 1 when one is above the limit. */
    public static void main(String[] arguments) throws RunnerException {
        Collection<RunResult> results = new org.openjdk.jmh.runner.Runner(new OptionsBuilder().include(CheckBenchmark.class.getSimpleName()).build()).run();
        Map<String, Double> millis = new TreeMap<>();
        results.forEach(result -> millis.put(result.getPrimaryResult().getLabel(), result.getPrimaryResult().getScore()));
        boolean within = true;
        for (Map.Entry<String, Double> each : millis.entrySet()) {
            double ratio = each.getValue() / millis.get("plainOpening");
            double most = each.getKey().equals("importAndAllGeometry") ? MOST_OPENINGS_OF_ALL : MOST_OPENINGS;
            within &= ratio <= most;
            System.out.printf(Locale.ROOT, "%s: %.2f plain openings (at most %.1f)%n", each.getKey(), ratio, most);
        }
        System.exit(within ? 0 : 1);
    }
}
