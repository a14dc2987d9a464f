// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import jakarta.annotation.PostConstruct;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.util.Locale;
import kerfglow.desktop.desk.Desk;
import kerfglow.desktop.desk.Habits;
import kerfglow.desktop.desk.Topic;
import kerfglow.job.Job;
import kerfglow.job.Mark;
import kerfglow.job.ProofComparison;
import kerfglow.job.ReviewedResult;
import kerfglow.job.Waiver;
import org.eclipse.e4.ui.di.Focus;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.swt.widgets.TreeItem;

/** What was decided: waivers, marks, sign-offs, and what became of the revision before. */
public final class DecidedPart {
    private static final DateTimeFormatter WHEN = DateTimeFormatter.ofLocalizedDateTime(FormatStyle.SHORT).withZone(ZoneId.systemDefault()).withLocale(Locale.getDefault());

    private Desk desk;
    private Tree tree;
    private Label standing;
    private Button waive;
    private Button withdraw;
    private Button sign;

    /** What a line of the tree stands for. */
    private record Line(Runnable choose, Runnable remove) {
    }

    @PostConstruct
    void create(Composite parent, Desk newDesk, Habits habits) {
        desk = newDesk;
        Decisions decisions = new Decisions(parent.getShell(), desk, habits);
        GridLayout layout = new GridLayout(1, false);
        layout.marginWidth = 4;
        layout.marginHeight = 2;
        parent.setLayout(layout);
        standing = new Label(parent, SWT.WRAP);
        standing.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false));
        Composite row = new Composite(parent, SWT.NONE);
        GridLayout columns = new GridLayout(3, true);
        columns.marginWidth = 0;
        columns.marginHeight = 0;
        row.setLayout(columns);
        row.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false));
        waive = button(row, "Waive...", "Accept the chosen finding, with a reason and a name", decisions::waive);
        withdraw = button(row, "Withdraw", "Take back the waiver of the chosen finding", decisions::withdraw);
        sign = button(row, "Sign off...", "Let the proof go on to the floor", decisions::signOff);
        tree = new Tree(parent, SWT.SINGLE | SWT.BORDER | SWT.FULL_SELECTION);
        GridData room = new GridData(SWT.FILL, SWT.FILL, true, true);
        room.heightHint = 80;
        tree.setLayoutData(room);
        tree.setToolTipText("Enter or a double click goes there; Delete takes the line out");
        Accessible.name(tree, "Decisions, marks and sign-offs");
        tree.addListener(SWT.DefaultSelection, event -> act((TreeItem) event.item, true));
        tree.addListener(SWT.KeyDown, event -> {
            if (event.keyCode == SWT.DEL && tree.getSelectionCount() == 1) {
                act(tree.getSelection()[0], false);
            }
        });
        Listening.to(desk, tree, Topic.JOB, this::fill);
        Listening.to(desk, tree, Topic.FINDINGS, this::fill);
        Listening.to(desk, tree, Topic.CHOICE, () -> {
            waive.setEnabled(decisions.canWaive());
            withdraw.setEnabled(decisions.canWithdraw());
        });
        Skin.wear(parent, desk);
        waive.setEnabled(false);
        withdraw.setEnabled(false);
        fill();
    }

    private static Button button(Composite row, String text, String tip, Runnable work) {
        Button button = new Button(row, SWT.PUSH);
        button.setText(text);
        button.setToolTipText(tip);
        button.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false));
        button.addListener(SWT.Selection, event -> work.run());
        return button;
    }

    private static void act(TreeItem item, boolean choose) {
        if (item.getData() instanceof Line line) {
            (choose ? line.choose : line.remove).run();
        }
    }

    private void fill() {
        sign.setEnabled(desk.result().isPresent());
        tree.setRedraw(false);
        tree.removeAll();
        desk.job().ifPresent(job -> {
            fillWaivers(job);
            fillMarks(job);
            desk.reviewed().ifPresent(reviewed -> fillSignOffs(job, reviewed));
        });
        desk.comparison().ifPresent(this::fillComparison);
        for (TreeItem head : tree.getItems()) {
            head.setExpanded(true);
        }
        tree.setRedraw(true);
        standing.setText(standing());
        standing.getParent().layout();
    }

    private String standing() {
        if (desk.result().isEmpty()) {
            return "The checks have not ended yet.";
        }
        ReviewedResult reviewed = desk.reviewed().orElseThrow();
        int refusals = reviewed.refusals().size();
        return reviewed.signedOff().map(signed -> "Signed off by " + signed.author() + ".").orElse(refusals == 0 ? "Nothing stands against signing off." : refusals
                + (refusals == 1 ? " thing stands" : " things stand") + " against signing off.");
    }

    private void fillWaivers(Job job) {
        TreeItem head = head("Waived", job.state().waivers().size());
        for (Waiver waiver : job.state().waivers()) {
            String what = waiver instanceof Waiver.OfFinding finding ? finding.message() : "check " + ((Waiver.OfCheck) waiver).check();
            line(head, waiver.author() + ", " + WHEN.format(waiver.at()) + ": " + waiver.reason() + "  \u2014  " + what,
                    () -> waivedFinding(waiver), () -> job.withdrawWaiver(waiver.id()));
        }
    }

    private void waivedFinding(Waiver waiver) {
        desk.listed().stream().filter(item -> item.decision().waiver().filter(each -> each.id().equals(waiver.id())).isPresent()).findFirst()
                .ifPresent(item -> desk.choose(item.finding().id(), 0));
    }

    private void fillMarks(Job job) {
        TreeItem head = head("Marks", job.state().marks().size());
        for (Mark mark : job.state().marks()) {
            TreeItem line = line(head, mark.shape().word() + " by " + mark.author() + ", " + WHEN.format(mark.created()) + ": " + mark.text()
                    + mark.settled().map(settled -> "  (settled by " + settled.author() + ")").orElse(""), () -> {
                        if (mark.settled().isPresent()) {
                            job.reopenMark(mark.id());
                        } else {
                            job.settleMark(mark.id(), mark.author());
                        }
                    }, () -> job.removeMark(mark.id()));
            mark.answers().forEach(answer -> new TreeItem(line, SWT.NONE).setText(answer.author() + ": " + answer.text()));
        }
    }

    private void fillSignOffs(Job job, ReviewedResult reviewed) {
        TreeItem head = head("Signed off", reviewed.signOffs().size());
        for (ReviewedResult.SignOffStand stand : reviewed.signOffs()) {
            TreeItem line = line(head, stand.signOff().author() + ", " + WHEN.format(stand.signOff().at()) + (stand.holds() ? ": holds" : ": void") + (stand.signOff().remark().isEmpty() ? "" : "  \u2014  "
                    + stand.signOff().remark()), () -> { }, () -> job.withdrawSignOff(stand.signOff().id()));
            stand.voidBecause().forEach(why -> new TreeItem(line, SWT.NONE).setText(why));
        }
    }

    private void fillComparison(ProofComparison comparison) {
        TreeItem head = head("Since the last revision", comparison.findings().stream().filter(change -> change.kind() != ProofComparison.FindingChange.Kind.SAME).count() + comparison.outlines().size());
        for (ProofComparison.FindingChange change : comparison.findings()) {
            if (change.kind() != ProofComparison.FindingChange.Kind.SAME) {
                String rule = change.after().or(change::before).map(seen -> seen.rule()).orElse("");
                line(head, (change.kind() == ProofComparison.FindingChange.Kind.NEW ? "new: " : "gone: ") + rule, () -> { }, () -> { });
            }
        }
        comparison.outlines().forEach(change -> line(head, change.role() + " outline " + change.kind().name().toLowerCase(Locale.ROOT), () -> { }, () -> { }));
    }

    private TreeItem head(String text, long count) {
        TreeItem head = new TreeItem(tree, SWT.NONE);
        head.setText(text + (count == 0 ? ": nothing" : " (" + count + ")"));
        return head;
    }

    private static TreeItem line(TreeItem head, String text, Runnable choose, Runnable remove) {
        TreeItem line = new TreeItem(head, SWT.NONE);
        line.setText(text);
        line.setData(new Line(choose, remove));
        return line;
    }

    @Focus
    void focus() {
        tree.setFocus();
    }
}
