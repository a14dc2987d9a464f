// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.vinyl;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import kerfglow.geometry.LocalWidth;
import kerfglow.geometry.OutlinePiece;
import kerfglow.geometry.OutlinePieces;
import kerfglow.geometry.Stretch;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/**
 * The panels in which a piece of film is laid that is wider than the roll.
 *
 * <p>Seams are straight and all upright or all level, as panels are laid; of each the fewest are taken, at the places, a two hundredth of the
 * piece apart, where all together cross least detail (counters, corners, thin strokes, keep-outs), then least film. The better of the two
 * directions is taken in the same order. Neighbouring panels overlap by half the overlap on either side of the seam.
 *
 * @param degrees direction of the seams, 0 for upright, 90 for level
 * @param seams where they run, through the film
 * @param shapes the panels with their overlaps, in order
 * @param details how much detail the seams cross or come close to
 */
record Panels(double degrees, List<Geometry> seams, List<Geometry> shapes, int details) {
    /** Places looked at across a piece. Assumed: half a per cent of it is fine enough for a seam. */
    private static final int STEPS = 200;
    /** Vertices that turn more, degrees, are corners to keep away from. Assumed. */
    private static final double CORNER_DEGREES = 20;
    /** As in the router's check. Assumed: between serif tips and corners of capitals. */
    private static final double LEAST_FACING_DEGREES = 150;
    /** Beyond this there is no plan worth a look: a banner, or a mistake of scale. */
    private static final int MOST_PANELS = 60;
    /** One detail weighs more than any length of film, mm. */
    private static final double DETAIL_WEIGHT = 1e7;

    /**
     * What decides where seams go; mm.
     *
     * @param usableMm width of a panel at most
     * @param overlapMm overlap of neighbouring panels
     * @param clearanceMm how far seams keep from detail
     * @param detailMm strokes narrower than this are detail
     * @param keepOuts no seam there
     * @param chordErrorMm of the outline
     */
    record Limits(double usableMm, double overlapMm, double clearanceMm, double detailMm, List<Geometry> keepOuts, double chordErrorMm) {
    }

    /** The best panels for a piece; empty when the roll is narrower than the overlap, or there would be too many. */
    static Optional<Panels> of(Polygon piece, Limits limits, Runnable pulse) {
        if (limits.usableMm() <= 2 * limits.overlapMm()) {
            return Optional.empty();
        }
        List<Geometry> details = details(piece, limits, pulse);
        return Stream.of(0.0, 90.0).map(degrees -> across(piece, degrees, details, limits)).flatMap(Optional::stream)
                .min(Comparator.comparingInt((Panels panels) -> panels.shapes().size()).thenComparingInt(Panels::details)
                        .thenComparingDouble(panels -> panels.seams().stream().mapToDouble(Geometry::getLength).sum()));
    }

    private static List<Geometry> details(Polygon piece, Limits limits, Runnable pulse) {
        List<Geometry> details = new ArrayList<>();
        for (int i = -1; i < piece.getNumInteriorRing(); i++) {
            pulse.run();
            LinearRing ring = i < 0 ? piece.getExteriorRing() : piece.getInteriorRingN(i);
            if (i >= 0) {
                details.add(ring);
            }
            OutlinePieces.of(ring, limits.chordErrorMm(), limits.chordErrorMm()).stream()
                    .filter(each -> each.kind() == OutlinePiece.Kind.CORNER && each.degrees() > CORNER_DEGREES).forEach(each -> details.add(each.line()));
        }
        LocalWidth.narrowerThan(piece, limits.detailMm(), LEAST_FACING_DEGREES, pulse).stream().map(Stretch::axis).forEach(details::add);
        limits.keepOuts().stream().filter(keepOut -> keepOut.getEnvelopeInternal().intersects(piece.getEnvelopeInternal())).forEach(details::add);
        return details;
    }

    private static Optional<Panels> across(Polygon piece, double degrees, List<Geometry> details, Limits limits) {
        AffineTransformation turn = AffineTransformation.rotationInstance(-Math.toRadians(degrees));
        AffineTransformation back = AffineTransformation.rotationInstance(Math.toRadians(degrees));
        Polygon upright = (Polygon) turn.transform(piece);
        Envelope box = upright.getEnvelopeInternal();
        int panels = (int) Math.ceil((box.getWidth() - limits.overlapMm()) / (limits.usableMm() - limits.overlapMm()));
        if (panels < 2 || panels > MOST_PANELS) {
            return Optional.empty();
        }
        List<Envelope> boxes = details.stream().map(turn::transform).map(Geometry::getEnvelopeInternal).toList();
        double[] at = new double[STEPS - 1];
        int[] crossed = new int[at.length];
        double[] cost = new double[at.length];
        for (int i = 0; i < at.length; i++) {
            double x = box.getMinX() + box.getWidth() * (i + 1) / STEPS;
            at[i] = x;
            crossed[i] = (int) boxes.stream().filter(each -> x > each.getMinX() - limits.clearanceMm() && x < each.getMaxX() + limits.clearanceMm()).count();
            cost[i] = crossed[i] * DETAIL_WEIGHT + chords(upright, x).stream().mapToDouble(LineString::getLength).sum();
        }
        int[] chosen = cheapest(at, cost, box, panels - 1, limits);
        if (chosen.length == 0) {
            return Optional.empty();
        }
        List<Geometry> seams = new ArrayList<>();
        List<Geometry> shapes = new ArrayList<>();
        double from = box.getMinX();
        for (int seam : chosen) {
            seams.add(back.transform(upright.getFactory().buildGeometry(chords(upright, at[seam]))));
            shapes.add(back.transform(band(upright, from, at[seam] + limits.overlapMm() / 2)));
            from = at[seam] - limits.overlapMm() / 2;
        }
        shapes.add(back.transform(band(upright, from, box.getMaxX())));
        return Optional.of(new Panels(degrees, seams, shapes, Arrays.stream(chosen).map(seam -> crossed[seam]).sum()));
    }

    /** The places of so many seams that cost least in all while no panel is too wide; none where there are no such places. */
    private static int[] cheapest(double[] at, double[] cost, Envelope box, int seams, Limits limits) {
        double[][] best = new double[seams][at.length];
        int[][] before = new int[seams][at.length];
        double half = limits.overlapMm() / 2;
        for (int s = 0; s < seams; s++) {
            for (int i = 0; i < at.length; i++) {
                best[s][i] = Double.POSITIVE_INFINITY;
                if (s == 0) {
                    best[s][i] = at[i] + half - box.getMinX() <= limits.usableMm() ? cost[i] : Double.POSITIVE_INFINITY;
                    continue;
                }
                for (int j = 0; j < i; j++) {
                    if (at[i] - at[j] + limits.overlapMm() <= limits.usableMm() && best[s - 1][j] + cost[i] < best[s][i]) {
                        best[s][i] = best[s - 1][j] + cost[i];
                        before[s][i] = j;
                    }
                }
            }
        }
        int last = -1;
        for (int i = 0; i < at.length; i++) {
            boolean reaches = box.getMaxX() - at[i] + half <= limits.usableMm();
            last = reaches && best[seams - 1][i] < (last < 0 ? Double.POSITIVE_INFINITY : best[seams - 1][last]) ? i : last;
        }
        if (last < 0) {
            return new int[0];
        }
        int[] chosen = new int[seams];
        for (int s = seams - 1; s >= 0; s--) {
            chosen[s] = last;
            last = before[s][last];
        }
        return chosen;
    }

    /** Where an upright line runs through the film. */
    private static List<LineString> chords(Polygon upright, double x) {
        List<Double> crossings = new ArrayList<>();
        for (int i = -1; i < upright.getNumInteriorRing(); i++) {
            LinearRing ring = i < 0 ? upright.getExteriorRing() : upright.getInteriorRingN(i);
            for (int j = 1; j < ring.getNumPoints(); j++) {
                Coordinate a = ring.getCoordinateN(j - 1);
                Coordinate b = ring.getCoordinateN(j);
                if (a.x < x != b.x < x) {
                    crossings.add(a.y + (x - a.x) / (b.x - a.x) * (b.y - a.y));
                }
            }
        }
        crossings.sort(Comparator.naturalOrder());
        List<LineString> chords = new ArrayList<>();
        for (int i = 0; i + 1 < crossings.size(); i += 2) {
            chords.add(upright.getFactory().createLineString(new Coordinate[] {new Coordinate(x, crossings.get(i)), new Coordinate(x, crossings.get(i + 1))}));
        }
        return chords;
    }

    private static Geometry band(Polygon upright, double from, double to) {
        Envelope box = upright.getEnvelopeInternal();
        return OverlayNGRobust.overlay(upright, upright.getFactory().toGeometry(new Envelope(from, to, box.getMinY() - 1, box.getMaxY() + 1)), OverlayNG.INTERSECTION);
    }
}
