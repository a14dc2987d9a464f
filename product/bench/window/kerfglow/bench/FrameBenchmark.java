// SPDX-License-Identifier: Apache-2.0
package kerfglow.bench;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.function.UnaryOperator;
import kerfglow.api.Measure;
import kerfglow.api.Rule;
import kerfglow.api.Severity;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.ImportOptions;
import kerfglow.api.proof.Proof;
import kerfglow.desktop.DeskMaker;
import kerfglow.desktop.desk.Desk;
import kerfglow.desktop.desk.Worker;
import kerfglow.desktop.parts.ProofCanvas;
import kerfglow.desktop.scene.Figure;
import kerfglow.desktop.scene.Scene;
import kerfglow.desktop.scene.SceneMaker;
import kerfglow.desktop.scene.View;
import kerfglow.host.CheckCatalogue;
import kerfglow.host.JobSheet;
import kerfglow.host.Result;
import kerfglow.host.Runner;
import kerfglow.host.ShopSheet;
import kerfglow.svg.SvgImporter;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Listener;
import org.eclipse.swt.widgets.Shell;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;

/** Frame times of the proof's canvas in a real window, zoomed and moved through: the demo with all that its checks draw beside their findings, and 2,000 letters with 500 findings. */
public final class FrameBenchmark {
    private static final int LETTERS = 2000;
    private static final int FINDINGS = 500;
    private static final int FRAMES = 120;
    private static final int WIDTH_PX = 1280;
    private static final int HEIGHT_PX = 800;
    /** Flattened this fine the letters have about as many vertices as the largest proofs of the other benchmarks: 490,000. */
    private static final double CHORD_ERROR_MM = 0.02;
    private static final Rule RULE = new Rule("bench.place", Severity.REVIEW, "A place to draw", "for the benchmark", "nothing", "none");

    private FrameBenchmark() {
    }

    /** @param args the folder with the demo */
    public static void main(String[] args) throws Exception {
        Display display = new Display();
        demo(display, Path.of(args[0]));
        letters(display);
        display.dispose();
    }

    private static void demo(Display display, Path testdata) throws Exception {
        Path folder = Files.createTempDirectory("frames");
        for (String name : List.of("skelderfen.svg", "skelderfen.job.yaml", "shop.yaml")) {
            Files.copy(testdata.resolve(name), folder.resolve(name));
        }
        CheckCatalogue catalogue = new CheckCatalogue();
        SettingBenchmark.checks().forEach(check -> catalogue.add(check, "bench", "1"));
        Map<Class<?>, Object> shared = DeskMaker.lay(display, new Runner(new SvgImporter(), catalogue), catalogue, folder.resolve("state"), Optional.empty());
        Desk desk = (Desk) shared.get(Desk.class);
        ProofCanvas canvas = canvas(display, desk);
        ((Worker) shared.get(Worker.class)).open(folder.resolve("skelderfen.svg"));
        while (desk.result().isEmpty() || desk.work().busy()) {
            if (!display.readAndDispatch()) {
                display.sleep();
            }
        }
        Scene scene = desk.scene();
        Result result = desk.result().get();
        System.out.printf(Locale.ROOT, "demo: %d figures, %d vertices, %d findings%n", scene.figures().size(),
                scene.figures().stream().mapToInt(figure -> figure.outlines().size()).sum(), result.findings().size());
        views(display, canvas, "demo");
        result.checks().stream().filter(row -> !row.check().equals("glow")).forEach(row -> row.layers().forEach(layer -> desk.shown().setOverlay(row.check() + "/" + layer.id(), true)));
        views(display, canvas, "demo, layers of geometry");
        result.checks().forEach(row -> row.layers().forEach(layer -> desk.shown().setOverlay(row.check() + "/" + layer.id(), true)));
        views(display, canvas, "demo, every layer with light");
        desk.kept().putAway();
        canvas.control().getShell().dispose();
    }

    private static ProofCanvas canvas(Display display, Desk desk) {
        Shell shell = new Shell(display);
        shell.setLayout(new FillLayout());
        ProofCanvas canvas = new ProofCanvas(shell, desk);
        shell.setSize(WIDTH_PX, HEIGHT_PX);
        shell.open();
        return canvas;
    }

    private static void views(Display display, ProofCanvas canvas, String what) {
        while (display.readAndDispatch()) {
            // lets the window come up
        }
        canvas.lookout().fit();
        View whole = canvas.lookout().view();
        // from far to near: each frame a little larger
        measure(display, canvas, what + ": zoom", whole, view -> view.zoomedAbout(WIDTH_PX / 2.0, HEIGHT_PX / 2.0, 1.08));
        for (double factor : new double[] {1, 2, 4, 8, 32}) {
            View near = whole.zoomedAbout(WIDTH_PX / 3.0, HEIGHT_PX / 3.0, factor);
            measure(display, canvas, String.format(Locale.ROOT, "%s: move at %.0f times", what, factor), near, view -> view.moved(-4, -2));
        }
    }

    private static void letters(Display display) throws Exception {
        Path file = LetterProof.write(Files.createTempFile("letters", ".svg"), LETTERS);
        Proof proof = new SvgImporter().read(file, ImportOptions.defaults().withChordErrorMm(CHORD_ERROR_MM));
        Files.delete(file);
        long start = System.nanoTime();
        Scene scene = SceneMaker.scene(proof, List.of());
        System.out.printf(Locale.ROOT, "%d figures, %d vertices, %d findings; scene made in %.0f ms%n", scene.figures().size(),
                scene.figures().stream().mapToInt(figure -> figure.outlines().size()).sum(), FINDINGS, (System.nanoTime() - start) / 1e6);
        Desk desk = new Desk();
        ProofCanvas canvas = canvas(display, desk);
        desk.put(proof, List.of(), scene, UnitSystem.METRIC);
        desk.showSoFar(new Result(proof, JobSheet.NONE, ShopSheet.NONE, UnitSystem.METRIC, List.of(), findings(scene),
                List.of(new Result.CheckRow("bench", "bench", "0", Result.Status.FINDINGS, 0, "", List.of(), List.of())), List.of(), List.of()));
        views(display, canvas, "letters");
        desk.shown().setEdgesAlone(true);
        canvas.lookout().fit();
        measure(display, canvas, "letters: move at 1 times, edges alone", canvas.lookout().view(), view -> view.moved(-4, -2));
    }

    private static List<Result.ReportedFinding> findings(Scene scene) {
        Random random = new Random(1);
        GeometryFactory factory = new GeometryFactory();
        List<Result.ReportedFinding> findings = new ArrayList<>();
        for (int i = 0; i < FINDINGS; i++) {
            Figure figure = scene.figures().get(random.nextInt(scene.figures().size()));
            Coordinate at = figure.extent().centre();
            Envelope box = new Envelope(at);
            box.expandBy(3 + random.nextInt(30));
            findings.add(new Result.ReportedFinding("f" + i, RULE, Severity.values()[random.nextInt(Severity.values().length)], "", List.of(), List.of(), Optional.of(Measure.mm(1)),
                    Optional.empty(), List.of(new Result.Place(at, factory.toGeometry(box), Optional.empty(), Optional.empty())), "A place.", "Nothing."));
        }
        return findings;
    }

    private static void measure(Display display, ProofCanvas canvas, String what, View from, UnaryOperator<View> step) {
        double[] painting = new double[FRAMES];
        double[] frames = new double[FRAMES];
        double[] processor = new double[FRAMES];
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        long[] clock = new long[3]; // painting began, painting ended, frames painted
        Listener before = event -> clock[0] = System.nanoTime();
        Listener after = event -> {
            clock[1] = System.nanoTime();
            clock[2]++;
        };
        display.addFilter(SWT.Paint, before);
        canvas.control().addListener(SWT.Paint, after);
        for (int round = 0; round < 2; round++) { // the first warms up
            View view = from;
            for (int i = 0; i < FRAMES; i++) {
                long start = System.nanoTime();
                long used = threads.getCurrentThreadCpuTime();
                long painted = clock[2];
                canvas.lookout().show(view);
                while (clock[2] == painted) { // the toolkit paints in its own time, at most 60 times a second
                    if (!display.readAndDispatch()) {
                        display.sleep();
                    }
                }
                frames[i] = (System.nanoTime() - start) / 1e6;
                processor[i] = (threads.getCurrentThreadCpuTime() - used) / 1e6;
                painting[i] = (clock[1] - clock[0]) / 1e6;
                view = step.apply(view);
            }
        }
        display.removeFilter(SWT.Paint, before);
        canvas.control().removeListener(SWT.Paint, after);
        Arrays.sort(painting);
        Arrays.sort(frames);
        Arrays.sort(processor);
        System.out.printf(Locale.ROOT, "%-48s painting: median %5.1f ms, 95 of 100 below %5.1f ms; frame: median %5.1f ms (%5.1f ms of the processor), 95 of 100 below %5.1f ms, %3.0f a second%n",
                what, painting[FRAMES / 2], painting[FRAMES * 95 / 100], frames[FRAMES / 2], processor[FRAMES / 2], frames[FRAMES * 95 / 100], 1000 / frames[FRAMES / 2]);
    }
}
