// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Optional;
import kerfglow.api.UnitSystem;
import kerfglow.desktop.desk.SheetForm.Field;
import kerfglow.host.JobSheet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SheetFormTest {
    private static JobSheet after(Field field, String text, JobSheet before) {
        SheetForm form = new SheetForm(field, text, Optional.of("Letters"));
        assertEquals(Optional.empty(), form.edit().problem());
        return form.edit().change().apply(before);
    }

    @ParameterizedTest(name = "{0} is {1} times")
    @CsvSource({"1:10, 10", "10, 10", "0.5, 0.5", "'', 1"})
    void a_scale_is_typed_as_a_job_sheet_writes_it(String text, double times) {
        assertEquals(times, after(Field.SCALE, text, JobSheet.NONE).scale().orElseThrow(), 1e-12);
    }

    @Test
    void a_known_width_takes_the_place_of_the_scale_and_back() {
        JobSheet known = after(Field.WIDTH, "3.2 m", after(Field.SCALE, "1:10", JobSheet.NONE));
        assertEquals(3200, known.knownDimension().orElseThrow().lengthMm(), 1e-9);
        assertTrue(known.knownDimension().get().horizontal());
        assertEquals(Optional.of("Letters"), known.knownDimension().get().selector().layer());
        assertTrue(known.scale().isEmpty());
        assertEquals(Field.WIDTH, SheetForm.size(known));
        assertEquals("3200 mm", SheetForm.text(Field.WIDTH, known, UnitSystem.METRIC));
        assertEquals("", SheetForm.text(Field.HEIGHT, known, UnitSystem.METRIC));
        JobSheet scaled = after(Field.SCALE, "2", known);
        assertTrue(scaled.knownDimension().isEmpty());
        assertEquals(Field.SCALE, SheetForm.size(scaled));
        assertEquals("2", SheetForm.text(Field.SCALE, scaled, UnitSystem.METRIC));
    }

    @Test
    void empty_takes_out_what_can_be_left_unsaid() {
        JobSheet full = after(Field.SHOP, "/shop/shop.yaml", after(Field.BUILD, "cabinet", after(Field.TITLE, "A sign", after(Field.UNITS, "inch", JobSheet.NONE))));
        assertEquals("A sign", full.title());
        assertEquals(Optional.of(UnitSystem.INCH), full.units());
        assertEquals(Optional.of("cabinet"), full.build());
        assertEquals(Path.of("/shop/shop.yaml").toAbsolutePath(), full.shopSheet().orElseThrow());
        JobSheet empty = after(Field.SHOP, "", after(Field.BUILD, " ", after(Field.TITLE, "", full)));
        assertTrue(empty.title().isEmpty() && empty.build().isEmpty() && empty.shopSheet().isEmpty());
    }

    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource({"SCALE, ten", "SCALE, 0", "SCALE, 1:2000", "SCALE, NaN", "WIDTH, wide", "WIDTH, 0 mm", "HEIGHT, -3 m", "BUILD, balloon"})
    void what_cannot_be_is_refused_in_words_and_changes_nothing(Field field, String text) {
        SheetForm form = new SheetForm(field, text, Optional.empty());
        assertTrue(form.edit().problem().isPresent());
        assertEquals(JobSheet.NONE, form.edit().change().apply(JobSheet.NONE));
    }
}
