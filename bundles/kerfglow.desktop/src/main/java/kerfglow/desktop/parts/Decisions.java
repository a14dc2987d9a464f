// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import kerfglow.desktop.desk.Desk;
import kerfglow.desktop.desk.Habits;
import kerfglow.host.Result;
import kerfglow.job.JobNames;
import kerfglow.job.Mark;
import kerfglow.job.MarkShape;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.FileDialog;
import org.eclipse.swt.widgets.Shell;

/** What a person decides: asks for the words that a decision needs, and makes it. */
final class Decisions {
    private final Shell shell;
    private final Desk desk;
    private final Habits habits;

    Decisions(Shell shell, Desk desk, Habits habits) {
        this.shell = shell;
        this.desk = desk;
        this.habits = habits;
    }

    boolean canWaive() {
        return desk.result().isPresent() && desk.findings().choice().filter(choice -> !choice.item().decision().isWaived()).isPresent();
    }

    void waive() {
        desk.findings().choice().filter(choice -> canWaive()).ifPresent(choice -> ask("Waive finding " + choice.item().number(),
                "Why may this stay as it is? " + choice.finding().message(), "Waive", true)
                .ifPresent(answer -> desk.job().orElseThrow().waive(choice.finding(), answer.words(), answer.name())));
    }

    /** Accepts that a check failed or took too long. */
    void waive(Result.CheckRow row) {
        ask("Waive check " + row.check(), "Why may the proof go on though the check " + row.check() + " " + row.status().word() + "?", "Waive", true)
                .ifPresent(answer -> desk.job().ifPresent(job -> job.waive(row, answer.words(), answer.name())));
    }

    boolean canWithdraw() {
        return desk.findings().choice().flatMap(choice -> choice.item().decision().waiver()).isPresent();
    }

    void withdraw() {
        desk.findings().choice().flatMap(choice -> choice.item().decision().waiver()).ifPresent(waiver -> desk.job().orElseThrow().withdrawWaiver(waiver.id()));
    }

    void mark(MarkShape shape) {
        ask("Mark the proof", "What does the mark say?", "Mark", false)
                .ifPresent(answer -> desk.job().ifPresent(job -> job.mark(shape, answer.words(), answer.name())));
    }

    void answer(String mark) {
        ask("Answer the mark", "What do you answer?", "Answer", true).ifPresent(answer -> desk.job().ifPresent(job -> job.answerMark(mark, answer.words(), answer.name())));
    }

    /** Other words for a mark; it stays its maker's. */
    void reword(Mark mark) {
        ask(new WordsDialog(shell, desk, "Reword the mark", "What shall the mark say?", "Reword", habits.name(), false).with(mark.text()))
                .ifPresent(answer -> desk.job().ifPresent(job -> job.rewriteMark(mark.id(), answer.words())));
    }

    /** Settles under the name of who does it; words are an answer. */
    void settle(String mark) {
        ask("Settle the mark", "Add an answer if there is one.", "Settle", false).ifPresent(answer -> desk.job().ifPresent(job -> {
            if (!answer.words().isEmpty()) {
                job.answerMark(mark, answer.words(), answer.name());
            }
            job.settleMark(mark, answer.name());
        }));
    }

    /** Signs off, or says why nobody can. */
    void signOff() {
        if (desk.job().isEmpty() || desk.reviewed().isEmpty() || desk.result().isEmpty()) {
            return;
        }
        List<String> refusals = desk.reviewed().get().refusals();
        if (!refusals.isEmpty()) {
            tell("Not yet to be signed off", String.join("\n\n", refusals.stream().limit(6).toList()) + (refusals.size() > 6 ? "\n\nAnd " + (refusals.size() - 6) + " more." : ""));
            return;
        }
        int open = desk.reviewed().get().open().size();
        ask("Sign off", "The proof may go on to the floor" + (open == 0 ? "." : ", with " + open + " things still open; they are written into the sign-off.") + " Add a remark if there is one.",
                "Sign off", false).ifPresent(answer -> desk.job().get().signOff(answer.name(), answer.words()));
    }

    private Optional<WordsDialog.Answer> ask(String title, String question, String deed, boolean required) {
        return ask(new WordsDialog(shell, desk, title, question, deed, habits.name(), required));
    }

    private Optional<WordsDialog.Answer> ask(WordsDialog dialog) {
        Optional<WordsDialog.Answer> answer = dialog.ask();
        answer.ifPresent(each -> habits.setName(each.name()));
        return answer;
    }

    /** Takes in the marks of another job file; says what came. */
    void merge() {
        FileDialog dialog = new FileDialog(shell, SWT.OPEN);
        dialog.setText("Take in the marks of a second reviewer's job file");
        dialog.setFilterExtensions(new String[] {"*" + JobNames.ENDING});
        desk.proofFile().map(Path::getParent).ifPresent(folder -> dialog.setFilterPath(folder.toString()));
        Optional.ofNullable(dialog.open()).map(Path::of).ifPresent(this::merge);
    }

    private void merge(Path file) {
        try {
            desk.setWork(desk.work().withRemark("Marks of " + file.getFileName() + ": " + desk.kept().merge(file).told() + "."));
        } catch (IOException unreadable) {
            tell("The marks are not taken in", unreadable.getMessage());
        }
    }

    private void tell(String title, String words) {
        Question.tell(shell, desk, title, words);
    }
}
