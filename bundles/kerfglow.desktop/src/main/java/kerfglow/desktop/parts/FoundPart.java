// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import jakarta.annotation.PostConstruct;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import kerfglow.api.Severity;
import kerfglow.desktop.desk.Desk;
import kerfglow.desktop.desk.Topic;
import kerfglow.desktop.paint.Palette;
import kerfglow.job.FindingFilter;
import kerfglow.job.FindingItem;
import kerfglow.job.FindingOrder;
import kerfglow.job.Station;
import org.eclipse.e4.ui.di.Focus;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.FontData;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.swt.widgets.TreeColumn;
import org.eclipse.swt.widgets.TreeItem;

/** The findings by station, in the order in which the floor works; each station says clear or how many. */
public final class FoundPart {
    private static final Map<FindingFilter.Decided, String> DECIDED = Map.of(FindingFilter.Decided.ANY, "decided or not", FindingFilter.Decided.TO_DECIDE, "to decide",
            FindingFilter.Decided.WAIVED, "waived");
    private static final Map<FindingOrder, String> ORDER = Map.of(FindingOrder.SEVERITY, "by weight", FindingOrder.CHECK, "by check", FindingOrder.SHORTFALL, "by shortfall");

    private static final int WORDS_COLUMN = 2;
    private static final String EVERY_CHECK = "every check";
    private static final String EVERY_PART = "every part";
    private static final String WHOLE = "whole";
    /** Characters of a line, beyond what the column shows; the toolkit sets every character of every line, be it seen or not. The whole stands in the tip. */
    private static final int MOST_WORDS = 300;
    /** Parts that a person can choose from; the toolkit took 25 s for 3,400. Others are found by words. */
    private static final int MOST_OFFERED = 200;

    private Desk desk;
    private Tree tree;
    private Label hidden;
    private Font bold;
    private final Map<String, TreeItem> items = new HashMap<>();

    @PostConstruct
    void create(Composite parent, Desk newDesk) {
        desk = newDesk;
        GridLayout layout = new GridLayout(1, false);
        layout.marginWidth = 4;
        layout.marginHeight = 2;
        layout.verticalSpacing = 3;
        parent.setLayout(layout);
        Text words = new Text(parent, SWT.SEARCH | SWT.ICON_SEARCH | SWT.ICON_CANCEL);
        words.setMessage("Words in findings  (" + Keys.FIND_NAME + ")");
        words.setToolTipText("List only findings that hold all of these words");
        words.setData(Keys.WIDGET, Keys.FIND);
        Accessible.name(words, "Words that listed findings must hold");
        words.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false));
        words.addListener(SWT.Modify, event -> desk.findings().setFilter(desk.findings().filter().withWords(words.getText())));
        createFilterRow(parent);
        createTree(parent);
        hidden = new Label(parent, SWT.NONE);
        hidden.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false));
        Listening.to(desk, tree, Topic.PROOF, () -> {
            if (!words.getText().equals(desk.findings().filter().words())) {
                words.setText(desk.findings().filter().words());
            }
        });
        Listening.to(desk, tree, Topic.FINDINGS, this::fill);
        Listening.to(desk, tree, Topic.LISTED, this::fill);
        Listening.to(desk, tree, Topic.LOOK, this::fill);
        Listening.to(desk, tree, Topic.CHOICE, this::mark);
        Skin.wear(parent, desk);
        fill();
    }

    private void createFilterRow(Composite parent) {
        Composite row = new Composite(parent, SWT.NONE);
        row.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false));
        GridLayout layout = new GridLayout(6, true);
        layout.marginWidth = 0;
        layout.marginHeight = 0;
        row.setLayout(layout);
        for (Severity severity : new Severity[] {Severity.STOP, Severity.REVIEW, Severity.INFO}) {
            Button tick = new Button(row, SWT.CHECK);
            tick.setText(severity.word());
            tick.setSelection(true);
            tick.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false, 2, 1));
            tick.setToolTipText("List findings that weigh " + severity.word());
            tick.addListener(SWT.Selection, event -> {
                Set<Severity> weights = EnumSet.noneOf(Severity.class);
                weights.addAll(desk.findings().filter().severities());
                if (tick.getSelection()) {
                    weights.add(severity);
                } else {
                    weights.remove(severity);
                }
                desk.findings().setFilter(desk.findings().filter().withSeverities(weights));
            });
            Listening.to(desk, tick, Topic.PROOF, () -> tick.setSelection(desk.findings().filter().severities().contains(severity)));
        }
        Combo decided = combo(row, "Which findings by how far the decision is", DECIDED.get(FindingFilter.Decided.ANY), DECIDED.get(FindingFilter.Decided.TO_DECIDE),
                DECIDED.get(FindingFilter.Decided.WAIVED));
        decided.addListener(SWT.Selection, event -> desk.findings().setFilter(desk.findings().filter().withDecided(FindingFilter.Decided.values()[decided.getSelectionIndex()])));
        Combo order = combo(row, "In which order findings stand in a station", ORDER.get(FindingOrder.SEVERITY), ORDER.get(FindingOrder.CHECK), ORDER.get(FindingOrder.SHORTFALL));
        order.addListener(SWT.Selection, event -> desk.findings().setOrder(FindingOrder.values()[order.getSelectionIndex()]));
        Combo check = combo(row, "Findings of which check", EVERY_CHECK);
        check.addListener(SWT.Selection, event -> desk.findings().setFilter(desk.findings().filter().withChecks(chosen(check))));
        Combo part = combo(row, "Findings about which part", EVERY_PART);
        part.addListener(SWT.Selection, event -> desk.findings().setFilter(desk.findings().filter().withParts(chosen(part))));
        Listening.to(desk, row, Topic.FINDINGS, () -> {
            offer(check, EVERY_CHECK, desk.findings().checks(), desk.findings().filter().checks());
            offer(part, EVERY_PART, desk.findings().parts(), desk.findings().filter().parts());
        });
    }

    /** None chosen is the first line: all. */
    private static Set<String> chosen(Combo combo) {
        return combo.getSelectionIndex() <= 0 ? Set.of() : Set.of(combo.getText());
    }

    /** Offers what there is now; what is filtered by stays, also when it finds nothing any more. */
    private static void offer(Combo combo, String all, List<String> words, Set<String> filtered) {
        List<String> lines = new ArrayList<>(List.of(words.size() > MOST_OFFERED ? all + " (first " + MOST_OFFERED + " of " + words.size() + " here)" : all));
        lines.addAll(words.subList(0, Math.min(MOST_OFFERED, words.size())));
        filtered.stream().filter(each -> !lines.contains(each)).forEach(lines::add);
        String[] offered = lines.toArray(new String[0]);
        if (!Arrays.equals(offered, combo.getItems())) {
            combo.setItems(offered);
        }
        combo.select(filtered.stream().findFirst().map(lines::indexOf).orElse(0));
    }

    private static Combo combo(Composite row, String name, String... choices) {
        Combo combo = new Combo(row, SWT.DROP_DOWN | SWT.READ_ONLY);
        combo.setItems(choices);
        combo.select(0);
        combo.setToolTipText(name);
        combo.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false, 3, 1));
        Accessible.name(combo, name);
        return combo;
    }

    private void createTree(Composite parent) {
        tree = new Tree(parent, SWT.SINGLE | SWT.FULL_SELECTION | SWT.BORDER);
        GridData room = new GridData(SWT.FILL, SWT.FILL, true, true);
        room.heightHint = 100;
        tree.setLayoutData(room);
        tree.setHeaderVisible(true);
        Accessible.name(tree, "Findings by station");
        FontData data = tree.getFont().getFontData()[0];
        bold = new Font(tree.getDisplay(), data.getName(), data.getHeight(), SWT.BOLD);
        tree.addListener(SWT.Dispose, event -> bold.dispose());
        column("Station", 96);
        column("Weight", 70);
        column("What was found", 620);
        tree.addListener(SWT.MouseMove, event -> { // long texts do not fit the pane
            TreeItem under = tree.getItem(new Point(event.x, event.y));
            String whole = under == null ? null : String.valueOf(under.getData(WHOLE)).replace("&", "&&");
            if (!Objects.equals(whole, tree.getToolTipText())) {
                tree.setToolTipText(whole);
            }
        });
        tree.addListener(SWT.Selection, event -> {
            if (event.item.getData() instanceof String id && desk.findings().choice().filter(choice -> choice.finding().id().equals(id)).isEmpty()) {
                desk.findings().choose(id, 0);
            }
        });
    }

    private void column(String title, int width) {
        TreeColumn column = new TreeColumn(tree, SWT.LEFT);
        column.setText(title);
        column.setWidth(width);
    }

    private void fill() {
        Palette palette = Palette.of(desk.isDark());
        tree.setRedraw(false);
        tree.removeAll();
        items.clear();
        for (Station.Outlook outlook : desk.findings().outlooks()) {
            TreeItem head = new TreeItem(tree, SWT.NONE);
            String name = outlook.station().word();
            head.setText(new String[] {name.substring(0, 1).toUpperCase(Locale.ROOT) + name.substring(1), "", outlook.words()});
            head.setData(WHOLE, outlook.words());
            head.setFont(bold);
            for (FindingItem item : desk.findings().listed(outlook)) {
                add(head, item, palette);
            }
            head.setExpanded(true);
        }
        tree.setRedraw(true);
        int count = desk.findings().hidden();
        if (((GridData) hidden.getLayoutData()).exclude != (count == 0)) {
            ((GridData) hidden.getLayoutData()).exclude = count == 0;
            hidden.setVisible(count > 0);
            hidden.getParent().layout();
        }
        hidden.setText(count == 0 ? "" : count + (count == 1 ? " finding is" : " findings are") + " not listed");
        mark();
    }

    private void add(TreeItem head, FindingItem item, Palette palette) {
        TreeItem line = new TreeItem(head, SWT.NONE);
        String decision = switch (item.decision().kind()) {
            case OPEN -> "";
            case WAIVED -> "waived: ";
            case DECIDE_AGAIN -> "decide again: ";
        };
        String places = item.finding().count() > 1 ? " (" + item.finding().count() + " places)" : "";
        String words = item.finding().message();
        line.setText(new String[] {Integer.toString(item.number()), item.finding().severity().word(),
            decision + (words.length() > MOST_WORDS ? words.substring(0, MOST_WORDS) + "..." : words) + places});
        line.setData(WHOLE, decision + words + places);
        if (item.decision().isWaived()) {
            line.setForeground(palette.quiet);
        }
        line.setData(item.finding().id());
        items.put(item.finding().id(), line);
    }

    private void mark() {
        TreeItem item = desk.findings().choice().map(choice -> items.get(choice.finding().id())).orElse(null);
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
