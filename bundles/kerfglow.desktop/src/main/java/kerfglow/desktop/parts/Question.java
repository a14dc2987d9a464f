// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import kerfglow.desktop.desk.Desk;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;

/** Tells something and asks which way to go on; each button says what it does. */
final class Question {
    private static final int WIDTH_PX = 460;

    private final Shell shell;
    private int answer;

    /**
     * A question.
     *
     * @param deeds what the buttons say; the first is what Escape and closing mean, the last is what Enter means
     */
    Question(Shell parent, Desk desk, String title, String words, String... deeds) {
        shell = new Shell(parent, SWT.DIALOG_TRIM | SWT.APPLICATION_MODAL | SWT.RESIZE);
        shell.setText(title);
        GridLayout layout = new GridLayout(1, false);
        layout.marginWidth = 12;
        layout.marginHeight = 12;
        layout.verticalSpacing = 12;
        shell.setLayout(layout);
        Label label = new Label(shell, SWT.WRAP);
        label.setText(words.replace("&", "&&"));
        GridData wide = new GridData(SWT.FILL, SWT.FILL, true, true);
        wide.widthHint = WIDTH_PX;
        label.setLayoutData(wide);
        Composite row = new Composite(shell, SWT.NONE);
        row.setLayoutData(new GridData(SWT.RIGHT, SWT.CENTER, true, false));
        GridLayout buttons = new GridLayout(deeds.length, false);
        buttons.marginWidth = 0;
        buttons.marginHeight = 0;
        row.setLayout(buttons);
        for (int i = 0; i < deeds.length; i++) {
            int which = i;
            Button button = new Button(row, SWT.PUSH);
            button.setText(deeds[i]);
            button.addListener(SWT.Selection, event -> {
                answer = which;
                shell.close();
            });
            if (i == deeds.length - 1) {
                shell.setDefaultButton(button);
                button.setFocus();
            }
        }
        Skin.wear(shell, desk);
        shell.pack();
        Dialogs.place(shell, parent);
    }

    /** Something to be read, with nothing to choose. */
    static void tell(Shell parent, Desk desk, String title, String words) {
        new Question(parent, desk, title, words, "Go on").ask();
    }

    /** Waits for the answer: the place of the button, 0 when the person left it. */
    int ask() {
        shell.open();
        while (!shell.isDisposed()) {
            if (!shell.getDisplay().readAndDispatch()) {
                shell.getDisplay().sleep();
            }
        }
        return answer;
    }
}
