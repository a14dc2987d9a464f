// SPDX-License-Identifier: Apache-2.0
package kerfglow.window;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import kerfglow.api.Check;
import kerfglow.api.CheckInfo;
import kerfglow.api.Finding;
import kerfglow.api.Inspection;
import kerfglow.api.Measure;
import kerfglow.api.Outcome;
import kerfglow.api.OverlayLayer;
import kerfglow.api.Rule;
import kerfglow.api.Setting;
import kerfglow.api.Severity;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.check.artwork.ArtworkCheck;
import kerfglow.check.fit.FitCheck;
import kerfglow.check.legibility.LegibilityCheck;
import kerfglow.check.returns.ReturnsCheck;
import kerfglow.check.router.RouterCheck;
import kerfglow.check.trim.TrimCheck;
import kerfglow.desktop.closeup.CloseUp;
import kerfglow.desktop.desk.RevisionList;
import kerfglow.desktop.desk.Shown;
import kerfglow.desktop.scene.LayerStyle;
import kerfglow.desktop.scene.OverlayDrawing;
import kerfglow.desktop.section.Section;
import kerfglow.host.CheckCatalogue;
import kerfglow.job.Decision;
import kerfglow.job.FindingItem;
import kerfglow.job.Job;
import kerfglow.job.JobFile;
import kerfglow.job.JobNames;
import kerfglow.job.JobState;
import kerfglow.job.Mark;
import kerfglow.job.MarkShape;
import kerfglow.job.PointMm;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.swt.widgets.TreeItem;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;

/** What a reviewer does, done in a real window: open, find, choose, mark, waive, save, be killed, reopen, revise, sign off. */
class WindowTest {
    private static final Path TESTDATA = Path.of(System.getProperty("testdata"));
    private static final List<String> DEMO = List.of("skelderfen.svg", "skelderfen.job.yaml", "shop.yaml", "faulty-letters.svg", "faulty-letters.job.yaml");

    @TempDir
    Path folder;

    @BeforeEach
    void copy() throws IOException {
        for (String name : DEMO) {
            Files.copy(TESTDATA.resolve(name), folder.resolve(name));
        }
    }

    private static List<Check> checks() {
        return List.of(new ArtworkCheck(), new RouterCheck(), new FitCheck(), new ReturnsCheck(), new TrimCheck(), new LegibilityCheck());
    }

    private Window window() throws ReflectiveOperationException {
        return new Window(folder.resolve("state"), checks());
    }

    private static Tree findings(Window window) {
        return window.control(window.shell(), Tree.class, tree -> tree.getHeaderVisible());
    }

    private static Consumer<Shell> words(Window window, String words, String name) {
        return dialog -> {
            List<Text> fields = List.of(dialog.getChildren()).stream().filter(Text.class::isInstance).map(Text.class::cast).toList();
            fields.get(0).setText(words);
            fields.get(1).setText(name);
            dialog.getDefaultButton().notifyListeners(SWT.Selection, new Event());
        };
    }

    @Test
    void the_demo_is_looked_through_decided_upon_saved_and_opened_again() throws Exception {
        Path job = folder.resolve("skelderfen" + JobNames.ENDING);
        FindingItem waived;
        try (Window window = window()) {
            window.open(folder.resolve("skelderfen.svg"));
            window.shot("1-opened");
            assertEquals("Router", findings(window).getItem(0).getText(0));
            assertTrue(findings(window).getItem(0).getText(2).contains("stop"), "the station says how many");

            window.menu("Next");
            assertEquals(1, window.desk().findings().choice().orElseThrow().item().number());
            assertEquals("1", findings(window).getSelection()[0].getText(0), "the list follows");

            Text find = window.control(window.shell(), Text.class, text -> text.getMessage().startsWith("Words"));
            find.setText("does not pass");
            assertTrue(window.desk().findings().listed().stream().allMatch(item -> item.finding().rule().id().equals("router.narrow-gap")));
            assertFalse(window.desk().findings().listed().isEmpty());
            window.menu("Next");
            waived = window.desk().findings().choice().orElseThrow().item();
            assertEquals("router.narrow-gap", waived.finding().rule().id());
            window.shot("2-chosen");

            window.answerNext(words(window, "The hairline rules are cut by hand.", "M. Reviewer"));
            assertTrue(window.menu("Waive the chosen finding"));
            assertEquals(Decision.Kind.WAIVED, window.desk().findings().choice().orElseThrow().item().decision().kind());
            assertTrue(window.menuText("Undo").contains("waive finding"));
            window.menu("Undo");
            assertEquals(Decision.Kind.OPEN, window.desk().findings().choice().orElseThrow().item().decision().kind());
            window.menu("Redo");
            find.setText("");

            window.menu("Whole proof");
            window.answerNext(words(window, "Is this the blue of the panel?", "M. Reviewer"));
            window.menu("Mark with a box");
            pull(window, 300, 300, 420, 380);
            assertEquals(1, window.desk().job().orElseThrow().state().marks().size());
            window.tab("What was decided");
            window.shot("3-decided");
            assertTrue(window.menu("Save the job"));
            window.tab("Seen from afar");
            window.shot("4-seen-from-afar");
            window.tab("The proof");
            window.menu("Dark window");
            window.menu("Edges alone");
            window.tab("Settings");
            window.shot("5-dark");
        }
        JobState saved = JobFile.read(job).state();
        assertEquals(1, saved.waivers().size());
        assertEquals("The hairline rules are cut by hand.", saved.waivers().get(0).reason());
        assertEquals("Is this the blue of the panel?", saved.marks().get(0).text());
        try (Window again = window()) {
            again.open(job);
            FindingItem same = again.desk().findings().listed().stream().filter(item -> item.finding().id().equals(waived.finding().id())).findFirst().orElseThrow();
            assertTrue(same.decision().isWaived());
            assertFalse(again.desk().job().orElseThrow().isChanged());
        }
    }

    @Test
    void a_mark_is_made_and_answered_without_a_pointer() throws Exception {
        try (Window window = window()) {
            window.open(folder.resolve("faulty-letters.svg"));
            Canvas canvas = window.control(window.shell(), Canvas.class, each -> each.getClass() == Canvas.class && each.getSize().x > 500);
            window.menu("Mark with an arrow");
            key(canvas, SWT.CR);
            key(canvas, SWT.ARROW_RIGHT);
            window.shot("10-by-keys");
            window.answerNext(words(window, "Which blue?", "M. Reviewer"));
            key(canvas, SWT.CR);
            window.settle();
            Mark made = window.desk().job().orElseThrow().state().marks().get(0);
            MarkShape.Arrow arrow = (MarkShape.Arrow) made.shape();
            assertTrue(arrow.tip().xMm() > arrow.from().xMm(), "the arrow key moved the view to the right");
            assertEquals(arrow.from().yMm(), arrow.tip().yMm(), 1e-9);
            window.tab("What was decided");
            Tree tree = window.control(window.shell(), Tree.class, each -> "Decisions, marks and sign-offs".equals(window.accessibleName(each)));
            TreeItem marks = List.of(tree.getItems()).stream().filter(item -> item.getText().startsWith("Marks")).findFirst().orElseThrow();
            tree.setSelection(marks.getItem(0));
            tree.notifyListeners(SWT.Selection, new Event());
            window.answerNext(words(window, "Which of the two blues?", "M. Reviewer"));
            window.control(window.shell(), Button.class, button -> button.getText().equals("Reword...")).notifyListeners(SWT.Selection, new Event());
            assertEquals("Which of the two blues?", window.desk().job().orElseThrow().state().marks().get(0).text());
            marks = List.of(tree.getItems()).stream().filter(item -> item.getText().startsWith("Marks")).findFirst().orElseThrow();
            tree.setSelection(marks.getItem(0));
            tree.notifyListeners(SWT.Selection, new Event());
            window.answerNext(words(window, "The second of the two.", "A. Customer"));
            window.control(window.shell(), Button.class, button -> button.getText().equals("Settle...")).notifyListeners(SWT.Selection, new Event());
            Mark settled = window.desk().job().orElseThrow().state().marks().get(0);
            assertEquals("The second of the two.", settled.answers().get(0).text());
            assertEquals("A. Customer", settled.settled().orElseThrow().author(), "who settles it, not who made it");
        }
    }

    @Test
    void marks_are_moved_by_hand_and_by_keys_and_put_back_by_undo() throws Exception {
        try (Window window = window()) {
            window.open(folder.resolve("faulty-letters.svg"));
            Job job = window.desk().job().orElseThrow();
            Canvas canvas = window.control(window.shell(), Canvas.class, each -> each.getClass() == Canvas.class && each.getSize().x > 500);
            for (String kind : List.of("box", "ring", "line", "n arrow", "dimension")) {
                window.answerNext(words(window, "Is this right?", "M. Reviewer"));
                window.menu("Mark with a" + (kind.startsWith("n ") ? kind : " " + kind));
                int top = 150 + 90 * job.state().marks().size();
                pull(window, 120, top, 260, top + 60);
            }
            assertEquals(5, job.state().marks().size());
            MarkShape.Box box = (MarkShape.Box) job.state().marks().get(0).shape();
            pull(window, 190, 150, 230, 150); // not chosen: the drawing moves
            assertEquals(box, job.state().marks().get(0).shape());
            pull(window, 230, 150, 190, 150);
            click(canvas, 190, 150);
            pull(window, 190, 150, 290, 130);
            MarkShape.Box moved = (MarkShape.Box) job.state().marks().get(0).shape();
            assertEquals(5, (box.topLeft().yMm() - moved.topLeft().yMm()) / (moved.topLeft().xMm() - box.topLeft().xMm()) * 25, 1e-6, "100 px right, 20 px up");
            assertEquals(box.widthMm(), moved.widthMm(), 1e-9);
            assertTrue(window.menuText("Undo").contains("move box"));
            pull(window, 360, 190, 420, 230); // its lower right corner
            MarkShape.Box larger = (MarkShape.Box) job.state().marks().get(0).shape();
            assertEquals(moved.topLeft(), larger.topLeft());
            assertTrue(larger.widthMm() > moved.widthMm() && larger.heightMm() > moved.heightMm());
            window.tab("What was decided");
            window.shot("11-mark-moved");
            key(canvas, SWT.ARROW_RIGHT);
            key(canvas, SWT.ARROW_RIGHT);
            send(canvas, SWT.KeyUp, 0, 0);
            assertEquals(larger.widthMm() + 2, ((MarkShape.Box) job.state().marks().get(0).shape()).widthMm(), 1e-9, "the corner that was pulled last");
            for (int i = 0; i < 3; i++) {
                window.menu("Undo");
            }
            assertEquals(box, job.state().marks().get(0).shape());
            key(canvas, SWT.ESC);
            click(canvas, 190, 540); // the dimension, on its line
            assertEquals("dimension", window.desk().marks().chosen().orElseThrow().shape().word());
            key(canvas, SWT.DEL);
            assertEquals(4, job.state().marks().size());
            assertTrue(window.menuText("Undo").contains("remove mark"));
        }
    }

    private static void click(Canvas canvas, int x, int y) {
        send(canvas, SWT.MouseDown, x, y);
        send(canvas, SWT.MouseUp, x, y);
    }

    private static void key(Canvas canvas, int keyCode) {
        Event event = new Event();
        event.keyCode = keyCode;
        canvas.notifyListeners(SWT.KeyDown, event);
    }

    private static void pull(Window window, int fromX, int fromY, int toX, int toY) {
        Canvas canvas = window.control(window.shell(), Canvas.class, each -> each.getClass() == Canvas.class && each.getSize().x > 500);
        send(canvas, SWT.MouseDown, fromX, fromY);
        send(canvas, SWT.MouseMove, (fromX + toX) / 2, (fromY + toY) / 2);
        send(canvas, SWT.MouseMove, toX, toY);
        send(canvas, SWT.MouseUp, toX, toY);
        window.settle();
    }

    private static void send(Canvas canvas, int type, int x, int y) {
        Event event = new Event();
        event.x = x;
        event.y = y;
        event.button = 1;
        canvas.notifyListeners(type, event);
    }

    @Test
    void a_killed_window_loses_nothing_that_was_entered() throws Exception {
        Path proof = folder.resolve("faulty-letters.svg");
        Path side = folder.resolve(".faulty-letters" + JobNames.ENDING + ".unsaved");
        ProcessBuilder builder = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Djava.awt.headless=true", "-cp",
                System.getProperty("java.class.path"), KilledWindow.class.getName(), proof.toString()).inheritIO();
        Process process = builder.start();
        for (int i = 0; i < 1200 && !Files.exists(side) && process.isAlive(); i++) {
            TimeUnit.MILLISECONDS.sleep(100);
        }
        assertTrue(process.isAlive(), "it lives until it is killed");
        process.destroyForcibly().waitFor();
        assertFalse(Files.exists(folder.resolve("faulty-letters" + JobNames.ENDING)), "it never saved");
        try (Window window = window()) {
            window.open(proof);
            assertEquals(List.of(), window.desk().job().orElseThrow().state().marks(), "it is offered, not taken up by itself");
            assertTrue(window.notices().get(0).matches("Work on faulty-letters.kerfglow was not saved when its window ended, last on \\d.* at \\d+:\\d\\d: 1 mark added\\."),
                    window.notices()::toString);
            window.shot("11-offer");
            window.press(window.shell(), "Take it up");
            assertEquals(KilledWindow.TEXT, window.desk().job().orElseThrow().state().marks().get(0).text());
            assertTrue(window.menuText("Undo").contains("take up what was not saved"));
            assertEquals(List.of(), window.notices());
        }
        try (Window window = window()) {
            window.open(proof);
            assertTrue(window.notices().get(0).contains("1 mark added"), "it was not saved the second time either");
            window.press(window.shell(), "Set it aside");
            window.shot("12-set-aside");
            Path kept = Path.of(window.notices().get(0).replaceAll("It is kept as (.*), which.*", "$1"));
            assertEquals(KilledWindow.TEXT, JobFile.read(kept).state().marks().get(0).text());
            window.press(window.shell(), "Read");
            assertEquals(List.of(), window.notices());
        }
        try (Window window = window()) {
            window.open(proof);
            assertEquals(List.of(), window.notices(), "decided, so that it is not offered again");
        }
    }

    /** The display goes, as when a session is ended or a connection breaks: the toolkit ends the process at once, nothing can be asked. */
    @Test
    void a_window_whose_display_is_lost_ends_and_keeps_what_was_entered() throws Exception {
        Path proof = folder.resolve("faulty-letters.svg");
        Path side = folder.resolve(".faulty-letters" + JobNames.ENDING + ".unsaved");
        Process display = new ProcessBuilder("sh", "-c", "exec Xvfb -displayfd 3 -screen 0 1440x880x24 -nolisten tcp 3>&1 1>/dev/null 2>/dev/null").start();
        ProcessBuilder builder = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Djava.awt.headless=true", "-cp",
                System.getProperty("java.class.path"), KilledWindow.class.getName(), proof.toString()).inheritIO();
        builder.environment().put("DISPLAY", ":" + new BufferedReader(new InputStreamReader(display.getInputStream(), StandardCharsets.US_ASCII)).readLine());
        Process process = builder.start();
        try {
            for (int i = 0; i < 1200 && !Files.exists(side) && process.isAlive(); i++) {
                TimeUnit.MILLISECONDS.sleep(100);
            }
            assertTrue(process.isAlive(), "it lives until its display goes");
            display.destroyForcibly().waitFor();
            assertTrue(process.waitFor(60, TimeUnit.SECONDS), "it ends by itself");
        } finally {
            process.destroyForcibly();
            display.destroyForcibly();
        }
        try (Window window = window()) {
            window.open(proof);
            window.press(window.shell(), "Take it up");
            assertEquals(KilledWindow.TEXT, window.desk().job().orElseThrow().state().marks().get(0).text());
        }
    }

    @Test
    void a_revised_proof_keeps_its_decisions_and_is_signed_off() throws Exception {
        Path proof = folder.resolve("faulty-letters.svg");
        try (Window window = window()) {
            window.open(proof);
            List<FindingItem> stops = window.desk().findings().listed().stream().filter(item -> item.finding().severity() == Severity.STOP).toList();
            assertFalse(stops.isEmpty(), "the sample must hold a stop");
            for (FindingItem stop : stops) {
                window.desk().findings().choose(stop.finding().id(), 0);
                window.answerNext(words(window, "Agreed with the customer.", "M. Reviewer"));
                window.menu("Waive the chosen finding");
            }
            Files.writeString(proof, Files.readString(proof).replace("</svg>", "<!-- second revision --></svg>"));
            String before = window.desk().proof().orElseThrow().sha256();
            window.menu("Read and check again");
            window.await(() -> !window.desk().proof().orElseThrow().sha256().equals(before) && !window.desk().work().busy(), "the revision");
            assertTrue(window.desk().comparison().isPresent());
            assertTrue(window.desk().findings().listed().stream().filter(item -> item.finding().severity() == Severity.STOP).allMatch(item -> item.decision().isWaived()));
            window.answerNext(words(window, "", "M. Reviewer"));
            window.menu("Sign off");
            assertTrue(window.desk().reviewed().orElseThrow().signedOff().isPresent());
            window.tab("What was decided");
            window.shot("6-signed-off");
        }
    }

    @Test
    void a_revision_is_drawn_over_the_one_before_and_a_second_reviewers_marks_come_in() throws Exception {
        Path proof = folder.resolve("faulty-letters.svg");
        Path second = folder.resolve("second" + JobNames.ENDING);
        try (Window window = window()) {
            window.open(proof);
            Job job = window.desk().job().orElseThrow();
            job.mark(new MarkShape.Note(new PointMm(60, 60)), "on the letter that goes", "M. Reviewer");
            window.menu("Save the job");
            Files.copy(folder.resolve("faulty-letters" + JobNames.ENDING), second);
            Path revised = Files.writeString(folder.resolve("revised.svg"), Files.readString(proof).replaceAll("<path id=\"(I|I-again|L-open)\"[^>]*/>", ""));
            assertTrue(Files.size(revised) < Files.size(proof), "letters must go");
            window.desk().kept().revise(revised);
            window.await(() -> window.desk().comparison().isPresent() && !window.desk().work().busy(), "the revision");
            RevisionList changed = RevisionList.of(window.desk());
            assertFalse(changed.lines(RevisionList.Kind.GONE).isEmpty());
            assertEquals(1, changed.lines(RevisionList.Kind.MARK).size(), "what it was made on is gone");
            assertTrue(window.menu("Revision before over"));
            window.tab("What changed");
            window.shot("7-revision-over");
            window.menu("Revision before beside");
            window.shot("8-revision-beside");
            window.menu("Revision before beside");
            Tree lines = window.control(window.shell(), Tree.class, each -> "What changed since the revision before".equals(window.accessibleName(each)));
            TreeItem gone = List.of(lines.getItems()).stream().filter(item -> item.getText().startsWith("Findings that are gone")).findFirst().orElseThrow().getItem(0);
            lines.setSelection(gone);
            lines.notifyListeners(SWT.Selection, new Event());
            window.settle();
            assertEquals(Shown.Old.OVER, window.desk().shown().old(), "what is gone is seen on the revision before alone");
            assertTrue(window.desk().aim().intersects(window.desk().old().extent()), "flown to: " + window.desk().aim());
            assertFalse(gone.getText().matches("[a-z]+\\.[a-z-]+.*"), "told in words, not by its rule: " + gone.getText());
            window.settle();
            window.shot("13-gone");
            window.menu("Revision before beside");
            Tree tree = window.control(window.shell(), Tree.class, each -> "What changed since the revision before".equals(window.accessibleName(each)));
            tree.setSelection(tree.getItem(0).getItem(0));
            tree.notifyListeners(SWT.Selection, new Event());
            window.control(window.shell(), Button.class, button -> button.getText().equals("Mark stands")).notifyListeners(SWT.Selection, new Event());
            assertEquals(List.of(), RevisionList.of(window.desk()).lines(RevisionList.Kind.MARK), "the reviewer looked");
            assertTrue(window.menuText("Undo").contains("keep mark"));
            assertEquals(0, window.desk().kept().merge(second).added(), "the same mark is no second one");
            assertEquals(1, job.state().marks().size());
            while (job.undoName().isPresent()) {
                job.undo();
            }
            window.await(() -> window.desk().proofFile().filter(proof.toAbsolutePath().normalize()::equals).isPresent() && !window.desk().work().busy(), "the file before");
        }
    }

    @Test
    void roles_scale_and_lists_are_set_up_in_the_window() throws Exception {
        try (Window window = window()) {
            window.open(folder.resolve("faulty-letters.svg"));
            window.tab("Job sheet");
            Combo how = window.control(window.shell(), Combo.class, combo -> "How large it is".equals(window.accessibleName(combo)));
            how.select(1);
            how.notifyListeners(SWT.Selection, new Event());
            Text size = window.control(window.shell(), Text.class, text -> window.accessibleName(text).startsWith("Scale"));
            size.setText("3.2 m");
            size.notifyListeners(SWT.DefaultSelection, new Event());
            window.await(() -> window.desk().result().filter(result -> result.job().knownDimension().isPresent()).isPresent() && !window.desk().work().busy(), "the run");
            Envelope parts = new Envelope();
            window.desk().parts().forEach(part -> parts.expandToInclude(part.shape().getEnvelopeInternal()));
            assertEquals(3200, parts.getWidth(), 1, "all that is shown is as wide as it is known to be");
            window.shot("9-job-sheet");
            Combo check = window.control(window.shell(), Combo.class, combo -> "Findings of which check".equals(window.accessibleName(combo)));
            check.select(check.indexOf("artwork"));
            check.notifyListeners(SWT.Selection, new Event());
            assertFalse(window.desk().findings().listed().isEmpty());
            assertTrue(window.desk().findings().listed().stream().allMatch(item -> item.check().equals("artwork")));
            window.menu("Next");
            assertTrue(window.menu("unused"));
            window.await(() -> window.desk().parts().stream().anyMatch(part -> part.role() == Role.UNUSED) && !window.desk().work().busy(), "the run");
            assertTrue(window.menuText("Undo").contains("change role of part"));
        }
    }

    @Test
    void a_changed_setting_runs_again_only_the_checks_that_use_it() throws Exception {
        try (Window window = window()) {
            window.open(folder.resolve("faulty-letters.svg"));
            window.tab("Settings");
            Text field = window.control(window.shell(), Text.class, text -> "router.least-stroke".equals(text.getData("kerfglow.widget")));
            long artworkMillis = millis(window, "artwork");
            field.setText("9 mm");
            field.notifyListeners(SWT.DefaultSelection, new Event());
            window.await(() -> window.desk().result().orElseThrow().settings().stream().anyMatch(used -> used.key().equals("router.least-stroke") && used.value().equals(9.0)), "the run");
            assertEquals(artworkMillis, millis(window, "artwork"), "its row is the one of the run before");
            assertTrue(window.menuText("Undo").contains("least width of a stroke"));
        }
    }

    @Test
    void a_setting_is_given_for_a_layer_alone() throws Exception {
        try (Window window = window()) {
            window.open(folder.resolve("skelderfen.svg"));
            window.tab("Settings");
            Combo whom = window.control(window.shell(), Combo.class, combo -> "What the settings hold for".equals(window.accessibleName(combo)));
            List<String> offered = List.of(whom.getItems());
            assertEquals("for everything", offered.get(0));
            for (String words : List.of("only for role face (", "only for material brass (1 part)", "only for thickness 4.5 mm (", "only for layer Letter faces (")) {
                assertTrue(offered.stream().anyMatch(each -> each.startsWith(words)), words + " is not among " + offered);
            }
            whom.select(offered.indexOf(offered.stream().filter(each -> each.startsWith("only for layer Letter faces")).findFirst().orElseThrow()));
            whom.notifyListeners(SWT.Selection, new Event());
            Text field = window.control(window.shell(), Text.class, text -> "router.least-stroke".equals(text.getData("kerfglow.widget")));
            field.setText("40 mm");
            field.notifyListeners(SWT.DefaultSelection, new Event());
            window.await(() -> window.desk().result().orElseThrow().settings().stream()
                    .anyMatch(used -> used.key().equals("router.least-stroke") && used.scope().equals("layer=Letter faces") && used.value().equals(40.0)), "the run");
            window.shot("16-settings-of-a-layer");
            Set<String> layers = window.desk().findings().listed().stream().map(FindingItem::finding)
                    .filter(finding -> finding.rule().id().startsWith("router.") && finding.required().filter(measure -> measure.value() == 40).isPresent())
                    .flatMap(finding -> window.desk().parts().stream().filter(part -> finding.parts().contains(part.id()))).map(Part::layer).collect(Collectors.toSet());
            assertEquals(Set.of("Letter faces"), layers, "other layers keep their limit");
        }
    }

    @Test
    void a_fit_finding_is_seen_with_the_back_inside_its_face() throws Exception {
        try (Window window = window()) {
            window.open(folder.resolve("skelderfen.svg"));
            FindingItem fit = window.desk().findings().listed().stream().filter(item -> item.check().equals("fit") && item.finding().severity() != Severity.INFO && !item.finding().places().isEmpty())
                    .findFirst().orElseThrow();
            window.desk().findings().choose(fit.finding().id(), 0);
            for (int i = 0; i < 5; i++) { // it is prepared in the background
                window.settle();
            }
            window.shot("17-fit");
            CloseUp drawn = CloseUp.of(window.desk().result().orElseThrow(), fit.finding(), fit.finding().places().get(0), 100, 60);
            assertTrue(drawn.tool().orElseThrow().words().startsWith("back"), drawn.tool().get().words());
        }
    }

    @Test
    void a_dimension_is_changed_on_the_section_and_a_piece_opens_its_settings() throws Exception {
        try (Window window = window()) {
            window.open(folder.resolve("skelderfen.svg"));
            Canvas section = window.control(window.shell(), Canvas.class, each -> window.accessibleName(each).startsWith("Section through"));
            int depth = Section.of(window.desk().result().orElseThrow()).measures().stream().map(Section.Measure::title).toList().indexOf("depth of the returns");
            for (int i = 0; i <= depth; i++) {
                key(section, SWT.ARROW_DOWN);
            }
            key(section, SWT.CR);
            assertEquals("depth of the returns", fieldName(window, section));
            Text field = window.control(section, Text.class, each -> true);
            window.shot("12-section-edit");
            field.setText("deep");
            enter(field);
            assertTrue(window.desk().work().problem().isPresent(), "what cannot be read is told");
            field.setText("80 mm");
            enter(field);
            window.await(() -> window.desk().result().orElseThrow().settings().stream().anyMatch(used -> used.key().equals("returns.depth") && used.value().equals(80.0))
                    && !window.desk().work().busy(), "the run");
            assertTrue(window.menuText("Undo").contains("depth of the returns"));
            key(section, SWT.ARROW_LEFT); // from none to the piece before the first: the last, the film
            window.tab("Settings");
            Combo pieces = window.control(window.shell(), Combo.class, combo -> "The piece whose settings are shown".equals(window.accessibleName(combo)));
            assertEquals("Settings of the film", pieces.getText());
            window.tab("How it is built");
            window.shot("13-section-changed");
        }
    }

    private static String fieldName(Window window, Canvas section) {
        return window.all(section, Text.class).stream().filter(each -> !each.isDisposed()).findFirst().map(window::accessibleName).orElse("");
    }

    private static void enter(Text field) {
        Event event = new Event();
        event.keyCode = SWT.CR;
        field.notifyListeners(SWT.KeyDown, event);
    }

    private static long millis(Window window, String check) {
        return window.desk().result().orElseThrow().checks().stream().filter(row -> row.check().equals(check)).findFirst().orElseThrow().millis();
    }

    @Test
    void every_resource_is_disposed() throws Exception {
        try (Window window = window()) {
            window.open(folder.resolve("faulty-letters.svg"));
            window.menu("Next");
            window.menu("Edges alone");
            window.tab("Seen from afar");
            window.tab("Settings");
            window.menu("Dark window");
            assertEquals(List.of(), window.leftOver());
        }
    }

    @Test
    void a_bad_file_is_told_and_the_window_lives() throws Exception {
        Path bad = Files.writeString(folder.resolve("bad.svg"), "<svg xmlns='http://www.w3.org/2000/svg'><g>");
        try (Window window = window()) {
            window.open(folder.resolve("faulty-letters.svg"));
            window.worker().open(bad);
            window.await(() -> window.desk().work().problem().isPresent(), "the complaint");
            assertTrue(window.desk().work().problem().get().contains("bad.svg"));
            window.open(folder.resolve("faulty-letters.svg"));
        }
    }

    @Test
    void every_control_has_a_name_for_those_who_hear_the_window() throws Exception {
        try (Window window = window()) {
            window.open(folder.resolve("faulty-letters.svg"));
            Button nameless = null;
            for (Button button : window.all(window.shell(), Button.class)) {
                nameless = button.getText().isBlank() ? button : nameless;
            }
            assertEquals(null, nameless);
            for (Text text : window.all(window.shell(), Text.class)) {
                assertFalse(window.accessibleName(text).isBlank(), "a field without a name");
            }
            for (Canvas canvas : window.all(window.shell(), Canvas.class)) {
                if (canvas.getClass() == Canvas.class) {
                    assertFalse(window.accessibleName(canvas).isBlank(), "a canvas without a name");
                }
            }
        }
    }

    /** A check of a shop; what it finds has the version in it. */
    private record OwnCheck(String version) implements Check {
        private static final Rule RULE = new Rule("acme.own.rule", Severity.INFO, "Something of our own", "why", "fix", "geometry");
        private static final Setting<Double> LIMIT = Setting.lengthMm("acme.own.limit", "a limit of our own", 1.0, 0, 10, "reason", "source");

        @Override
        public CheckInfo info() {
            return new CheckInfo("acme.own", "our own", List.of(RULE), List.of(LIMIT), List.of(), List.of(), "## acme.own.rule\n");
        }

        @Override
        public Outcome inspect(Inspection inspection) {
            return Outcome.of(List.of(Finding.of(RULE, "found by " + version).place(inspection.parts().get(0).shape()).build()));
        }
    }

    private static boolean found(Window window, String words) {
        return window.desk().result().stream().flatMap(result -> result.findings().stream()).anyMatch(finding -> finding.message().contains(words));
    }

    @Test
    void a_check_that_comes_is_replaced_or_goes_while_the_window_is_open_makes_the_results_again() throws Exception {
        Check first = new OwnCheck("version 1");
        Check second = new OwnCheck("version 2");
        try (Window window = new Window(folder.resolve("state"), List.of(new ArtworkCheck()))) {
            window.open(folder.resolve("faulty-letters.svg"));
            assertFalse(found(window, "found by"));
            window.catalogue().add(first, "acme.own", "1");
            window.await(() -> found(window, "found by version 1"), "the findings of the check that came");
            window.catalogue().change(List.of(first), List.of(new CheckCatalogue.Arrival(second, "acme.own", "2")));
            window.await(() -> found(window, "found by version 2") && !found(window, "found by version 1"), "the findings of the new version");
            window.catalogue().change(List.of(second), List.of());
            window.await(() -> !found(window, "found by"), "the findings to go");
        }
    }

    /** A check of a shop that shows layers of lines, areas and points, and says what would be right. */
    private record ShowingCheck() implements Check {
        private static final Rule RULE = new Rule("acme.shows.rule", Severity.STOP, "Something of our own", "why", "fix", "geometry");

        @Override
        public CheckInfo info() {
            return new CheckInfo("acme.shows", "our own", List.of(RULE), List.of(), List.of(), List.of(), "## acme.shows.rule\n");
        }

        @Override
        public Outcome inspect(Inspection inspection) {
            Geometry shape = inspection.parts().get(0).shape();
            List<OverlayLayer.Item> rims = new ArrayList<>();
            List<OverlayLayer.Item> cores = new ArrayList<>();
            List<OverlayLayer.Item> corners = new ArrayList<>();
            List<OverlayLayer.Item> middles = new ArrayList<>();
            inspection.parts().forEach(part -> {
                rims.add(new OverlayLayer.Item(part.shape().buffer(12).getBoundary(), Double.NaN, ""));
                cores.add(new OverlayLayer.Item(part.shape().buffer(-6), Double.NaN, ""));
                corners.add(new OverlayLayer.Item(part.shape().getFactory().createMultiPointFromCoords(part.shape().getCoordinates()), Double.NaN, ""));
                middles.add(new OverlayLayer.Item(part.shape().getCentroid(), Double.NaN, "middle"));
            });
            return Outcome.of(List.of(Finding.of(RULE, "it should be smaller").place(shape).measured(Measure.mm(8)).parts(inspection.parts().get(0).id()).suggestion(shape.buffer(-8)).build()))
                    .withLayers(List.of(new OverlayLayer("rims", "Rims", rims), new OverlayLayer("cores", "Cores", cores), new OverlayLayer("corners", "Corners", corners),
                            new OverlayLayer("middles", "Middles", middles)));
        }
    }

    @Test
    void layers_of_checks_have_styles_of_their_own_and_what_would_be_right_is_dashed() throws Exception {
        try (Window window = new Window(folder.resolve("state"), List.of(new ShowingCheck()))) {
            window.open(folder.resolve("faulty-letters.svg"));
            Tree made = window.control(window.shell(), Tree.class, tree -> window.accessibleName(tree).startsWith("Layers and roles"));
            TreeItem layers = List.of(made.getItems()).stream().filter(item -> item.getText().startsWith("Shown by the checks")).findFirst().orElseThrow();
            layers.setChecked(true);
            Event tick = new Event();
            tick.detail = SWT.CHECK;
            tick.item = layers;
            made.notifyListeners(SWT.Selection, tick);
            for (TreeItem layer : layers.getItems()) {
                assertTrue(layer.getChecked());
            }
            window.shot("14-layers");
            window.menu("Next");
            window.settle();
            window.shot("15-suggestion");
            List<LayerStyle> styles = OverlayDrawing.of(window.desk().result().orElseThrow()).stream().map(OverlayDrawing::style).toList();
            assertEquals(4, styles.stream().map(LayerStyle::dash).distinct().count(), "told apart without colour");
        }
    }
}
