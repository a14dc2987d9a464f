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
import java.util.Optional;
import java.util.Random;
import java.util.function.UnaryOperator;
import kerfglow.api.Measure;
import kerfglow.api.Rule;
import kerfglow.api.Severity;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.ImportOptions;
import kerfglow.api.proof.Proof;
import kerfglow.desktop.desk.Desk;
import kerfglow.desktop.parts.ProofCanvas;
import kerfglow.desktop.scene.Figure;
import kerfglow.desktop.scene.Scene;
import kerfglow.desktop.scene.SceneMaker;
import kerfglow.desktop.scene.View;
import kerfglow.host.JobSheet;
import kerfglow.host.Result;
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

/** Frame times of the proof's canvas in a real window: a proof of 2,000 letters with 500 findings, zoomed and moved through. */
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

    public static void main(String[] args) throws Exception {
        Path file = LetterProof.write(Files.createTempFile("letters", ".svg"), LETTERS);
        Proof proof = new SvgImporter().read(file, ImportOptions.defaults().withChordErrorMm(CHORD_ERROR_MM));
        Files.delete(file);
        long start = System.nanoTime();
        Scene scene = SceneMaker.scene(proof, List.of());
        System.out.printf(Locale.ROOT, "%d figures, %d vertices, %d findings; scene made in %.0f ms%n", scene.figures().size(),
                scene.figures().stream().mapToInt(figure -> figure.outlines().size()).sum(), FINDINGS, (System.nanoTime() - start) / 1e6);
        Display display = new Display();
        Shell shell = new Shell(display);
        shell.setLayout(new FillLayout());
        Desk desk = new Desk();
        ProofCanvas canvas = new ProofCanvas(shell, desk);
        shell.setSize(WIDTH_PX, HEIGHT_PX);
        shell.open();
        desk.put(proof, List.of(), scene, UnitSystem.METRIC);
        desk.showSoFar(new Result(proof, JobSheet.NONE, ShopSheet.NONE, UnitSystem.METRIC, List.of(), findings(scene),
                List.of(new Result.CheckRow("bench", "bench", "0", Result.Status.FINDINGS, 0, "", List.of(), List.of())), List.of(), List.of()));
        while (display.readAndDispatch()) {
            // lets the window come up
        }
        canvas.lookout().fit();
        View whole = canvas.lookout().view();
        // from far to near: each frame a little larger, about one letter in the middle
        measure(display, canvas, "zoom from whole to a corner", whole, view -> view.zoomedAbout(WIDTH_PX / 2.0, HEIGHT_PX / 2.0, 1.08));
        for (double factor : new double[] {1, 2, 4, 8, 32}) {
            View near = whole.zoomedAbout(WIDTH_PX / 3.0, HEIGHT_PX / 3.0, factor);
            measure(display, canvas, String.format(Locale.ROOT, "move at %.0f times the whole", factor), near, view -> view.moved(-4, -2));
        }
        desk.shown().setEdgesAlone(true);
        measure(display, canvas, "move, edges alone, whole", whole, view -> view.moved(-4, -2));
        display.dispose();
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
        System.out.printf(Locale.ROOT, "%-28s painting: median %5.1f ms, 95 of 100 below %5.1f ms; frame: median %5.1f ms (%5.1f ms of the processor), 95 of 100 below %5.1f ms, %3.0f a second%n",
                what, painting[FRAMES / 2], painting[FRAMES * 95 / 100], frames[FRAMES / 2], processor[FRAMES / 2], frames[FRAMES * 95 / 100], 1000 / frames[FRAMES / 2]);
    }
}
