// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;

/**
 * The same artwork read by the importer and painted by an independent renderer, Debian's rsvg-convert: painted area and bounds have to
 * agree within what pixels can show.
 */
class RsvgComparisonTest {
    /** Pixels to the mm; the artwork is 100 by 100 mm. */
    private static final int PIXELS_PER_MM = 8;
    /** Full cover of a pixel in the alpha channel. */
    private static final double OPAQUE = 255;
    /**
     * The renderer's cover of one edge pixel is counted in at most 1/255, and its own curves are flattened to 0.1 px: a hundredth of a
     * pixel along the outline, seen in trial runs of plain rectangles and circles.
     */
    private static final double EDGE_MM = 0.02;
    private static final double HALF_COVER = 128;
    /** The tip of a sharp corner covers its last pixels thinly. */
    private static final double FAINT_COVER = 4;

    @TempDir
    private Path folder;

    @ParameterizedTest(name = "{0}")
    @CsvFileSource(resources = "rsvg-cases.txt", delimiter = '|', quoteCharacter = '~', maxCharsPerColumn = 10_000)
    void paints_the_same_area_in_the_same_place(String name, String content) throws IOException, InterruptedException {
        String svg = content.contains("xmlns=") ? content : Svg.in100(content);
        Geometry ours = Svg.shown(Svg.read(svg));
        BufferedImage theirs = render(svg);
        double area = 0;
        Envelope surely = new Envelope();
        Envelope hardly = new Envelope();
        for (int y = 0; y < theirs.getHeight(); y++) {
            for (int x = 0; x < theirs.getWidth(); x++) {
                int alpha = theirs.getRGB(x, y) >>> 24;
                area += alpha / OPAQUE;
                include(surely, x, y, alpha >= HALF_COVER);
                include(hardly, x, y, alpha >= FAINT_COVER);
            }
        }
        double areaMm2 = area / (PIXELS_PER_MM * PIXELS_PER_MM);
        assertTrue(areaMm2 > 1, "the case must paint something, or it proves nothing");
        assertEquals(areaMm2, ours.getArea(), Math.max(0.05, EDGE_MM * ours.getLength()), "area, mm²");
        Envelope found = ours.getEnvelopeInternal();
        double pixel = 1.0 / PIXELS_PER_MM;
        Envelope outermost = new Envelope(found);
        outermost.expandBy(pixel);
        assertTrue(outermost.covers(surely), () -> "painted to " + surely + ", ours reaches " + found);
        hardly.expandBy(pixel);
        assertTrue(hardly.covers(found), () -> "painted to " + hardly + ", ours reaches " + found);
    }

    private static void include(Envelope bounds, int x, int y, boolean painted) {
        if (painted) {
            bounds.expandToInclude((double) x / PIXELS_PER_MM, (double) y / PIXELS_PER_MM);
            bounds.expandToInclude((x + 1.0) / PIXELS_PER_MM, (y + 1.0) / PIXELS_PER_MM);
        }
    }

    private BufferedImage render(String svg) throws IOException, InterruptedException {
        Path in = folder.resolve("case.svg");
        Path out = folder.resolve("case.png");
        Files.writeString(in, svg);
        String side = String.valueOf(100 * PIXELS_PER_MM);
        try {
            Process process = new ProcessBuilder("rsvg-convert", "--width", side, "--height", side, "--output", out.toString(), in.toString())
                    .redirectErrorStream(true).redirectOutput(folder.resolve("log").toFile()).start();
            assertTrue(process.waitFor(30, TimeUnit.SECONDS), "rsvg-convert took too long");
            assertEquals(0, process.exitValue(), () -> "rsvg-convert: " + log());
        } catch (IOException e) {
            fail("rsvg-convert is needed for this test; install the Debian package librsvg2-bin", e);
        }
        return ImageIO.read(out.toFile());
    }

    private String log() {
        try {
            return Files.readString(folder.resolve("log"));
        } catch (IOException e) {
            return e.getMessage();
        }
    }
}
