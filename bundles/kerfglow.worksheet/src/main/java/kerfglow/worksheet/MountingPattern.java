// SPDX-License-Identifier: Apache-2.0
package kerfglow.worksheet;

import java.io.IOException;
import java.io.OutputStream;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import kerfglow.api.Quantity;
import kerfglow.api.UnitSystem;
import kerfglow.api.Units;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.host.Result;
import kerfglow.outlines.ResultRow;
import kerfglow.papers.FullSizePages;
import kerfglow.views.Canvas;
import kerfglow.views.FindingText;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.util.AffineTransformation;

/**
 * A pattern at full size, to tape to the wall and drill through: outlines, stud and wire holes with crosses at their centres, a level and a plumb line, on pages that
 * overlap, with crosses that lie over each other where pages are joined, and a bar to measure. A plan of the pages comes first.
 */
public final class MountingPattern {
    private static final String CAUTION = "Measure the bar on every page before drilling: printers scale. Look for what is behind the wall. Fixings: local code governs, a licensed engineer decides.";
    private static final List<Role> OUTLINED = List.of(Role.PANEL, Role.BACK, Role.FACE, Role.PUSH_THROUGH);
    private static final double BORDER_MM = 20;
    private static final double PLAN_WIDTH_MM = 297;
    private static final double PLAN_HEIGHT_MM = 210;
    private static final double PEN_MM = 0.3;
    private static final double FINE_MM = 0.15;
    private static final double CROSS_MM = 6;
    private static final double TEXT_MM = 3;
    private static final double LABEL_MM = 6;
    private static final double BAR_MM = 100;
    private static final int BAR_INCHES = 4;
    private static final int BACK = 0x3d7ea6;
    private static final int HOLE = 0xb3152b;
    private static final int LEVEL = 0x0b6e4f;
    private static final int JOIN = 0x8a0f6b;
    private static final int EDGE = 0x9aa3ab;
    private static final int SHORT_DIGEST = 12;

    private final Result result;
    private final Tiling tiling;
    private final Envelope sign;
    private final String name;

    private MountingPattern(Result result, PatternMedia media) {
        this.result = result;
        sign = new Envelope();
        result.parts().stream().filter(part -> OUTLINED.contains(part.role()) || part.role() == Role.HOLE).forEach(part -> sign.expandToInclude(part.shape().getEnvelopeInternal()));
        if (sign.isNull()) {
            throw new IllegalArgumentException("nothing here is mounted: no face, back, panel or push-through");
        }
        Envelope area = new Envelope(sign);
        area.expandBy(BORDER_MM);
        tiling = Tiling.of(area, media);
        String digest = result.proof().sha256();
        name = (result.job().title().isBlank() ? FindingText.fileName(result) : result.job().title()) + ", proof " + digest.substring(0, Math.min(SHORT_DIGEST, digest.length()));
    }

    /**
     * Writes; the stream stays open.
     *
     * @throws IOException also when the proof has nothing to mount
     */
    public static void write(Result result, PatternMedia media, Instant created, OutputStream out) throws IOException {
        MountingPattern pattern;
        try {
            pattern = new MountingPattern(result, media);
        } catch (IllegalArgumentException nothing) {
            throw new IOException(nothing.getMessage(), nothing);
        }
        try (FullSizePages pages = new FullSizePages("Mounting pattern: " + pattern.name, "Full size; measure the bar on every page", created)) {
            pages.page(PLAN_WIDTH_MM, PLAN_HEIGHT_MM, pattern::plan);
            for (int row = 0; row < pattern.tiling.rows(); row++) {
                for (int column = 0; column < pattern.tiling.columns(); column++) {
                    if (pattern.isUsed(pattern.tiling.tile(column, row))) {
                        pattern.page(pages, column, row);
                    }
                }
            }
            pages.write(out);
        }
    }

    /** Pages on which no line of the sign lies are left out; the plan shows them without a name. */
    private boolean isUsed(Envelope tile) {
        Geometry box = new GeometryFactory().toGeometry(tile);
        return result.parts().stream().filter(part -> OUTLINED.contains(part.role()) || part.role() == Role.HOLE)
                .anyMatch(part -> part.shape().getEnvelopeInternal().intersects(tile) && part.shape().getBoundary().intersects(box));
    }

    private void page(FullSizePages pages, int column, int row) throws IOException {
        Envelope tile = tiling.tile(column, row);
        double width = tile.getWidth() + 2 * PatternMedia.MARGIN_MM;
        double height = tiling.media().heightMm();
        pages.page(width, height, canvas -> {
            canvas.clip(PatternMedia.MARGIN_MM, PatternMedia.MARGIN_MM, tile.getWidth(), tile.getHeight());
            drawing(canvas, tile, 1, PatternMedia.MARGIN_MM, PatternMedia.MARGIN_MM);
            joins(canvas, tile);
            canvas.unclip();
            double bottom = PatternMedia.MARGIN_MM + tile.getHeight();
            for (double[] side : new double[][] {{PatternMedia.MARGIN_MM, PatternMedia.MARGIN_MM, PatternMedia.MARGIN_MM + tile.getWidth(), PatternMedia.MARGIN_MM},
                {PatternMedia.MARGIN_MM, bottom, PatternMedia.MARGIN_MM + tile.getWidth(), bottom}, {PatternMedia.MARGIN_MM, PatternMedia.MARGIN_MM, PatternMedia.MARGIN_MM, bottom},
                {PatternMedia.MARGIN_MM + tile.getWidth(), PatternMedia.MARGIN_MM, PatternMedia.MARGIN_MM + tile.getWidth(), bottom}}) {
                canvas.line(side[0], side[1], side[2], side[3], EDGE, FINE_MM);
            }
            bar(canvas, PatternMedia.MARGIN_MM, bottom + 5);
            double left = PatternMedia.MARGIN_MM + BAR_MM + 5;
            canvas.text(Tiling.name(column, row), left, bottom + 7, LABEL_MM, true, Canvas.Anchor.START, ScaledView.INK);
            canvas.text("column " + (column + 1) + " of " + tiling.columns() + ", row " + (row + 1) + " of " + tiling.rows() + "; full size", left + 16, bottom + 4.5, TEXT_MM * 0.85, false,
                    Canvas.Anchor.START, ScaledView.INK);
            canvas.text(name, left + 16, bottom + 8.5, TEXT_MM * 0.75, false, Canvas.Anchor.START, ScaledView.QUIET);
        });
    }

    /** Everything that lies in a tile. */
    private void drawing(Canvas canvas, Envelope tile, double scale, double left, double top) {
        AffineTransformation place = new AffineTransformation(scale, 0, left - tile.getMinX() * scale, 0, scale, top - tile.getMinY() * scale);
        for (Part part : result.parts()) {
            if (OUTLINED.contains(part.role()) && part.shape().getEnvelopeInternal().intersects(tile)) {
                canvas.edge(place.transform(part.shape()), part.role() == Role.BACK ? BACK : ScaledView.INK, PEN_MM, 1);
            }
        }
        for (ResultRow row : ResultRow.of(result, "fit", "made-backs")) {
            row.geometry("shape").filter(back -> back.getEnvelopeInternal().intersects(tile)).ifPresent(back -> canvas.edge(place.transform(back), BACK, PEN_MM, 1));
        }
        lines(canvas, tile, place);
        for (Hole hole : holes()) {
            if (tile.intersects(hole.outline.getEnvelopeInternal())) {
                Coordinate at = place.transform(hole.at, new Coordinate());
                canvas.edge(place.transform(hole.outline), HOLE, PEN_MM, 1);
                double arm = CROSS_MM * scale + hole.diameterMm / 2 * scale;
                canvas.line(at.x - arm, at.y, at.x + arm, at.y, HOLE, FINE_MM);
                canvas.line(at.x, at.y - arm, at.x, at.y + arm, HOLE, FINE_MM);
                if (scale == 1) {
                    canvas.text(hole.words, at.x + arm + 1, at.y - 1, TEXT_MM * 0.85, false, Canvas.Anchor.START, HOLE);
                }
            }
        }
    }

    private void lines(Canvas canvas, Envelope tile, AffineTransformation place) {
        Coordinate middle = place.transform(sign.centre(), new Coordinate());
        Coordinate from = place.transform(new Coordinate(tiling.area().getMinX(), tiling.area().getMinY()), new Coordinate());
        Coordinate to = place.transform(new Coordinate(tiling.area().getMaxX(), tiling.area().getMaxY()), new Coordinate());
        canvas.line(from.x, middle.y, to.x, middle.y, LEVEL, FINE_MM);
        canvas.line(middle.x, from.y, middle.x, to.y, LEVEL, FINE_MM);
        double left = place.transform(new Coordinate(tile.getMinX(), 0), new Coordinate()).x;
        double top = place.transform(new Coordinate(0, tile.getMinY()), new Coordinate()).y;
        canvas.text("level", left + 2, middle.y - 1, TEXT_MM, false, Canvas.Anchor.START, LEVEL);
        canvas.text("plumb", middle.x + 1, top + TEXT_MM + 1, TEXT_MM, false, Canvas.Anchor.START, LEVEL);
    }

    /** Crosses in the middle of overlaps: both pages show the same cross. */
    private void joins(Canvas canvas, Envelope tile) {
        List<Coordinate> crosses = new ArrayList<>();
        for (int column = 0; column + 1 < tiling.columns(); column++) {
            for (int row = 0; row < tiling.rows(); row++) {
                Envelope beside = tiling.tile(column, row);
                crosses.add(new Coordinate(tiling.seamX(column), beside.getMinY() + beside.getHeight() / 4));
                crosses.add(new Coordinate(tiling.seamX(column), beside.getMaxY() - beside.getHeight() / 4));
            }
        }
        for (int row = 0; row + 1 < tiling.rows(); row++) {
            for (int column = 0; column < tiling.columns(); column++) {
                Envelope above = tiling.tile(column, row);
                crosses.add(new Coordinate(above.getMinX() + above.getWidth() / 4, tiling.seamY(row)));
                crosses.add(new Coordinate(above.getMaxX() - above.getWidth() / 4, tiling.seamY(row)));
            }
        }
        for (Coordinate cross : crosses) {
            if (tile.contains(cross)) {
                double x = PatternMedia.MARGIN_MM + cross.x - tile.getMinX();
                double y = PatternMedia.MARGIN_MM + cross.y - tile.getMinY();
                canvas.line(x - CROSS_MM, y, x + CROSS_MM, y, JOIN, PEN_MM);
                canvas.line(x, y - CROSS_MM, x, y + CROSS_MM, JOIN, PEN_MM);
                canvas.text("join", x + 1, y - 1, TEXT_MM * 0.75, false, Canvas.Anchor.START, JOIN);
            }
        }
    }

    private void bar(Canvas canvas, double left, double y) {
        boolean inch = result.units() == UnitSystem.INCH;
        int steps = inch ? BAR_INCHES : 10;
        double step = inch ? Units.MM_PER_INCH : BAR_MM / steps;
        canvas.line(left, y, left + steps * step, y, ScaledView.INK, PEN_MM);
        for (int i = 0; i <= steps; i++) {
            canvas.line(left + i * step, y - (i % steps == 0 ? 2.5 : 1.2), left + i * step, y, ScaledView.INK, FINE_MM);
        }
        canvas.text(inch ? BAR_INCHES + " in: measure it before you drill" : "100 mm: measure it before you drill", left, y + TEXT_MM + 0.6, TEXT_MM * 0.85, false, Canvas.Anchor.START, ScaledView.INK);
    }

    private void plan(Canvas canvas) {
        canvas.text("Mounting pattern", PatternMedia.MARGIN_MM, 16, LABEL_MM, true, Canvas.Anchor.START, ScaledView.INK);
        canvas.text(name, PatternMedia.MARGIN_MM, 22, TEXT_MM, false, Canvas.Anchor.START, ScaledView.INK);
        canvas.text(CAUTION, PatternMedia.MARGIN_MM, 27, TEXT_MM * 0.9, false, Canvas.Anchor.START, HOLE);
        Tiling here = tiling;
        long pages = IntStream.range(0, here.pages()).filter(page -> isUsed(here.tile(page % here.columns(), page / here.columns()))).count();
        String size = Units.format(sign.getWidth(), Quantity.LENGTH, result.units()) + " by " + Units.format(sign.getHeight(), Quantity.LENGTH, result.units());
        canvas.text(pages + (pages == 1 ? " page" : " pages") + " at full size for a sign of " + size + "; lay the crosses marked join over each other, outlines black, backs blue, holes red.",
                PatternMedia.MARGIN_MM, 32, TEXT_MM * 0.9, false, Canvas.Anchor.START, ScaledView.INK);
        Envelope all = new Envelope(here.area());
        all.expandToInclude(here.tile(here.columns() - 1, here.rows() - 1));
        double top = 38;
        double scale = Math.min((PLAN_WIDTH_MM - 2 * PatternMedia.MARGIN_MM) / all.getWidth(), (PLAN_HEIGHT_MM - top - PatternMedia.MARGIN_MM) / all.getHeight());
        drawing(canvas, all, scale, PatternMedia.MARGIN_MM, top);
        for (int row = 0; row < here.rows(); row++) {
            for (int column = 0; column < here.columns(); column++) {
                Envelope tile = here.tile(column, row);
                double x = PatternMedia.MARGIN_MM + (tile.getMinX() - all.getMinX()) * scale;
                double y = top + (tile.getMinY() - all.getMinY()) * scale;
                double w = tile.getWidth() * scale;
                double h = tile.getHeight() * scale;
                boolean used = isUsed(tile);
                int ink = used ? JOIN : EDGE;
                canvas.line(x, y, x + w, y, ink, FINE_MM);
                canvas.line(x, y + h, x + w, y + h, ink, FINE_MM);
                canvas.line(x, y, x, y + h, ink, FINE_MM);
                canvas.line(x + w, y, x + w, y + h, ink, FINE_MM);
                double text = Math.min(LABEL_MM, Math.min(w, h) / 2);
                canvas.text(used ? Tiling.name(column, row) : "", x + w / 2, y + h / 2 + text / 3, text, false, Canvas.Anchor.MIDDLE, ink);
            }
        }
    }

    private record Hole(Geometry outline, Coordinate at, double diameterMm, String words) {
    }

    /** What kind each hole is comes from the check of mounting; without it a hole is a hole. */
    private List<Hole> holes() {
        List<ResultRow> kinds = ResultRow.of(result, "mount", "holes");
        return result.parts().stream().filter(part -> part.role() == Role.HOLE).map(part -> {
            double diameter = 2 * Math.sqrt(part.shape().getArea() / Math.PI);
            String kind = kinds.stream().filter(row -> row.text("hole").equals(part.id())).map(row -> row.text("kind")).findFirst().orElse("hole");
            return new Hole(part.shape(), part.shape().getCentroid().getCoordinate(), diameter, kind + " " + Units.format(diameter, Quantity.LENGTH, result.units()));
        }).toList();
    }
}
