// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import jakarta.annotation.PostConstruct;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import kerfglow.desktop.desk.Desk;
import kerfglow.desktop.desk.Habits;
import kerfglow.desktop.desk.Topic;
import kerfglow.host.Result;
import kerfglow.job.Job;
import kerfglow.job.Mark;
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

/** What was decided: waivers, marks and sign-offs. */
public final class DecidedPart {
    private static final DateTimeFormatter WHEN = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT).withZone(ZoneId.systemDefault());

    private Desk desk;
    private Tree tree;
    private Label standing;
    private Button waive;
    private Button withdraw;
    private Button sign;
    private Button answer;
    private Button reword;
    private Button settle;
    private Button remove;
    private Decisions decisions;

    /**
     * What a line of the tree stands for.
     *
     * @param mark the mark; absent for anything else
     * @param broken the check that failed or took too long; absent for anything else
     */
    private record Line(Runnable choose, Runnable remove, Optional<Mark> mark, Optional<Result.CheckRow> broken) {
        Line of(Mark own) {
            return new Line(choose, remove, Optional.of(own), Optional.empty());
        }

        static Line of(Result.CheckRow row) {
            return new Line(() -> { }, () -> { }, Optional.empty(), Optional.of(row));
        }
    }

    @PostConstruct
    void create(Composite parent, Desk newDesk, Habits habits) {
        desk = newDesk;
        decisions = new Decisions(parent.getShell(), desk, habits);
        GridLayout layout = new GridLayout(1, false);
        layout.marginWidth = 4;
        layout.marginHeight = 2;
        parent.setLayout(layout);
        standing = new Label(parent, SWT.WRAP);
        standing.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false));
        Composite row = new Composite(parent, SWT.NONE);
        GridLayout columns = new GridLayout(4, true);
        columns.marginWidth = 0;
        columns.marginHeight = 0;
        row.setLayout(columns);
        row.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false));
        waive = button(row, "Waive...", "Accept the chosen finding, or the check that failed and is chosen below, with a reason and a name",
                () -> chosen().flatMap(Line::broken).ifPresentOrElse(decisions::waive, decisions::waive));
        withdraw = button(row, "Withdraw", "Take back the waiver of the chosen finding", decisions::withdraw);
        sign = button(row, "Sign off...", "Let the proof go on to the floor", decisions::signOff);
        answer = button(row, "Answer...", "Answer the mark that is chosen in the list below", () -> chosenMark().ifPresent(mark -> decisions.answer(mark.id())));
        reword = button(row, "Reword...", "Give the mark that is chosen in the list below other words", () -> chosenMark().ifPresent(decisions::reword));
        settle = button(row, "Settle...", "Settle the mark that is chosen in the list below, or open it again", () -> chosenMark().ifPresent(this::settle));
        remove = button(row, "Take out", "Take the line that is chosen in the list below out (Delete)", () -> chosen().ifPresent(line -> line.remove.run()));
        tree = new Tree(parent, SWT.SINGLE | SWT.BORDER | SWT.FULL_SELECTION);
        GridData room = new GridData(SWT.FILL, SWT.FILL, true, true);
        room.heightHint = 80;
        tree.setLayoutData(room);
        tree.setToolTipText("Choosing a line shows its place on the proof; Delete takes it out");
        Accessible.name(tree, "Decisions, marks and sign-offs");
        tree.addListener(SWT.Selection, event -> {
            chosen().ifPresent(line -> line.choose.run());
            enable();
        });
        tree.addListener(SWT.KeyDown, event -> {
            if (event.keyCode == SWT.DEL) {
                chosen().ifPresent(line -> line.remove.run());
            }
        });
        Listening.to(desk, tree, Topic.JOB, this::fill);
        Listening.to(desk, tree, Topic.FINDINGS, this::fill);
        Listening.to(desk, tree, Topic.CHOICE, this::enable);
        Listening.to(desk, tree, Topic.MARK, this::follow);
        Skin.wear(parent, desk);
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

    private Optional<Line> chosen() {
        return tree.getSelectionCount() == 1 && tree.getSelection()[0].getData() instanceof Line line ? Optional.of(line) : Optional.empty();
    }

    private Optional<Mark> chosenMark() {
        return chosen().flatMap(Line::mark);
    }

    private void settle(Mark mark) {
        if (mark.settled().isPresent()) {
            desk.job().ifPresent(job -> job.reopenMark(mark.id()));
        } else {
            decisions.settle(mark.id());
        }
    }

    private void enable() {
        waive.setEnabled(chosen().flatMap(Line::broken).isPresent() || decisions.canWaive());
        withdraw.setEnabled(decisions.canWithdraw());
        answer.setEnabled(chosenMark().isPresent());
        reword.setEnabled(chosenMark().isPresent());
        settle.setEnabled(chosenMark().isPresent());
        settle.setText(chosenMark().flatMap(Mark::settled).isPresent() ? "Open again" : "Settle...");
        remove.setEnabled(chosen().isPresent());
    }

    private void fill() {
        sign.setEnabled(desk.result().isPresent());
        tree.setRedraw(false);
        tree.removeAll();
        desk.job().ifPresent(job -> {
            fillBroken();
            fillWaivers(job);
            fillMarks(job);
            desk.reviewed().ifPresent(reviewed -> fillSignOffs(job, reviewed));
        });
        for (TreeItem head : tree.getItems()) {
            head.setExpanded(true);
        }
        tree.setRedraw(true);
        Words.put(standing, standing());
        follow();
        enable();
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

    /** Checks that could not do their work: those that failed must be waived before anybody signs off, the others must be known. */
    private void fillBroken() {
        List<Result.CheckRow> rows = desk.result().map(Result::checks).orElse(List.of()).stream()
                .filter(row -> row.status() == Result.Status.NOT_MEASURED || ReviewedResult.isBroken(row)).toList();
        if (rows.isEmpty()) {
            return;
        }
        TreeItem head = head("Checks that could not do their work", rows.size());
        for (Result.CheckRow row : rows) {
            boolean waived = desk.reviewed().flatMap(reviewed -> reviewed.waiver(row)).isPresent();
            TreeItem line = line(head, row.check() + " " + row.status().word() + (waived ? " (waived)" : "") + ": " + row.why(), () -> { }, () -> { });
            if (ReviewedResult.isBroken(row) && !waived) {
                line.setData(Line.of(row));
            }
        }
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
        desk.findings().listed().stream().filter(item -> item.decision().waiver().filter(each -> each.id().equals(waiver.id())).isPresent()).findFirst()
                .ifPresent(item -> desk.findings().choose(item.finding().id(), 0));
    }

    private void fillMarks(Job job) {
        TreeItem head = head("Marks", job.state().marks().size());
        for (Mark mark : job.state().marks()) {
            TreeItem line = line(head, mark.shape().word() + " by " + mark.author() + ", " + WHEN.format(mark.created()) + ": " + mark.text()
                    + mark.settled().map(settled -> "  (settled by " + settled.author() + ")").orElse(""), () -> show(mark), () -> job.removeMark(mark.id()));
            line.setData(((Line) line.getData()).of(mark));
            mark.answers().forEach(answer -> new TreeItem(line, SWT.NONE).setText(answer.author() + ": " + answer.text()));
        }
    }

    private void show(Mark mark) {
        desk.marks().choose(mark.id());
        desk.aimAt(mark.shape().outline().getEnvelopeInternal());
    }

    /** The line of the mark that is chosen on the proof is the chosen one here. */
    private void follow() {
        Optional<String> mark = desk.marks().chosen().map(Mark::id);
        if (mark.isPresent() && !mark.equals(chosenMark().map(Mark::id))) {
            Arrays.stream(tree.getItems()).flatMap(head -> Arrays.stream(head.getItems())).filter(item -> item.getData() instanceof Line line && line.mark().map(Mark::id).equals(mark))
                    .findFirst().ifPresent(tree::setSelection);
            enable();
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

    private TreeItem head(String text, long count) {
        TreeItem head = new TreeItem(tree, SWT.NONE);
        head.setText(text + (count == 0 ? ": nothing" : " (" + count + ")"));
        return head;
    }

    private static TreeItem line(TreeItem head, String text, Runnable choose, Runnable remove) {
        TreeItem line = new TreeItem(head, SWT.NONE);
        line.setText(text);
        line.setData(new Line(choose, remove, Optional.empty(), Optional.empty()));
        return line;
    }

    @Focus
    void focus() {
        tree.setFocus();
    }
}
