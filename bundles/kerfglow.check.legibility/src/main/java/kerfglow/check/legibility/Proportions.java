// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;

/**
 * Stroke, width and spacing of a line.
 *
 * <p>The stroke is the median length of ink along level lines through the letters: in upright stems, which are most of it, the stem's
 * width; hairlines are not looked for. The width is that of a letter like an O where there is one, else the median of
 * letters as high as the capitals. The spacing is the least distance between neighbouring letters, median and least along the line, word
 * spaces left out.
 *
 * @param strokeMm mm
 * @param widthMm mm; empty for words in one piece
 * @param spacingMm median, mm; empty for words in one piece and single letters
 * @param leastSpacingMm least, mm
 */
record Proportions(double strokeMm, OptionalDouble widthMm, OptionalDouble spacingMm, OptionalDouble leastSpacingMm) {
    /** Level lines through each letter, at its quarters and between: away from bars and serifs, which lie at the ends and in the middle. */
    private static final double[] CUTS = {0.15, 0.22, 0.29, 0.36, 0.43, 0.57, 0.64, 0.71, 0.78, 0.85};
    /** Letters farther apart than this, in cap heights, stand in two words. Assumed: spacing is allowed up to 0.35, a word space is more. */
    private static final double WORD_SPACE = 0.45;
    /** In lettering that is spaced wide a word space is so much wider than the usual space. Assumed. */
    private static final double WIDER = 1.6;
    /** An oval fills pi / 4 = 0.785 of its box; letters like an O have no corner within this of it. Geometry; the margin is assumed. */
    private static final double OVAL = Math.PI / 4;
    private static final double OVAL_MARGIN = 0.08;
    private static final double AS_HIGH = 0.06;

    static Proportions of(Line line, Runnable pulse) {
        List<Double> runs = new ArrayList<>();
        for (Upright letter : line.letters()) {
            pulse.run();
            cut(letter, runs);
        }
        Collections.sort(runs);
        double stroke = runs.isEmpty() ? 0 : runs.get(runs.size() / 2);
        if (line.isJoined()) {
            return new Proportions(stroke, OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());
        }
        List<Double> gaps = gaps(line, pulse);
        return new Proportions(stroke, width(line), median(gaps), gaps.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(gaps.get(0)));
    }

    private static OptionalDouble median(List<Double> sorted) {
        return sorted.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(sorted.get(sorted.size() / 2));
    }

    private static void cut(Upright letter, List<Double> runs) {
        double bottom = letter.box().getMinY();
        double height = letter.box().getHeight();
        Polygon shape = letter.shape();
        for (double share : CUTS) {
            List<Double> crossings = new ArrayList<>();
            double level = bottom + share * height;
            crossings(shape.getExteriorRing(), level, crossings);
            for (int i = 0; i < shape.getNumInteriorRing(); i++) {
                crossings(shape.getInteriorRingN(i), level, crossings);
            }
            Collections.sort(crossings);
            for (int i = 0; i + 1 < crossings.size(); i += 2) {
                runs.add(crossings.get(i + 1) - crossings.get(i));
            }
        }
    }

    private static void crossings(LineString ring, double level, List<Double> into) {
        Coordinate[] points = ring.getCoordinates();
        for (int i = 1; i < points.length; i++) {
            Coordinate a = points[i - 1];
            Coordinate b = points[i];
            if (a.y <= level != b.y <= level) {
                into.add(a.x + (level - a.y) / (b.y - a.y) * (b.x - a.x));
            }
        }
    }

    private static OptionalDouble width(Line line) {
        double cap = line.model().capMm();
        List<Upright> high = line.letters().stream().filter(letter -> Math.abs(letter.box().getHeight() / cap - 1) <= AS_HIGH).toList();
        List<Upright> measured = high.isEmpty() ? line.letters() : high;
        List<Upright> ovals = measured.stream().filter(Proportions::isOval).toList();
        double[] widths = (ovals.isEmpty() ? measured : ovals).stream().mapToDouble(letter -> letter.box().getWidth()).sorted().toArray();
        return widths.length == 0 ? OptionalDouble.empty() : Arrays.stream(widths).skip(widths.length / 2).findFirst();
    }

    private static boolean isOval(Upright letter) {
        Polygon shape = letter.shape();
        double filled = shape.getFactory().createPolygon(shape.getExteriorRing()).getArea() / letter.box().getArea();
        return shape.getNumInteriorRing() == 1 && Math.abs(filled - OVAL) <= OVAL_MARGIN
                && !letter.ends().top().flat() && !letter.ends().bottom().flat();
    }

    private static List<Double> gaps(Line line, Runnable pulse) {
        List<Double> all = new ArrayList<>();
        for (int i = 1; i < line.letters().size(); i++) {
            pulse.run();
            all.add(IndexedFacetDistance.distance(line.letters().get(i - 1).piece().shape(), line.letters().get(i).piece().shape()));
        }
        Collections.sort(all);
        if (all.isEmpty()) {
            return all;
        }
        double limit = Math.max(WORD_SPACE * line.model().capMm(), WIDER * all.get(all.size() / 2));
        return all.stream().filter(gap -> gap <= limit).toList();
    }
}
