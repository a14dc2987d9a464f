// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.fit;

import java.util.ArrayList;
import java.util.List;
import kerfglow.api.Inspection;
import kerfglow.api.SharedSettings;
import kerfglow.api.proof.Part;
import kerfglow.geometry.EdgeDistance;
import kerfglow.geometry.Union;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;

/** Measures one pair; reads no settings while it does, so that it can run on any thread. */
final class PairMeasure {
    private final Pair pair;
    private final Allowance allowance;
    private final double mitreLimit;
    private final double holeSizeMm;
    private final MissedStrokes missed;
    private final GeometryFactory factory;

    PairMeasure(Inspection inspection, Pair pair, Allowance allowance) {
        this.pair = pair;
        this.allowance = allowance;
        Part outer = pair.outers().get(0);
        mitreLimit = inspection.settings().get(SharedSettings.BACK_MITRE_LIMIT, outer);
        holeSizeMm = inspection.settings().get(FitSettings.HOLE_SIZE, outer);
        missed = new MissedStrokes(inspection, pair, allowance);
        factory = outer.shape().getFactory();
    }

    PairResult measure(Runnable pulse) {
        Geometry outer = area(pair.outers());
        EdgeDistance toOuter = new EdgeDistance(outer);
        Corners corners = new Corners(outer, allowance, mitreLimit);
        Sides sides = new Sides(outer);
        List<Polygon> counters = counters(outer);
        List<PairResult.CounterFault> faults = new ArrayList<>();
        List<Departure> departures = new ArrayList<>();
        List<Profile> profiles = new ArrayList<>();
        List<Polygon> innerHoles = new ArrayList<>();
        for (Part inner : pair.inners()) {
            measure(inner.shape().getExteriorRing(), false, sides, corners, toOuter, profiles, pulse);
            for (int i = 0; i < inner.shape().getNumInteriorRing(); i++) {
                Polygon hole = factory.createPolygon(inner.shape().getInteriorRingN(i));
                innerHoles.add(hole);
                if (counters.stream().noneMatch(hole::intersects)) {
                    extra(hole, inner, faults);
                    continue;
                }
                Profile profile = measure(inner.shape().getInteriorRingN(i), true, sides, corners, toOuter, profiles, pulse);
                shrunk(profile, inner, faults);
            }
        }
        closed(counters, innerHoles, faults);
        double length = 0;
        double sum = 0;
        double departing = 0;
        double least = Double.POSITIVE_INFINITY;
        double greatest = Double.NEGATIVE_INFINITY;
        for (Profile profile : profiles) {
            length += profile.lengthMm();
            sum += profile.sumMm2();
            departing += profile.departingMm();
            least = Math.min(least, profile.leastMm());
            greatest = Math.max(greatest, profile.greatestMm());
            // an edge of a counter that lies outside the face is the counter's finding
            profile.departures(factory).stream().filter(departure -> !(departure.counter() && departure.extremeMm() <= 0)).forEach(departures::add);
        }
        return new PairResult(pair, allowance, least, greatest, sum / length, length, departing, departures, faults, missed.find(outer, pulse));
    }

    private Profile measure(LinearRing ring, boolean counter, Sides sides, Corners corners, EdgeDistance toOuter, List<Profile> profiles,
            Runnable pulse) {
        Profile profile = new Profile(allowance, mitreLimit, corners, sides, counter);
        toOuter.along(ring, profile::add, pulse);
        profiles.add(profile);
        return profile;
    }

    /** The parts as one area: touching and stacked ones lose the edges between them. */
    static Geometry area(List<Part> parts) {
        if (parts.size() == 1) {
            return parts.get(0).shape();
        }
        List<Geometry> shapes = new ArrayList<>();
        parts.forEach(part -> shapes.add(part.shape()));
        return Union.of(shapes);
    }

    private List<Polygon> counters(Geometry outer) {
        List<Polygon> counters = new ArrayList<>();
        for (int i = 0; i < outer.getNumGeometries(); i++) {
            Polygon polygon = (Polygon) outer.getGeometryN(i);
            for (int h = 0; h < polygon.getNumInteriorRing(); h++) {
                counters.add(factory.createPolygon(polygon.getInteriorRingN(h)));
            }
        }
        return counters;
    }

    /** Holes for wires and studs are no counters. */
    private void extra(Polygon hole, Part inner, List<PairResult.CounterFault> faults) {
        double size = Math.max(hole.getEnvelopeInternal().getWidth(), hole.getEnvelopeInternal().getHeight());
        if (size > holeSizeMm) {
            faults.add(new PairResult.CounterFault(PairResult.CounterFault.Kind.EXTRA, hole, size, inner));
        }
    }

    private void shrunk(Profile profile, Part inner, List<PairResult.CounterFault> faults) {
        List<Geometry> places = new ArrayList<>();
        for (Departure departure : profile.departures(factory)) {
            if (departure.extremeMm() <= 0) {
                places.add(departure.place());
            }
        }
        if (!places.isEmpty()) {
            faults.add(new PairResult.CounterFault(PairResult.CounterFault.Kind.SHRUNK, factory.buildGeometry(places), profile.leastMm(), inner));
        }
    }

    /** Counters of the outer part behind which an inner part goes on. */
    private void closed(List<Polygon> counters, List<Polygon> innerHoles, List<PairResult.CounterFault> faults) {
        for (Polygon counter : counters) {
            if (innerHoles.stream().anyMatch(counter::intersects)) {
                continue;
            }
            Coordinate within = counter.getInteriorPoint().getCoordinate();
            pair.inners().stream().filter(part -> new Sides(part.shape()).isInside(within)).findFirst().ifPresent(part -> faults
                    .add(new PairResult.CounterFault(PairResult.CounterFault.Kind.CLOSED, counter, 0, part)));
        }
    }
}
