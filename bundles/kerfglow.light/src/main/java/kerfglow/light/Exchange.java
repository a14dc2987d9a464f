// SPDX-License-Identifier: Apache-2.0
package kerfglow.light;

import java.util.Arrays;

/**
 * How much each patch of a can sees of each other: areas times view factors. Made by following diffuse rays from every patch, so that
 * counters and bends block what they block; then made symmetric (what one sends the other, the other would send back) and scaled until
 * each patch sees its own area in all, for in a closed can no light is lost on the way. Immutable.
 */
final class Exchange {
    /** Rays start from a place for each of so many directions. */
    private static final int DIRECTIONS_PER_PLACE = 6;
    private static final int DIRECTIONS_PER_RISE = 3;
    /** Each patch sees its own area to this share. */
    private static final double CLOSED = 1e-4;
    private static final int MOST_SCALINGS = 60;
    /** The light left over when the solution ends, as a share of all. */
    private static final double SOLVED = 1e-5;
    private static final int MOST_STEPS = 1000;

    private final Patches patches;
    private final float[] seen;
    private final int size;

    Exchange(Outline outline, Patches patches, double depthMm, int directions, Runnable pulse) {
        this.patches = patches;
        size = patches.size();
        seen = new float[size * size];
        Room room = new Room(outline, patches, depthMm);
        Lattice level = Lattice.level();
        for (int p = 0; p < 2 * patches.plan; p++) {
            pulse.run();
            fromLevel(room, p, depthMm, directions, level);
        }
        Lattice upright = Lattice.upright();
        for (int p = 2 * patches.plan; p < size; p++) {
            pulse.run();
            fromWall(room, outline, p, depthMm, directions, upright);
        }
        close(pulse);
    }

    private static int places(int directions) {
        return Math.max(1, directions / DIRECTIONS_PER_PLACE);
    }

    private static int rises(int directions) {
        return Math.max(1, directions / DIRECTIONS_PER_RISE);
    }

    private void fromLevel(Room room, int p, double depthMm, int directions, Lattice level) {
        double z = p < patches.plan ? 0 : depthMm;
        double up = p < patches.plan ? 1 : -1;
        for (int q = 0; q < places(directions); q++) {
            int cell = patches.cellOf(p % patches.plan, Lattice.shift(q));
            double x = patches.grid.x(cell % patches.grid.columns());
            double y = patches.grid.y(cell / patches.grid.columns());
            for (int a = 0; a < directions; a++) {
                double angle = 2 * Math.PI * (a + Lattice.otherShift(q)) / directions;
                if (room.look(x, y, Math.cos(angle), Math.sin(angle))) {
                    for (int r = 0; r < rises(directions); r++) {
                        room.follow(z, up, level.at((r + Lattice.shift(a + q * directions)) / rises(directions)));
                        add(p, room.patch(), directions);
                    }
                }
            }
        }
    }

    private void fromWall(Room room, Outline outline, int p, double depthMm, int directions, Lattice upright) {
        int piece = (p - 2 * patches.plan) / patches.bands;
        int band = (p - 2 * patches.plan) % patches.bands;
        double[] along = new double[1];
        int places = places(directions);
        for (int q = 0; q < places; q++) {
            int edge = patches.edgeAt(piece, (q + 0.5) / places, along);
            double length = outline.length(edge);
            double tx = outline.ex[edge] / length;
            double ty = outline.ey[edge] / length;
            double z = depthMm * (band + Lattice.shift(q)) / patches.bands;
            for (int a = 0; a < directions; a++) {
                double sin = 2 * (a + Lattice.otherShift(q)) / directions - 1;
                double cos = Math.sqrt(1 - sin * sin);
                if (room.look(outline.ax[edge] + tx * along[0], outline.ay[edge] + ty * along[0], tx * sin - ty * cos, ty * sin + tx * cos)) {
                    for (int r = 0; r < rises(directions); r++) {
                        room.follow(z, upright.at((r + Lattice.shift(a + q * directions)) / rises(directions)), 1);
                        add(p, room.patch(), directions);
                    }
                }
            }
        }
    }

    /** Half of what a ray stands for, there and back: the mean of both patches' rays then stands for both. */
    private void add(int from, int to, int directions) {
        float weight = (float) (patches.areas[from] / (2.0 * places(directions) * directions * rises(directions)));
        seen[from * size + to] += weight;
        seen[to * size + from] += weight;
    }

    /** Scales rows and columns alike until each row sums up to its patch's area. */
    private void close(Runnable pulse) {
        double[] scale = new double[size];
        Arrays.fill(scale, 1);
        double[] sums = new double[size];
        double worst = 1;
        for (int step = 0; step < MOST_SCALINGS && worst > CLOSED; step++) {
            pulse.run();
            multiply(scale, sums);
            worst = 0;
            for (int i = 0; i < size; i++) {
                if (sums[i] > 0) {
                    double ratio = patches.areas[i] / (scale[i] * sums[i]);
                    worst = Math.max(worst, Math.abs(ratio - 1));
                    scale[i] *= Math.sqrt(ratio);
                }
            }
        }
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < size; j++) {
                seen[i * size + j] *= (float) (scale[i] * scale[j]);
            }
        }
    }

    /** Four sums at a time: one alone would wait for itself. */
    private void multiply(double[] vector, double[] product) {
        int fours = size / 4 * 4;
        for (int i = 0; i < size; i++) {
            double a = 0;
            double b = 0;
            double c = 0;
            double d = 0;
            int row = i * size;
            for (int j = 0; j < fours; j += 4) {
                a += seen[row + j] * vector[j];
                b += seen[row + j + 1] * vector[j + 1];
                c += seen[row + j + 2] * vector[j + 2];
                d += seen[row + j + 3] * vector[j + 3];
            }
            for (int j = fours; j < size; j++) {
                a += seen[row + j] * vector[j];
            }
            product[i] = a + b + c + d;
        }
    }

    /** The share of what patch {@code from} sends out that patch {@code to} receives. */
    double viewFactor(int from, int to) {
        return seen[from * size + to] / patches.areas[from];
    }

    /**
     * What every patch receives when light has gone to and fro until nothing is left of it.
     *
     * @param arriving what arrives from the emitters, lumen
     * @param reflectances of each patch
     * @param pulse called often
     * @return all that arrives in the end, lumen
     */
    double[] settle(double[] arriving, double[] reflectances, Runnable pulse) {
        double[] radiosity = radiosity(arriving, reflectances, pulse);
        double[] all = new double[size];
        multiply(radiosity, all);
        for (int i = 0; i < size; i++) {
            all[i] += arriving[i];
        }
        return all;
    }

    /** Solves (areas / reflectances - seen) radiosity = arriving by conjugate gradients, patches that reflect nothing left out. */
    private double[] radiosity(double[] arriving, double[] reflectances, Runnable pulse) {
        double[] solution = new double[size];
        double[] rest = new double[size];
        double[] diagonal = new double[size];
        double[] direction = new double[size];
        double[] product = new double[size];
        double norm = 0;
        for (int i = 0; i < size; i++) {
            if (reflectances[i] > 0) {
                diagonal[i] = patches.areas[i] / reflectances[i];
                rest[i] = arriving[i];
                direction[i] = rest[i] / diagonal[i];
                norm += rest[i] * direction[i];
            }
        }
        double enough = norm * SOLVED * SOLVED;
        for (int step = 0; step < MOST_STEPS && norm > enough; step++) {
            pulse.run();
            multiply(direction, product);
            double curvature = 0;
            for (int i = 0; i < size; i++) {
                product[i] = reflectances[i] > 0 ? diagonal[i] * direction[i] - product[i] : 0;
                curvature += product[i] * direction[i];
            }
            double length = norm / curvature;
            double next = 0;
            for (int i = 0; i < size; i++) {
                if (reflectances[i] > 0) {
                    solution[i] += length * direction[i];
                    rest[i] -= length * product[i];
                    next += rest[i] * rest[i] / diagonal[i];
                }
            }
            for (int i = 0; i < size; i++) {
                if (reflectances[i] > 0) {
                    direction[i] = rest[i] / diagonal[i] + next / norm * direction[i];
                }
            }
            norm = next;
        }
        return solution;
    }
}
