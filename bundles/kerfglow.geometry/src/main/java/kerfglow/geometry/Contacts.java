// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.hprtree.HPRtree;

/** Finds every {@link Contact} of a set of walls whose disc is no wider than a limit. Cost: near n log n for drawn outlines. */
final class Contacts {
    /** Discs whose two contacts stand closer (radians) lie in a corner that is straight for every purpose; see {@link Walls}. */
    private static final double LEAST_SEPARATION = 4e-4;
    /** How far (mm, radians) an end may miss by rounding. */
    private static final double SLACK = 1e-9;
    /** A corner no higher than this over a wall's line lies on the line (mm). */
    private static final double ON_LINE_MM = 1e-7;
    private static final double TURN = 2 * Math.PI;
    /** How many edges are looked at between two calls of the pulse: well under a millisecond. */
    private static final int PULSE_EVERY = 64;

    private final Walls walls;
    private final double limit;
    private final double leastCos = Math.cos(LEAST_SEPARATION);
    private final ContactList[] bySite;

    private Contacts(Walls walls, double limitMm) {
        this.walls = walls;
        this.limit = limitMm;
        this.bySite = new ContactList[2 * walls.size];
    }

    /**
     * The contacts of each wall, by {@link #edge} and {@link #corner}, in the order of their starts.
     *
     * @param pulse called often; may throw to stop
     */
    static List<List<Contact>> of(Walls walls, double limitMm, Runnable pulse) {
        Contacts contacts = new Contacts(walls, limitMm);
        HPRtree index = new HPRtree();
        for (int k = 0; k < walls.size; k++) {
            index.insert(walls.envelope(k), k);
        }
        for (int k = 0; k < walls.size; k++) {
            if (k % PULSE_EVERY == 0) {
                pulse.run();
            }
            int own = k;
            Envelope near = walls.envelope(k);
            near.expandBy(limitMm);
            index.query(near, item -> contacts.meet(own, (Integer) item));
        }
        List<List<Contact>> sorted = new ArrayList<>(contacts.bySite.length);
        for (ContactList list : contacts.bySite) {
            sorted.add(list == null ? List.of() : list.sorted());
        }
        return sorted;
    }

    static int corner(int k) {
        return 2 * k;
    }

    static int edge(int k) {
        return 2 * k + 1;
    }

    private void meet(int own, int other) {
        if (own == other) {
            return;
        }
        edgeWithEdge(own, other);
        if (walls.isReflex(other)) {
            edgeWithCorner(own, other);
            if (own < other && walls.isReflex(own)) {
                cornerWithCorner(own, other);
            }
        }
    }

    private void edgeWithEdge(int e, int g) {
        double nx = walls.normalX(e);
        double ny = walls.normalY(e);
        double gnx = walls.normalX(g);
        double gny = walls.normalY(g);
        double cos = nx * gnx + ny * gny;
        if (cos > leastCos) {
            return;
        }
        double relX = walls.x[e] - walls.x[g];
        double relY = walls.y[e] - walls.y[g];
        double height = gnx * relX + gny * relY;
        double climb = gnx * walls.dx[e] + gny * walls.dy[e];
        double reach = Math.max(height, height + climb * walls.length[e]);
        if (reach <= SLACK) {
            return; // the whole owner lies behind the other wall, or on its line
        }
        double radius = height / (1 - cos);
        double slope = climb / (1 - cos);
        double place = relX * walls.dx[g] + relY * walls.dy[g] + radius * (nx * walls.dx[g] + ny * walls.dy[g]);
        double placeSlope = walls.dx[e] * walls.dx[g] + walls.dy[e] * walls.dy[g] + slope * (nx * walls.dx[g] + ny * walls.dy[g]);
        Range range = new Range(0, walls.length[e]);
        range.keep(radius, slope, 0, limit / 2);
        range.keep(place, placeSlope, 0, walls.length[g]);
        if (range.isEmpty()) {
            return;
        }
        add(edge(e), Contact.edgeToEdge(range.from, Math.max(range.from, range.to), edge(g), radius, slope, place, placeSlope,
                Math.acos(Math.max(-1, cos))));
    }

    private void edgeWithCorner(int e, int v) {
        double relX = walls.x[v] - walls.x[e];
        double relY = walls.y[v] - walls.y[e];
        double nx = walls.normalX(e);
        double ny = walls.normalY(e);
        double height = relX * nx + relY * ny;
        if (height <= ON_LINE_MM || height >= limit) {
            return;
        }
        double foot = relX * walls.dx[e] + relY * walls.dy[e];
        double spread = Math.sqrt(height * (limit - height));
        if (foot + spread < 0 || foot - spread > walls.length[e]) {
            return;
        }
        double widest = Math.min(Math.PI - LEAST_SEPARATION, Math.acos(2 * height / limit - 1));
        int before = walls.previous[v];
        double startX = walls.normalX(before);
        double startY = walls.normalY(before);
        // 0 when the corner looks straight down on the wall
        double fan = Math.atan2(startX * walls.dx[e] + startY * walls.dy[e], -(startX * nx + startY * ny));
        for (int k = 0; k < 2; k++, fan += TURN) {
            double low = Math.max(Math.max(fan + walls.turn[v], -widest), 2 * Math.atan(-foot / height));
            double high = Math.min(Math.min(fan, widest), 2 * Math.atan((walls.length[e] - foot) / height));
            if (low > high + SLACK) {
                continue;
            }
            high = Math.max(low, high);
            add(edge(e), Contact.edgeToCorner(foot + height * Math.tan(low / 2), foot + height * Math.tan(high / 2), corner(v), foot,
                    height, fan));
            add(corner(v), Contact.cornerToEdge(fan - high, fan - low, edge(e), foot, height, fan));
        }
    }

    private void cornerWithCorner(int v, int w) {
        double toX = walls.x[w] - walls.x[v];
        double toY = walls.y[w] - walls.y[v];
        double distance = Math.sqrt(toX * toX + toY * toY);
        if (distance >= limit || distance <= ON_LINE_MM || !canFace(v, toX, toY) || !canFace(w, -toX, -toY)) {
            return;
        }
        double direction = Math.atan2(toY, toX);
        double widest = Math.min((Math.PI - LEAST_SEPARATION) / 2, Math.acos(distance / limit));
        double own = normalised(walls.fanStart[v] - direction);
        for (int i = 0; i < 2; i++, own += TURN) {
            double other = normalised(walls.fanStart[w] - direction - Math.PI);
            for (int j = 0; j < 2; j++, other += TURN) {
                double low = Math.max(Math.max(own + walls.turn[v], -other), -widest);
                double high = Math.min(Math.min(own, -walls.turn[w] - other), widest);
                if (low > high + SLACK) {
                    continue;
                }
                high = Math.max(low, high);
                add(corner(v), Contact.cornerToCorner(own - high, own - low, corner(w), distance, own, other));
                add(corner(w), Contact.cornerToCorner(other + low, other + high, corner(v), distance, other, own));
            }
        }
    }

    /** A cheap no for the many corners of a curve that bulges towards the measured side: none of them sees its neighbours. */
    private boolean canFace(int v, double toX, double toY) {
        if (walls.turn[v] < -Math.PI / 2) {
            return true;
        }
        int before = walls.previous[v];
        return walls.normalX(v) * toX + walls.normalY(v) * toY > 0
                || walls.normalX(before) * toX + walls.normalY(before) * toY > 0;
    }

    private static double normalised(double angle) {
        return Math.IEEEremainder(angle, TURN);
    }

    private void add(int site, Contact contact) {
        if (bySite[site] == null) {
            bySite[site] = new ContactList();
        }
        bySite[site].add(contact);
    }

    /** A stretch that is cut down by conditions. */
    private static final class Range {
        /** Below this slope a condition holds everywhere or nowhere. */
        private static final double LEVEL = 1e-12;
        private double from;
        private double to;

        Range(double from, double to) {
            this.from = from;
            this.to = to;
        }

        /** Keeps where {@code least <= start + slope * t <= most}. */
        void keep(double start, double slope, double least, double most) {
            if (Math.abs(slope) < LEVEL) {
                if (start < least - SLACK || start > most + SLACK) {
                    to = Double.NEGATIVE_INFINITY;
                }
                return;
            }
            double one = (least - start) / slope;
            double two = (most - start) / slope;
            from = Math.max(from, Math.min(one, two));
            to = Math.min(to, Math.max(one, two));
        }

        boolean isEmpty() {
            return from > to + SLACK;
        }
    }
}
