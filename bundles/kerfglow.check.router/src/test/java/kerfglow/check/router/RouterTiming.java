// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.router;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import kerfglow.api.Outcome;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.testkit.CheckTester;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/**
 * Not a test: how long the check takes on 2,000 serif letters, no two alike, against one plain opening of the same parts with JTS (one
 * thread, 16 segments a quadrant, input not simplified, difference by OverlayNGRobust). Run it warm: it prints each round.
 */
final class RouterTiming {
    private static final String LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789&@";
    private static final int PARTS = 2000;
    private static final int ROUNDS = 5;
    private static final double BIT_MM = 3.175;

    private RouterTiming() {
    }

    public static void main(String[] args) {
        List<Polygon> shapes = shapes();
        CheckTester tester = CheckTester.of(new RouterCheck());
        for (int i = 0; i < shapes.size(); i++) {
            tester.part(Part.builder("p" + i, Role.FACE, shapes.get(i)).sheetMaterial("acrylic").thicknessMm(6).build());
        }
        tester.stock(RouterCheck.BITS, Map.of(RouterCheck.DIAMETER, BIT_MM, RouterCheck.FLUTE_LENGTH, 12.7))
                .stock(RouterCheck.BITS, Map.of(RouterCheck.DIAMETER, 2 * BIT_MM, RouterCheck.FLUTE_LENGTH, 25.4));
        System.out.printf("%d parts, %d vertices, %d processors%n", shapes.size(),
                shapes.stream().mapToInt(Polygon::getNumPoints).sum(), Runtime.getRuntime().availableProcessors());
        for (int round = 0; round < ROUNDS; round++) {
            long start = System.nanoTime();
            double lost = shapes.stream().mapToDouble(RouterTiming::lostByOpening).sum();
            long opened = System.nanoTime();
            Outcome outcome = tester.run();
            long checked = System.nanoTime();
            System.out.printf("opening %.2f s (%.0f mm² lost), check %.2f s (%d findings), wall ratio %.2f%n", (opened - start) / 1e9, lost,
                    (checked - opened) / 1e9, outcome.findings().size(), (checked - opened) / (double) (opened - start));
        }
    }

    private static List<Polygon> shapes() {
        List<Polygon> shapes = new ArrayList<>();
        for (int i = 0; shapes.size() < PARTS; i++) {
            double scale = 1 + 0.1 * i / PARTS;
            for (Polygon piece : Letters.of(LETTERS.charAt(i % LETTERS.length()), 300)) {
                shapes.add((Polygon) AffineTransformation.scaleInstance(scale, scale).transform(piece));
            }
        }
        return shapes;
    }

    private static double lostByOpening(Polygon part) {
        BufferParameters parameters = new BufferParameters(16);
        parameters.setSimplifyFactor(0);
        Geometry opened = BufferOp.bufferOp(BufferOp.bufferOp(part, -BIT_MM / 2, parameters), BIT_MM / 2, parameters);
        return OverlayNGRobust.overlay(part, opened, OverlayNG.DIFFERENCE).getArea();
    }
}
