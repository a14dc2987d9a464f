// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.fit;

import java.util.ArrayList;
import java.util.List;
import kerfglow.geometry.DistancePiece;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;

/**
 * The clearance along one ring of an inner part, piece by piece: its least, greatest and mean, and the stretches that depart.
 * Clearance is below 0 where the ring lies outside the outer part.
 *
 * <p>A corner of the outer part that points inwards may be followed by an arc or by a mitre, so that where it is nearest the
 * clearance may be as large as that mitre makes it.
 */
final class Profile {
    /** Below this (mm) a point counts as on the edge, and the side must be asked for anew; above the exactness of the distance. */
    private static final double ON_EDGE_MM = 5e-4;
    /** Departures below one micrometre are rounding. */
    private static final double RESOLUTION_MM = 0.001;

    private final Allowance allowance;
    private final double mitreLimit;
    private final Corners corners;
    private final Sides sides;
    private final boolean counter;
    private final List<Bit> bits = new ArrayList<>();
    private boolean known;
    private boolean inside;
    private double least = Double.POSITIVE_INFINITY;
    private double greatest = Double.NEGATIVE_INFINITY;
    private double sum;
    private double length;

    /** A part of a piece that is tight, loose, or (null) neither. */
    private record Bit(Departure.Kind kind, Coordinate from, Coordinate to, double lengthMm, double extremeMm, Coordinate at) {
    }

    Profile(Allowance allowance, double mitreLimit, Corners corners, Sides sides, boolean counter) {
        this.allowance = allowance;
        this.mitreLimit = mitreLimit;
        this.corners = corners;
        this.sides = sides;
        this.counter = counter;
    }

    void add(DistancePiece piece) {
        if (piece.fromMm() <= ON_EDGE_MM) {
            known = false;
        }
        if (!known && piece.greatestMm() > ON_EDGE_MM) {
            inside = sides.isInside(piece.point(piece.fromMm() >= piece.toMm() ? 0 : piece.lengthMm()));
            known = true;
        }
        boolean in = inside || !known; // along the very edge the clearance is 0
        length += piece.lengthMm();
        sum += in ? piece.sumMm2() : -piece.sumMm2();
        least = Math.min(least, in ? piece.leastMm() : -piece.greatestMm());
        greatest = Math.max(greatest, in ? piece.greatestMm() : -piece.leastMm());
        if (in) {
            cut(piece);
        } else {
            boolean end = piece.toMm() > piece.fromMm();
            bits.add(new Bit(piece.greatestMm() > ON_EDGE_MM ? Departure.Kind.TIGHT : null, piece.from(), piece.to(), piece.lengthMm(),
                    -piece.greatestMm(), end ? piece.to() : piece.from()));
        }
    }

    private void cut(DistancePiece piece) {
        double low = allowance.sideMm() - allowance.toleranceMm() - RESOLUTION_MM;
        double reach = piece.isAtCorner() ? Corners.reach(piece.turn(), mitreLimit) : 1;
        double high = allowance.sideMm() * reach + allowance.toleranceMm() + RESOLUTION_MM;
        if (piece.leastMm() >= low && piece.greatestMm() <= high) {
            bits.add(new Bit(null, piece.from(), piece.to(), piece.lengthMm(), 0, piece.from()));
            return;
        }
        List<Double> places = new ArrayList<>();
        places.add(0.0);
        for (double limit : new double[] {low, high}) {
            for (double place : piece.crossings(limit)) {
                places.add(place);
            }
        }
        if (piece.greatestMm() > high) {
            places.addAll(corners.borders(piece.from(), piece.to()));
        }
        places.add(piece.lengthMm());
        places.sort(null);
        for (int i = 1; i < places.size(); i++) {
            bit(piece, places.get(i - 1), places.get(i), low, high);
        }
    }

    private void bit(DistancePiece piece, double from, double to, double low, double high) {
        if (to <= from) {
            return;
        }
        double middle = piece.at((from + to) / 2);
        boolean loose = middle > high && !corners.excuse(piece.point((from + to) / 2));
        Departure.Kind kind = middle < low ? Departure.Kind.TIGHT : loose ? Departure.Kind.LOOSE : null;
        double at = kind == Departure.Kind.LOOSE ? piece.at(from) > piece.at(to) ? from : to : Math.max(from, Math.min(to, piece.leastAtMm()));
        bits.add(new Bit(kind, piece.point(from), piece.point(to), to - from, piece.at(at), piece.point(at)));
    }

    double leastMm() {
        return least;
    }

    double greatestMm() {
        return greatest;
    }

    /** The clearance summed along the ring, mm². */
    double sumMm2() {
        return sum;
    }

    double lengthMm() {
        return length;
    }

    /** How much of the ring departs, mm. */
    double departingMm() {
        return bits.stream().filter(bit -> bit.kind != null).mapToDouble(Bit::lengthMm).sum();
    }

    /** The stretches; those that follow each other within one clearance are one. */
    List<Departure> departures(GeometryFactory factory) {
        List<Departure> found = new ArrayList<>();
        int first = start();
        if (first < 0) {
            return found;
        }
        List<Bit> run = new ArrayList<>();
        List<Bit> gap = new ArrayList<>();
        for (int i = 0; i < bits.size(); i++) {
            Bit bit = bits.get((first + i) % bits.size());
            if (bit.kind == null) {
                gap.add(bit);
                continue;
            }
            double between = gap.stream().mapToDouble(Bit::lengthMm).sum();
            if (!run.isEmpty() && (run.get(0).kind != bit.kind || between > allowance.sideMm())) {
                found.add(departure(run, factory));
                run.clear();
            } else if (!run.isEmpty()) {
                run.addAll(gap);
            }
            gap.clear();
            run.add(bit);
        }
        if (!run.isEmpty()) {
            found.add(departure(run, factory));
        }
        return found;
    }

    /** A place to start that cuts no stretch in two: after the longest row of bits that do not depart; -1 when none departs. */
    private int start() {
        int best = -1;
        double longest = -1;
        double row = 0;
        boolean departs = false;
        for (int i = 0; i < 2 * bits.size(); i++) {
            Bit bit = bits.get(i % bits.size());
            Bit before = bits.get((i + bits.size() - 1) % bits.size());
            if (bit.kind == null) {
                row += bit.lengthMm;
                continue;
            }
            departs = true;
            boolean changes = before.kind != bit.kind;
            if (changes && row > longest) {
                longest = row;
                best = i % bits.size();
            }
            row = 0;
        }
        return best >= 0 ? best : departs ? 0 : -1;
    }

    private Departure departure(List<Bit> run, GeometryFactory factory) {
        Departure.Kind kind = run.get(0).kind;
        Bit most = run.get(0);
        List<Coordinate> line = new ArrayList<>();
        line.add(run.get(0).from);
        for (Bit bit : run) {
            boolean departsMore = kind == Departure.Kind.TIGHT ? bit.extremeMm < most.extremeMm : bit.extremeMm > most.extremeMm;
            most = bit.kind == kind && departsMore ? bit : most;
            line.add(bit.to);
        }
        return new Departure(kind, factory.createLineString(line.toArray(new Coordinate[0])), most.extremeMm, most.at, counter);
    }
}
