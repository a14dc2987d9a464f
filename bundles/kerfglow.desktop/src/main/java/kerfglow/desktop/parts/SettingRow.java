// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import kerfglow.api.Setting;
import kerfglow.desktop.desk.Desk;
import kerfglow.desktop.desk.SheetEditor;
import kerfglow.desktop.paint.Palette;
import kerfglow.host.Result;
import kerfglow.host.Scope;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;

/** One setting in the form: its title, its value, a button that takes the job's own value out, and what is to be known about it. */
final class SettingRow {
    private final Desk desk;
    private final SheetEditor editor;
    private final Setting<?> setting;
    private final Supplier<Scope> scope;
    private final Control field;
    private final Button reset;
    private final Label note;
    private String now = "";

    /** Makes its controls; {@link #refresh} gives them their values. */
    SettingRow(Composite form, Desk desk, SheetEditor editor, Setting<?> setting, Supplier<Scope> scope) {
        this.desk = desk;
        this.editor = editor;
        this.setting = setting;
        this.scope = scope;
        label(form, 8).setText(sentence(setting.title()).replace("&", "&&"));
        field = switch (setting.type()) {
            case CHOICE, FLAG -> choice(form);
            case NUMBER, COUNT, TEXT -> text(form);
        };
        field.setData(Keys.WIDGET, setting.key());
        field.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false));
        Accessible.name(field, setting.title());
        reset = new Button(form, SWT.PUSH);
        reset.setText("Reset");
        reset.setToolTipText("Take the job's own value out");
        reset.addListener(SWT.Selection, event -> editor.reset(setting, scope.get()));
        note = label(form, 0);
    }

    static Label label(Composite form, int indent) {
        Label label = new Label(form, SWT.WRAP);
        GridData data = new GridData(SWT.FILL, SWT.TOP, true, false, 2, 1);
        data.widthHint = 120;
        data.verticalIndent = indent;
        label.setLayoutData(data);
        return label;
    }

    private Control choice(Composite form) {
        Combo combo = new Combo(form, SWT.DROP_DOWN | SWT.READ_ONLY);
        combo.setItems(setting.choices().toArray(new String[0]));
        combo.addListener(SWT.Selection, event -> take(combo.getText()));
        return combo;
    }

    private Control text(Composite form) {
        Text text = new Text(form, SWT.BORDER);
        text.addListener(SWT.DefaultSelection, event -> take(text.getText()));
        text.addListener(SWT.FocusOut, event -> {
            if (!text.getText().equals(now)) {
                take(text.getText());
            }
        });
        return text;
    }

    private void take(String text) {
        if (text.equals(editor.text(setting, scope.get()))) {
            return;
        }
        Optional<String> problem = editor.change(setting, text, scope.get());
        field.setToolTipText(problem.orElse(""));
        field.setBackground(problem.isPresent() ? Palette.of(desk.isDark()).wrong : Palette.of(desk.isDark()).field);
        problem.ifPresent(words -> desk.setWork(desk.work().withRemark(words)));
    }

    /**
     * Shows the value that holds now. What a person is typing stays while that is the same.
     *
     * @return the text that may take more or less room than before; empty when it is the same
     */
    Optional<Control> refresh() {
        String before = now;
        now = editor.text(setting, scope.get());
        if (field instanceof Combo combo) {
            if (!combo.getText().equals(now)) {
                combo.setText(now);
            }
        } else if (field instanceof Text text && !text.getText().equals(now) && !(now.equals(before) && text.isFocusControl())) {
            text.setText(now);
            text.setToolTipText("");
            text.setBackground(Palette.of(desk.isDark()).field);
        }
        boolean own = editor.isJobs(setting, scope.get());
        if (reset.getVisible() != own) {
            reset.setVisible(own);
        }
        String words = words().replace("&", "&&");
        if (words.equals(note.getText())) {
            return Optional.empty();
        }
        note.setText(words);
        Point size = note.getSize();
        return size.x > 0 && note.computeSize(size.x, SWT.DEFAULT).y == size.y ? Optional.empty() : Optional.of(note);
    }

    private String words() {
        String from = editor.now(setting, scope.get()).map(Result.SettingUsed::from).map(each -> each.equals("check") ? "as the check has it" : "from " + each)
                .orElse(scope.get().equals(Scope.ALL) ? "no value" : "as for everything, " + editor.text(setting, Scope.ALL));
        return setting.range(desk.units()) + "; " + from + ". " + sentence(setting.reason()) + " (" + setting.source() + "). A change runs again: " + String.join(", ", editor.users(setting)) + ".";
    }

    private static String sentence(String text) {
        return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }
}
