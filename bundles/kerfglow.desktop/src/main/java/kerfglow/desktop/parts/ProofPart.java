// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import jakarta.annotation.PostConstruct;
import java.util.List;
import java.util.Optional;
import kerfglow.api.Quantity;
import kerfglow.api.Units;
import kerfglow.desktop.desk.Background;
import kerfglow.desktop.desk.DemoFile;
import kerfglow.desktop.desk.Desk;
import kerfglow.desktop.desk.Habits;
import kerfglow.desktop.desk.Notices;
import kerfglow.desktop.desk.SheetEditor;
import kerfglow.desktop.desk.Topic;
import kerfglow.desktop.desk.WorkState;
import kerfglow.desktop.desk.Worker;
import kerfglow.job.Job;
import kerfglow.job.JobFile;
import org.eclipse.e4.ui.di.Focus;
import org.eclipse.e4.ui.model.application.ui.basic.MWindow;
import org.eclipse.e4.ui.workbench.modeling.IWindowCloseHandler;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.ProgressBar;
import org.locationtech.jts.geom.Coordinate;

/** The middle of the window: the proof, and below it where the pointer stands and how the work goes. */
public final class ProofPart {
    /** Assumed: a bar that is seen for less than this disturbs more than it tells. */
    private static final int BUSY_MILLIS = 150;
    private static final int PROGRESS_STEPS = 1000;

    private Desk desk;
    private ProofCanvas proof;
    private Composite strip;
    private int leastHeight;
    private Label message;
    private Label pointer;
    private ProgressBar progress;
    private Button cancel;

    /** Set when work has been going on for a while. */
    private boolean late;

    @PostConstruct
    void create(Composite parent, Desk newDesk, SheetEditor editor, Worker worker, Habits habits, DemoFile demo, Background background, Notices notices, JobFile.Options options, MWindow window) {
        desk = newDesk;
        GridLayout layout = new GridLayout(1, false);
        layout.marginWidth = 0;
        layout.marginHeight = 0;
        layout.verticalSpacing = 0;
        parent.setLayout(layout);
        if (habits.isFirstStart() && demo.file().isPresent() && habits.recent().isEmpty()) { // a person who named a file sees that one
            new FirstWords(parent, desk, habits);
        }
        Decisions decisions = new Decisions(parent.getShell(), desk, habits);
        Saving saving = new Saving(parent.getShell(), desk, options);
        new NoticeStrip(parent, desk, notices, saving::saveElsewhere);
        proof = new ProofCanvas(parent, desk);
        proof.control().setLayoutData(new GridData(SWT.FILL, SWT.FILL, true, true));
        strip = new Composite(parent, SWT.NONE);
        strip.setLayoutData(new GridData(SWT.FILL, SWT.FILL, true, false));
        GridLayout row = new GridLayout(4, false);
        row.marginHeight = 2;
        strip.setLayout(row);
        message = new Label(strip, SWT.WRAP);
        message.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false));
        progress = new ProgressBar(strip, SWT.HORIZONTAL);
        progress.setMaximum(PROGRESS_STEPS);
        progress.setLayoutData(new GridData(160, SWT.DEFAULT));
        Accessible.name(progress, "How far the checks are");
        cancel = new Button(strip, SWT.PUSH);
        cancel.setText("Stop");
        cancel.setLayoutData(new GridData(SWT.RIGHT, SWT.CENTER, false, false));
        cancel.setToolTipText("Stop reading or checking this proof");
        cancel.addListener(SWT.Selection, event -> worker.cancel());
        message.setText("two\nlines");
        leastHeight = Math.max(message.computeSize(SWT.DEFAULT, SWT.DEFAULT).y + 2 * row.marginHeight, strip.computeSize(SWT.DEFAULT, SWT.DEFAULT).y);
        pointer = new Label(strip, SWT.RIGHT);
        GridData fixed = new GridData(SWT.RIGHT, SWT.CENTER, false, false);
        fixed.widthHint = 230;
        pointer.setLayoutData(fixed);
        proof.onPointer(at -> pointer.setText(at.map(this::position).orElse("")));
        Listening.to(desk, strip, Topic.WORK, this::showWork);
        Listening.to(desk, strip, Topic.FINDINGS, this::showWork);
        Listening.to(desk, strip, Topic.MARK, this::showWork);
        Leaving leaving = new Leaving(parent.getShell(), desk, saving);
        window.getContext().set(IWindowCloseHandler.class, closed -> leaving.close());
        Opener opener = new Opener(parent.getShell(), desk, worker, habits, demo.file(), notices, leaving, proof.control()::setFocus);
        opener.acceptDrops();
        new MainMenu(parent.getShell(), desk, editor, proof, opener, decisions, saving, notices, new HandOn(parent.getShell(), desk, background));
        proof.hand().onTool(this::showWork);
        Listening.to(desk, strip, Topic.JOB, this::showJob);
        ToolkitLook.set(desk.isDark());
        Listening.to(desk, strip, Topic.LOOK, () -> ToolkitLook.set(desk.isDark()));
        Skin.wear(parent.getShell(), desk); // tabs and sashes around the panes too
        showWork();
    }

    private String position(Coordinate at) {
        return Units.format(at.x, Quantity.LENGTH, desk.units()) + " , " + Units.format(at.y, Quantity.LENGTH, desk.units());
    }

    private void showWork() {
        WorkState work = desk.work();
        if (desk.work().busy() && !progress.getVisible() && !late) { // what ends at once needs no bar that comes and goes
            progress.getDisplay().timerExec(BUSY_MILLIS, () -> {
                late = true;
                if (!progress.isDisposed()) {
                    showWork();
                }
            });
            return;
        }
        late = false;
        String before = message.getText();
        boolean busy = progress.getVisible();
        for (Control control : List.of(progress, cancel)) {
            control.setVisible(work.busy());
            ((GridData) control.getLayoutData()).exclude = !work.busy();
        }
        progress.setSelection((int) (work.fraction() * PROGRESS_STEPS));
        String text = proof.hand().tool().map(PointerTool::words).or(desk.marks()::words).orElseGet(() -> work.problem().orElseGet(() -> work.busy() ? work.what() : summary()));
        if (busy == work.busy() && text.replace("&", "&&").equals(before)) {
            return;
        }
        message.setText(text.replace("&", "&&"));
        message.setToolTipText(text);
        ((GridData) message.getLayoutData()).widthHint = 100; // a long text takes the width that there is, and as many lines as it needs
        GridData room = (GridData) strip.getLayoutData();
        int height = room.heightHint;
        room.heightHint = SWT.DEFAULT;
        room.heightHint = Math.max(leastHeight, strip.computeSize(strip.getParent().getClientArea().width, SWT.DEFAULT).y); // the proof must not jump when work begins, or a tool speaks
        if (room.heightHint == height) {
            strip.layout(); // the proof and all else stays where it is
        } else {
            strip.getParent().layout(true, true);
        }
    }

    /** The title tells which job it is and whether it is saved. */
    private void showJob() {
        String title = desk.job().map(job -> job.state().sheet().title()).filter(each -> !each.isBlank()).or(() -> desk.proofFile().map(file -> file.getFileName().toString())).orElse("");
        String unsaved = desk.job().filter(Job::isChanged).isPresent() ? "  (not saved)" : "";
        message.getShell().setText("Kerfglow" + (title.isEmpty() ? "" : " \u2013 " + title) + unsaved);
    }

    private String summary() {
        Optional<String> size = desk.proof().map(each -> Units.format(each.widthMm(), Quantity.LENGTH, desk.units()) + " \u00d7 "
                + Units.format(each.heightMm(), Quantity.LENGTH, desk.units()));
        return desk.proofFile().map(file -> file.getFileName() + size.map(each -> ", " + each).orElse("") + ", "
                + counted(desk.reviewed().map(each -> each.result().findings().size()).orElse(0)))
                .orElse("Open a proof from the menu, or drop an SVG file here.");
    }

    private static String counted(int findings) {
        return findings + (findings == 1 ? " finding" : " findings");
    }

    @Focus
    void focus() {
        proof.control().setFocus();
    }
}
