// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import kerfglow.api.proof.Role;
import kerfglow.desktop.desk.Desk;
import kerfglow.desktop.desk.FindingText;
import kerfglow.desktop.desk.FloorFile;
import kerfglow.desktop.desk.Lights;
import kerfglow.desktop.desk.Notices;
import kerfglow.desktop.desk.SheetEditor;
import kerfglow.desktop.desk.Shown;
import kerfglow.desktop.desk.Topic;
import kerfglow.desktop.scene.Gauge;
import kerfglow.job.Job;
import org.eclipse.jface.action.IMenuManager;
import org.eclipse.jface.action.MenuManager;
import org.eclipse.jface.action.Separator;
import org.eclipse.swt.SWT;
import org.eclipse.swt.dnd.Clipboard;
import org.eclipse.swt.dnd.TextTransfer;
import org.eclipse.swt.dnd.Transfer;
import org.eclipse.swt.widgets.Shell;

/** The menu: everything that can be done, each with its key. */
final class MainMenu {
    private final Desk desk;
    private final SheetEditor editor;
    private final ProofCanvas proof;
    private final Opener opener;
    private final Decisions decisions;
    private final Saving saving;
    private final Notices notices;
    private final HandOn handOn;
    private final Shell shell;
    private final List<Deed> deeds = new ArrayList<>();

    MainMenu(Shell shell, Desk desk, SheetEditor editor, ProofCanvas proof, Opener opener, Decisions decisions, Saving saving, Notices notices, HandOn handOn) {
        this.saving = saving;
        this.notices = notices;
        this.editor = editor;
        this.decisions = decisions;
        this.handOn = handOn;
        this.shell = shell;
        this.desk = desk;
        this.proof = proof;
        this.opener = opener;
        MenuManager bar = new MenuManager();
        bar.add(jobMenu());
        bar.add(lookMenu());
        bar.add(findingMenu());
        bar.add(decideMenu());
        shell.setMenuBar(bar.createMenuBar((org.eclipse.swt.widgets.Decorations) shell));
        bar.updateAll(true);
        for (Topic topic : Topic.values()) {
            if (topic != Topic.WORK) {
                Listening.to(desk, shell, topic, this::refresh);
            }
        }
    }

    private void refresh() {
        deeds.forEach(Deed::refresh);
    }

    private Deed deed(Deed deed) {
        deeds.add(deed);
        return deed;
    }

    private MenuManager jobMenu() {
        MenuManager menu = new MenuManager("&Job");
        menu.add(deed(Deed.of("&Open a proof...", SWT.MOD1 | 'O', opener::ask)));
        MenuManager recent = new MenuManager("Opened &lately");
        recent.setRemoveAllWhenShown(true);
        recent.addMenuListener(this::listRecent);
        menu.add(recent);
        menu.add(deed(Deed.of("Open the &demo", 0, opener::openDemo, opener::hasDemo)));
        menu.add(deed(Deed.of("&Read and check again", SWT.F5, opener::again, () -> desk.proofFile().isPresent())));
        menu.add(new Separator());
        menu.add(deed(Deed.of("&Save the job", SWT.MOD1 | 'S', saving::save, () -> desk.job().isPresent())));
        menu.add(deed(Deed.of("Save the job &as...", SWT.MOD1 | SWT.SHIFT | 'S', saving::saveElsewhere, () -> desk.job().isPresent())));
        menu.add(deed(Deed.of("Take &up what was not saved", 0, notices::takeUp, notices::isOffering)));
        menu.add(deed(Deed.of("Set aside what was &not saved", 0, () -> {
            notices.setAside();
            refresh();
        }, notices::isOffering)));
        menu.add(new Separator());
        menu.add(deed(Deed.of("Take another &file for the proof...", 0, opener::askRevision, () -> desk.result().isPresent())));
        menu.add(deed(Deed.of("Take in a second reviewer's &marks...", 0, decisions::merge, () -> desk.job().isPresent())));
        menu.add(new Separator());
        for (FloorFile kind : FloorFile.values()) {
            menu.add(deed(Deed.of("Write the " + kind.menuWords() + "...", 0, () -> handOn.ask(kind), handOn::isPossible)));
        }
        menu.add(new Separator());
        menu.add(deed(Deed.of("&Leave", SWT.MOD1 | 'Q', shell::close)));
        return menu;
    }

    private void listRecent(IMenuManager menu) {
        int number = 1;
        for (Path file : opener.recent()) {
            menu.add(Deed.of("&" + number++ + "  " + file.toString().replace("&", "&&"), 0, () -> opener.open(file)));
        }
        if (number == 1) {
            menu.add(Deed.of("nothing yet", 0, () -> { }, () -> false));
        }
    }

    private MenuManager lookMenu() {
        MenuManager menu = new MenuManager("&Look");
        menu.add(deed(Deed.of("&Whole proof", SWT.MOD1 | '0', proof.lookout()::fit)));
        menu.add(deed(Deed.of("&Real size", SWT.MOD1 | '1', proof.lookout()::showRealSize)));
        menu.add(deed(Deed.of("&Measure the screen for real size...", 0, () -> new ScreenDialog(shell, desk, opener.habits()).open())));
        menu.add(deed(Deed.of("&Nearer", SWT.MOD1 | '+', proof.lookout()::zoomIn)));
        menu.add(deed(Deed.of("&Farther", SWT.MOD1 | '-', proof.lookout()::zoomOut)));
        menu.add(new Separator());
        menu.add(deed(Deed.tick("&Edges alone", SWT.MOD1 | 'E', () -> desk.shown().setEdgesAlone(!desk.shown().isEdgesAlone()), () -> desk.shown().isEdgesAlone())));
        menu.add(deed(Deed.tick("Fi&ndings on the proof", SWT.MOD1 | 'M', () -> desk.shown().setFindings(!desk.shown().isFindings()), () -> desk.shown().isFindings())));
        menu.add(deed(Deed.tick("R&ulers", SWT.MOD1 | 'R', () -> desk.shown().setRulers(!desk.shown().isRulers()), () -> desk.shown().isRulers())));
        menu.add(new Separator());
        menu.add(deed(old("Revision before &over the new", SWT.MOD1 | SWT.SHIFT | 'V', Shown.Old.OVER)));
        menu.add(deed(old("Revision before &beside the new", SWT.MOD1 | SWT.SHIFT | 'B', Shown.Old.BESIDE)));
        menu.add(new Separator());
        menu.add(deed(Deed.tick("Mea&sure", SWT.MOD1 | 'G', this::measure, () -> proof.hand().tool().filter(MeasureTool.class::isInstance).isPresent())));
        menu.add(new Separator());
        Panes panes = new Panes(shell);
        menu.add(deed(Deed.of("To the ne&xt pane", SWT.F6, () -> panes.step(1))));
        menu.add(deed(Deed.of("To the &pane before", SWT.SHIFT | SWT.F6, () -> panes.step(-1))));
        MenuManager named = new MenuManager("&Go to pane");
        named.setRemoveAllWhenShown(true);
        named.addMenuListener(shown -> panes.names().forEach(name -> shown.add(Deed.of(name, 0, () -> panes.show(name)))));
        menu.add(named);
        menu.add(new Separator());
        menu.add(deed(Deed.tick("&Dark window", SWT.MOD1 | SWT.SHIFT | 'D', () -> {
            desk.setDark(!desk.isDark());
            opener.habits().setDark(desk.isDark());
        }, desk::isDark)));
        return menu;
    }

    private Deed old(String text, int key, Shown.Old how) {
        return Deed.tick(text, key, () -> {
            desk.shown().setOld(desk.shown().old() == how ? Shown.Old.NOT : how);
            proof.lookout().fit();
        }, () -> desk.shown().old() == how);
    }

    private void measure() {
        boolean on = proof.hand().tool().filter(MeasureTool.class::isInstance).isPresent();
        proof.hand().take(on ? Optional.empty() : Optional.of(new MeasureTool(() -> new Gauge(desk.scene(), desk.shown()::shows), desk::units)));
        refresh();
    }

    private MenuManager findingMenu() {
        MenuManager menu = new MenuManager("&Findings");
        menu.add(deed(Deed.of("&Find words", SWT.MOD1 | 'F', () -> Keys.focus(shell, Keys.FIND))));
        menu.add(deed(Deed.of("&Next", SWT.F8, () -> desk.findings().step(1), () -> !desk.findings().listed().isEmpty())));
        menu.add(deed(Deed.of("&Previous", SWT.SHIFT | SWT.F8, () -> desk.findings().step(-1), () -> !desk.findings().listed().isEmpty())));
        menu.add(deed(Deed.of("Next pl&ace of the same", SWT.F9, () -> desk.findings().stepPlace(1), this::hasMorePlaces)));
        menu.add(deed(Deed.of("Previous p&lace of the same", SWT.SHIFT | SWT.F9, () -> desk.findings().stepPlace(-1), this::hasMorePlaces)));
        menu.add(new Separator());
        menu.add(deed(Deed.of("&Copy as text", SWT.MOD1 | SWT.SHIFT | 'C', this::copy, () -> desk.findings().choice().isPresent())));
        return menu;
    }

    private MenuManager decideMenu() {
        MenuManager menu = new MenuManager("&Decide");
        menu.add(deed(Deed.named(() -> "&Undo" + step(desk.job().flatMap(Job::undoName)), SWT.MOD1 | 'Z', () -> desk.job().ifPresent(Job::undo),
                () -> desk.job().flatMap(Job::undoName).isPresent())));
        menu.add(deed(Deed.named(() -> "&Redo" + step(desk.job().flatMap(Job::redoName)), SWT.MOD1 | SWT.SHIFT | 'Z', () -> desk.job().ifPresent(Job::redo),
                () -> desk.job().flatMap(Job::redoName).isPresent())));
        menu.add(new Separator());
        menu.add(deed(Deed.of("&Waive the chosen finding...", SWT.MOD1 | 'D', decisions::waive, decisions::canWaive)));
        menu.add(deed(Deed.of("W&ithdraw its waiver", 0, decisions::withdraw, decisions::canWithdraw)));
        menu.add(deed(Deed.of("&Sign off...", SWT.MOD1 | SWT.SHIFT | 'O', decisions::signOff, () -> desk.result().isPresent())));
        menu.add(new Separator());
        MenuManager roles = new MenuManager("Parts of the chosen finding &become");
        for (Role role : Role.values()) {
            roles.add(deed(Deed.of(role.word(), 0, () -> editor.chosenPartsBecome(role), () -> !editor.chosenParts().isEmpty())));
        }
        menu.add(roles);
        menu.add(deed(Deed.tick("&Light modules by hand", SWT.MOD1 | 'L', this::lights, () -> proof.hand().tool().filter(LightTool.class::isInstance).isPresent())));
        menu.add(deed(Deed.of("Lay light modules out a&gain", 0, () -> desk.job().ifPresent(job -> job.changeSheet(Lights.of(desk).none().name(), Lights.of(desk).none().change())),
                () -> desk.job().filter(job -> !job.state().sheet().modules().isEmpty()).isPresent())));
        menu.add(new Separator());
        for (MarkTool.Kind kind : MarkTool.Kind.values()) {
            String word = kind.name().toLowerCase(Locale.ROOT);
            menu.add(deed(Deed.of("Mark with a" + (kind == MarkTool.Kind.ARROW ? "n " : " ") + word, SWT.MOD1 | SWT.MOD3 | Character.forDigit(kind.ordinal() + 1, 10),
                    () -> proof.hand().take(Optional.of(new MarkTool(kind, decisions::mark))), () -> desk.proof().isPresent())));
        }
        return menu;
    }

    private void lights() {
        boolean on = proof.hand().tool().filter(LightTool.class::isInstance).isPresent();
        proof.hand().take(on ? Optional.empty() : Optional.of(new LightTool(desk)));
        refresh();
    }

    private static String step(Optional<String> name) {
        return name.map(each -> ": " + each.substring(0, 1).toLowerCase(Locale.ROOT) + each.substring(1)).orElse("");
    }

    private boolean hasMorePlaces() {
        return desk.findings().choice().filter(choice -> choice.finding().places().size() > 1).isPresent();
    }

    private void copy() {
        desk.findings().choice().ifPresent(choice -> {
            Clipboard clipboard = new Clipboard(shell.getDisplay());
            clipboard.setContents(new Object[] {FindingText.plain(desk, choice)}, new Transfer[] {TextTransfer.getInstance()});
            clipboard.dispose();
        });
    }
}
