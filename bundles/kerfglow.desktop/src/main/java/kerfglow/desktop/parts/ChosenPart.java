// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import jakarta.annotation.PostConstruct;
import java.util.ArrayList;
import java.util.List;
import kerfglow.desktop.desk.Background;
import kerfglow.desktop.desk.Desk;
import kerfglow.desktop.desk.FindingText;
import kerfglow.desktop.desk.Topic;
import org.eclipse.e4.ui.di.Focus;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Composite;

/** What the chosen finding is, why it matters, what to do, and where the rule comes from. */
public final class ChosenPart {
    private Desk desk;
    private StyledText text;

    @PostConstruct
    void create(Composite parent, Desk newDesk, Background background) {
        desk = newDesk;
        parent.setLayout(new FillLayout());
        SashForm halves = new SashForm(parent, SWT.VERTICAL);
        new CloseUpCanvas(halves, desk, background);
        text = new StyledText(halves, SWT.WRAP | SWT.READ_ONLY | SWT.V_SCROLL);
        text.setMargins(10, 8, 10, 8);
        text.setLineSpacing(2);
        Accessible.name(text, "The chosen finding");
        Listening.to(desk, text, Topic.CHOICE, this::show);
        Listening.to(desk, text, Topic.FINDINGS, this::show);
        halves.setWeights(5, 6);
        Skin.wear(parent, desk);
        show();
    }

    private void show() {
        List<FindingText.Paragraph> paragraphs = desk.findings().choice().map(choice -> FindingText.paragraphs(desk, choice))
                .orElse(List.of(new FindingText.Paragraph("", "Choose a finding in the list or on the proof.")));
        StringBuilder all = new StringBuilder();
        List<StyleRange> heads = new ArrayList<>();
        for (FindingText.Paragraph paragraph : paragraphs) {
            if (!paragraph.head().isEmpty()) {
                StyleRange bold = new StyleRange();
                bold.start = all.length();
                bold.length = paragraph.head().length();
                bold.fontStyle = SWT.BOLD;
                heads.add(bold);
                all.append(paragraph.head()).append(paragraph.body().isEmpty() ? "" : "\n");
            }
            all.append(paragraph.body()).append("\n\n");
        }
        text.setText(all.toString().stripTrailing());
        heads.forEach(text::setStyleRange);
    }

    @Focus
    void focus() {
        text.setFocus();
    }
}
