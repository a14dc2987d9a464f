// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import kerfglow.desktop.desk.Desk;
import kerfglow.desktop.desk.Notice;
import kerfglow.desktop.desk.Notices;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;

/** Above the proof: what must be known of the job file, until it is answered or read. Work goes on meanwhile. */
final class NoticeStrip {
    /** A label takes the width that there is, and as many lines as it needs. */
    private static final int LEAST_WIDTH_PX = 200;

    private final Composite strip;
    private final Desk desk;
    private final Notices notices;
    private final Runnable saveElsewhere;

    NoticeStrip(Composite parent, Desk desk, Notices notices, Runnable saveElsewhere) {
        this.desk = desk;
        this.notices = notices;
        this.saveElsewhere = saveElsewhere;
        strip = new Composite(parent, SWT.NONE);
        strip.setLayoutData(new GridData(SWT.FILL, SWT.FILL, true, false));
        GridLayout layout = new GridLayout(1, false);
        layout.marginWidth = 0;
        layout.marginHeight = 0;
        layout.verticalSpacing = 0;
        strip.setLayout(layout);
        notices.onChange(this::show);
        strip.addListener(SWT.Dispose, event -> notices.onChange(() -> { }));
        show();
    }

    private void show() {
        for (var child : strip.getChildren()) {
            child.dispose();
        }
        notices.all().forEach(this::add);
        strip.setVisible(!notices.all().isEmpty());
        ((GridData) strip.getLayoutData()).exclude = notices.all().isEmpty();
        strip.getParent().layout(true, true);
    }

    private void add(Notice notice) {
        Composite row = new Composite(strip, SWT.BORDER);
        row.setLayoutData(new GridData(SWT.FILL, SWT.FILL, true, false));
        row.setLayout(new GridLayout(3, false));
        Label words = new Label(row, SWT.WRAP);
        words.setText(notice.words().replace("&", "&&"));
        GridData room = new GridData(SWT.FILL, SWT.CENTER, true, false);
        room.widthHint = LEAST_WIDTH_PX;
        words.setLayoutData(room);
        switch (notice.kind()) {
            case OFFER -> {
                button(row, "Take it up", "Go on from it; can be undone", notices::takeUp).setFocus();
                button(row, "Set it aside", "Keep it as a job file of its own and go on from what was saved", notices::setAside);
            }
            case UNSAVABLE -> {
                button(row, "Save as...", "Save the job under another name and go on there", saveElsewhere);
                button(row, "Read", "Take these words away", () -> notices.read(notice));
            }
            case DAMAGED, TOLD -> button(row, "Read", "Take these words away", () -> notices.read(notice));
        }
        Skin.wear(row, desk);
    }

    private static Button button(Composite row, String text, String tip, Runnable work) {
        Button button = new Button(row, SWT.PUSH);
        button.setText(text);
        button.setToolTipText(tip);
        button.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, false, false));
        button.addListener(SWT.Selection, event -> work.run());
        return button;
    }
}
