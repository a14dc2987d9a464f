// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import jakarta.annotation.PostConstruct;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import kerfglow.desktop.desk.Desk;
import kerfglow.desktop.desk.Station;
import kerfglow.desktop.desk.Stations;
import kerfglow.desktop.desk.Topic;
import kerfglow.host.Result;
import org.eclipse.e4.ui.di.Focus;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.swt.widgets.TreeColumn;
import org.eclipse.swt.widgets.TreeItem;

/** The findings by station, in the order in which the floor works; each station says clear or how many. */
public final class FoundPart {
    private Desk desk;
    private Tree tree;
    private final Map<String, TreeItem> items = new HashMap<>();

    @PostConstruct
    void create(Composite parent, Desk newDesk) {
        desk = newDesk;
        GridLayout layout = new GridLayout(1, false);
        layout.marginWidth = 0;
        layout.marginHeight = 0;
        parent.setLayout(layout);
        Text words = new Text(parent, SWT.SEARCH | SWT.ICON_SEARCH | SWT.ICON_CANCEL);
        words.setMessage("Words, rule, part or layer");
        words.setToolTipText("List only findings that hold all of these words");
        Accessible.name(words, "Words that listed findings must hold");
        words.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false));
        words.addListener(SWT.Modify, event -> desk.listing().setWords(words.getText()));
        tree = new Tree(parent, SWT.SINGLE | SWT.FULL_SELECTION);
        tree.setLayoutData(new GridData(SWT.FILL, SWT.FILL, true, true));
        tree.setHeaderVisible(true);
        Accessible.name(tree, "Findings by station");
        column("No.", 90);
        column("Weight", 70);
        column("What was found", 600);
        tree.addListener(SWT.Selection, event -> {
            if (event.item.getData() instanceof String id && desk.choice().filter(choice -> choice.finding().id().equals(id)).isEmpty()) {
                desk.choose(id, 0);
            }
        });
        Listening.to(desk, tree, Topic.FINDINGS, this::fill);
        Listening.to(desk, tree, Topic.LISTED, this::fill);
        Listening.to(desk, tree, Topic.CHOICE, this::mark);
        Skin.wear(parent, desk);
        fill();
    }

    private void column(String title, int width) {
        TreeColumn column = new TreeColumn(tree, SWT.LEFT);
        column.setText(title);
        column.setWidth(width);
    }

    private void fill() {
        tree.setRedraw(false);
        tree.removeAll();
        items.clear();
        Map<Station, List<Result.ReportedFinding>> listed = new EnumMap<>(Station.class);
        for (Station station : Station.values()) {
            listed.put(station, desk.listed().stream().filter(finding -> Station.ofRule(finding.rule().id()) == station).toList());
        }
        for (Stations.Row row : Stations.rows(desk.findings(), desk.checks(), desk.result().isPresent() && !desk.work().busy())) {
            TreeItem head = new TreeItem(tree, SWT.NONE);
            head.setText(new String[] {row.station().title(), "", row.words()});
            for (Result.ReportedFinding finding : listed.get(row.station())) {
                TreeItem item = new TreeItem(head, SWT.NONE);
                item.setText(new String[] {Integer.toString(desk.number(finding)), finding.severity().word(),
                    finding.message() + (finding.count() > 1 ? " (" + finding.count() + " places)" : "")});
                item.setData(finding.id());
                items.put(finding.id(), item);
            }
            head.setExpanded(true);
        }
        tree.setRedraw(true);
        mark();
    }

    private void mark() {
        TreeItem item = desk.choice().map(choice -> items.get(choice.finding().id())).orElse(null);
        if (item == null) {
            tree.deselectAll();
        } else {
            tree.setSelection(item);
        }
    }

    @Focus
    void focus() {
        tree.setFocus();
    }
}
