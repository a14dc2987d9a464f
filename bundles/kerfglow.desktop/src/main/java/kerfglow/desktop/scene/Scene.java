// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.scene;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import org.locationtech.jts.algorithm.locate.SimplePointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.index.strtree.STRtree;

/**
 * The proof prepared for drawing: its figures in paint order, and an index that answers which of them a view meets. Made once from a
 * proof, off the window's thread; drawing never goes back to the proof. Unchanging and safe for several threads.
 */
public final class Scene {
    /** Nothing is drawn. */
    public static final Scene EMPTY = new Scene(List.of(), new Envelope(0, 1, 0, 1));

    /** Assumed: a window shows the whole proof smaller than this; finer levels are made when somebody comes nearer. */
    private static final double SEEN_PX = 1000;

    private final List<Figure> figures;
    private final Envelope page;
    private final Envelope extent;
    private final STRtree index = new STRtree();
    private final Map<String, Envelope> byElement = new HashMap<>();

    /**
     * A scene.
     *
     * @param figures in paint order, bottom first
     * @param page the proof's page, mm
     */
    public Scene(List<Figure> figures, Envelope page) {
        this.figures = List.copyOf(figures);
        this.page = new Envelope(page);
        extent = new Envelope(page);
        for (Figure figure : figures) {
            index.insert(figure.extent(), figure);
            extent.expandToInclude(figure.extent());
            byElement.computeIfAbsent(figure.element(), id -> new Envelope()).expandToInclude(figure.extent());
        }
        index.build();
    }

    /** Makes the levels of detail with which the whole is seen in a window; takes longer than painting does. */
    public void prepare() {
        double pixelsPerMm = SEEN_PX / Math.max(extent.getWidth(), extent.getHeight());
        figures.parallelStream().forEach(figure -> figure.outlines().at(pixelsPerMm));
    }

    public List<Figure> figures() {
        return figures;
    }

    /** The page, mm. */
    public Envelope page() {
        return new Envelope(page);
    }

    /** The page and everything that is drawn, mm. */
    public Envelope extent() {
        return new Envelope(extent);
    }

    /** Bounds of an element, absent when it is not drawn. */
    public Optional<Envelope> extentOf(String element) {
        return Optional.ofNullable(byElement.get(element)).map(Envelope::new);
    }

    /** The figures that a view meets, in paint order. */
    public List<Figure> meeting(Envelope seen) {
        List<Figure> met = new ArrayList<>();
        index.query(seen, found -> met.add((Figure) found));
        met.sort(Comparator.comparingInt(Figure::order));
        return met;
    }

    /** The uppermost figure at a point, its edge taken as {@code reachMm} wide so that hairlines can be hit. */
    public Optional<Figure> topAt(Coordinate point, double reachMm, Predicate<Figure> shown) {
        Envelope around = new Envelope(point);
        around.expandBy(reachMm);
        List<Figure> met = meeting(around);
        for (int i = met.size() - 1; i >= 0; i--) {
            Figure figure = met.get(i);
            if (shown.test(figure) && (SimplePointInAreaLocator.locate(point, figure.area()) != Location.EXTERIOR
                    || figure.outlines().distanceMm(point) <= reachMm)) {
                return Optional.of(figure);
            }
        }
        return Optional.empty();
    }
}
