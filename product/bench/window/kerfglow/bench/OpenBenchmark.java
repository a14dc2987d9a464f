// SPDX-License-Identifier: Apache-2.0
package kerfglow.bench;

import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import kerfglow.api.Check;
import kerfglow.desktop.desk.Desk;
import kerfglow.host.Scope;
import kerfglow.job.FindingItem;
import kerfglow.window.Window;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;

/**
 * A proof of a million vertices in a real window, with every check but light, power and packing: how long until it is seen and until all is checked, how long the
 * window leaves an event waiting meanwhile, what the heap holds at its peak, and what zooming, moving, choosing and closing take then.
 */
public final class OpenBenchmark {
    private static final int LETTERS = 3400;
    private static final Set<String> LEFT_OUT = Set.of("glow", "power", "sheet");
    private static final int LOOK_MILLIS = 20;
    /** Longer than this, and a person feels it. */
    private static final long MOST_MILLIS = 200;
    private static final int MOVES = 40;
    private static final int CHOSEN = 10;
    private static final double MIB = 1 << 20;

    private final Window window;
    private final Display display;
    private long start;
    private long worst;

    private OpenBenchmark(Window window) {
        this.window = window;
        display = window.display();
    }

    /** @param args how many letters; 3,400 when none is given */
    public static void main(String[] args) throws Exception {
        int letters = args.length > 0 ? Integer.parseInt(args[0]) : LETTERS;
        Path folder = Files.createTempDirectory("open");
        Path proof = LetterProof.write(folder.resolve("letters.svg"), letters);
        Files.writeString(folder.resolve("letters.job.yaml"), "roles: [{layer: Letters, role: face}]\nbuild: face-lit letters\nmaterials: [{role: face, material: acrylic, thickness: 4.5 mm}]\n"
                + "settings: {returns.depth: 80 mm}\n");
        List<Check> checks = SettingBenchmark.checks().stream().filter(check -> !LEFT_OUT.contains(check.info().id())).toList();
        boolean answers;
        try (Window window = new Window(folder.resolve("state"), checks)) {
            answers = new OpenBenchmark(window).run(proof);
        }
        System.exit(answers ? 0 : 1);
    }

    private boolean run(Path proof) throws Exception {
        Thread looking = new Thread(this::look, "looks whether the window answers");
        looking.setDaemon(true);
        looking.start();
        window.settle(1000);
        window.longestMillis();
        Desk desk = window.desk();
        start = System.nanoTime();
        window.worker().open(proof);
        window.turnUntil(() -> desk.proof().isPresent(), "the proof");
        Canvas canvas = window.control(window.shell(), Canvas.class, each -> window.accessibleName(each).startsWith("Proof with findings"));
        boolean[] painted = new boolean[1];
        canvas.addListener(SWT.Paint, event -> painted[0] = true);
        window.turnUntil(() -> painted[0], "the first picture");
        tell("first picture, " + desk.scene().figures().stream().mapToInt(figure -> figure.outlines().size()).sum() + " vertices");
        int moves = 0;
        while (desk.work().busy() || desk.result().isEmpty()) { // a person looks around meanwhile
            wheel(canvas, moves++ % 20 < 10 ? 1 : -1);
            window.settle(150);
        }
        tell("all checked, " + moves + " steps of zoom meanwhile");
        desk.result().orElseThrow().checks().forEach(row -> System.out.printf("  %s: %s, %d ms %s%n", row.check(), row.status().word(), row.millis(), row.why()));
        System.out.println("  " + desk.result().orElseThrow().findings().size() + " findings, " + desk.findings().markers().size() + " places");
        shot("open-checked");
        for (int i = 0; i < MOVES; i++) {
            wheel(canvas, i % 20 < 10 ? 1 : -1);
            window.settle(40);
        }
        tell("zoomed to and fro");
        List<FindingItem> listed = desk.findings().listed();
        for (int i = 0; i < CHOSEN; i++) {
            desk.findings().choose(listed.get(i * listed.size() / CHOSEN).finding().id(), 0);
            window.settle(400);
        }
        tell("chose " + CHOSEN + " findings");
        shot("open-chosen");
        window.editor().settings().stream().filter(setting -> setting.key().equals("router.least-stroke")).forEach(setting -> window.editor().change(setting, "4 mm", Scope.ALL));
        window.turnUntil(() -> desk.work().busy(), "the change");
        window.turnUntil(() -> !desk.work().busy(), "the changed setting");
        tell("changed a setting of the router");
        boolean within = worst <= MOST_MILLIS;
        long closing = System.nanoTime();
        desk.kept().putAway();
        System.out.printf(Locale.ROOT, "put away in %.0f ms%n", (System.nanoTime() - closing) / 1e6);
        return within;
    }

    /** A picture, for whoever names a folder with {@code -Dshots}. */
    private void shot(String name) throws Exception {
        if (System.getProperty("shots") != null) {
            window.shotAtOnce(name);
        }
    }

    private void tell(String what) {
        long waited = window.longestMillis();
        worst = Math.max(worst, waited);
        double peak = ManagementFactory.getMemoryPoolMXBeans().stream().filter(pool -> pool.getType() == MemoryType.HEAP).mapToLong(pool -> pool.getPeakUsage().getUsed()).sum() / MIB;
        System.out.printf(Locale.ROOT, "%.1f s: %s; an event took at most %d ms; heap at most %.0f of %.0f MiB%n", (System.nanoTime() - start) / 1e9, what, waited, peak, Runtime.getRuntime().maxMemory() / MIB);
    }

    private void wheel(Canvas canvas, int count) {
        Event event = new Event();
        event.count = count;
        event.x = canvas.getSize().x / 2;
        event.y = canvas.getSize().y / 2;
        canvas.notifyListeners(SWT.MouseWheel, event);
    }

    /** Says what the window is at when one event takes long. */
    private void look() {
        List<String> told = new ArrayList<>();
        while (!display.isDisposed()) {
            long waiting = window.turningMillis();
            if (waiting > MOST_MILLIS) {
                String at = Arrays.stream(display.getThread().getStackTrace()).map(StackTraceElement::toString)
                        .filter(each -> each.contains("kerfglow") && !each.contains("Lambda") && !each.contains("bench") && !each.contains("Window.")).limit(4).collect(Collectors.joining(" < "));
                if (!told.contains(at)) {
                    told.add(at);
                    System.out.println("  an event takes " + waiting + " ms: " + at);
                }
            }
            try {
                Thread.sleep(LOOK_MILLIS);
            } catch (InterruptedException ended) {
                return;
            }
        }
    }
}
