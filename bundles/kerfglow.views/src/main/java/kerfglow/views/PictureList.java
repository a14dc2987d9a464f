// SPDX-License-Identifier: Apache-2.0
package kerfglow.views;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import kerfglow.host.Result;

/** What the numbers on an overlay picture mean, in two columns of about equal height below it. Pixels. */
final class PictureList {
    private static final double TEXT_SIZE = 19;
    private static final double LINE = 26;
    private static final double BADGE_RADIUS = 17;
    /** Where text begins, in badge radii from the left of its column. */
    private static final double INDENT = 3.4;
    private static final int COLUMNS = 2;

    private final double width;
    private final double margin;
    private final double top;
    private final double bottom;
    private final int unlisted;
    private final List<Entry> entries = new ArrayList<>();

    /** One finding in the list. */
    private record Entry(int number, Result.ReportedFinding finding, List<String> head, List<String> body, int column, double y) {
        double height() {
            return Math.max((head.size() + body.size()) * LINE, 2 * BADGE_RADIUS) + LINE * 0.45;
        }
    }

    PictureList(List<OverlayPicture.Listed> listed, int unlisted, double width, double margin, double top) {
        this.width = width;
        this.margin = margin;
        this.top = top;
        this.unlisted = unlisted;
        double textWidth = (width - 2 * margin) / COLUMNS - margin / 2 - INDENT * BADGE_RADIUS;
        List<Entry> loose = listed.stream().map(each -> entry(each, textWidth)).toList();
        double total = loose.stream().mapToDouble(Entry::height).sum();
        double y = top;
        double lowest = top;
        int column = 0;
        for (Entry entry : loose) {
            if (column < COLUMNS - 1 && y - top >= total / COLUMNS) {
                column++;
                y = top;
            }
            entries.add(new Entry(entry.number, entry.finding, entry.head, entry.body, column, y));
            y += entry.height();
            lowest = Math.max(lowest, y);
        }
        bottom = lowest + (unlisted > 0 ? LINE : 0);
    }

    private static Entry entry(OverlayPicture.Listed each, double textWidth) {
        Result.ReportedFinding finding = each.finding();
        List<String> head = each.first() ? Wrap.lines(finding.rule().summary(), textWidth, text -> ImageCanvas.roomFor(text, TEXT_SIZE, true)) : List.of();
        String body = finding.message() + (finding.count() > 1 ? " " + finding.count() + " places." : "")
                + (each.alike() > 0 ? "\nAnd " + each.alike() + " more of this kind, outlined on the proof." : "");
        return new Entry(each.number(), finding, head, Wrap.lines(body, textWidth, text -> ImageCanvas.roomFor(text, TEXT_SIZE, false)), 0, 0);
    }

    /** Where the longest column ends. */
    double bottom() {
        return bottom;
    }

    void draw(Canvas canvas) {
        double columnWidth = (width - 2 * margin) / COLUMNS + margin / 2;
        for (Entry entry : entries) {
            double x = margin + entry.column * columnWidth;
            Painter.badge(canvas, x + BADGE_RADIUS * 1.3, entry.y + LINE * 0.5, BADGE_RADIUS, entry.number, entry.finding.severity());
            double y = entry.y + LINE * 0.75;
            for (String line : entry.head) {
                canvas.text(line, x + INDENT * BADGE_RADIUS, y, TEXT_SIZE, true, Canvas.Anchor.START, Painter.INK);
                y += LINE;
            }
            for (String line : entry.body) {
                canvas.text(line, x + INDENT * BADGE_RADIUS, y, TEXT_SIZE, false, Canvas.Anchor.START, Painter.INK);
                y += LINE;
            }
        }
        if (entries.isEmpty()) {
            canvas.text("Nothing was found.", margin, top + LINE * 0.75, TEXT_SIZE, true, Canvas.Anchor.START, Painter.INK);
        }
        if (unlisted > 0) {
            canvas.text(String.format(Locale.ROOT, "And %d more, listed in the text.", unlisted), margin, bottom, TEXT_SIZE, true, Canvas.Anchor.START, Painter.INK);
        }
    }
}
