// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.glow;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import kerfglow.api.ColourScale;
import kerfglow.api.OverlayLayer;
import kerfglow.api.OverlayLayer.Item;
import kerfglow.api.OverlayLayer.LegendEntry;
import kerfglow.api.OverlayLayer.Raster;
import kerfglow.api.Workers;
import kerfglow.light.Grid;
import kerfglow.light.LightMap;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Polygon;

/** The light as one picture for the whole sign, with lines of equal luminance, and the modules. */
final class GlowLayers {
    /** Steps of the legend, and lines at every half of one. */
    private static final int STEPS = 4;
    /** Larger pictures get larger cells: 16 MiB. */
    private static final double MOST_CELLS = 4_000_000;
    private static final int OPAQUE = 0xFF000000;
    private static final double[] NICE = {1, 1.2, 1.6, 2, 2.4, 3, 4, 5, 6, 8, 10};
    private static final double DECADE = 10;

    private GlowLayers() {
    }

    static List<OverlayLayer> of(List<LitFace> faces, Workers workers) {
        List<Item> modules = new ArrayList<>();
        for (LitFace face : faces) {
            face.modules().forEach(module -> modules.add(new Item(module.outline(face.factory()), Double.NaN, "")));
        }
        OverlayLayer plates = new OverlayLayer("modules", "Light modules", modules);
        List<LightMap> maps = faces.stream().flatMap(face -> face.cans().stream()).flatMap(piece -> piece.shown().stream()).toList();
        double greatest = maps.stream().filter(map -> map.litCells() > 0).mapToDouble(map -> map.luminanceLevels().greatest()).max().orElse(0);
        if (greatest <= 0) {
            return List.of(plates);
        }
        Sum sum = sum(faces, maps);
        double top = niceAbove(Math.max(greatest, sum.greatest()));
        List<Item> lines = workers.map(faces, face -> lines(face, top, workers)).stream().flatMap(List::stream).toList();
        List<LegendEntry> legend = new ArrayList<>();
        for (int i = 0; i <= STEPS; i++) {
            legend.add(new LegendEntry(ColourScale.rgb((double) i / STEPS), words(top * i / STEPS)));
        }
        return List.of(new OverlayLayer("map", "Luminance of lit faces", lines, Optional.of(sum.raster(top)), legend), plates);
    }

    private static String words(double luminance) {
        return String.format(Locale.ROOT, luminance == Math.rint(luminance) ? "%.0f cd/m²" : "%.3g cd/m²", luminance);
    }

    private static double niceAbove(double value) {
        double decade = Math.pow(DECADE, Math.floor(Math.log10(value)));
        for (double nice : NICE) {
            if (nice * decade >= value) {
                return nice * decade;
            }
        }
        return DECADE * decade;
    }

    private static List<Item> lines(LitFace face, double top, Workers workers) {
        List<Item> items = new ArrayList<>();
        for (LitFace.Piece piece : face.cans()) {
            if (piece.shown().isEmpty()) {
                continue;
            }
            LightMap map = piece.shown().get();
            boolean[] lit = LitFace.lit(map);
            for (int i = 1; i < 2 * STEPS; i++) {
                workers.pulse();
                double share = (double) i / (2 * STEPS);
                Geometry line = Contours.of(map.grid(), lit, map.luminance(), share * top, face.factory());
                if (!line.isEmpty()) {
                    items.add(new Item(line, share, words(share * top)));
                }
            }
        }
        return items;
    }

    /** Luminances of all maps added up: halos of neighbours lie over one another on the wall. NaN where nothing is lit. */
    private record Sum(Grid grid, double[] luminance) {
        double greatest() {
            return Arrays.stream(luminance).filter(value -> !Double.isNaN(value)).max().orElse(0);
        }

        Raster raster(double top) {
            int[] argb = new int[luminance.length];
            Arrays.setAll(argb, i -> Double.isNaN(luminance[i]) ? 0 : OPAQUE | ColourScale.rgb(luminance[i] / top));
            return new Raster(grid.leftMm(), grid.topMm(), grid.cellMm(), grid.columns(), grid.rows(), argb);
        }
    }

    private static Sum sum(List<LitFace> faces, List<LightMap> maps) {
        Envelope box = new Envelope();
        double cell = Double.POSITIVE_INFINITY;
        for (LightMap map : maps) {
            Grid grid = map.grid();
            box.expandToInclude(grid.leftMm(), grid.topMm());
            box.expandToInclude(grid.leftMm() + grid.columns() * grid.cellMm(), grid.topMm() + grid.rows() * grid.cellMm());
            cell = Math.min(cell, grid.cellMm());
        }
        Grid picture = Grid.over(box, Math.max(cell, Math.sqrt(box.getArea() / MOST_CELLS)));
        double[] sum = new double[picture.size()];
        Arrays.fill(sum, Double.NaN);
        for (LightMap map : maps) {
            Grid grid = map.grid();
            int lastRow = picture.row(grid.topMm() + grid.rows() * grid.cellMm());
            int lastColumn = picture.column(grid.leftMm() + grid.columns() * grid.cellMm());
            for (int row = picture.row(grid.topMm()); row <= lastRow; row++) {
                for (int column = picture.column(grid.leftMm()); column <= lastColumn; column++) {
                    int from = grid.cell(picture.x(column), picture.y(row));
                    int to = row * picture.columns() + column;
                    if (map.isLit(from)) {
                        sum[to] = (Double.isNaN(sum[to]) ? 0 : sum[to]) + map.luminance()[from];
                    }
                }
            }
        }
        faces.stream().filter(face -> face.task().halo()).flatMap(face -> face.cans().stream()).forEach(piece -> leaveOut(piece.inside(), picture, sum));
        return new Sum(picture, sum);
    }

    /** Behind a letter nothing of the wall is seen. */
    private static void leaveOut(Polygon back, Grid picture, double[] sum) {
        IndexedPointInAreaLocator inside = new IndexedPointInAreaLocator(back);
        Envelope box = back.getEnvelopeInternal();
        for (int row = Math.max(0, picture.row(box.getMinY())); row <= Math.min(picture.rows() - 1, picture.row(box.getMaxY())); row++) {
            for (int column = Math.max(0, picture.column(box.getMinX())); column <= Math.min(picture.columns() - 1, picture.column(box.getMaxX())); column++) {
                if (inside.locate(new Coordinate(picture.x(column), picture.y(row))) != Location.EXTERIOR) {
                    sum[row * picture.columns() + column] = Double.NaN;
                }
            }
        }
    }
}
