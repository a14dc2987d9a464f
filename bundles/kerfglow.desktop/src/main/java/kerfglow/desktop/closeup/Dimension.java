// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.closeup;

import java.util.List;
import java.util.Optional;
import kerfglow.api.Quantity;
import kerfglow.api.proof.Part;
import kerfglow.host.Result;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.operation.distance.DistanceOp;

/**
 * A measured length drawn where it was measured: from wall to wall.
 *
 * @param from one end, mm
 * @param to the other end, mm
 */
public record Dimension(Coordinate from, Coordinate to) {
    private static final GeometryFactory FACTORY = new GeometryFactory();
    /** A marker this near to an edge stands on it; above the rounding of places in results (1e-6 mm), below any width that matters. */
    private static final double ON_EDGE_MM = 0.01;
    /** A line that departs from the measure by more does not show it, and is not drawn; strokes lean and curve. */
    private static final double LIKENESS = 0.15;

    /**
     * The dimension of a finding at one of its places.
     *
     * <p>Where the marker stands between walls, it is the line through the marker from the nearest wall to the one opposite. Where it stands
     * on the edge of one part and a second part is concerned, it is the shortest line to the edge of the second. Absent when the measure is no
     * length, or when neither line is as long as the measure says.
     *
     * @param finding the finding
     * @param place the place
     * @param concerned the parts that the finding names
     */
    public static Optional<Dimension> of(Result.ReportedFinding finding, Result.Place place, List<Part> concerned) {
        Optional<Double> lengthMm = place.measured().or(finding::measured).filter(measure -> measure.quantity() == Quantity.LENGTH).map(measure -> Math.abs(measure.value()));
        if (lengthMm.isEmpty() || lengthMm.get() < ON_EDGE_MM || concerned.isEmpty()) {
            return Optional.empty();
        }
        List<LineString> walls = concerned.stream().map(part -> (Geometry) part.shape()).flatMap(shape -> near(shape, place.at(), 2 * lengthMm.get() + 1).stream()).toList();
        Geometry at = FACTORY.createPoint(place.at());
        Optional<Dimension> across = across(FACTORY.buildGeometry(List.copyOf(walls)), at, lengthMm.get());
        if (across.isPresent() || concerned.size() < 2) {
            return across;
        }
        return concerned.stream().map(part -> part.shape().getBoundary()).filter(edge -> edge.distance(at) > ON_EDGE_MM)
                .map(edge -> DistanceOp.nearestPoints(at, edge)).map(ends -> new Dimension(ends[0], ends[1])).filter(line -> line.shows(lengthMm.get())).findFirst();
    }

    private static Optional<Dimension> across(Geometry walls, Geometry at, double lengthMm) {
        if (walls.isEmpty()) {
            return Optional.empty();
        }
        Coordinate[] nearest = DistanceOp.nearestPoints(walls, at);
        double distance = nearest[0].distance(nearest[1]);
        if (distance < ON_EDGE_MM) {
            return Optional.empty();
        }
        double reach = lengthMm * (1 + LIKENESS) - distance;
        double dx = (nearest[1].x - nearest[0].x) / distance;
        double dy = (nearest[1].y - nearest[0].y) / distance;
        Coordinate start = new Coordinate(nearest[1].x + dx * ON_EDGE_MM, nearest[1].y + dy * ON_EDGE_MM);
        Coordinate end = new Coordinate(nearest[1].x + dx * Math.max(reach, ON_EDGE_MM * 2), nearest[1].y + dy * Math.max(reach, ON_EDGE_MM * 2));
        Geometry met = FACTORY.createLineString(new Coordinate[] {start, end}).intersection(walls);
        if (met.isEmpty()) {
            return Optional.empty();
        }
        Coordinate opposite = DistanceOp.nearestPoints(met, at)[0];
        return Optional.of(new Dimension(nearest[0], opposite)).filter(line -> line.shows(lengthMm));
    }

    private boolean shows(double lengthMm) {
        return Math.abs(from.distance(to) - lengthMm) <= LIKENESS * lengthMm;
    }

    /** The pieces of a shape's edge that pass near a point. */
    private static List<LineString> near(Geometry shape, Coordinate point, double reachMm) {
        Envelope around = new Envelope(point);
        around.expandBy(reachMm);
        List<LineString> pieces = new java.util.ArrayList<>();
        Geometry edge = shape.getBoundary();
        for (int i = 0; i < edge.getNumGeometries(); i++) {
            Coordinate[] ring = edge.getGeometryN(i).getCoordinates();
            for (int j = 1; j < ring.length; j++) {
                if (around.intersects(ring[j - 1], ring[j])) {
                    pieces.add(FACTORY.createLineString(new Coordinate[] {ring[j - 1], ring[j]}));
                }
            }
        }
        return pieces;
    }
}
