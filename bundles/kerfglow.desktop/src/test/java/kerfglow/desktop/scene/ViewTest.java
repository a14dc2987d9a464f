// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.scene;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;

class ViewTest {
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 5, 8})
    void the_point_under_the_pointer_stays_there_when_zooming(long seed) {
        Random random = new Random(seed);
        View view = new View(0.01 + random.nextDouble() * 10, random.nextDouble() * 3000, random.nextDouble() * 3000);
        double x = random.nextInt(1200);
        double y = random.nextInt(800);
        View zoomed = view.zoomedAbout(x, y, 0.2 + random.nextDouble() * 5);
        assertEquals(view.toMmX(x), zoomed.toMmX(x), 1e-9 * 3000);
        assertEquals(view.toMmY(y), zoomed.toMmY(y), 1e-9 * 3000);
    }

    @Test
    void a_pixel_and_its_place_are_each_others_inverse() {
        View view = new View(2.5, -40, 12);
        assertEquals(317, view.toPixelX(view.toMmX(317)), 1e-9);
        assertEquals(-5, view.toPixelY(view.toMmY(-5)), 1e-9);
    }

    @Test
    void an_area_that_is_fitted_stands_in_the_middle_and_touches_the_margin() {
        View view = View.fitting(new Envelope(0, 3200, 0, 2000), 1000, 800, 20);
        assertEquals(20, view.toPixelX(0), 1e-6);
        assertEquals(980, view.toPixelX(3200), 1e-6);
        assertEquals(400, view.toPixelY(1000), 1e-6);
    }

    @Test
    void an_area_without_extent_and_a_canvas_without_size_have_a_view_too() {
        assertEquals(1, View.fitting(new Envelope(5, 5, 5, 5), 100, 100, 10).pixelsPerMm());
        assertTrue(View.fitting(new Envelope(0, 10, 0, 10), 0, 0, 20).pixelsPerMm() > 0);
    }

    @Test
    void scales_stop_at_their_ends() {
        assertEquals(View.MOST_PIXELS_PER_MM, new View(300, 0, 0).zoomedAbout(0, 0, 100).pixelsPerMm());
        assertEquals(View.LEAST_PIXELS_PER_MM, new View(1e-3, 0, 0).zoomedAbout(0, 0, 1e-9).pixelsPerMm());
    }

    @Test
    void a_flight_begins_here_and_ends_there_and_grows_steadily() {
        View here = View.centred(new Coordinate(0, 0), 0.3, 1000, 800);
        View there = View.centred(new Coordinate(2000, 900), 20, 1000, 800);
        assertEquals(here.leftMm(), here.towards(there, 0, 1000, 800).leftMm(), 1e-6);
        assertEquals(there.leftMm(), here.towards(there, 1, 1000, 800).leftMm(), 1e-6);
        double last = 0;
        for (double fraction = 0; fraction <= 1; fraction += 0.1) {
            double scale = here.towards(there, fraction, 1000, 800).pixelsPerMm();
            assertTrue(scale > last);
            last = scale;
        }
    }
}
