// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import jakarta.annotation.PostConstruct;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfglow.api.OverlayLayer;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.desktop.desk.Desk;
import kerfglow.desktop.desk.SheetEditor;
import kerfglow.desktop.desk.Topic;
import kerfglow.desktop.scene.Figure;
import kerfglow.host.Result;
import org.eclipse.e4.ui.di.Focus;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Menu;
import org.eclipse.swt.widgets.MenuItem;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.swt.widgets.TreeItem;

/** The layers of the proof and the roles of its parts; the tick at each turns it on and off. */
public final class MadeOfPart {
    private Desk desk;
    private Tree tree;

    @PostConstruct
    void create(Composite parent, Desk newDesk, SheetEditor editor) {
        desk = newDesk;
        parent.setLayout(new FillLayout());
        tree = new Tree(parent, SWT.CHECK | SWT.FULL_SELECTION);
        tree.setToolTipText("Tick what is shown; the space bar ticks the marked line. The menu of a layer (Shift+F10) says what it becomes.");
        Accessible.name(tree, "Layers and roles; ticked ones are shown");
        tree.addListener(SWT.Selection, event -> {
            if (event.detail == SWT.CHECK) {
                ticked((TreeItem) event.item);
            }
        });
        createMenu(editor);
        Listening.to(desk, tree, Topic.PROOF, this::fill);
        Listening.to(desk, tree, Topic.FINDINGS, this::fill);
        Skin.wear(parent, desk);
        fill();
    }

    private void createMenu(SheetEditor editor) {
        Menu menu = new Menu(tree);
        item(menu, "as drawn", () -> layer().ifPresent(layer -> editor.becomes(layer, Optional.empty())));
        for (Role role : Role.values()) {
            item(menu, "becomes " + role.word(), () -> layer().ifPresent(layer -> editor.becomes(layer, Optional.of(role))));
        }
        menu.addListener(SWT.Show, event -> {
            for (MenuItem item : menu.getItems()) {
                item.setEnabled(layer().isPresent());
            }
        });
        tree.setMenu(menu);
    }

    private static void item(Menu menu, String text, Runnable work) {
        MenuItem item = new MenuItem(menu, SWT.PUSH);
        item.setText(text);
        item.addListener(SWT.Selection, event -> work.run());
    }

    /** The layer whose line is marked; a layer without a name cannot be spoken of. */
    private Optional<String> layer() {
        return tree.getSelectionCount() == 1 && tree.getSelection()[0].getData() instanceof String layer && !layer.isEmpty() ? Optional.of(layer) : Optional.empty();
    }

    private void ticked(TreeItem item) {
        if (item.getData() instanceof Role role) {
            desk.shown().setRole(role, item.getChecked());
        } else if (item.getData() instanceof Overlay overlay) {
            desk.shown().setOverlay(overlay.name(), item.getChecked());
        } else if (item.getData() instanceof String layer) {
            desk.shown().setLayer(layer, item.getChecked());
        } else {
            for (TreeItem child : item.getItems()) {
                child.setChecked(item.getChecked());
                ticked(child);
            }
        }
    }

    private void fill() {
        tree.setRedraw(false);
        tree.removeAll();
        Map<Role, Integer> partsByRole = new EnumMap<>(Role.class);
        for (Part part : desk.parts()) {
            partsByRole.merge(part.role(), 1, Integer::sum);
        }
        TreeItem roles = head("Becomes");
        partsByRole.forEach((role, count) -> item(roles, role, role.word() + "  (" + count + (count == 1 ? " part)" : " parts)"), desk.shown().showsRole(role)));
        Map<String, Integer> figuresByLayer = new LinkedHashMap<>();
        for (Figure figure : desk.scene().figures()) {
            figuresByLayer.merge(figure.layer(), 1, Integer::sum);
        }
        TreeItem layers = head("Drawn on layers");
        figuresByLayer.forEach((layer, count) -> item(layers, layer, (layer.isEmpty() ? "(no layer)" : layer) + "  (" + count + ")", desk.shown().showsLayer(layer)));
        fillOverlays();
        roles.setExpanded(true);
        layers.setExpanded(true);
        tree.setRedraw(true);
    }

    /** What the checks show beside their findings; off until it is wanted. */
    private void fillOverlays() {
        List<Result.CheckRow> rows = desk.result().map(Result::checks).orElse(List.of()).stream().filter(row -> !row.layers().isEmpty()).toList();
        if (rows.isEmpty()) {
            return;
        }
        TreeItem head = head("Shown by the checks");
        head.setChecked(false);
        for (Result.CheckRow row : rows) {
            for (OverlayLayer layer : row.layers()) {
                Overlay name = new Overlay(row.check() + "/" + layer.id());
                item(head, name, row.check() + ": " + layer.title(), desk.shown().showsOverlay(name.name()));
            }
        }
        head.setExpanded(true);
    }

    /** An overlay layer, by {@code check/layer}. */
    private record Overlay(String name) {
    }

    private TreeItem head(String text) {
        TreeItem head = new TreeItem(tree, SWT.NONE);
        head.setText(text);
        head.setChecked(true);
        return head;
    }

    private static void item(TreeItem head, Object of, String text, boolean ticked) {
        TreeItem item = new TreeItem(head, SWT.NONE);
        item.setData(of);
        item.setText(text);
        item.setChecked(ticked);
    }

    @Focus
    void focus() {
        tree.setFocus();
    }
}
