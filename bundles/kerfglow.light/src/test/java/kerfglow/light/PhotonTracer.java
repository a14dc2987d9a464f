// SPDX-License-Identifier: Apache-2.0
package kerfglow.light;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.LineString;

/**
 * An independent answer by chance: photons leave emitters, are absorbed or reflected by back, walls and face, and are counted where they
 * arrive on the face. Walls are tried one by one; nothing is shared with the program but the description of the can.
 */
final class PhotonTracer {
    private static final int MOST_BOUNCES = 400;
    private static final double OFF_THE_WALL_MM = 1e-6;

    private final Can can;
    private final List<double[]> walls = new ArrayList<>();
    private final Random random;
    private final Grid grid;

    /** Arrivals on the face in each cell, and the squares of what each photon gave to a cell, for the variance. */
    final double[] arrivals;
    final double[] squares;

    private double px;
    private double py;
    private double pz;
    private double dx;
    private double dy;
    private double dz;

    PhotonTracer(Can can, Grid grid, long seed) {
        this.can = can;
        this.grid = grid;
        random = new Random(seed);
        arrivals = new double[grid.size()];
        squares = new double[grid.size()];
        addWalls(can.inside().getExteriorRing());
        for (int i = 0; i < can.inside().getNumInteriorRing(); i++) {
            addWalls(can.inside().getInteriorRingN(i));
        }
    }

    private void addWalls(LineString ring) {
        for (int i = 0; i + 1 < ring.getNumPoints(); i++) {
            Coordinate a = ring.getCoordinateN(i);
            Coordinate b = ring.getCoordinateN(i + 1);
            walls.add(new double[] {a.x, a.y, b.x - a.x, b.y - a.y});
        }
    }

    /** Sends photons out of one emitter with intensity cos^m. */
    void send(Coordinate emitter, double height, double exponent, int photons) {
        double[] own = new double[grid.size()];
        int[] touched = new int[MOST_BOUNCES];
        for (int i = 0; i < photons; i++) {
            px = emitter.x;
            py = emitter.y;
            pz = height;
            aim(0, 0, 1, Math.pow(1 - random.nextDouble(), 1 / (exponent + 1)));
            int n = 0;
            for (int bounce = 0; bounce < MOST_BOUNCES; bounce++) {
                double[] wall = fly();
                boolean face = wall.length == 0 && dz > 0;
                if (face) {
                    int cell = grid.cell(px, py);
                    own[cell]++;
                    touched[n++] = cell;
                }
                Finish finish = can.finish();
                double reflectance = wall.length > 0 ? finish.wallReflectance() : face ? finish.faceReflectance() : finish.backReflectance();
                if (random.nextDouble() >= reflectance) {
                    break;
                }
                double cos = Math.sqrt(random.nextDouble());
                if (wall.length == 0) {
                    aim(0, 0, face ? -1 : 1, cos);
                } else {
                    double length = Math.hypot(wall[2], wall[3]);
                    double side = -wall[3] * dx + wall[2] * dy > 0 ? -1 : 1; // back to where it came from
                    aim(-wall[3] / length * side, wall[2] / length * side, 0, cos);
                }
            }
            for (int k = 0; k < n; k++) {
                arrivals[touched[k]] += own[touched[k]];
                squares[touched[k]] += own[touched[k]] * own[touched[k]];
                own[touched[k]] = 0;
            }
        }
    }

    /** A direction at an angle of this cosine to an axis, turned about it by chance. */
    private void aim(double nx, double ny, double nz, double cos) {
        double sin = Math.sqrt(1 - cos * cos);
        double angle = 2 * Math.PI * random.nextDouble();
        double ux = Math.abs(nz) > 0.5 ? 1 : 0; // across: x for level surfaces, z for upright ones
        double uz = 1 - ux;
        double vx = ny * uz;
        double vy = nz * ux - nx * uz;
        double vz = -ny * ux;
        double c = sin * Math.cos(angle);
        double s = sin * Math.sin(angle);
        dx = nx * cos + ux * c + vx * s;
        dy = ny * cos + vy * s;
        dz = nz * cos + uz * c + vz * s;
    }

    /** To the next surface; the wall, or nothing for back and face. */
    private double[] fly() {
        double t = dz > 0 ? (can.depthMm() - pz) / dz : dz < 0 ? -pz / dz : Double.POSITIVE_INFINITY;
        double[] met = {};
        for (double[] wall : walls) {
            double cross = dx * wall[3] - dy * wall[2];
            double ax = wall[0] - px;
            double ay = wall[1] - py;
            double distance = (ax * wall[3] - ay * wall[2]) / cross;
            double along = (ax * dy - ay * dx) / cross;
            if (distance > OFF_THE_WALL_MM && distance < t && along >= 0 && along <= 1) {
                t = distance;
                met = wall;
            }
        }
        px += t * dx;
        py += t * dy;
        pz += t * dz;
        return met;
    }
}
