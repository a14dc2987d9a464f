// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.Deque;
import java.util.EnumSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.Paint;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Proof;
import kerfglow.api.proof.Role;
import kerfglow.api.proof.Visibility;
import kerfglow.geometry.Clusters;
import kerfglow.geometry.Union;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.PolygonExtracter;
import org.locationtech.jts.index.strtree.STRtree;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/**
 * Turns drawn elements into parts: shapes that share role, layer and paint are united, and each connected piece is a part. Then
 * knock-out colours, openings and holes take out what they take out.
 */
final class PartMaker {
    private record Key(Role role, boolean assigned, String layer, Paint paint) {
    }

    /** A painted area and the element that paints it. */
    private record Piece(Polygon area, Element element, Part.Source source) {
    }

    /** A united area before it has an id. */
    private record Draft(Key key, Polygon shape, List<Piece> pieces, Geometry drilled) {
        int order() {
            return pieces.stream().mapToInt(piece -> piece.element.order()).min().orElseThrow();
        }
    }

    /** Overlays leave crumbs where outlines nearly coincide; nothing this small was drawn (a square of 1 µm). */
    private static final double CRUMB_MM2 = 1e-6;
    private static final Comparator<Piece> BY_ORDER = Comparator.comparingInt(piece -> piece.element.order());

    private final JobSheet job;
    private final Runnable pulse;

    /**
     * A maker of parts.
     *
     * @param job the job sheet
     * @param pulse called for every element and cluster; may throw to stop
     */
    PartMaker(JobSheet job, Runnable pulse) {
        this.job = job;
        this.pulse = pulse;
    }

    /** The parts in paint order, then top to bottom; ids follow that order. */
    List<Part> make(Proof proof) {
        Map<Key, List<Piece>> byKey = new LinkedHashMap<>();
        List<Piece> knockOuts = new ArrayList<>();
        for (Element element : proof.elements()) {
            pulse.run();
            if (element.visibility() == Visibility.SHOWN && element.origin() != Element.Origin.IMAGE) {
                Part.Source source = element.origin() == Element.Origin.TEXT ? Part.Source.TEXT : Part.Source.SHAPE;
                collect(element, element.fill(), element.fillArea(), source, byKey, knockOuts);
                collect(element, element.stroke(), element.strokeArea(), Part.Source.STROKE, byKey, knockOuts);
            }
        }
        List<Draft> drafts = new ArrayList<>();
        byKey.forEach((key, pieces) -> {
            List<Piece> takers = key.role.isChecked() ? knockOuts.stream().filter(piece -> piece.element.layer().equals(key.layer)).toList() : List.of();
            unite(key, pieces, takers, drafts);
        });
        List<Polygon> openings = drafts.stream().filter(draft -> draft.key.role == Role.OPENING).map(Draft::shape).toList();
        return number(drill(openings.isEmpty() ? drafts : open(drafts, openings)));
    }

    private void collect(Element element, Paint paint, Geometry area, Part.Source source, Map<Key, List<Piece>> byKey, List<Piece> knockOuts) {
        if (area.isEmpty()) {
            return;
        }
        Optional<Role> role = Selectors.role(job, element, paint);
        boolean knocksOut = source == Part.Source.SHAPE && paint.kind() == Paint.Kind.COLOUR && job.knockOut().contains(paint.rgb()) && role.map(Role::isChecked).orElse(true);
        Key key = new Key(role.orElse(Role.FACE), role.isPresent(), element.layer(), paint);
        for (Object polygon : PolygonExtracter.getPolygons(area)) {
            Piece piece = new Piece((Polygon) polygon, element, source);
            if (knocksOut) {
                knockOuts.add(piece);
            } else {
                byKey.computeIfAbsent(key, each -> new ArrayList<>()).add(piece);
            }
        }
    }

    /** Unites pieces whose boxes meet; a piece that meets no other is taken as it is. Knock-outs take out what is painted before them. */
    private void unite(Key key, List<Piece> pieces, List<Piece> knockOuts, List<Draft> drafts) {
        STRtree index = new STRtree();
        knockOuts.forEach(piece -> index.insert(piece.area.getEnvelopeInternal(), piece));
        for (List<Piece> cluster : Clusters.of(pieces, piece -> piece.area.getEnvelopeInternal())) {
            pulse.run();
            List<Piece> takers = knockOuts.isEmpty() ? List.of() : above(cluster, index);
            if (cluster.size() == 1 && takers.isEmpty()) {
                drafts.add(new Draft(key, cluster.get(0).area, cluster, nothing(cluster.get(0).area)));
                continue;
            }
            for (Object each : PolygonExtracter.getPolygons(painted(cluster, takers))) {
                Polygon shape = (Polygon) each;
                if (!takers.isEmpty() && shape.getArea() <= CRUMB_MM2) {
                    continue;
                }
                IndexedPointInAreaLocator locator = new IndexedPointInAreaLocator(shape); // JTS's own predicates take minutes on a lattice of strokes
                List<Piece> within = cluster.stream().filter(piece -> shape.getEnvelopeInternal().intersects(piece.area.getEnvelopeInternal())
                        && shows(piece, takers, locator)).toList();
                if (!within.isEmpty()) {
                    drafts.add(new Draft(key, shape, within, nothing(shape)));
                }
            }
        }
    }

    /** True when something that is seen of the piece lies in the shape. */
    private static boolean shows(Piece piece, List<Piece> takers, IndexedPointInAreaLocator shape) {
        List<Geometry> over = takers.stream().filter(taker -> taker.element.order() > piece.element.order()
                && taker.area.getEnvelopeInternal().intersects(piece.area.getEnvelopeInternal())).map(taker -> (Geometry) taker.area).toList();
        Geometry seen = over.isEmpty() ? piece.area : OverlayNGRobust.overlay(piece.area, Union.of(over), OverlayNG.DIFFERENCE);
        for (int i = 0; i < seen.getNumGeometries(); i++) {
            if (!seen.isEmpty() && shape.locate(seen.getGeometryN(i).getInteriorPoint().getCoordinate()) != Location.EXTERIOR) {
                return true;
            }
        }
        return false;
    }

    /** Knock-outs that meet a piece that is painted before them. */
    private static List<Piece> above(List<Piece> cluster, STRtree knockOuts) {
        Set<Piece> found = Collections.newSetFromMap(new IdentityHashMap<>());
        for (Piece piece : cluster) {
            for (Object each : knockOuts.query(piece.area.getEnvelopeInternal())) {
                if (((Piece) each).element.order() > piece.element.order()) {
                    found.add((Piece) each);
                }
            }
        }
        return List.copyOf(found);
    }

    /** What is left to see of the cluster when both lists are painted in their order: a piece above a knock-out stays whole. */
    private static Geometry painted(List<Piece> cluster, List<Piece> takers) {
        Deque<Piece> ahead = new ArrayDeque<>(cluster.stream().sorted(BY_ORDER).toList());
        Deque<Piece> taking = new ArrayDeque<>(takers.stream().sorted(BY_ORDER).toList());
        Geometry shape = nothing(cluster.get(0).area);
        while (!ahead.isEmpty()) {
            List<Geometry> added = new ArrayList<>(List.of(shape));
            while (!ahead.isEmpty() && (taking.isEmpty() || ahead.peek().element.order() < taking.peek().element.order())) {
                added.add(ahead.poll().area);
            }
            shape = Union.of(added);
            List<Geometry> taken = new ArrayList<>();
            while (!taking.isEmpty() && (ahead.isEmpty() || taking.peek().element.order() <= ahead.peek().element.order())) {
                taken.add(taking.poll().area);
            }
            shape = taken.isEmpty() ? shape : OverlayNGRobust.overlay(shape, Union.of(taken), OverlayNG.DIFFERENCE);
        }
        return shape;
    }

    private static Geometry nothing(Geometry like) {
        return like.getFactory().createPolygon();
    }

    /** Takes the openings out of the panels, whatever lies on top. */
    private static List<Draft> open(List<Draft> drafts, List<Polygon> openings) {
        STRtree index = new STRtree();
        openings.forEach(opening -> index.insert(opening.getEnvelopeInternal(), opening));
        List<Draft> rest = new ArrayList<>();
        for (Draft draft : drafts) {
            List<Geometry> taken = new ArrayList<>();
            if (draft.key.role == Role.PANEL) {
                index.query(draft.shape.getEnvelopeInternal()).forEach(opening -> taken.add((Polygon) opening));
            }
            if (taken.isEmpty()) {
                rest.add(draft);
                continue;
            }
            Geometry left = OverlayNGRobust.overlay(draft.shape, Union.of(taken), OverlayNG.DIFFERENCE);
            for (Object polygon : PolygonExtracter.getPolygons(left)) {
                if (((Polygon) polygon).getArea() > CRUMB_MM2) {
                    rest.add(new Draft(draft.key, (Polygon) polygon, draft.pieces, draft.drilled));
                }
            }
        }
        return rest;
    }

    /** Each hole is drilled into the uppermost routed part below it; drawn below everything, into the lowest one above it. */
    private static List<Draft> drill(List<Draft> drafts) {
        List<Draft> holes = drafts.stream().filter(draft -> draft.key.role == Role.HOLE).toList();
        if (holes.isEmpty()) {
            return drafts;
        }
        List<Draft> routed = drafts.stream().filter(draft -> draft.key.role.isRouted() && draft.key.role != Role.OPENING).toList();
        Map<Draft, List<Geometry>> drilled = new IdentityHashMap<>();
        for (Draft hole : holes) {
            List<Draft> under = routed.stream().filter(draft -> draft.shape.getEnvelopeInternal().intersects(hole.shape.getEnvelopeInternal())
                    && draft.shape.intersects(hole.shape)).toList();
            Optional<Draft> target = under.stream().filter(draft -> draft.order() < hole.order()).max(Comparator.comparingInt(Draft::order));
            target = target.isPresent() ? target : under.stream().min(Comparator.comparingInt(Draft::order));
            target.ifPresent(draft -> drilled.computeIfAbsent(draft, each -> new ArrayList<>()).add(hole.shape));
        }
        return drafts.stream().map(draft -> drilled.containsKey(draft)
                ? new Draft(draft.key, draft.shape, draft.pieces, Union.of(drilled.get(draft))) : draft).toList();
    }

    private List<Part> number(List<Draft> drafts) {
        List<Draft> sorted = drafts.stream().sorted(Comparator.comparingInt(Draft::order)
                .thenComparingDouble(draft -> draft.shape.getEnvelopeInternal().getMinY())
                .thenComparingDouble(draft -> draft.shape.getEnvelopeInternal().getMinX())).toList();
        List<Part> parts = new ArrayList<>();
        for (Draft draft : sorted) {
            Set<Part.Source> sources = EnumSet.noneOf(Part.Source.class);
            draft.pieces.forEach(piece -> sources.add(piece.source));
            Part bare = Part.builder("p" + (parts.size() + 1), draft.key.role, draft.shape).assigned(draft.key.assigned).layer(draft.key.layer)
                    .paint(draft.key.paint).order(draft.order()).drilled(draft.drilled)
                    .elements(draft.pieces.stream().map(piece -> piece.element.id()).distinct().toList()).sources(sources).build();
            parts.add(withMaterial(bare));
        }
        return parts;
    }

    static boolean fits(JobSheet.MaterialRule rule, Part part) {
        return rule.scope().fits(part) && rule.fillRgb().map(rgb -> part.paint().equals(Paint.colour(rgb))).orElse(true);
    }

    private Part withMaterial(Part bare) {
        for (JobSheet.MaterialRule rule : job.materials()) {
            if (fits(rule, bare)) {
                Part.Builder builder = Part.builder(bare.id(), bare.role(), bare.shape()).assigned(bare.isAssigned()).layer(bare.layer()).paint(bare.paint())
                        .order(bare.order()).drilled(bare.drilled()).elements(bare.elements()).sources(bare.sources()).sheetMaterial(rule.material());
                rule.thicknessMm().ifPresent(builder::thicknessMm);
                return builder.build();
            }
        }
        return bare;
    }
}
