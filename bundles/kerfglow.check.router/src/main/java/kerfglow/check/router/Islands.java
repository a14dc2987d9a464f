// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.router;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import kerfglow.api.Finding;
import kerfglow.api.Inspection;
import kerfglow.api.Measure;
import kerfglow.api.Quantity;
import kerfglow.api.Units;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import org.locationtech.jts.algorithm.PointLocation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;

/**
 * Counters that fall out of a routed panel: what an opening goes all the way round, and pieces of a panel that lie in a hole of
 * another piece. What is itself routed away is no island.
 */
final class Islands {
    private final List<Part> openings;
    private final List<Part> panels;

    Islands(List<Part> parts) {
        openings = parts.stream().filter(part -> part.role() == Role.OPENING).toList();
        panels = parts.stream().filter(part -> part.role() == Role.PANEL).toList();
    }

    /**
     * What falls out.
     *
     * @param findings one for each counter
     * @param pieces ids of the panel parts that fall out, of which nothing else needs to be said about how they are held
     */
    record Loose(List<Finding> findings, Set<String> pieces) {
    }

    Loose find(Inspection inspection) {
        List<Finding> findings = new ArrayList<>();
        Set<String> loose = new HashSet<>();
        List<Geometry> reported = new ArrayList<>();
        for (Part opening : openings) {
            for (Polygon island : holes(opening)) {
                inspection.checkpoint(1); // every counter asks every piece
                if (!isRoutedAway(island, opening)) {
                    List<Part> pieces = pieces(island);
                    reported.add(island);
                    pieces.forEach(piece -> loose.add(piece.id()));
                    findings.add(finding(inspection, island, opening, pieces));
                }
            }
        }
        for (Part piece : panels) {
            inspection.checkpoint(1);
            Point inside = piece.shape().getInteriorPoint();
            if (reported.stream().noneMatch(island -> island.covers(inside))) {
                panels.stream().filter(other -> other != piece && isInHole(inside, other)).findFirst()
                        .ifPresent(around -> {
                            loose.add(piece.id());
                            findings.add(finding(inspection, piece.shape(), around, List.of(piece)));
                        });
            }
        }
        return new Loose(findings, loose);
    }

    private static Finding finding(Inspection inspection, Polygon island, Part around, List<Part> pieces) {
        List<String> ids = new ArrayList<>(List.of(around.id()));
        pieces.forEach(piece -> ids.add(piece.id()));
        double area = island.getArea();
        return Finding.of(RouterRules.LOOSE_ISLAND, "Nothing holds the counter of "
                + Units.format(area, Quantity.AREA, inspection.units()) + " inside " + RouterFindings.name(around)
                + " once it is cut through.")
                .place(island).measured(new Measure(area, Quantity.AREA)).parts(ids).build();
    }

    private static List<Polygon> holes(Part part) {
        List<Polygon> holes = new ArrayList<>();
        for (int i = 0; i < part.shape().getNumInteriorRing(); i++) {
            holes.add(part.shape().getFactory().createPolygon(part.shape().getInteriorRingN(i)));
        }
        return holes;
    }

    private boolean isRoutedAway(Polygon island, Part by) {
        return openings.stream().anyMatch(opening -> opening != by && opening.shape().covers(island));
    }

    private List<Part> pieces(Polygon island) {
        return panels.stream().filter(piece -> piece.shape().getEnvelopeInternal().intersects(island.getEnvelopeInternal())
                && island.covers(piece.shape().getInteriorPoint())).toList();
    }

    private static boolean isInHole(Point point, Part panel) {
        Coordinate at = point.getCoordinate();
        for (int i = 0; i < panel.shape().getNumInteriorRing(); i++) {
            LinearRing hole = panel.shape().getInteriorRingN(i);
            if (hole.getEnvelopeInternal().contains(at) && PointLocation.isInRing(at, hole.getCoordinates())) {
                return true;
            }
        }
        return false;
    }
}
