// SPDX-License-Identifier: Apache-2.0
package kerfglow.views;

import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import kerfglow.api.OverlayLayer;
import kerfglow.api.Quantity;
import kerfglow.api.Severity;
import kerfglow.api.UnitSystem;
import kerfglow.api.Units;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.Visibility;
import kerfglow.host.Result;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;

/**
 * The proof with its findings on it: each place outlined, a numbered badge with a leader to it, and a list of what the numbers
 * mean below. The same picture as SVG and as PNG, and without title and list in a report. Weight shows in shape as well as colour: stop is a
 * disc, review a lozenge, info a square. Layers of checks lie between the proof and the findings, marks of reviewers above them.
 */
public final class OverlayPicture {
    private static final double FILE_WIDTH = 2000;
    /** A report's page is about 180 mm wide, so that numbers are of about 8 points there. */
    private static final double REPORT_WIDTH = 1200;
    private static final double MARGIN = 50;
    private static final double TITLE_SIZE = 34;
    private static final double TEXT_SIZE = 19;
    private static final double LINE = 26;
    private static final double BADGE_RADIUS = 17;
    private static final double PEN = 2.2;
    /** What is drawn lies no farther from the true shape; nobody sees a tenth of a pixel. */
    private static final double TOLERANCE = 0.1;
    /** Height of the proof to the width of the picture; higher ones are drawn smaller. */
    private static final double FILE_PROOF_HEIGHT = 0.75;
    private static final double REPORT_PROOF_HEIGHT = 1.1;
    /** Things off the page are shown this far outside it, as a share of its larger side. */
    private static final double APRON = 0.08;
    /** A picture with more than this is no longer read; the text and JSON views list all. */
    private static final int MOST_LISTED = 120;
    /** More findings of one rule are outlined and counted, but neither numbered on the proof nor listed. */
    private static final int MOST_LISTED_OF_A_RULE = 6;
    /** In a report, where every finding has a close-up. */
    private static final int MOST_NUMBERED_OF_A_RULE = 3;
    /** More places of one finding are marked with a dot alone, so that badges do not bury the artwork. */
    private static final int MOST_BADGES_EACH = 3;

    private final Result result;
    private final List<OverlayLayer> layers;
    private final Review review;
    private final boolean alone;
    private final double width;
    private final List<Listed> listed;
    private final Viewport view;
    private final Legend legend;
    private final double legendTop;
    private final PictureList list;
    private final double height;

    /** A finding that has a number on the picture: the one that it has in the text. {@code alike} counts unlisted ones of its rule. */
    record Listed(int number, Result.ReportedFinding finding, boolean first, int alike) {
    }

    private OverlayPicture(Result result, List<OverlayLayer> layers, Review review, boolean alone) {
        this.result = result;
        this.layers = layers;
        this.review = review;
        this.alone = alone;
        this.width = alone ? FILE_WIDTH : REPORT_WIDTH;
        this.listed = listed(result.findings(), alone ? MOST_LISTED_OF_A_RULE : MOST_NUMBERED_OF_A_RULE);
        double margin = alone ? MARGIN : 0;
        Envelope seen = seen(result);
        double scale = Math.min((width - 2 * margin) / seen.getWidth(), width * (alone ? FILE_PROOF_HEIGHT : REPORT_PROOF_HEIGHT) / seen.getHeight());
        view = new Viewport(seen, (width - seen.getWidth() * scale) / 2, alone ? MARGIN + TITLE_SIZE + 2 * LINE : 0, scale, TOLERANCE / scale);
        legendTop = view.frame().getMaxY() + 1.4 * LINE;
        legend = new Legend(layers, faults().flatMap(finding -> finding.places().stream()).anyMatch(place -> place.suggestion().isPresent()), width - 2 * margin, TEXT_SIZE);
        double listTop = legendTop + legend.height() + 0.8 * LINE;
        list = new PictureList(alone ? listed : List.of(), alone ? unlisted() : 0, width, MARGIN, listTop);
        height = Math.ceil(alone ? list.bottom() + MARGIN : legendTop + legend.height());
    }

    private static List<Listed> listed(List<Result.ReportedFinding> findings, int mostOfRule) {
        Map<String, Long> ofRule = findings.stream().collect(Collectors.groupingBy(finding -> finding.rule().id(), Collectors.counting()));
        Map<String, Integer> seen = new HashMap<>();
        List<Listed> listed = new ArrayList<>();
        for (int i = 0; i < findings.size() && listed.size() < MOST_LISTED; i++) {
            Result.ReportedFinding finding = findings.get(i);
            int turn = seen.merge(finding.rule().id(), 1, Integer::sum);
            if (turn <= mostOfRule) {
                int rest = (int) (ofRule.get(finding.rule().id()) - mostOfRule);
                listed.add(new Listed(i + 1, finding, turn == 1, turn == mostOfRule ? Math.max(0, rest) : 0));
            }
        }
        return listed;
    }

    /** The picture as an SVG file. */
    public static String svg(Result result) {
        return svg(result, List.of());
    }

    /** The picture as an SVG file, with layers of checks. */
    public static String svg(Result result, List<OverlayLayer> layers) {
        OverlayPicture picture = new OverlayPicture(result, layers, Review.NONE, true);
        SvgCanvas canvas = SvgCanvas.file(picture.width, picture.height, picture.title());
        picture.draw(canvas);
        return canvas.text();
    }

    /** The picture as an image, 2000 pixels wide. */
    public static BufferedImage image(Result result) {
        return image(result, List.of());
    }

    /** The picture as an image, 2000 pixels wide, with layers of checks. */
    public static BufferedImage image(Result result, List<OverlayLayer> layers) {
        return new OverlayPicture(result, layers, Review.NONE, true).image();
    }

    /** The picture without title and list, to stand in a document that has both; with reviewers' marks. */
    public static OverlayPicture inReport(Result result, List<OverlayLayer> layers, Review review) {
        return new OverlayPicture(result, layers, review, false);
    }

    /** Its width, in units of the canvas. */
    public double width() {
        return width;
    }

    /** Its height, in units of the canvas. */
    public double height() {
        return height;
    }

    /** How many findings have a number on it. */
    public int numbered() {
        return (int) listed.stream().filter(each -> !each.finding().places().isEmpty()).count();
    }

    /** As an SVG element without declaration, for a page. */
    public String svg(String idPrefix) {
        SvgCanvas canvas = SvgCanvas.inside(width, height, idPrefix, title());
        draw(canvas);
        return canvas.text();
    }

    /** As an image. */
    public BufferedImage image() {
        ImageCanvas canvas = new ImageCanvas((int) width, (int) height);
        draw(canvas);
        return canvas.image();
    }

    private String title() {
        return result.job().title().isEmpty() ? FindingText.fileName(result) : result.job().title();
    }

    /** The page, and an apron around it when something stands off the page. */
    private static Envelope seen(Result result) {
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

    /** Draws all of it. */
    public void draw(Canvas canvas) {
        Painter painter = new Painter(canvas, view, PEN);
        canvas.rectangle(0, 0, width, height, Painter.WHITE, Painter.WHITE, 0);
        if (alone) {
            drawTitle(canvas);
        }
        painter.background();
        painter.clip();
        painter.proof(new ProofShapes(result));
        layers.forEach(layer -> painter.layer(layer, TEXT_SIZE));
        faults().forEach(finding -> finding.places().forEach(place -> painter.place(place, Painter.rgb(finding.severity()), BADGE_RADIUS)));
        faults().forEach(finding -> finding.places().forEach(place -> place.suggestion().ifPresent(painter::suggestion)));
        canvas.unclip();
        drawBadges(canvas);
        review.marks().forEach(mark -> painter.mark(mark, TEXT_SIZE));
        painter.scaleBar(alone ? width - MARGIN : width, view.frame().getMaxY() + LINE * 0.6, width / 7, TEXT_SIZE, result.units());
        legend.draw(canvas, alone ? MARGIN : 0, legendTop);
        if (alone) {
            list.draw(canvas);
        }
    }

    /** A number for the floor is no fault, and must not colour the artwork. */
    private Stream<Result.ReportedFinding> faults() {
        return result.findings().stream().filter(finding -> finding.severity() != Severity.INFO);
    }

    private void drawTitle(Canvas canvas) {
        UnitSystem units = result.units();
        canvas.text(title(), MARGIN, MARGIN + TITLE_SIZE * 0.8, TITLE_SIZE, true, Canvas.Anchor.START, Painter.INK);
        String facts = FindingText.fileName(result) + "  ·  " + Units.format(result.proof().widthMm(), Quantity.LENGTH, units) + " × "
                + Units.format(result.proof().heightMm(), Quantity.LENGTH, units);
        canvas.text(facts, MARGIN, MARGIN + TITLE_SIZE + LINE, TEXT_SIZE, false, Canvas.Anchor.START, Painter.QUIET);
        String counts = TextView.summary(result).substring(result.proof().file().length() + 2);
        canvas.text(counts, width - MARGIN, MARGIN + TITLE_SIZE * 0.8, TEXT_SIZE * 1.2, true, Canvas.Anchor.END, Painter.INK);
    }

    private void drawBadges(Canvas canvas) {
        int badgesEach = alone ? MOST_BADGES_EACH : 1;
        List<Coordinate> places = new ArrayList<>();
        for (Listed each : listed) {
            each.finding().places().stream().limit(badgesEach).forEach(place -> places.add(inFrame(view.at(place.at()))));
        }
        Badges badges = new Badges(view.frame(), BADGE_RADIUS, places);
        int next = 0;
        List<Runnable> onTop = new ArrayList<>();
        for (Listed each : listed) {
            Result.ReportedFinding finding = each.finding();
            for (int place = 0; place < Math.min(badgesEach, finding.places().size()); place++) {
                Coordinate at = places.get(next++);
                Coordinate spot = badges.put(at);
                canvas.line(at.x, at.y, spot.x, spot.y, Painter.WHITE, 2 * PEN);
                canvas.line(at.x, at.y, spot.x, spot.y, Painter.rgb(finding.severity()), 0.8 * PEN);
                onTop.add(() -> Painter.badge(canvas, spot.x, spot.y, BADGE_RADIUS, each.number(), finding.severity()));
            }
        }
        onTop.forEach(Runnable::run);
    }

    /** How many findings neither stand in the list nor are counted there. */
    private int unlisted() {
        return result.findings().size() - listed.size() - listed.stream().mapToInt(Listed::alike).sum();
    }

    private Coordinate inFrame(Coordinate at) {
        Envelope frame = view.frame();
        return new Coordinate(Math.min(Math.max(at.x, frame.getMinX()), frame.getMaxX()), Math.min(Math.max(at.y, frame.getMinY()), frame.getMaxY()));
    }
}
