// SPDX-License-Identifier: Apache-2.0
package kerfglow.bench;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import kerfglow.api.Outcome;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.ImportOptions;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.check.fit.FitCheck;
import kerfglow.svg.SvgImporter;
import kerfglow.testkit.CheckTester;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;
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
 * Fit check of serif letters, once with a back drawn for each and once with backs to be made, held against what plain JTS needs for one
 * buffer of the same parts in the same run, per vertex. Absolute times vary from machine to machine, the ratio does not.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(value = 1, jvmArgsAppend = {"-Xmx4g", "-XX:+UseParallelGC", "-Djava.awt.headless=true"})
@Warmup(iterations = 2)
@Measurement(iterations = 3)
public class FitBenchmark {
    /** What either way may take, in buffers of the same parts: a small multiple. */
    private static final double MOST_BUFFERS = 5;
    /** Half of 3/16 in. */
    private static final double SIDE_MM = 25.4 * 3 / 32;
    private static final int QUADRANT_SEGMENTS = 16;

    /** How many letters. */
    @Param("2000")
    public int letters;

    private final List<Geometry> faces = new ArrayList<>();
    private final List<Geometry> backs = new ArrayList<>();
    private CheckTester drawn;
    private CheckTester made;

    /** Takes the letters and draws their backs. */
    @Setup
    public void draw() throws Exception {
        Path proof = LetterProof.write(Files.createTempFile("letters", ".svg"), letters);
        proof.toFile().deleteOnExit();
        drawn = CheckTester.of(new FitCheck());
        made = CheckTester.of(new FitCheck());
        for (Element element : new SvgImporter().read(proof, ImportOptions.defaults()).elements()) {
            for (int i = 0; i < element.fillArea().getNumGeometries(); i++) {
                Polygon shape = (Polygon) element.fillArea().getGeometryN(i);
                Part face = Part.builder("f" + faces.size(), Role.FACE, shape).build();
                faces.add(shape);
                made.part(face);
                drawn.part(face);
            }
        }
        for (int i = 0; i < faces.size(); i++) {
            Geometry back = buffer(faces.get(i));
            for (int k = 0; k < back.getNumGeometries(); k++) {
                backs.add(back.getGeometryN(k));
                drawn.part(Part.builder("b" + i + "-" + k, Role.BACK, (Polygon) back.getGeometryN(k)).build());
            }
        }
        System.out.printf(Locale.ROOT, "%n%d faces with %d vertices, %d backs with %d vertices; findings: %d drawn, %d made%n", faces.size(), vertices(faces),
                backs.size(), vertices(backs), backsDrawn().findings().size(), backsMade().findings().size());
    }

    private static int vertices(List<Geometry> shapes) {
        return shapes.stream().mapToInt(Geometry::getNumPoints).sum();
    }

    private static Geometry buffer(Geometry shape) {
        BufferParameters mitred = new BufferParameters(QUADRANT_SEGMENTS, BufferParameters.CAP_ROUND, BufferParameters.JOIN_MITRE, 4);
        mitred.setSimplifyFactor(0);
        return BufferOp.bufferOp(shape, -SIDE_MM, mitred);
    }

    /** Pairs faces with drawn backs and measures all clearances. */
    @Benchmark
    public Outcome backsDrawn() {
        return drawn.run();
    }

    /** Makes the backs and looks for what they lose. */
    @Benchmark
    public Outcome backsMade() {
        return made.run();
    }

    /** Plain JTS: one buffer of the faces, part by part, on one thread. */
    @Benchmark
    public double bufferOfFaces() {
        return faces.stream().mapToDouble(shape -> buffer(shape).getArea()).sum();
    }

    /** Plain JTS: one buffer of faces and backs, part by part, on one thread. */
    @Benchmark
    public double bufferOfAll() {
        return bufferOfFaces() + backs.stream().mapToDouble(shape -> buffer(shape).getArea()).sum();
    }

    /** Runs all and prints the ratios; ends with status 1 when one is above the limit. */
    public static void main(String[] arguments) throws RunnerException {
        Collection<RunResult> results = new org.openjdk.jmh.runner.Runner(new OptionsBuilder().include(FitBenchmark.class.getSimpleName()).build()).run();
        Map<String, Double> millis = new HashMap<>();
        results.forEach(result -> millis.put(result.getPrimaryResult().getLabel(), result.getPrimaryResult().getScore()));
        double drawn = millis.get("backsDrawn") / millis.get("bufferOfAll");
        double made = millis.get("backsMade") / millis.get("bufferOfFaces");
        System.out.printf(Locale.ROOT, "fit, per vertex, in buffers of the same parts: %.2f with backs drawn, %.2f with backs to be made (at most %.1f)%n",
                drawn, made, MOST_BUFFERS);
        System.exit(Math.max(drawn, made) <= MOST_BUFFERS ? 0 : 1);
    }
}
