// SPDX-License-Identifier: Apache-2.0
package kerfglow.invariants;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.function.Function;

/** Outlines that nobody draws on purpose, as path data in mm: what breaks geometry, and what is merely very much. */
final class Nasty {
    private Nasty() {
    }

    /** Outlines of a few points that are degenerate in one way each. */
    static Map<String, String> degenerate() {
        Map<String, String> all = new LinkedHashMap<>();
        all.put("bow-tie", "M100 100L500 500V100L100 500Z");
        all.put("pentagram", "M500 100L740 820L120 380H880L260 820Z");
        all.put("flat rectangle", "M100 100H600V100H100Z");
        all.put("there and back", "M100 100L600 300L100 100Z");
        all.put("single point", "M300 300Z");
        all.put("two corners", "M100 100L200 200Z");
        all.put("one corner many times", "M100 100" + "L100 100".repeat(500) + "H400V400H100Z");
        all.put("spikes along the edges", "M100 100H500V300H650H500V500H300V700V500H100V300H20H100Z");
        all.put("spike inward", "M100 100H500V500H300V200V500H100Z");
        all.put("ring drawn twice", "M100 100H500V500H100ZM100 100H500V500H100Z");
        all.put("ring and its reverse", "M100 100H500V500H100ZM100 100V500H500V100Z");
        all.put("ring drawn twice, half a turn on", "M100 100H500V500H100ZM500 500H100V100H500Z");
        all.put("twice, a hair apart", "M100 100H500V500H100ZM100.000000001 100H500.000000001V500H100.000000001Z");
        all.put("hole as large as its ring, a hair apart", "M100 100H500V500H100ZM100.000000001 100.000000001V499.999999999H499.999999999V100.000000001Z");
        all.put("corner on corner", "M100 100H300V300H100ZM300 300H500V500H300Z");
        all.put("edge on edge", "M100 100H300V300H100ZM300 100H500V300H300Z");
        all.put("hole touching its ring in a corner", "M100 100H500V500H100ZM100 100L200 300L300 200Z");
        all.put("hole touching its ring along an edge", "M100 100H500V500H100ZM100 200V300H200V200Z");
        all.put("holes touching in a chain", "M0 0H1000V500H0ZM100 250L200 150L300 250L200 350ZM300 250L400 150L500 250L400 350ZM500 250L600 150L700 250L600 350Z");
        all.put("holes in a closed chain", "M0 0H900V900H0ZM450 150L650 250L550 300ZM650 250L750 450L600 400ZM750 450L550 700L600 500ZM550 700L300 600L450 550ZM300 600L450 150L350 400Z");
        all.put("touches itself in one point", "M100 100H500L300 300L500 500H100L300 300Z");
        all.put("sliver", "M100 100L900 100.000001L900 100Z");
        all.put("needle", "M100 100L900 101L100 102Z");
        all.put("1e-9 wide", "M100 100H100.000000001V100.000000001H100Z");
        all.put("1e-9 at the origin", "M0 0H1e-9V1e-9H0Z");
        all.put("1e9 wide", "M0 0H1e9V1e9H0Z");
        all.put("1e9 away", "M1e9 1e9h300v200h-300Z");
        all.put("1e9 wide with a hole of 1 mm", "M0 0H1e9V1e9H0ZM500 500v1h1v-1Z");
        all.put("1e9 long, 1 wide", "M0 0H1e9V1H0Z");
        all.put("huge and tiny", "M0 0H1e7V1e-7H0ZM0 1e6h1e-6v1e6h-1e-6Z");
        all.put("arc of a huge circle", "M100 100A1e9 1e9 0 0 1 700 100V400H100Z");
        all.put("arc that is a point", "M100 100A50 50 0 1 1 100.0000001 100Z");
        all.put("curve with a cusp", "M100 400C900 100 0 100 700 400Z");
        all.put("curve with a loop", "M100 400C1200 50 -400 50 700 400Z");
        all.put("curve that is a line", "M100 100C300 100 200 100 600 100V105H100Z");
        all.put("open", "M100 100H500V500");
        all.put("open and crossing", "M100 100H500V500L300 0");
        all.put("whole numbers at random", closed(whole(new Random(11), 60, 12, 50)));
        all.put("numbers at random", closed(scribble(new Random(12), 40, 600)));
        return all;
    }

    /** Outlines that are much of one kind; {@code size} about the number of corners. */
    static Map<String, String> large(int size) {
        Map<String, String> all = new LinkedHashMap<>();
        all.put("nested rings", nested(Math.min(50, size)));
        all.put("comb", comb(size / 4));
        all.put("spiral", spiral(size));
        all.put("snowflake", snowflake((int) Math.round(Math.log(size / 3.0) / Math.log(4))));
        all.put("holes", holes(size / 4));
        all.put("crossings", closed(scribble(new Random(13), (int) Math.sqrt(4.0 * size), 900)));
        all.put("rough circle", rough(size));
        return all;
    }

    /** A path of points, closed. */
    static String closed(double[][] points) {
        StringBuilder data = new StringBuilder();
        for (double[] point : points) {
            data.append(data.isEmpty() ? 'M' : 'L').append(number(point[0])).append(' ').append(number(point[1]));
        }
        return data.append('Z').toString();
    }

    private static String number(double value) {
        return value == Math.rint(value) ? Long.toString((long) value) : String.format(Locale.ROOT, "%.6f", value);
    }

    private static double[][] scribble(Random random, int count, double size) {
        double[][] points = new double[count][];
        for (int i = 0; i < count; i++) {
            points[i] = new double[] {50 + size * random.nextDouble(), 50 + size * random.nextDouble()};
        }
        return points;
    }

    /** On a coarse lattice corners fall on edges, edges on edges, and several through one point. */
    private static double[][] whole(Random random, int count, int steps, double stepMm) {
        double[][] points = new double[count][];
        for (int i = 0; i < count; i++) {
            points[i] = new double[] {50 + stepMm * random.nextInt(steps), 50 + stepMm * random.nextInt(steps)};
        }
        return points;
    }

    /** Rings 8 mm thick and 8 mm apart, each within the last. */
    static String nested(int rings) {
        StringBuilder data = new StringBuilder();
        for (int i = 0; i < 2 * rings; i++) {
            double side = 16.0 * rings - 8 * i;
            data.append(String.format(Locale.ROOT, "M%1$s %1$sH%2$sV%2$sH%1$sZ", number(1000 - side), number(1000 + side)));
        }
        return data.toString();
    }

    /** Teeth 2 mm wide with gaps of 1 mm, 20 mm high, on a bar of 30 mm. */
    static String comb(int teeth) {
        StringBuilder data = new StringBuilder("M0 50");
        for (int i = 0; i < teeth; i++) {
            data.append(i == 0 ? "V0h2v20" : "h1v-20h2v20");
        }
        return data.append("V50Z").toString();
    }

    /** A strip 4 mm wide in turns 7 mm apart, so that the gap is 3 mm; its width is exact to a few micrometres. */
    static String spiral(int points) {
        int half = points / 2;
        double turns = Math.max(3, Math.sqrt(points / 40.0));
        double pitch = 7;
        double[][] line = new double[2 * half][];
        for (int i = 0; i < half; i++) {
            double share = (double) i / (half - 1);
            double angle = 2 * Math.PI * Math.sqrt(4 + share * ((2 + turns) * (2 + turns) - 4)); // steps of one length
            double radius = pitch * angle / (2 * Math.PI);
            double tangent = Math.hypot(1, radius / (pitch / (2 * Math.PI)));
            double nx = (radius / (pitch / (2 * Math.PI)) * Math.cos(angle) + Math.sin(angle)) / tangent;
            double ny = (radius / (pitch / (2 * Math.PI)) * Math.sin(angle) - Math.cos(angle)) / tangent;
            double x = 1500 + radius * Math.cos(angle);
            double y = 1500 + radius * Math.sin(angle);
            line[i] = new double[] {x + 2 * nx, y + 2 * ny};
            line[2 * half - 1 - i] = new double[] {x - 2 * nx, y - 2 * ny};
        }
        return closed(line);
    }

    /** Koch's curve about a triangle. */
    static String snowflake(int level) {
        List<double[]> points = List.of(new double[] {100, 800}, new double[] {1000, 800}, new double[] {550, 800 - 450 * Math.sqrt(3)});
        for (int i = 0; i < level; i++) {
            List<double[]> finer = new ArrayList<>();
            for (int j = 0; j < points.size(); j++) {
                double[] a = points.get(j);
                double[] b = points.get((j + 1) % points.size());
                double dx = (b[0] - a[0]) / 3;
                double dy = (b[1] - a[1]) / 3;
                finer.add(a);
                finer.add(new double[] {a[0] + dx, a[1] + dy});
                finer.add(new double[] {a[0] + 1.5 * dx - Math.sqrt(3) / 2 * dy, a[1] + 1.5 * dy + Math.sqrt(3) / 2 * dx});
                finer.add(new double[] {a[0] + 2 * dx, a[1] + 2 * dy});
            }
            points = finer;
        }
        return closed(points.toArray(new double[0][]));
    }

    /** A plate with square holes of 6 mm, 2 mm of plate between them. */
    static String holes(int count) {
        int side = (int) Math.ceil(Math.sqrt(count));
        StringBuilder data = new StringBuilder(String.format(Locale.ROOT, "M0 0H%1$dV%1$dH0Z", 8 * side + 20));
        for (int i = 0; i < count; i++) {
            data.append("M").append(11 + 8 * (i % side)).append(' ').append(11 + 8 * (i / side)).append("v6h6v-6Z");
        }
        return data.toString();
    }

    /** A plate with holes of 12 corners, 24 mm across, 20 mm of plate between them. */
    static String roundHoles(int count) {
        return perforated(count, 24, 20, new Random(16), random -> {
            double[] radii = new double[12];
            Arrays.fill(radii, 12);
            return radii;
        });
    }

    /** A plate with holes of 5 to 10 corners, each 3.6 to 6 mm from the middle, the middles 14 mm apart. */
    static String irregularHoles(int count) {
        return perforated(count, 12, 2, new Random(15), random -> random.doubles(5 + random.nextInt(6), 3.6, 6).toArray());
    }

    private static String perforated(int count, double sizeMm, double webMm, Random random, Function<Random, double[]> radii) {
        int side = (int) Math.ceil(Math.sqrt(count));
        double pitch = sizeMm + webMm;
        StringBuilder data = new StringBuilder(String.format(Locale.ROOT, "M0 0H%1$sV%1$sH0Z", number(pitch * side + 2 * webMm)));
        for (int i = 0; i < count; i++) {
            double[] each = radii.apply(random);
            double[][] ring = new double[each.length][];
            for (int j = 0; j < each.length; j++) {
                double angle = 2 * Math.PI * j / each.length;
                ring[j] = new double[] {1.5 * webMm + sizeMm / 2 + pitch * (i % side) + each[j] * Math.cos(angle), 1.5 * webMm + sizeMm / 2 + pitch * (i / side) + each[j] * Math.sin(angle)};
            }
            data.append(closed(ring));
        }
        return data.toString();
    }

    private static String rough(int points) {
        Random random = new Random(14);
        double[][] line = new double[points][];
        for (int i = 0; i < points; i++) {
            double angle = 2 * Math.PI * i / points;
            double radius = 900 + 0.03 * random.nextDouble();
            line[i] = new double[] {1000 + radius * Math.cos(angle), 1000 + radius * Math.sin(angle)};
        }
        return closed(line);
    }
}
