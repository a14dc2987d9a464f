// SPDX-License-Identifier: Apache-2.0
package kerfglow.views;

import java.awt.font.FontRenderContext;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import kerfglow.api.Quantity;
import kerfglow.api.Severity;
import kerfglow.api.UnitSystem;
import kerfglow.api.Units;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.Paint;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.api.proof.Visibility;
import kerfglow.host.Result;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Puntal;
import org.locationtech.jts.geom.util.AffineTransformation;

/**
 * The proof with its findings on it: each place outlined, a numbered badge with a leader to it, and a list of what the numbers
 * mean below. The same picture as SVG and as PNG. Weight shows in shape as well as colour: stop is a disc, review a lozenge,
 * info a square.
 */
public final class OverlayPicture {
    private static final double WIDTH = 2000;
    private static final double MARGIN = 50;
    private static final double TITLE_SIZE = 34;
    private static final double TEXT_SIZE = 19;
    private static final double LINE = 26;
    private static final double BADGE_RADIUS = 17;
    private static final double MOST_PROOF_HEIGHT = 1500;
    /** Things off the page are shown this far outside it, as a share of its larger side. */
    private static final double APRON = 0.08;
    private static final int COLUMNS = 2;
    /** A picture with more than this is no longer read; the text and JSON views list all. */
    private static final int MOST_LISTED = 120;
    /** More findings of one rule are outlined and counted, but neither numbered on the proof nor listed. */
    private static final int MOST_LISTED_OF_A_RULE = 6;
    /** More places of one finding are marked with a dot alone, so that badges do not bury the artwork. */
    private static final int MOST_BADGES_EACH = 3;

    private static final int INK = 0x1d2733;
    private static final int QUIET = 0x66717d;
    private static final int WHITE = 0xffffff;
    private static final int PAPER = 0xf3f1ec;
    private static final int STOP = 0xb3152b;
    private static final int REVIEW = 0x9a5b00;
    private static final int INFO = 0x1f5f8b;
    private static final double FAINT = 0.35;

    private final Result result;
    private final List<Listed> listed;
    private final double pixelsPerMm;
    private final Envelope seenMm;
    private final Envelope frame;
    private final double height;
    private final double listTop;
    private final List<Entry> entries = new ArrayList<>();

    /** A finding that has a number on the picture: the one that it has in the text. {@code alike} counts unlisted ones of its rule. */
    private record Listed(int number, Result.ReportedFinding finding, boolean first, int alike) {
    }

    /** One finding in the list below the proof. */
    private record Entry(int number, Result.ReportedFinding finding, List<String> head, List<String> body, int column, double y) {
    }

    private OverlayPicture(Result result) {
        this.result = result;
        this.listed = listed(result.findings());
        seenMm = seen();
        pixelsPerMm = Math.min((WIDTH - 2 * MARGIN) / seenMm.getWidth(), MOST_PROOF_HEIGHT / seenMm.getHeight());
        double left = (WIDTH - seenMm.getWidth() * pixelsPerMm) / 2;
        double top = MARGIN + TITLE_SIZE + 2 * LINE;
        frame = new Envelope(left, left + seenMm.getWidth() * pixelsPerMm, top, top + seenMm.getHeight() * pixelsPerMm);
        listTop = frame.getMaxY() + 2.2 * LINE;
        height = Math.ceil(layOutList() + MARGIN);
    }

    private static List<Listed> listed(List<Result.ReportedFinding> findings) {
        Map<String, Long> ofRule = findings.stream().collect(Collectors.groupingBy(finding -> finding.rule().id(), Collectors.counting()));
        Map<String, Integer> seen = new HashMap<>();
        List<Listed> listed = new ArrayList<>();
        for (int i = 0; i < findings.size() && listed.size() < MOST_LISTED; i++) {
            Result.ReportedFinding finding = findings.get(i);
            int turn = seen.merge(finding.rule().id(), 1, Integer::sum);
            if (turn <= MOST_LISTED_OF_A_RULE) {
                int rest = (int) (ofRule.get(finding.rule().id()) - MOST_LISTED_OF_A_RULE);
                listed.add(new Listed(i + 1, finding, turn == 1, turn == MOST_LISTED_OF_A_RULE ? Math.max(0, rest) : 0));
            }
        }
        return listed;
    }

    /** The picture as SVG text. */
    public static String svg(Result result) {
        OverlayPicture picture = new OverlayPicture(result);
        SvgCanvas canvas = new SvgCanvas(WIDTH, picture.height, picture.title());
        picture.draw(canvas);
        return canvas.text();
    }

    /** The picture as an image, 2000 pixels wide. */
    public static BufferedImage image(Result result) {
        OverlayPicture picture = new OverlayPicture(result);
        ImageCanvas canvas = new ImageCanvas((int) WIDTH, (int) picture.height);
        picture.draw(canvas);
        return canvas.image();
    }

    private String title() {
        return result.job().title().isEmpty() ? result.proof().file() : result.job().title();
    }

    /** The page, and an apron around it when something stands off the page. */
    private Envelope seen() {
        Envelope page = new Envelope(0, Math.max(result.proof().widthMm(), Units.MM_PER_INCH), 0, Math.max(result.proof().heightMm(), Units.MM_PER_INCH));
        Envelope apron = new Envelope(page);
        apron.expandBy(APRON * Math.max(page.getWidth(), page.getHeight()));
        Envelope seen = new Envelope(page);
        for (Element element : result.proof().elements()) {
            if (element.visibility() == Visibility.SHOWN) {
                seen.expandToInclude(element.fillArea().getEnvelopeInternal().intersection(apron));
                seen.expandToInclude(element.strokeArea().getEnvelopeInternal().intersection(apron));
            }
        }
        return seen;
    }

    private void draw(Canvas canvas) {
        canvas.rectangle(0, 0, WIDTH, height, WHITE, WHITE, 0);
        drawTitle(canvas);
        canvas.rectangle(frame.getMinX(), frame.getMinY(), frame.getWidth(), frame.getHeight(), PAPER, PAPER, 0);
        canvas.clip(frame.getMinX(), frame.getMinY(), frame.getWidth(), frame.getHeight());
        drawProof(canvas);
        for (Result.ReportedFinding finding : result.findings()) {
            if (finding.severity() != Severity.INFO) { // a number for the floor is no fault, and must not colour the artwork
                finding.places().forEach(place -> drawPlace(canvas, place, rgb(finding.severity())));
            }
        }
        canvas.unclip();
        drawBadges(canvas);
        drawScale(canvas);
        drawList(canvas);
    }

    private void drawTitle(Canvas canvas) {
        UnitSystem units = result.units();
        canvas.text(title(), MARGIN, MARGIN + TITLE_SIZE * 0.8, TITLE_SIZE, true, Canvas.Anchor.START, INK);
        String facts = result.proof().file() + "  ·  " + Units.format(result.proof().widthMm(), Quantity.LENGTH, units) + " × "
                + Units.format(result.proof().heightMm(), Quantity.LENGTH, units);
        canvas.text(facts, MARGIN, MARGIN + TITLE_SIZE + LINE, TEXT_SIZE, false, Canvas.Anchor.START, QUIET);
        String counts = TextView.summary(result).substring(result.proof().file().length() + 2);
        canvas.text(counts, WIDTH - MARGIN, MARGIN + TITLE_SIZE * 0.8, TEXT_SIZE * 1.2, true, Canvas.Anchor.END, INK);
    }

    private void drawProof(Canvas canvas) {
        Envelope page = toPixels(new Envelope(0, result.proof().widthMm(), 0, result.proof().heightMm()));
        canvas.rectangle(page.getMinX(), page.getMinY(), page.getWidth(), page.getHeight(), WHITE, QUIET, 1);
        Set<String> faint = new HashSet<>();
        for (Part part : result.parts()) {
            if (part.role() == Role.NOTE || part.role() == Role.UNUSED) {
                faint.addAll(part.elements());
            }
        }
        for (Element element : result.proof().elements()) {
            if (element.visibility() != Visibility.SHOWN) {
                continue;
            }
            double opacity = faint.contains(element.id()) ? FAINT : 1;
            if (element.origin() == Element.Origin.IMAGE) {
                drawImageBox(canvas, element);
            } else {
                paint(canvas, element.fillArea(), element.fill(), opacity);
                paint(canvas, element.strokeArea(), element.stroke(), opacity);
            }
        }
    }

    private void paint(Canvas canvas, Geometry area, Paint paint, double opacity) {
        if (!area.isEmpty() && paint.isPainted()) {
            canvas.area(toPixels(area), paint.rgb(), opacity);
        }
    }

    private void drawImageBox(Canvas canvas, Element element) {
        Envelope box = toPixels(element.fillArea().getEnvelopeInternal());
        canvas.area(toPixels(element.fillArea()), 0xd9dde2, 1);
        canvas.line(box.getMinX(), box.getMinY(), box.getMaxX(), box.getMaxY(), QUIET, 1);
        canvas.line(box.getMinX(), box.getMaxY(), box.getMaxX(), box.getMinY(), QUIET, 1);
    }

    private void drawPlace(Canvas canvas, Result.Place place, int rgb) {
        Geometry shape = toPixels(place.shape());
        Coordinate at = toPixels(place.at());
        if (shape.getDimension() == 2) {
            canvas.area(shape, rgb, 0.3);
        }
        if (!(shape instanceof Puntal)) {
            canvas.edge(shape, WHITE, 4.5, 0.7);
            canvas.edge(shape, rgb, 2.2, 1);
        }
        Envelope box = shape.getEnvelopeInternal();
        if (Math.max(box.getWidth(), box.getHeight()) < BADGE_RADIUS) { // too small to see by itself
            canvas.circle(at.x, at.y, 4.5, rgb, WHITE, 1.5);
        }
    }

    private void drawBadges(Canvas canvas) {
        List<Coordinate> places = new ArrayList<>();
        for (Listed each : listed) {
            each.finding().places().stream().limit(MOST_BADGES_EACH).forEach(place -> places.add(inFrame(toPixels(place.at()))));
        }
        Badges badges = new Badges(frame, BADGE_RADIUS, places);
        int next = 0;
        List<Runnable> onTop = new ArrayList<>();
        for (Listed each : listed) {
            Result.ReportedFinding finding = each.finding();
            for (int place = 0; place < Math.min(MOST_BADGES_EACH, finding.places().size()); place++) {
                Coordinate at = places.get(next++);
                Coordinate spot = badges.put(at);
                canvas.line(at.x, at.y, spot.x, spot.y, WHITE, 4);
                canvas.line(at.x, at.y, spot.x, spot.y, rgb(finding.severity()), 1.8);
                int number = each.number();
                onTop.add(() -> drawBadge(canvas, spot.x, spot.y, number, finding.severity()));
            }
        }
        onTop.forEach(Runnable::run);
    }

    private void drawBadge(Canvas canvas, double x, double y, int number, Severity severity) {
        double r = BADGE_RADIUS;
        switch (severity) {
            case STOP -> canvas.circle(x, y, r, STOP, WHITE, 2);
            case REVIEW -> canvas.polygon(new double[] {x, y - r * 1.3, x + r * 1.3, y, x, y + r * 1.3, x - r * 1.3, y}, REVIEW, WHITE, 2);
            case INFO -> canvas.rectangle(x - r * 0.9, y - r * 0.9, r * 1.8, r * 1.8, INFO, WHITE, 2);
        }
        double size = number < 100 ? TEXT_SIZE : TEXT_SIZE * 0.8;
        canvas.text(Integer.toString(number), x, y + size * 0.36, size, true, Canvas.Anchor.MIDDLE, WHITE);
    }

    private static int rgb(Severity severity) {
        return switch (severity) {
            case STOP -> STOP;
            case REVIEW -> REVIEW;
            case INFO -> INFO;
        };
    }

    /** A scale bar of a round length, about a seventh of the picture. */
    private void drawScale(Canvas canvas) {
        boolean inch = result.units() == UnitSystem.INCH;
        double unit = inch ? Units.MM_PER_INCH : 1;
        double wanted = WIDTH / 7 / pixelsPerMm / unit;
        double power = Math.pow(10, Math.floor(Math.log10(wanted)));
        double length = wanted / power >= 5 ? 5 * power : wanted / power >= 2 ? 2 * power : power;
        double pixels = length * unit * pixelsPerMm;
        double y = frame.getMaxY() + LINE * 0.6;
        double right = WIDTH - MARGIN;
        canvas.line(right - pixels, y, right, y, INK, 2);
        canvas.line(right - pixels, y - 6, right - pixels, y + 6, INK, 2);
        canvas.line(right, y - 6, right, y + 6, INK, 2);
        canvas.text(Units.format(length * unit, Quantity.LENGTH, result.units()), right - pixels - 10, y + 6, TEXT_SIZE, false, Canvas.Anchor.END, INK);
    }

    /** Places the entries in columns of about equal height; returns where the longest ends. */
    private double layOutList() {
        double columnWidth = (WIDTH - 2 * MARGIN) / COLUMNS - MARGIN / 2;
        double textWidth = columnWidth - 3.4 * BADGE_RADIUS;
        List<Entry> loose = new ArrayList<>();
        double total = 0;
        for (Listed each : listed) {
            Result.ReportedFinding finding = each.finding();
            List<String> head = each.first() ? Wrap.lines(finding.rule().summary(), textWidth, text -> width(text, true)) : List.of();
            String body = finding.message() + (finding.count() > 1 ? " " + finding.count() + " places." : "")
                    + (each.alike() > 0 ? "\nAnd " + each.alike() + " more of this kind, outlined on the proof." : "");
            Entry entry = new Entry(each.number(), finding, head, Wrap.lines(body, textWidth, text -> width(text, false)), 0, 0);
            loose.add(entry);
            total += heightOf(entry);
        }
        double y = listTop;
        double lowest = listTop;
        int column = 0;
        for (Entry entry : loose) {
            if (column < COLUMNS - 1 && y - listTop >= total / COLUMNS) {
                column++;
                y = listTop;
            }
            entries.add(new Entry(entry.number, entry.finding, entry.head, entry.body, column, y));
            y += heightOf(entry);
            lowest = Math.max(lowest, y);
        }
        return lowest + (unlisted() > 0 ? LINE : 0);
    }

    private static double heightOf(Entry entry) {
        return Math.max((entry.head.size() + entry.body.size()) * LINE, 2 * BADGE_RADIUS) + LINE * 0.45;
    }

    private static final FontRenderContext CONTEXT = new FontRenderContext(null, true, true);
    /** Other renderers' sans-serif runs wider than ours by up to about this. */
    private static final double FONT_SLACK = 1.06;

    private static double width(String text, boolean bold) {
        return FONT_SLACK * ImageCanvas.font(TEXT_SIZE, bold).getStringBounds(text, CONTEXT).getWidth();
    }

    private void drawList(Canvas canvas) {
        double columnWidth = (WIDTH - 2 * MARGIN) / COLUMNS + MARGIN / 2;
        for (Entry entry : entries) {
            double x = MARGIN + entry.column * columnWidth;
            drawBadge(canvas, x + BADGE_RADIUS * 1.3, entry.y + LINE * 0.5, entry.number, entry.finding.severity());
            double y = entry.y + LINE * 0.75;
            for (String line : entry.head) {
                canvas.text(line, x + 3.4 * BADGE_RADIUS, y, TEXT_SIZE, true, Canvas.Anchor.START, INK);
                y += LINE;
            }
            for (String line : entry.body) {
                canvas.text(line, x + 3.4 * BADGE_RADIUS, y, TEXT_SIZE, false, Canvas.Anchor.START, INK);
                y += LINE;
            }
        }
        if (entries.isEmpty()) {
            canvas.text("Nothing was found.", MARGIN, listTop + LINE * 0.75, TEXT_SIZE, true, Canvas.Anchor.START, INK);
        }
        if (unlisted() > 0) {
            canvas.text(String.format(Locale.ROOT, "And %d more, listed in the text.", unlisted()), MARGIN, height - MARGIN, TEXT_SIZE, true, Canvas.Anchor.START, INK);
        }
    }

    /** How many findings neither stand in the list nor are counted there. */
    private int unlisted() {
        return result.findings().size() - listed.size() - listed.stream().mapToInt(Listed::alike).sum();
    }

    private Coordinate inFrame(Coordinate at) {
        return new Coordinate(Math.min(Math.max(at.x, frame.getMinX()), frame.getMaxX()), Math.min(Math.max(at.y, frame.getMinY()), frame.getMaxY()));
    }

    private Coordinate toPixels(Coordinate mm) {
        return new Coordinate(frame.getMinX() + (mm.x - seenMm.getMinX()) * pixelsPerMm, frame.getMinY() + (mm.y - seenMm.getMinY()) * pixelsPerMm);
    }

    private Envelope toPixels(Envelope mm) {
        return new Envelope(toPixels(new Coordinate(mm.getMinX(), mm.getMinY())), toPixels(new Coordinate(mm.getMaxX(), mm.getMaxY())));
    }

    private Geometry toPixels(Geometry mm) {
        return new AffineTransformation(pixelsPerMm, 0, frame.getMinX() - seenMm.getMinX() * pixelsPerMm, 0, pixelsPerMm,
                frame.getMinY() - seenMm.getMinY() * pixelsPerMm).transform(mm);
    }
}
