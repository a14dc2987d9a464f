// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import java.util.Optional;
import java.util.concurrent.Executor;
import kerfglow.desktop.closeup.CloseUp;
import kerfglow.desktop.desk.Choice;
import kerfglow.desktop.desk.Desk;
import kerfglow.desktop.desk.Topic;
import kerfglow.desktop.paint.CloseUpPainter;
import kerfglow.desktop.paint.Palette;
import kerfglow.host.Result;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Composite;

/** The place of the chosen finding, drawn large at a stated scale. Prepared in the background, since a panel can have very many points. */
final class CloseUpCanvas {
    private final Desk desk;
    private final Executor background;
    private final Canvas canvas;
    private final CloseUpPainter painter = new CloseUpPainter();
    private Optional<CloseUp> closeUp = Optional.empty();
    private volatile int asked;

    CloseUpCanvas(Composite parent, Desk desk, Executor background) {
        this.desk = desk;
        this.background = background;
        canvas = new Canvas(parent, SWT.DOUBLE_BUFFERED | SWT.NO_BACKGROUND);
        Accessible.name(canvas, "Close-up of the chosen finding with the tool in place");
        canvas.addListener(SWT.Paint, event -> paint(event.gc));
        canvas.addListener(SWT.Resize, event -> prepare());
        Listening.to(desk, canvas, Topic.CHOICE, this::prepare);
        Listening.to(desk, canvas, Topic.FINDINGS, () -> {
            if (closeUp.isEmpty()) { // it was chosen before all was known
                prepare();
            }
        });
        Listening.to(desk, canvas, Topic.LOOK, canvas::redraw);
    }

    Canvas control() {
        return canvas;
    }

    private void prepare() {
        int mine = ++asked;
        closeUp = Optional.empty();
        canvas.redraw();
        Optional<Choice> choice = desk.findings().choice();
        Optional<Result.Place> place = choice.flatMap(Choice::at);
        Point size = canvas.getSize();
        if (place.isEmpty() || desk.result().isEmpty() || size.x < 1 || size.y < 1) {
            return;
        }
        Result result = desk.result().get();
        double pixelsPerMm = desk.screen().pixelsPerMm();
        background.execute(() -> {
            if (mine != asked) { // another was chosen since; who walks through a list waits for the last one alone
                return;
            }
            CloseUp made = CloseUp.of(result, choice.get().finding(), place.get(), size.x / pixelsPerMm, size.y / pixelsPerMm);
            if (!canvas.isDisposed()) {
                canvas.getDisplay().asyncExec(() -> {
                    if (mine == asked && !canvas.isDisposed()) {
                        closeUp = Optional.of(made);
                        canvas.redraw();
                    }
                });
            }
        });
    }

    private void paint(GC gc) {
        Point size = canvas.getSize();
        Palette palette = Palette.of(desk.isDark());
        gc.setBackground(palette.surround);
        gc.fillRectangle(0, 0, size.x, size.y);
        if (closeUp.isPresent() && desk.findings().choice().isPresent()) {
            painter.paint(gc, closeUp.get(), desk.findings().choice().get().finding(), size, desk.units(), palette);
        } else {
            gc.setForeground(palette.quiet);
            gc.drawText(desk.findings().choice().isEmpty() ? "No finding is chosen." : desk.findings().choice().get().finding().places().isEmpty() ? "It concerns the whole proof." : "", 10, 10, true);
        }
    }
}
