// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import java.util.OptionalDouble;
import kerfglow.api.Quantity;
import kerfglow.api.Units;
import kerfglow.desktop.desk.Desk;
import kerfglow.desktop.desk.Habits;
import kerfglow.desktop.desk.Screen;
import kerfglow.desktop.paint.Palette;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;

/** Asks how long a bar on the screen is, measured with a rule, and so learns how large a pixel is. */
final class ScreenDialog {
    /** Long enough to be measured to a hundredth, short enough for any screen. */
    private static final int BAR_PX = 500;
    private static final int END_PX = 14;

    private final Shell shell;
    private final Desk desk;
    private final Habits habits;
    private Text length;
    private Label complaint;
    private Button keep;

    ScreenDialog(Shell parent, Desk desk, Habits habits) {
        this.desk = desk;
        this.habits = habits;
        shell = new Shell(parent, SWT.DIALOG_TRIM | SWT.APPLICATION_MODAL);
        shell.setText("How large is this screen?");
        shell.setLayout(new GridLayout(2, false));
        Label words = new Label(shell, SWT.WRAP);
        words.setText("Hold a rule to the bar and type how long it is, from end to end. Real size and the scales of close-ups are then right on this screen.");
        words.setLayoutData(wide());
        Canvas bar = new Canvas(shell, SWT.NONE);
        GridData room = wide();
        room.widthHint = BAR_PX + 40;
        room.heightHint = 2 * END_PX + 20;
        bar.setLayoutData(room);
        bar.addListener(SWT.Paint, event -> {
            int y = END_PX + 10;
            event.gc.setForeground(Palette.of(desk.isDark()).ink);
            event.gc.setLineWidth(2);
            event.gc.drawLine(20, y, 20 + BAR_PX, y);
            event.gc.setLineWidth(1);
            event.gc.drawLine(20, y - END_PX, 20, y + END_PX);
            event.gc.drawLine(20 + BAR_PX, y - END_PX, 20 + BAR_PX, y + END_PX);
        });
        new Label(shell, SWT.NONE).setText("Length of the bar:");
        length = new Text(shell, SWT.BORDER);
        length.setText(Units.format(BAR_PX / desk.screen().pixelsPerMm(), Quantity.LENGTH, desk.units()));
        length.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false));
        Accessible.name(length, "Length of the bar, with its unit");
        length.addListener(SWT.Modify, event -> check());
        complaint = new Label(shell, SWT.WRAP);
        complaint.setLayoutData(wide());
        Composite buttons = new Composite(shell, SWT.NONE);
        buttons.setLayoutData(new GridData(SWT.RIGHT, SWT.CENTER, true, false, 2, 1));
        buttons.setLayout(new GridLayout(2, true));
        Button leave = new Button(buttons, SWT.PUSH);
        leave.setText("Leave as it is");
        leave.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false));
        leave.addListener(SWT.Selection, event -> shell.close());
        keep = new Button(buttons, SWT.PUSH);
        keep.setText("Keep");
        keep.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false));
        keep.addListener(SWT.Selection, event -> keep());
        shell.setDefaultButton(keep);
        Skin.wear(shell, desk);
        shell.pack();
        Dialogs.place(shell, parent);
    }

    private static GridData wide() {
        GridData data = new GridData(SWT.FILL, SWT.FILL, true, false, 2, 1);
        data.widthHint = BAR_PX + 40;
        return data;
    }

    void open() {
        shell.open();
        length.setFocus();
        length.selectAll();
    }

    private OptionalDouble lengthMm() {
        try {
            double mm = Units.lengthMm(length.getText());
            return mm > 0 ? OptionalDouble.of(mm) : OptionalDouble.empty();
        } catch (IllegalArgumentException unreadable) {
            return OptionalDouble.empty();
        }
    }

    private void check() {
        boolean read = lengthMm().isPresent();
        keep.setEnabled(read);
        complaint.setText(read ? "" : "Write a length with its unit, for instance 132 mm or 5-1/4 in.");
    }

    private void keep() {
        lengthMm().ifPresent(mm -> {
            desk.setScreen(new Screen(BAR_PX / mm));
            habits.setScreen(desk.screen());
            shell.close();
        });
    }
}
