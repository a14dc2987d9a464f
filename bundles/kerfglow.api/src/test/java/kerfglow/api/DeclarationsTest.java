// SPDX-License-Identifier: Apache-2.0
package kerfglow.api;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DeclarationsTest {
    private static CheckInfo info(String id) {
        return new CheckInfo(id, "trial", List.of(), List.of(), List.of(), List.of(), "");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "Seams", "acme seams", "acme.", ".seams", "acme..seams", "acme\nseams", "n\u00e4hte", "../seams", "1seam"})
    void an_id_is_words_with_points_between_them(String id) {
        assertTrue(assertThrows(IllegalArgumentException.class, () -> info(id)).getMessage().contains("lower case"));
    }

    @Test
    void ids_of_shipped_and_own_checks_are_taken() {
        assertEquals("push-through", info("push-through").id());
        assertEquals("acme.seams2", info("acme.seams2").id());
    }

    /** 65536 squared is 2 to the 32, which an int counts as 0. */
    @Test
    void a_raster_needs_a_colour_for_each_of_its_cells() {
        assertThrows(IllegalArgumentException.class, () -> new OverlayLayer.Raster(0, 0, 1, 65536, 65536, new int[0]));
        assertThrows(IllegalArgumentException.class, () -> new OverlayLayer.Raster(0, 0, 1, 2, 2, new int[3]));
        assertEquals(4, new OverlayLayer.Raster(0, 0, 1, 2, 2, new int[4]).argb().length);
    }
}
