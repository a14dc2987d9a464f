// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import java.util.Optional;
import kerfglow.desktop.desk.Desk;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;

/** Asks for some words, and for the name of who says them. */
final class WordsDialog {
    /** What was answered. */
    record Answer(String words, String name) {
    }

    private static final int WIDTH_PX = 460;

    private final Shell shell;
    private final Text words;
    private final Text name;
    private Optional<Answer> answer = Optional.empty();

    /**
     * A question.
     *
     * @param required true when no words are no answer
     */
    WordsDialog(Shell parent, Desk desk, String title, String question, String deed, String knownName, boolean required) {
        shell = new Shell(parent, SWT.DIALOG_TRIM | SWT.APPLICATION_MODAL | SWT.RESIZE);
        shell.setText(title);
        shell.setLayout(new GridLayout(2, false));
        Label label = new Label(shell, SWT.WRAP);
        label.setText(question);
        label.setLayoutData(wide());
        words = new Text(shell, SWT.BORDER | SWT.SINGLE);
        words.setLayoutData(wide());
        Accessible.name(words, question);
        new Label(shell, SWT.NONE).setText("Your name:");
        name = new Text(shell, SWT.BORDER);
        name.setText(knownName);
        name.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false));
        Accessible.name(name, "Your name");
        Composite buttons = new Composite(shell, SWT.NONE);
        buttons.setLayoutData(new GridData(SWT.RIGHT, SWT.CENTER, true, false, 2, 1));
        buttons.setLayout(new GridLayout(2, true));
        Button leave = button(buttons, "Leave it", shell::close);
        Button keep = button(buttons, deed, () -> {
            answer = Optional.of(new Answer(words.getText().strip(), name.getText().strip()));
            shell.close();
        });
        Runnable check = () -> keep.setEnabled(!name.getText().isBlank() && !(required && words.getText().isBlank()));
        words.addListener(SWT.Modify, event -> check.run());
        name.addListener(SWT.Modify, event -> check.run());
        check.run();
        shell.setDefaultButton(keep);
        leave.moveAbove(keep);
        Skin.wear(shell, desk);
        shell.pack();
        Dialogs.place(shell, parent);
    }

    /** What is written there to begin with. */
    WordsDialog with(String text) {
        words.setText(text);
        words.selectAll();
        return this;
    }

    private static Button button(Composite row, String text, Runnable work) {
        Button button = new Button(row, SWT.PUSH);
        button.setText(text);
        button.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false));
        button.addListener(SWT.Selection, event -> work.run());
        return button;
    }

    private static GridData wide() {
        GridData data = new GridData(SWT.FILL, SWT.FILL, true, false, 2, 1);
        data.widthHint = WIDTH_PX;
        return data;
    }

    /** Waits for the answer; empty when the person left it. */
    Optional<Answer> ask() {
        words.setFocus();
        shell.open();
        while (!shell.isDisposed()) {
            if (!shell.getDisplay().readAndDispatch()) {
                shell.getDisplay().sleep();
            }
        }
        return answer;
    }
}
