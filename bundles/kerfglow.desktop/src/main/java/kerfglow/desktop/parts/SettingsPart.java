// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import jakarta.annotation.PostConstruct;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import kerfglow.api.Setting;
import kerfglow.desktop.desk.Desk;
import kerfglow.desktop.desk.SheetEditor;
import kerfglow.desktop.desk.Topic;
import kerfglow.desktop.paint.Palette;
import kerfglow.desktop.section.Section;
import kerfglow.host.Result;
import kerfglow.host.Scope;
import org.eclipse.e4.ui.di.Focus;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;

/** Forms made from what the checks declare: each setting with its value, unit, range, reason, source, and which checks would run again. */
public final class SettingsPart {
    private Desk desk;
    private SheetEditor editor;
    private Combo pieces;
    private Combo whom;
    private List<Scope> scopes = List.of(Scope.ALL);
    private ScrolledComposite scroll;
    private Composite form;

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
        whom.setItems(scopes.stream().map(this::words).toArray(String[]::new));
        whom.select(Math.max(0, scopes.indexOf(before)));
    }

    private String words(Scope each) {
        long count = editor.count(each);
        return editor.words(each) + (each.equals(Scope.ALL) ? "" : count == 1 ? " (1 part)" : " (" + count + " parts)");
    }

    private void fill() {
        String focused = focusedKey();
        if (form != null) {
            form.dispose();
        }
        form = new Composite(scroll, SWT.NONE);
        GridLayout layout = new GridLayout(2, false);
        layout.marginWidth = 2;
        form.setLayout(layout);
        List<Setting<?>> settings = editor.settings(Section.Kind.values()[pieces.getSelectionIndex()]);
        if (settings.isEmpty()) {
            words("No check that is installed has settings for this piece.", false);
        }
        settings.forEach(this::row);
        Skin.wear(form, desk);
        scroll.setContent(form);
        measure();
        if (!focused.isEmpty()) {
            Keys.focus(form, focused);
        }
    }

    /** What a person was typing in stays under the hands when the checks end and the form is made anew. */
    private String focusedKey() {
        Control control = scroll.getDisplay().getFocusControl();
        return form != null && control != null && control.getParent() == form && control.getData(Keys.WIDGET) instanceof String key ? key : "";
    }

    private void measure() {
        if (form != null) {
            int width = Math.max(120, scroll.getClientArea().width);
            scroll.setMinSize(form.computeSize(width, SWT.DEFAULT));
        }
    }

    private void row(Setting<?> setting) {
        String title = setting.title();
        words(sentence(title), true);
        Control field = switch (setting.type()) {
            case CHOICE, FLAG -> choice(setting);
            case NUMBER, COUNT, TEXT -> text(setting);
        };
        field.setData(Keys.WIDGET, setting.key());
        field.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false));
        Accessible.name(field, title);
        Button reset = new Button(form, SWT.PUSH);
        reset.setText("Reset");
        reset.setToolTipText("Take the job's own value out");
        reset.setVisible(editor.isJobs(setting, scope()));
        reset.addListener(SWT.Selection, event -> editor.reset(setting, scope()));
        String from = editor.now(setting, scope()).map(Result.SettingUsed::from).map(each -> each.equals("check") ? "as the check has it" : "from " + each).orElse(scope().equals(Scope.ALL) ? "no value" : "as for everything, " + editor.text(setting, Scope.ALL));
        words(setting.range(desk.units()) + "; " + from + ". " + sentence(setting.reason()) + " (" + setting.source() + "). A change runs again: " + String.join(", ", editor.users(setting)) + ".", false);
    }

    private static String sentence(String text) {
        return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }

    private Control choice(Setting<?> setting) {
        Combo combo = new Combo(form, SWT.DROP_DOWN | SWT.READ_ONLY);
        combo.setItems(setting.choices().toArray(new String[0]));
        combo.setText(editor.text(setting, scope()));
        combo.addListener(SWT.Selection, event -> take(setting, combo.getText(), combo));
        return combo;
    }

    private Control text(Setting<?> setting) {
        Text field = new Text(form, SWT.BORDER);
        String now = editor.text(setting, scope());
        field.setText(now);
        field.addListener(SWT.DefaultSelection, event -> take(setting, field.getText(), field));
        field.addListener(SWT.FocusOut, event -> {
            if (!field.getText().equals(now)) {
                take(setting, field.getText(), field);
            }
        });
        return field;
    }

    private void take(Setting<?> setting, String text, Control field) {
        if (text.equals(editor.text(setting, scope()))) {
            return;
        }
        Optional<String> problem = editor.change(setting, text, scope());
        if (field.isDisposed()) { // the change made the form anew
            return;
        }
        field.setToolTipText(problem.orElse(""));
        field.setBackground(problem.isPresent() ? Palette.of(desk.isDark()).wrong : Palette.of(desk.isDark()).field);
        problem.ifPresent(words -> desk.setWork(desk.work().withRemark(words)));
    }

    private void words(String text, boolean head) {
        Label label = new Label(form, SWT.WRAP);
        label.setText(text.replace("&", "&&"));
        GridData data = new GridData(SWT.FILL, SWT.TOP, true, false, 2, 1);
        data.widthHint = 120;
        data.verticalIndent = head ? 8 : 0;
        label.setLayoutData(data);
    }

    @Focus
    void focus() {
        pieces.setFocus();
    }
}
