// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import jakarta.annotation.PostConstruct;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import kerfglow.api.Setting;
import kerfglow.desktop.desk.Desk;
import kerfglow.desktop.desk.SheetEditor;
import kerfglow.desktop.desk.Topic;
import kerfglow.desktop.section.Section;
import kerfglow.host.Scope;
import org.eclipse.e4.ui.di.Focus;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;

/** Forms made from what the checks declare: each setting with its value, unit, range, reason, source, and which checks would run again. */
public final class SettingsPart {
    private Desk desk;
    private SheetEditor editor;
    private Combo pieces;
    private Combo whom;
    private List<Scope> scopes = List.of(Scope.ALL);
    private ScrolledComposite scroll;
    private Composite form;
    private List<Setting<?>> filled = List.of();
    private final List<SettingRow> rows = new ArrayList<>();

    @PostConstruct
    void create(Composite parent, Desk newDesk, SheetEditor newEditor) {
        desk = newDesk;
        editor = newEditor;
        GridLayout layout = new GridLayout(1, false);
        layout.marginWidth = 4;
        layout.marginHeight = 2;
        parent.setLayout(layout);
        pieces = new Combo(parent, SWT.DROP_DOWN | SWT.READ_ONLY);
        for (Section.Kind kind : Section.Kind.values()) {
            pieces.add("Settings of the " + kind.word());
        }
        pieces.select(Section.Kind.FACE.ordinal());
        pieces.setToolTipText("The piece whose settings are shown");
        Accessible.name(pieces, "The piece whose settings are shown");
        pieces.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false));
        pieces.addListener(SWT.Selection, event -> fill());
        whom = new Combo(parent, SWT.DROP_DOWN | SWT.READ_ONLY);
        whom.setToolTipText("What the settings below hold for; parts are those of the chosen finding");
        Accessible.name(whom, "What the settings hold for");
        whom.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false));
        whom.addListener(SWT.Selection, event -> fill());
        offerScopes();
        scroll = new ScrolledComposite(parent, SWT.V_SCROLL);
        scroll.setExpandHorizontal(true);
        scroll.setExpandVertical(true);
        GridData room = new GridData(SWT.FILL, SWT.FILL, true, true);
        room.heightHint = 80;
        scroll.setLayoutData(room);
        scroll.addListener(SWT.Resize, event -> measure());
        editor.onOpen(kind -> {
            if (!pieces.isDisposed()) {
                pieces.select(kind.ordinal());
                fill();
            }
        });
        Listening.to(desk, scroll, Topic.FINDINGS, () -> {
            if (desk.result().isPresent()) {
                offerScopes();
                fill();
            }
        });
        Listening.to(desk, scroll, Topic.CHOICE, () -> {
            Scope before = scope();
            offerScopes();
            if (!before.equals(scope())) {
                fill();
            }
        });
        Skin.wear(parent, desk);
        fill();
    }

    private Scope scope() {
        return scopes.get(Math.max(0, whom.getSelectionIndex()));
    }

    /** What is chosen stays chosen as long as it is offered. */
    private void offerScopes() {
        Scope before = scope();
        scopes = editor.scopes();
        String[] words = scopes.stream().map(this::words).toArray(String[]::new);
        if (!Arrays.equals(words, whom.getItems())) {
            whom.setItems(words);
        }
        whom.select(Math.max(0, scopes.indexOf(before)));
    }

    private String words(Scope each) {
        long count = editor.count(each);
        return editor.words(each) + (each.equals(Scope.ALL) ? "" : count == 1 ? " (1 part)" : " (" + count + " parts)");
    }

    private void fill() {
        List<Setting<?>> settings = editor.settings(Section.Kind.values()[pieces.getSelectionIndex()]);
        if (form == null || !settings.equals(filled)) {
            make(settings);
        }
        Control[] changed = rows.stream().flatMap(row -> row.refresh().stream()).toArray(Control[]::new);
        if (changed.length > 0) { // laying out a form of wrapped words takes long
            form.layout(changed);
            measure();
        }
    }

    private void make(List<Setting<?>> settings) {
        filled = settings;
        rows.clear();
        if (form != null) {
            form.dispose();
        }
        form = new Composite(scroll, SWT.NONE);
        GridLayout layout = new GridLayout(2, false);
        layout.marginWidth = 2;
        form.setLayout(layout);
        if (settings.isEmpty()) {
            SettingRow.label(form, 0).setText("No check that is installed has settings for this piece.");
        }
        settings.forEach(setting -> rows.add(new SettingRow(form, desk, editor, setting, this::scope)));
        Skin.wear(form, desk);
        scroll.setContent(form);
        measure();
    }

    private void measure() {
        if (form != null) {
            int width = Math.max(120, scroll.getClientArea().width);
            scroll.setMinSize(form.computeSize(width, SWT.DEFAULT, false));
        }
    }

    @Focus
    void focus() {
        pieces.setFocus();
    }
}
