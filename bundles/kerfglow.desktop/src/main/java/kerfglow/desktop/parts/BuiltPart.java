// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import jakarta.annotation.PostConstruct;
import jakarta.inject.Inject;
import java.util.Optional;
import kerfglow.api.Quantity;
import kerfglow.api.Units;
import kerfglow.desktop.desk.Desk;
import kerfglow.desktop.desk.SheetEditor;
import kerfglow.desktop.desk.Topic;
import kerfglow.desktop.paint.Palette;
import kerfglow.desktop.paint.SectionPainter;
import kerfglow.desktop.section.Section;
import kerfglow.desktop.section.SectionLayout;
import org.eclipse.e4.ui.di.Focus;
import org.eclipse.e4.ui.workbench.modeling.EPartService;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Text;

/** How the sign is built: a section from wall to front, on which each dimension is changed and the settings of each piece are opened. */
public final class BuiltPart {
    private static final String HELP = "Click a dimension to change it, a piece for its settings. By key: up and down choose a dimension, Enter changes it, left and right choose a piece.";
    private static final int FIELD_PX = 80;
    private static final String SETTINGS = "kerfglow.part.settings";

    /** Absent outside e4, where tests show the pane alone. */
    @Inject
    @org.eclipse.e4.core.di.annotations.Optional
    private EPartService panes;
    private Desk desk;
    private SheetEditor editor;
    private Canvas canvas;
    private final SectionPainter painter = new SectionPainter();
    private Optional<Section> section = Optional.empty();
    private Optional<SectionLayout> layout = Optional.empty();
    private Optional<Section.Kind> piece = Optional.empty();
    private int measure = -1;
    private int pointedAt = -1;
    private Text field;

    @PostConstruct
    void create(Composite parent, Desk newDesk, SheetEditor newEditor) {
        desk = newDesk;
        editor = newEditor;
        parent.setLayout(new FillLayout());
        canvas = new Canvas(parent, SWT.DOUBLE_BUFFERED);
        canvas.setToolTipText(HELP);
        Accessible.name(canvas, "Section through the sign; up and down choose a dimension, Enter changes it, left and right choose a piece");
        canvas.addListener(SWT.Paint, event -> paint(event.gc));
        canvas.addListener(SWT.Resize, event -> layOut());
        canvas.addListener(SWT.MouseDown, this::click);
        canvas.addListener(SWT.MouseMove, event -> pointAt(event.x, event.y));
        canvas.addListener(SWT.MouseExit, event -> pointAt(-1, -1));
        canvas.addListener(SWT.KeyDown, this::key);
        canvas.addListener(SWT.Traverse, event -> event.doit = event.detail == SWT.TRAVERSE_TAB_NEXT || event.detail == SWT.TRAVERSE_TAB_PREVIOUS);
        Listening.to(desk, canvas, Topic.FINDINGS, this::layOut);
        Listening.to(desk, canvas, Topic.LOOK, canvas::redraw);
        Skin.wear(parent, desk);
    }

    private void layOut() {
        section = desk.result().map(Section::of);
        pointedAt = -1;
        Point size = canvas.getSize();
        GC gc = new GC(canvas);
        SectionLayout.Room room = new SectionLayout.Room(size.x, size.y, gc.getFontMetrics().getHeight(), desk.screen().pixelsPerMm(), text -> gc.stringExtent(text).x);
        layout = section.filter(each -> size.x > 0 && size.y > 0).map(each -> SectionLayout.of(each, each.measures().stream().map(this::value).toList(), room));
        gc.dispose();
        canvas.redraw();
    }

    private String value(Section.Measure of) {
        return Units.format(of.valueMm(), Quantity.LENGTH, desk.units());
    }

    /** What lies below the pointer says what it is. */
    private void pointAt(int x, int y) {
        int at = layout.flatMap(each -> each.measureAt(x, y)).orElse(-1);
        String tip = at >= 0 ? section.orElseThrow().measures().get(at).title() + ": click to change it"
                : layout.flatMap(each -> each.pieceAt(section.orElseThrow(), x, y)).map(each -> each.words() + ": click for its settings").orElse(HELP);
        if (!tip.equals(canvas.getToolTipText())) {
            canvas.setToolTipText(tip);
        }
        if (at != pointedAt) {
            pointedAt = at;
            canvas.redraw();
        }
    }

    private void paint(GC gc) {
        Palette palette = Palette.of(desk.isDark());
        if (section.isPresent() && layout.isPresent()) {
            painter.paint(gc, section.get(), layout.get(), piece, pointedAt >= 0 ? pointedAt : measure, palette);
        } else {
            gc.setForeground(palette.quiet);
            gc.drawText("The section is drawn when the checks have ended.", 10, 8, true);
        }
    }

    private void click(Event event) {
        canvas.setFocus();
        if (layout.isEmpty()) {
            return;
        }
        Optional<Integer> at = layout.get().measureAt(event.x, event.y);
        if (at.isPresent()) {
            measure = at.get();
            edit();
        } else {
            choose(layout.get().pieceAt(section.orElseThrow(), event.x, event.y).map(Section.Piece::kind));
        }
        canvas.redraw();
    }

    private void choose(Optional<Section.Kind> kind) {
        piece = kind;
        canvas.redraw();
        kind.ifPresent(chosen -> {
            if (panes != null) {
                panes.showPart(SETTINGS, EPartService.PartState.VISIBLE);
            }
            editor.open(chosen);
        });
    }

    private void key(Event event) {
        int measures = section.map(each -> each.measures().size()).orElse(0);
        int pieces = section.map(each -> each.pieces().size()).orElse(0);
        if (measures == 0) {
            return;
        }
        switch (event.keyCode) {
            case SWT.ARROW_DOWN -> measure = Math.floorMod(measure + 1, measures);
            case SWT.ARROW_UP -> measure = Math.floorMod(Math.max(measure, 0) - 1, measures);
            case SWT.ARROW_RIGHT, SWT.ARROW_LEFT -> {
                int by = event.keyCode == SWT.ARROW_RIGHT ? 1 : -1;
                int at = piece.map(kind -> section.get().pieces().stream().map(Section.Piece::kind).toList().indexOf(kind)).orElse(by > 0 ? -1 : 0);
                choose(Optional.of(section.get().pieces().get(Math.floorMod(at + by, pieces)).kind()));
            }
            case SWT.CR, SWT.KEYPAD_CR -> edit();
            default -> {
                // not for the section
            }
        }
        canvas.redraw();
    }

    /** Puts a field over the value of the dimension on the drawing; Enter takes what is typed, Esc leaves it. */
    private void edit() {
        if (measure < 0 || layout.isEmpty()) {
            return;
        }
        endEdit();
        Section.Measure edited = section.orElseThrow().measures().get(measure);
        SectionLayout.Box value = layout.get().lines().get(measure).room();
        Text opened = new Text(canvas, SWT.BORDER | SWT.RIGHT);
        opened.setText(value(edited));
        Accessible.name(opened, edited.title());
        Point wanted = opened.computeSize(Math.max(FIELD_PX, value.width() + FIELD_PX / 2), SWT.DEFAULT);
        int left = Math.max(0, Math.min(value.x() + value.width() / 2 - wanted.x / 2, canvas.getSize().x - wanted.x));
        int top = Math.max(0, Math.min(value.y() + value.height() / 2 - wanted.y / 2, canvas.getSize().y - wanted.y));
        opened.setBounds(left, top, wanted.x, wanted.y);
        field = opened;
        opened.selectAll();
        opened.setFocus();
        opened.addListener(SWT.FocusOut, event -> {
            if (field == opened) {
                endEdit();
            }
        });
        opened.addListener(SWT.KeyDown, event -> {
            if (event.keyCode == SWT.CR || event.keyCode == SWT.KEYPAD_CR) {
                take(edited, opened);
            } else if (event.keyCode == SWT.ESC) {
                endEdit();
            }
        });
    }

    private void take(Section.Measure edited, Text typed) {
        Optional<String> problem = editor.change(edited, typed.getText());
        if (problem.isPresent()) {
            typed.setToolTipText(problem.get());
            typed.setBackground(Palette.of(desk.isDark()).wrong);
            desk.setWork(desk.work().withRemark(problem.get()));
        } else {
            endEdit();
        }
    }

    private void endEdit() {
        Text ended = field;
        field = null; // disposing takes the focus away, which comes back here
        if (ended != null && !ended.isDisposed()) {
            canvas.getDisplay().asyncExec(ended::dispose);
            canvas.setFocus();
        }
    }

    @Focus
    void focus() {
        canvas.setFocus();
    }
}
