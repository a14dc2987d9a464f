// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateArrays;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.operation.linemerge.LineMerger;

/** Draws the axis of a {@link ThinPiece}: between opposite walls, and across the bends and junctions that join such stretches. */
final class Axis {
    /** Centres are rounded to this grid (mm) so that pieces traced from two walls meet; far below any tolerance. */
    private static final double GRID_MM = 1e-6;
    /** A stretch between non-opposite walls whose discs shrink below this share of those at its ends leads into a corner. */
    private static final double CORNER_SHARE = 0.5;

    /** Shorter bits (mm) are what the facets of a round end leave; the tolerance of widths, 0.02 mm. */
    private static final double SPECK_MM = 0.02;

    private final ThinPiece piece;
    private final GeometryFactory factory;
    private final List<LineString> lines = new ArrayList<>();

    private Axis(ThinPiece piece, GeometryFactory factory) {
        this.piece = piece;
        this.factory = factory;
    }

    /** One step of the axis, as its owner sees it. */
    private record Step(Disc from, Disc middle, Disc to) {
        /** Every step is seen from both of its walls; one of them draws it. */
        boolean isOwn() {
            return middle.site() < middle.feature();
        }

        /** In a bend the inner corner sees all of the axis and the outer wall runs off into its own corner. */
        boolean isOwnInBend() {
            boolean fromCorner = middle.site() % 2 == 0;
            boolean toCorner = middle.feature() % 2 == 0;
            return fromCorner == toCorner ? isOwn() : fromCorner;
        }
    }

    /** The axis; empty where no walls lie opposite along any length. */
    static Geometry of(ThinPiece piece, GeometryFactory factory, Runnable pulse) {
        Axis axis = new Axis(piece, factory);
        for (Run run : piece.runs) {
            pulse.run();
            axis.add(steps(run), run.closed);
        }
        LineMerger merger = new LineMerger();
        for (LineString line : axis.lines) {
            pulse.run();
            merger.add(line);
        }
        List<LineString> merged = new ArrayList<>();
        for (Object line : merger.getMergedLineStrings()) {
            merged.add((LineString) line);
        }
        double longest = merged.stream().mapToDouble(LineString::getLength).max().orElse(0);
        merged.removeIf(line -> line.getLength() < Math.min(SPECK_MM, longest));
        return factory.buildGeometry(merged);
    }

    private static List<Step> steps(Run run) {
        List<Step> steps = new ArrayList<>();
        for (Span span : run.spans) {
            for (int i = 2; i < span.discs.size(); i += 2) {
                steps.add(new Step(span.discs.get(i - 2), span.discs.get(i - 1), span.discs.get(i)));
            }
        }
        return steps;
    }

    private void add(List<Step> steps, boolean closed) {
        int first = -1;
        for (int i = 0; i < steps.size(); i++) {
            Step step = steps.get(i);
            boolean faces = piece.faces(step.middle());
            if (faces && step.isOwn()) {
                draw(step);
            }
            if (faces && first < 0) {
                first = i;
            }
        }
        if (first >= 0) {
            bridge(steps, first, closed);
        }
    }

    private void bridge(List<Step> steps, int first, boolean closed) {
        int end = first + steps.size();
        int lastFacing = first;
        for (int i = first + 1; i <= end; i++) {
            if (i >= steps.size() && !closed) {
                return;
            }
            if (piece.faces(steps.get(i % steps.size()).middle())) {
                List<Step> between = new ArrayList<>();
                for (int j = lastFacing + 1; j < i; j++) {
                    between.add(steps.get(j % steps.size()));
                }
                if (!between.isEmpty() && !leadsIntoCorner(between)) {
                    between.stream().filter(Step::isOwnInBend).forEach(this::draw);
                }
                lastFacing = i;
            }
        }
    }

    private static boolean leadsIntoCorner(List<Step> steps) {
        double ends = Math.min(steps.get(0).from().radiusMm(), steps.get(steps.size() - 1).to().radiusMm());
        return steps.stream().anyMatch(step -> Math.min(step.middle().radiusMm(), step.to().radiusMm()) < CORNER_SHARE * ends);
    }

    private void draw(Step step) {
        Coordinate[] points = CoordinateArrays.removeRepeatedPoints(
                new Coordinate[] {rounded(step.from()), rounded(step.middle()), rounded(step.to())});
        if (points.length > 1) {
            lines.add(factory.createLineString(points)); // one line: no other axis begins in the middle of a step
        }
    }

    private static Coordinate rounded(Disc disc) {
        return new Coordinate(Math.rint(disc.centreX() / GRID_MM) * GRID_MM, Math.rint(disc.centreY() / GRID_MM) * GRID_MM);
    }
}
