// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import jakarta.annotation.PostConstruct;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import kerfglow.api.UnitSystem;
import kerfglow.desktop.desk.Desk;
import kerfglow.desktop.desk.SheetEditor;
import kerfglow.desktop.desk.SheetForm;
import kerfglow.desktop.desk.SheetForm.Field;
import kerfglow.desktop.desk.Topic;
import kerfglow.desktop.paint.Palette;
import kerfglow.desktop.scene.Figure;
import kerfglow.host.JobSheet;
import org.eclipse.e4.ui.di.Focus;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.FileDialog;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;

/** What holds for the sign as a whole: what it is, units, how it is built, how large it is, whose shop makes it. */
public final class JobSheetPart {
    private static final String UNSAID = "not said";
    private static final String ALL_SHOWN = "of all that is shown";

    private Desk desk;
    private SheetEditor editor;
    private Text title;
    private Combo units;
    private Combo build;
    private Combo how;
    private Text size;
    private Combo layer;
    private Text shop;

    @PostConstruct
    void create(Composite parent, Desk newDesk, SheetEditor newEditor) {
        desk = newDesk;
        editor = newEditor;
        GridLayout layout = new GridLayout(2, false);
        layout.marginWidth = 6;
        parent.setLayout(layout);
        title = text(parent, "What the sign is", "For the window's title and for reports", Field.TITLE, 2);
        units = combo(parent, "Units", "The units that lengths are shown in", names(UnitSystem.values()));
        units.addListener(SWT.Selection, event -> take(Field.UNITS, units.getText(), units));
        List<String> builds = new ArrayList<>(List.of(UNSAID));
        builds.addAll(JobSheet.BUILDS);
        build = combo(parent, "How it is built", "Checks that depend on how the sign is built go by this", builds.toArray(new String[0]));
        build.addListener(SWT.Selection, event -> take(Field.BUILD, build.getSelectionIndex() == 0 ? "" : build.getText(), build));
        how = combo(parent, "How large it is", "By a scale, or by a width or height on the sign that is known", "scale, drawing to sign", "it is known how wide it is", "it is known how high it is");
        how.addListener(SWT.Selection, event -> showSize());
        size = field(parent, "Scale, or the known width or height with its unit", "For instance 1:10, or 3.2 m; Enter takes it", 2);
        size.addListener(SWT.DefaultSelection, event -> takeSize());
        layer = new Combo(parent, SWT.DROP_DOWN | SWT.READ_ONLY);
        layer.setToolTipText("What the known width or height is of");
        Accessible.name(layer, "What the known width or height is of");
        layer.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false, 2, 1));
        shop = text(parent, "Shop sheet", "The file that says what the shop stocks and what its machines can do; Enter takes it, empty takes it out", Field.SHOP, 1);
        Button browse = new Button(parent, SWT.PUSH);
        browse.setText("Choose...");
        browse.setToolTipText("Choose the file of the shop sheet");
        browse.addListener(SWT.Selection, event -> browse());
        Listening.to(desk, parent, Topic.JOB, this::fill);
        Listening.to(desk, parent, Topic.PROOF, this::fill);
        Listening.to(desk, parent, Topic.FINDINGS, this::fill);
        Skin.wear(parent, desk);
        fill();
    }

    private static String[] names(UnitSystem... systems) {
        return Arrays.stream(systems).map(each -> each.name().toLowerCase(Locale.ROOT)).toArray(String[]::new);
    }

    private static void label(Composite parent, String words) {
        Label label = new Label(parent, SWT.NONE);
        label.setText(words);
        label.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false, 2, 1));
    }

    private Text text(Composite parent, String name, String tip, Field of, int columns) {
        label(parent, name);
        Text text = field(parent, name, tip, columns);
        text.addListener(SWT.DefaultSelection, event -> take(of, text.getText(), text));
        text.addListener(SWT.FocusOut, event -> take(of, text.getText(), text));
        return text;
    }

    private static Text field(Composite parent, String name, String tip, int columns) {
        Text text = new Text(parent, SWT.BORDER);
        text.setToolTipText(tip);
        GridData wide = new GridData(SWT.FILL, SWT.CENTER, true, false, columns, 1);
        wide.widthHint = 60; // as wide as there is room, whatever stands in it
        text.setLayoutData(wide);
        Accessible.name(text, name);
        return text;
    }

    private static Combo combo(Composite parent, String name, String tip, String... lines) {
        label(parent, name);
        Combo combo = new Combo(parent, SWT.DROP_DOWN | SWT.READ_ONLY);
        combo.setItems(lines);
        combo.setToolTipText(tip);
        combo.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false, 2, 1));
        Accessible.name(combo, name);
        return combo;
    }

    private JobSheet sheet() {
        return desk.job().map(job -> job.state().sheet()).orElse(JobSheet.NONE);
    }

    private void take(Field field, String text, Control control) {
        if (desk.job().isPresent() && !text.equals(SheetForm.text(field, sheet(), desk.units()))) {
            tell(editor.change(new SheetForm(field, text, Optional.empty())), control);
        }
    }

    private void takeSize() {
        Optional<String> of = layer.getSelectionIndex() <= 0 ? Optional.empty() : Optional.of(layer.getText());
        tell(editor.change(new SheetForm(SheetForm.SIZES.get(how.getSelectionIndex()), size.getText(), of)), size);
    }

    private void tell(Optional<String> problem, Control control) {
        control.setBackground(problem.isPresent() ? Palette.of(desk.isDark()).wrong : Palette.of(desk.isDark()).field);
        problem.ifPresent(words -> desk.setWork(desk.work().withRemark(words)));
    }

    private void browse() {
        FileDialog dialog = new FileDialog(shop.getShell(), SWT.OPEN);
        dialog.setText("Choose the shop sheet");
        dialog.setFilterExtensions(new String[] {"*.yaml;*.yml;*.json", "*"});
        Optional.ofNullable(dialog.open()).ifPresent(file -> take(Field.SHOP, file, shop));
    }

    private void fill() {
        JobSheet sheet = sheet();
        put(title, Field.TITLE);
        put(shop, Field.SHOP);
        units.select(desk.units().ordinal());
        build.select(sheet.build().map(each -> JobSheet.BUILDS.indexOf(each) + 1).orElse(0));
        List<String> layers = new ArrayList<>(List.of(ALL_SHOWN));
        desk.scene().figures().stream().map(Figure::layer).filter(each -> !each.isEmpty()).distinct().forEach(layers::add);
        String[] offered = layers.toArray(new String[0]);
        if (!Arrays.equals(offered, layer.getItems())) {
            layer.setItems(offered);
        }
        layer.select(sheet.knownDimension().flatMap(known -> known.selector().layer()).map(layers::indexOf).filter(at -> at > 0).orElse(0));
        how.select(SheetForm.SIZES.indexOf(SheetForm.size(sheet)));
        showSize();
    }

    private void put(Text field, Field of) {
        if (!field.isFocusControl()) { // else a person is typing in it
            field.setText(SheetForm.text(of, sheet(), desk.units()));
        }
    }

    private void showSize() {
        Field of = SheetForm.SIZES.get(how.getSelectionIndex());
        put(size, of);
        layer.setEnabled(of != Field.SCALE);
    }

    @Focus
    void focus() {
        title.setFocus();
    }
}
