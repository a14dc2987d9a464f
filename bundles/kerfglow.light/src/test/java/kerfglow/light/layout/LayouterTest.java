// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.stream.IntStream;
import kerfglow.light.Accuracy;
import kerfglow.light.Can;
import kerfglow.light.Cavity;
import kerfglow.light.Finish;
import kerfglow.light.LightMap;
import kerfglow.light.LightModule;
import kerfglow.light.LightModuleType;
import kerfglow.light.Spots;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;

class LayouterTest {
    private static final String SANS = "DejaVuSans";
    private static final String SERIF = "DejaVuSerif-Bold";
    private static final double DEPTH_MM = 60;
    private static final Finish WHITE = new Finish(0.8, 0.8, 0.35, 0.5, 0);
    private static final LightModuleType POINT = new LightModuleType("", 50, 120, 0, 0, 0, 1, 0);
    private static final LightModuleType PLATE = new LightModuleType("plate", 60, 120, 30, 10, 5, 2, 15);
    /** Rounding of coordinates, mm. */
    private static final double ROUNDING_MM = 1e-3;

    private static Layout layout(LayoutRequest request) {
        return Layouter.layout(request, () -> { });
    }

    private static LayoutRequest request(Polygon shape, Finish finish, double uniformity) {
        return LayoutRequest.of(new Can(shape, DEPTH_MM, finish), PLATE, uniformity).distances(3, 4, 2);
    }

    private static LightMap map(LayoutRequest request, List<LightModule> modules) {
        return Cavity.of(request.can(), Accuracy.usual(), () -> { }).light(modules, () -> { });
    }

    /**
     * What an endless row asks for on a bar: the widest pitch at which the darkest place, at the wall half way between two modules, keeps its
     * share of the mean over the bar's width. Point sources: E ~ (h² + x² + y²)^-2.
     */
    private static double pitchOfEndlessRow(double uniformity, double halfWidth) {
        double low = 10;
        double high = 500;
        for (int i = 0; i < 40; i++) {
            double pitch = (low + high) / 2;
            double least = sum(pitch / 2, halfWidth, pitch);
            double mean = 0;
            for (int k = 0; k < 50; k++) {
                double y = (k + 0.5) / 50 * halfWidth;
                mean += Math.PI / 2 / Math.pow(DEPTH_MM * DEPTH_MM + y * y, 1.5) / pitch / 50; // integral along the row
            }
            low = least >= uniformity * mean ? pitch : low;
            high = least >= uniformity * mean ? high : pitch;
        }
        return low;
    }

    private static double sum(double x, double y, double pitch) {
        double sum = 0;
        for (int k = -200; k <= 200; k++) {
            double along = x - k * pitch;
            sum += Math.pow(DEPTH_MM * DEPTH_MM + along * along + y * y, -2);
        }
        return sum;
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.5, 0.65, 0.8})
    void a_long_bar_gets_the_pitch_of_the_endless_row(double uniformity) {
        double width = 14;
        Layout layout = layout(LayoutRequest.of(new Can(Letters.bar(1500, width), DEPTH_MM, Finish.black()), POINT, uniformity));
        double asked = pitchOfEndlessRow(uniformity, width / 2);
        double[] along = layout.modules().stream().mapToDouble(LightModule::xMm).filter(x -> x > 200 && x < 1300).sorted().toArray();
        double inner = (along[along.length - 1] - along[0]) / (along.length - 1);
        assertTrue(inner >= asked / 1.1, () -> "every " + inner + " mm, and " + asked + " mm would do");
        assertTrue(inner <= asked * 1.05, () -> "every " + inner + " mm, wider than " + asked + " mm");
        layout.modules().forEach(module -> assertEquals(width / 2, module.yMm(), 0.5));
    }

    /** One module lights both ends of a bar that is as long as it is deep, if any does; nothing lights 95 % of the mean up to black walls. */
    @Test
    void where_free_ends_keep_the_target_out_of_reach_it_is_the_best_that_was_found_and_says_so() {
        LayoutRequest request = LayoutRequest.of(new Can(Letters.bar(400, 60), DEPTH_MM, Finish.black()), PLATE, 0.95).distances(3, 0, 2);
        Layout layout = layout(request);
        assertFalse(layout.reached());
        assertTrue(layout.limits().contains(Layout.Limit.FREE_ENDS), layout.limits()::toString);
        assertFalse(layout.dark().isEmpty());
        assertEquals(layout.uniformity(), map(request, layout.modules()).luminanceLevels().uniformity(), 0.01);
        Layout even = layout(LayoutRequest.of(request.can(), PLATE, 0.7).distances(3, 0, 2));
        assertTrue(layout.uniformity() > even.uniformity() - 0.02, () -> layout.uniformity() + " after " + even.uniformity());
    }

    @ParameterizedTest
    @CsvSource({"DejaVuSans, R", "DejaVuSans, 8", "DejaVuSerif-Bold, A", "DejaVuSerif-Italic, f", "DejaVuSans, S"})
    void in_letters_with_counters_serifs_and_tapers_plates_keep_their_distances(String font, String letter) {
        LayoutRequest plain = request(Letters.letter(font, letter, 400), WHITE, 0.6);
        Coordinate at = layout(plain).modules().stream().map(each -> new Coordinate(each.xMm(), each.yMm())).findFirst().orElseThrow();
        Geometry hole = plain.can().inside().getFactory().createPoint(at).buffer(4);
        LayoutRequest request = plain.keepClear(hole);
        Layout layout = layout(request);
        assertTrue(layout.modules().size() >= 4, layout::toString);
        List<Polygon> plates = layout.modules().stream().map(each -> each.outline(plain.can().inside().getFactory())).toList();
        for (int i = 0; i < plates.size(); i++) {
            Polygon plate = plates.get(i);
            assertTrue(plain.can().inside().covers(plate), plate::toText);
            // the outline is smoothed by 0.2 mm before it is laid out
            assertTrue(plate.distance(plain.can().inside().getBoundary()) >= 3 - 0.2 - ROUNDING_MM, plate::toText);
            assertTrue(plate.distance(hole) >= 4 - 0.05, plate::toText); // a buffer's arcs are chords
            for (int j = 0; j < i; j++) {
                assertTrue(plate.distance(plates.get(j)) >= 2 - ROUNDING_MM, plate::toText);
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"DejaVuSans, R", "DejaVuSerif-Bold, A", "DejaVuSerif-Italic, f", "DejaVuSans, S", "DejaVuSans, 8"})
    void the_map_that_is_shown_agrees(String font, String letter) {
        LayoutRequest request = request(Letters.letter(font, letter, 400), WHITE, 0.6);
        Layout layout = layout(request);
        double shown = map(request, layout.modules()).luminanceLevels().uniformity();
        assertEquals(shown, layout.uniformity(), 1e-9);
        assertEquals(shown >= 0.6, layout.reached(), layout::toString);
        assertTrue(shown > 0.56, layout::toString);
    }

    /**
     * Known shortfall: 0.6 is not reached, though light that could be dimmed module by module would reach 0.78 (a zero-sum game of cells
     * against sites, solved to within 0.02).
     */
    @Test
    void an_s_with_a_hole_where_a_module_would_lie_is_nearly_as_even() {
        LayoutRequest plain = request(Letters.letter(SANS, "S", 400), WHITE, 0.6);
        LightModule first = layout(plain).modules().get(0);
        LayoutRequest request = plain.keepClear(plain.can().inside().getFactory().createPoint(new Coordinate(first.xMm(), first.yMm())).buffer(4));
        assertTrue(map(request, layout(request).modules()).luminanceLevels().uniformity() > 0.56);
    }

    @Test
    void plates_are_turned_along_their_stroke() {
        AffineTransformation turn = AffineTransformation.rotationInstance(Math.toRadians(25));
        Polygon bar = (Polygon) turn.transform(Letters.bar(500, 40));
        Layout layout = layout(request(bar, WHITE, 0.6));
        assertTrue(layout.modules().size() >= 3);
        layout.modules().forEach(module -> assertEquals(25, module.turnDegrees(), 0.5));
    }

    @Test
    void the_same_request_gives_the_same_layout() {
        LayoutRequest request = request(Letters.letter(SERIF, "R", 300), WHITE, 0.6).contrast(0.05, 0);
        assertEquals(layout(request).modules(), layout(request).modules());
    }

    @ParameterizedTest
    @CsvSource({"R, 37, 500, -200", "S, -120, 0, 0", "e, 90, 10, 10", "T, 180, -40, 7"})
    void a_turned_and_moved_letter_has_its_layout_turned_and_moved(String letter, double degrees, double dx, double dy) {
        Polygon shape = Letters.letter(SANS, letter, 300);
        AffineTransformation move = AffineTransformation.rotationInstance(Math.toRadians(degrees)).translate(dx, dy);
        List<LightModule> before = layout(request(shape, WHITE, 0.6)).modules();
        List<LightModule> after = layout(request((Polygon) move.transform(shape), WHITE, 0.6)).modules();
        assertTrue(before.size() >= 3);
        assertEquals(before.size(), after.size());
        for (int i = 0; i < before.size(); i++) {
            Coordinate moved = move.transform(new Coordinate(before.get(i).xMm(), before.get(i).yMm()), new Coordinate());
            assertEquals(0, moved.distance(new Coordinate(after.get(i).xMm(), after.get(i).yMm())), 0.01);
            assertEquals(0, Math.IEEEremainder(before.get(i).turnDegrees() + degrees - after.get(i).turnDegrees(), 180), 0.01);
        }
    }

    @Test
    void the_cable_reaches_every_module() {
        LayoutRequest free = request(Letters.letter(SANS, "E", 500), WHITE, 0.4);
        LayoutRequest tied = free.cablePitch(70);
        assertTrue(longestStep(layout(free).modules()) > 70, "the sample must need the limit");
        Layout layout = layout(tied);
        assertTrue(layout.reached(), layout::toString);
        assertTrue(longestStep(layout.modules()) <= 70 + ROUNDING_MM);
    }

    /** The longest step of the shortest tree through all modules. */
    private static double longestStep(List<LightModule> modules) {
        List<LightModule> left = new ArrayList<>(modules);
        List<LightModule> joined = new ArrayList<>(List.of(left.remove(0)));
        double longest = 0;
        while (!left.isEmpty()) {
            LightModule next = left.stream().min(Comparator.comparingDouble(each -> nearest(each, joined))).orElseThrow();
            longest = Math.max(longest, nearest(next, joined));
            left.remove(next);
            joined.add(next);
        }
        return longest;
    }

    private static double nearest(LightModule module, List<LightModule> others) {
        return others.stream().mapToDouble(each -> Math.hypot(each.xMm() - module.xMm(), each.yMm() - module.yMm())).min().orElseThrow();
    }

    @Test
    void modules_that_a_person_put_stay_and_are_built_upon() {
        LayoutRequest request = request(Letters.bar(600, 40), Finish.black(), 0.5);
        Layout all = layout(request);
        assertTrue(all.reached());
        assertEquals(List.of(), layout(request.fixed(all.modules())).modules());
        LightModule first = all.modules().get(0);
        LightModule moved = new LightModule(first.xMm() + 15, first.yMm() + 3, 40, PLATE);
        Layout around = layout(request.fixed(List.of(moved)));
        assertTrue(around.reached(), around::toString);
        Polygon plate = moved.outline(request.can().inside().getFactory());
        around.modules().forEach(each -> assertTrue(each.outline(plate.getFactory()).distance(plate) >= 2 - ROUNDING_MM));
        List<LightModule> together = new ArrayList<>(around.modules());
        together.add(moved);
        assertTrue(map(request, together).luminanceLevels().uniformity() > 0.48);
    }

    @ParameterizedTest
    @CsvSource({"300, 200", "200, 200", "600, 250"})
    void a_wide_panel_gets_rows(double length, double width) {
        LayoutRequest request = request(Letters.bar(length, width), WHITE, 0.6).contrast(0.05, 0);
        Layout layout = layout(request);
        assertTrue(layout.reached(), layout::toString);
        long rows = layout.modules().stream().map(module -> Math.round(module.yMm() / 30)).distinct().count();
        assertTrue(rows >= 2, layout::toString);
    }

    @Test
    void a_disc_without_a_main_direction_is_lit_too() {
        Polygon disc = (Polygon) Letters.bar(1, 1).getFactory().createPoint(new Coordinate(0, 0)).buffer(90, 16);
        assertTrue(layout(request(disc, WHITE, 0.6)).reached());
    }

    /**
     * Weber's 2 %: on a map as fine as the one that is shown no spot stands out by much more; the map's own grain is about 1 %. Known shortfall:
     * of the serif B and ampersand it is not found.
     */
    @ParameterizedTest
    @CsvSource({"DejaVuSans, T", "DejaVuSans, L", "DejaVuSans, O", "DejaVuSerif-Bold, R"})
    void bright_spots_stay_below_the_contrast(String font, String letter) {
        LayoutRequest request = request(Letters.letter(font, letter, 300), WHITE, 0.5).contrast(0.02, 0);
        Layout layout = layout(request);
        assertTrue(layout.reached(), layout::toString);
        LightMap map = map(request, layout.modules());
        boolean[] lit = new boolean[map.grid().size()];
        IntStream.range(0, lit.length).forEach(cell -> lit[cell] = map.isLit(cell));
        List<Spots.Spot> spots = Spots.of(map.grid(), lit, map.luminance(), 0.035);
        assertEquals(List.of(), spots);
        int many = layout.modules().size();
        assertTrue(layout(request.contrast(0.3, 0)).modules().size() < many, "a looser contrast takes fewer");
    }

    @Test
    void no_room_for_a_plate_is_said() {
        Layout layout = layout(request(Letters.bar(100, 15), WHITE, 0.5));
        assertEquals(List.of(), layout.modules());
        assertEquals(Set.of(Layout.Limit.NO_ROOM), layout.limits());
        assertFalse(layout.reached());
    }

    @Test
    void a_can_that_is_too_shallow_is_said_with_the_depth_that_the_pitch_needs() {
        LightModuleType plain = new LightModuleType("", 60, 120, 80, 10, 5, 1, 0);
        LayoutRequest request = LayoutRequest.of(new Can(Letters.bar(600, 40), 20, Finish.black()), plain, 0.7).distances(3, 0, 5);
        Layout layout = layout(request);
        assertFalse(layout.reached());
        assertTrue(layout.limits().contains(Layout.Limit.TOO_SHALLOW), layout.limits()::toString);
        assertEquals(0.7, new RowSeries(plain).leastToMean(layout.pitchMm(), layout.neededDepthMm() - 5), 1e-6);
        assertTrue(layout.neededDepthMm() > 20);
    }

    @Test
    void tips_that_no_plate_reaches_are_told_from_free_ends() {
        Polygon taper = Letters.wkt("POLYGON ((0 0, 500 22, 0 44, 0 0))");
        Layout layout = layout(request(taper, WHITE, 0.6));
        assertFalse(layout.reached());
        assertTrue(layout.limits().contains(Layout.Limit.MODULE_EDGE), layout.limits()::toString);
    }

    @Test
    void refuses_what_makes_no_sense() {
        Can can = new Can(Letters.bar(100, 40), 4, Finish.black());
        assertThrows(IllegalArgumentException.class, () -> layout(LayoutRequest.of(can, PLATE, 0.5))); // emitters at 5 mm
        assertThrows(IllegalArgumentException.class, () -> LayoutRequest.of(can, PLATE, 1));
        assertThrows(IllegalArgumentException.class, () -> LayoutRequest.of(can, PLATE, 0.5).distances(-1, 0, 0));
        assertThrows(IllegalArgumentException.class, () -> LayoutRequest.of(can, PLATE, 0.5).contrast(0, 0));
    }

    @Test
    void a_cancelled_layout_ends_at_once() {
        int[] calls = new int[1];
        assertThrows(CancellationException.class, () -> Layouter.layout(request(Letters.letter(SANS, "S", 400), WHITE, 0.6), () -> {
            if (++calls[0] > 50) {
                throw new CancellationException();
            }
        }));
        assertEquals(51, calls[0]);
    }
}
