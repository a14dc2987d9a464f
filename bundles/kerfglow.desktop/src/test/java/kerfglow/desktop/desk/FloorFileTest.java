// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Map;
import kerfglow.job.ReviewedResult;
import kerfglow.views.Sample;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.Test;

class FloorFileTest {
    private static final Instant NOON = Instant.parse("2026-03-01T12:00:00Z");
    /** How a file of each kind begins, by its own standard; PDF is read whole. */
    private static final Map<String, String> BEGINNINGS = Map.of(".html", "<!DOCTYPE html>", ".csv", "", ".json", "{", ".dxf", "  0\n", ".svg", "<?xml");

    @Test
    void every_form_of_every_file_is_written_from_a_result() throws Exception {
        ReviewedResult result = ReviewedResult.undecided(Sample.result());
        int written = 0;
        for (FloorFile kind : FloorFile.values()) {
            for (FloorFile.Form form : kind.forms()) {
                ByteArrayOutputStream out = new ByteArrayOutputStream();
                form.write(result, NOON, out);
                if (form.ending().equals(".pdf")) {
                    try (PDDocument document = Loader.loadPDF(out.toByteArray())) {
                        assertTrue(document.getNumberOfPages() > 0, form.name());
                    }
                } else {
                    String text = out.toString(StandardCharsets.UTF_8).replace("\r\n", "\n");
                    assertTrue(text.length() > 100 && text.stripLeading().startsWith(BEGINNINGS.get(form.ending()).strip()), () -> kind + " " + form.name() + ": " + text);
                }
                written++;
            }
        }
        assertEquals(12, written);
    }

    @Test
    void the_ending_that_was_typed_tells_the_form_and_a_missing_one_is_added() {
        assertEquals("Web page", FloorFile.REPORT.formOf(Path.of("a.HTML"), 0).name());
        assertEquals("Web page", FloorFile.REPORT.formOf(Path.of("a"), 1).name());
        assertEquals("Pages of A3", FloorFile.PATTERN.formOf(Path.of("a.pdf"), 1).name(), "several forms are PDF");
        assertEquals("PDF", FloorFile.REPORT.formOf(Path.of("a"), -1).name(), "a window system that tells no choice");
        FloorFile.Form dxf = FloorFile.OUTLINES.forms().get(0);
        assertEquals(Path.of("a.b.dxf"), dxf.named(Path.of("a.b")));
        assertEquals(Path.of("a.DXF"), dxf.named(Path.of("a.DXF")));
        assertEquals("sign.v2.mounting-pattern", FloorFile.PATTERN.nameFor(Path.of("folder", "sign.v2.svg")));
    }
}
