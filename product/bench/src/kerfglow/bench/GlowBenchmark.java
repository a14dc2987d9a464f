// SPDX-License-Identifier: Apache-2.0
package kerfglow.bench;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import kerfglow.api.proof.Part;
import kerfglow.check.glow.GlowCheck;
import kerfglow.host.CheckCatalogue;
import kerfglow.host.Result;
import kerfglow.host.RunRequest;
import kerfglow.host.Runner;
import kerfglow.host.Watcher;
import kerfglow.light.Accuracy;
import kerfglow.light.Can;
import kerfglow.light.Cavity;
import kerfglow.light.Finish;
import kerfglow.light.LightMap;
import kerfglow.light.LightModule;
import kerfglow.light.LightModuleType;
import kerfglow.svg.SvgImporter;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/** The light of one large letter, of a moved module, and of a whole sign with import, in 512 MiB. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(value = 1, jvmArgsAppend = {"-Xmx512m", "-Djava.awt.headless=true"})
@Warmup(iterations = 3)
@Measurement(iterations = 5)
public class GlowBenchmark {
    /** What each may take, ms. */
    private static final Map<String, Double> MOST_MS = Map.of("largeLetter", 300.0, "movedModule", 200.0, "signOfFortyLetters", 8000.0, "signWithLayout", 8000.0);
    private static final int LETTERS = 40;
    private static final double DEPTH_MM = 80;
    private static final double LARGE_DEPTH_MM = 100;
    /** Modules stand this far apart in rows and columns, wherever they fit. */
    private static final double STEP_MM = 40;
    private static final double CLEAR_MM = 8;
    private static final LightModuleType MODULE = new LightModuleType("", 60, 150, 10, 10, 6, 2, 8);

    private final Runnable noPulse = () -> { };
    private Path proof;
    private Path placed;
    private Path laidOut;
    private Runner runner;
    private Can large;
    private List<LightModule> modules;
    private List<LightModule> moved;
    private Cavity cavity;

    /** Writes the proof, finds places for modules in it. */
    @Setup
    public void write() throws Exception {
        proof = LetterProof.write(Files.createTempFile("letters", ".svg"), LETTERS);
        proof.toFile().deleteOnExit();
        CheckCatalogue catalogue = new CheckCatalogue();
        catalogue.add(new GlowCheck(), "kerfglow.check.glow", "bench");
        runner = new Runner(new SvgImporter(), catalogue);
        String job = "roles: [{layer: Letters, role: face}]\nbuild: face-lit letters\nsettings: {returns.depth: " + DEPTH_MM + " mm}\n";
        laidOut = Files.writeString(Files.createTempFile("laid-out", ".job.yaml"), job);
        laidOut.toFile().deleteOnExit();
        List<Part> parts = runner.run(new RunRequest(proof, Optional.of(laidOut), Optional.empty(), List.of("glow.lit=none"), List.of("glow")), Watcher.NONE).parts();
        StringBuilder list = new StringBuilder("modules:\n");
        int count = 0;
        for (Part part : parts) {
            for (Coordinate at : places(part.shape(), STEP_MM)) {
                list.append(String.format(Locale.ROOT, "  - {x: %.2f mm, y: %.2f mm, turn: 0}%n", at.x, at.y));
                count++;
            }
        }
        placed = Files.writeString(Files.createTempFile("placed", ".job.yaml"), job + list);
        placed.toFile().deleteOnExit();
        Polygon letter = (Polygon) AffineTransformation.scaleInstance(2, 2).transform(parts.get(0).shape());
        large = new Can(letter, LARGE_DEPTH_MM, new Finish(0.8, 0.8, 0.35, 0.5, 3));
        modules = places(letter, 2 * STEP_MM).stream().map(at -> new LightModule(at.x, at.y, 0, MODULE)).toList();
        moved = new ArrayList<>(modules);
        moved.set(0, new LightModule(modules.get(0).xMm() + 1, modules.get(0).yMm(), 0, MODULE));
        cavity = Cavity.of(large, Accuracy.usual(), noPulse);
        System.out.printf(Locale.ROOT, "%n%d parts with %d modules; the large letter has %d modules, %d points, %d cells%n", parts.size(), count, modules.size(),
                letter.getNumPoints(), cavity.light(modules, noPulse).litCells());
    }

    private static List<Coordinate> places(Geometry shape, double step) {
        PreparedGeometry room = PreparedGeometryFactory.prepare(shape.buffer(-CLEAR_MM));
        Envelope box = shape.getEnvelopeInternal();
        List<Coordinate> places = new ArrayList<>();
        for (double y = box.getMinY() + step / 2; y < box.getMaxY(); y += step) {
            for (double x = box.getMinX() + step / 2; x < box.getMaxX(); x += step) {
                if (room.contains(shape.getFactory().createPoint(new Coordinate(x, y)))) {
                    places.add(new Coordinate(x, y));
                }
            }
        }
        return places;
    }

    /** A letter 600 mm high from nothing: what its surfaces see of each other, then the light of its modules, at 2 mm. */
    @Benchmark
    public LightMap largeLetter() {
        return Cavity.of(large, Accuracy.usual(), noPulse).light(modules, noPulse);
    }

    /** Its map again after a module was moved. */
    @Benchmark
    public LightMap movedModule() {
        return cavity.light(moved, noPulse);
    }

    /** Import and check of a sign whose modules are placed. */
    @Benchmark
    public Result signOfFortyLetters() throws Exception {
        return sign(placed);
    }

    /** Import and check of a sign whose modules are laid out too; no two of its letters are alike. */
    @Benchmark
    public Result signWithLayout() throws Exception {
        return sign(laidOut);
    }

    private Result sign(Path job) throws Exception {
        Result result = runner.run(new RunRequest(proof, Optional.of(job), Optional.empty(), List.of(), List.of("glow")), Watcher.NONE);
        if (result.checks().get(0).tables().size() < 2) {
            throw new IllegalStateException("glow did not measure: " + result.checks().get(0).why());
        }
        return result;
    }

    /** Runs all and holds them against their limits; ends with status 1 when one is above. */
    public static void main(String[] arguments) throws RunnerException {
        Collection<RunResult> results = new org.openjdk.jmh.runner.Runner(new OptionsBuilder().include(GlowBenchmark.class.getSimpleName()).build()).run();
        boolean within = true;
        for (RunResult result : results) {
            String name = result.getPrimaryResult().getLabel();
            double most = MOST_MS.getOrDefault(name, Double.POSITIVE_INFINITY);
            within &= result.getPrimaryResult().getScore() <= most;
            System.out.printf(Locale.ROOT, "%s: %.0f ms%s%n", name, result.getPrimaryResult().getScore(), Double.isInfinite(most) ? "" : String.format(Locale.ROOT, " (at most %.0f)", most));
        }
        System.exit(within ? 0 : 1);
    }
}
