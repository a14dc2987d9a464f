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
    private Text field;

    @PostConstruct
    void create(Composite parent, Desk newDesk, SheetEditor newEditor) {
        desk = newDesk;
        editor = newEditor;
        parent.setLayout(new FillLayout());
        canvas = new Canvas(parent, SWT.DOUBLE_BUFFERED);
        canvas.setToolTipText("Click a dimension to change it, a piece for its settings. By key: up and down choose a dimension, Enter changes it, left and right choose a piece.");
        Accessible.name(canvas, "Section through the sign; up and down choose a dimension, Enter changes it, left and right choose a piece");
        canvas.addListener(SWT.Paint, event -> paint(event.gc));
        canvas.addListener(SWT.Resize, event -> layOut());
        canvas.addListener(SWT.MouseDown, this::click);
        canvas.addListener(SWT.KeyDown, this::key);
        canvas.addListener(SWT.Traverse, event -> event.doit = event.detail == SWT.TRAVERSE_TAB_NEXT || event.detail == SWT.TRAVERSE_TAB_PREVIOUS);
        Listening.to(desk, canvas, Topic.FINDINGS, this::layOut);
        Listening.to(desk, canvas, Topic.LOOK, canvas::redraw);
        Skin.wear(parent, desk);
    }

    private void layOut() {
        section = desk.result().map(Section::of);
        Point size = canvas.getSize();
        GC gc = new GC(canvas);
        int line = gc.getFontMetrics().getHeight();
        gc.dispose();
        layout = section.filter(each -> size.x > 0 && size.y > 0).map(each -> SectionLayout.of(each, size.x, size.y, line, desk.screen().pixelsPerMm()));
        canvas.redraw();
    }

    private void paint(GC gc) {
        Palette palette = Palette.of(desk.isDark());
        if (section.isPresent() && layout.isPresent()) {
            painter.paint(gc, section.get(), layout.get(), piece, measure, desk.units(), palette);
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
        Optional<Integer> label = layout.get().labelAt(event.x, event.y);
        if (label.isPresent()) {
            measure = label.get();
            edit();
        } else {
            choose(layout.get().pieceAt(section.orElseThrow(), event.x, event.y));
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
                int at = piece.map(kind -> section.get().pieces().stream().map(Section.Piece::kind).toList().indexOf(kind)).orElse(-1);
                choose(Optional.of(section.get().pieces().get(Math.floorMod(at + (event.keyCode == SWT.ARROW_RIGHT ? 1 : -1), pieces)).kind()));
            }
            case SWT.CR, SWT.KEYPAD_CR -> edit();
            default -> {
                // not for the section
            }
        }
        canvas.redraw();
    }

    /** Puts a field over the label of the dimension; Enter takes what is typed, Esc leaves it. */
    private void edit() {
        if (measure < 0 || layout.isEmpty()) {
            return;
        }
        endEdit();
        Section.Measure edited = section.orElseThrow().measures().get(measure);
        SectionLayout.Label label = layout.get().labels().get(measure);
        field = new Text(canvas, SWT.BORDER | SWT.RIGHT);
        field.setText(Units.format(edited.valueMm(), Quantity.LENGTH, desk.units()));
        Accessible.name(field, edited.title());
        Point wanted = field.computeSize(label.width() / 2, SWT.DEFAULT);
        field.setBounds(label.x() + label.width() / 2, label.y() + (label.height() - wanted.y) / 2, label.width() / 2, wanted.y);
        field.selectAll();
        field.setFocus();
        field.addListener(SWT.FocusOut, event -> endEdit());
        field.addListener(SWT.KeyDown, event -> {
            if (event.keyCode == SWT.CR || event.keyCode == SWT.KEYPAD_CR) {
                Optional<String> problem = editor.change(edited, field.getText());
                if (problem.isPresent()) {
                    field.setToolTipText(problem.get());
                    field.setBackground(Palette.colour(0xf6d5d5));
                    desk.setWork(desk.work().withRemark(problem.get()));
                } else {
                    endEdit();
                }
            } else if (event.keyCode == SWT.ESC) {
                endEdit();
            }
        });
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
