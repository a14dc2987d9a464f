// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import jakarta.annotation.PostConstruct;
import java.util.List;
import java.util.Optional;
import kerfglow.desktop.desk.Desk;
import kerfglow.desktop.desk.RevisionList;
import kerfglow.desktop.desk.Shown;
import kerfglow.desktop.desk.Topic;
import kerfglow.job.Job;
import org.eclipse.e4.ui.di.Focus;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.swt.widgets.TreeItem;

/** What changed since the revision before: outlines, findings that are gone, new or the same, and marks that no longer stand. */
public final class RevisionPart {
    private Desk desk;
    private Label words;
    private Combo old;
    private Button keep;
    private Tree tree;

    @PostConstruct
    void create(Composite parent, Desk newDesk) {
        desk = newDesk;
        GridLayout layout = new GridLayout(2, false);
        layout.marginWidth = 4;
        layout.marginHeight = 2;
        parent.setLayout(layout);
        words = new Label(parent, SWT.WRAP);
        GridData wide = new GridData(SWT.FILL, SWT.CENTER, true, false, 2, 1);
        wide.widthHint = 120; // takes the width that there is, and as many lines as it needs
        words.setLayoutData(wide);
        old = new Combo(parent, SWT.DROP_DOWN | SWT.READ_ONLY);
        old.setItems("revision before not drawn", "drawn over the new one", "drawn beside the new one"); // as the enum has them
        old.setToolTipText("Where the revision before is drawn (also in the menu Look)");
        Accessible.name(old, "Where the revision before is drawn");
        old.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false));
        old.addListener(SWT.Selection, event -> desk.shown().setOld(Shown.Old.values()[old.getSelectionIndex()]));
        keep = new Button(parent, SWT.PUSH);
        keep.setText("Mark stands");
        keep.setToolTipText("You looked: the chosen mark holds on this revision too");
        keep.addListener(SWT.Selection, event -> chosen().flatMap(RevisionList.Line::mark).ifPresent(id -> desk.job().ifPresent(job -> job.confirmMark(id))));
        tree = new Tree(parent, SWT.SINGLE | SWT.BORDER | SWT.FULL_SELECTION);
        GridData room = new GridData(SWT.FILL, SWT.FILL, true, true, 2, 1);
        room.heightHint = 80;
        tree.setLayoutData(room);
        tree.setToolTipText("Choosing a line shows its place on the proof");
        Accessible.name(tree, "What changed since the revision before");
        tree.addListener(SWT.Selection, event -> {
            chosen().ifPresent(this::show);
            keep.setEnabled(chosen().flatMap(RevisionList.Line::mark).isPresent());
        });
        Listening.to(desk, tree, Topic.FINDINGS, this::fill);
        Listening.to(desk, tree, Topic.JOB, this::fill);
        Listening.to(desk, tree, Topic.SHOWN, () -> old.select(desk.shown().old().ordinal()));
        Skin.wear(parent, desk);
        fill();
    }

    private Optional<RevisionList.Line> chosen() {
        return tree.getSelectionCount() == 1 && tree.getSelection()[0].getData() instanceof RevisionList.Line line ? Optional.of(line) : Optional.empty();
    }

    private void show(RevisionList.Line line) {
        if (line.finding().isPresent()) {
            desk.findings().choose(line.finding().get(), 0);
        } else {
            if (line.before() && desk.shown().old() == Shown.Old.NOT) { // what is no more is seen on the revision before alone
                desk.shown().setOld(Shown.Old.OVER);
            }
            line.where().map(where -> line.before() ? desk.old().seenAt(where, desk.shown().old() == Shown.Old.BESIDE, desk.scene().extent()) : where).ifPresent(desk::aimAt);
        }
    }

    private void fill() {
        RevisionList list = RevisionList.of(desk);
        tree.setRedraw(false);
        tree.removeAll();
        for (RevisionList.Kind kind : RevisionList.Kind.values()) {
            List<RevisionList.Line> lines = list.lines(kind);
            if (!lines.isEmpty()) {
                TreeItem head = new TreeItem(tree, SWT.NONE);
                head.setText(kind.words() + " (" + lines.size() + ")");
                for (RevisionList.Line line : lines) {
                    TreeItem item = new TreeItem(head, SWT.NONE);
                    item.setText(line.text());
                    item.setData(line);
                }
                head.setExpanded(kind != RevisionList.Kind.SAME);
            }
        }
        tree.setRedraw(true);
        boolean compared = desk.comparison().isPresent();
        Words.put(words, compared ? list.summary() : desk.job().flatMap(Job::reviewed).isPresent()
                ? "No other revision has been looked at yet. Change the proof and read it again, or take another file for it from the menu Job." : "Nothing is open yet.");
        old.select(desk.shown().old().ordinal());
        old.setEnabled(compared);
        keep.setEnabled(false);
    }

    @Focus
    void focus() {
        tree.setFocus();
    }
}
