// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import kerfglow.desktop.desk.Desk;
import kerfglow.desktop.desk.Habits;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;

/** Three sentences above the proof at the first start, until they are read. */
final class FirstWords {
    private static final String WORDS = "At a first start you see a demo, an invented observatory's sign with faults put into it. "
            + "F8 goes through what was found; the close-up shows the tool where it fails. "
            + "Open your own proof from the menu, or drop its SVG file on this one.";

    FirstWords(Composite parent, Desk desk, Habits habits) {
        Composite strip = new Composite(parent, SWT.NONE);
        strip.setLayoutData(new GridData(SWT.FILL, SWT.FILL, true, false));
        strip.setLayout(new GridLayout(2, false));
        Label words = new Label(strip, SWT.WRAP);
        words.setText(WORDS);
        GridData room = new GridData(SWT.FILL, SWT.CENTER, true, false);
        room.widthHint = 200;
        words.setLayoutData(room);
        Button read = new Button(strip, SWT.PUSH);
        read.setText("Read");
        read.setToolTipText("Take these words away");
        read.addListener(SWT.Selection, event -> {
            habits.setStarted();
            strip.dispose();
            parent.layout();
        });
        Skin.wear(strip, desk);
    }
}
