// SPDX-License-Identifier: Apache-2.0
package kerfglow.window;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import kerfglow.api.Quantity;
import kerfglow.api.UnitSystem;
import kerfglow.api.Units;
import kerfglow.desktop.paint.Palette;
import kerfglow.desktop.paint.SectionPainter;
import kerfglow.desktop.section.Builds;
import kerfglow.desktop.section.Section;
import kerfglow.desktop.section.SectionLayout;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.ImageLoader;
import org.eclipse.swt.graphics.RGB;
import org.eclipse.swt.widgets.Display;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** The section of every build as it is painted, narrow as the pane is and large, in both looks; the pictures are kept. */
class SectionPictureTest {
    private static final double SCREEN_PIXELS_PER_MM = 96 / Units.MM_PER_INCH;

    private final Display display = new Display();

    @AfterEach
    void end() {
        display.dispose();
    }

    @Test
    void every_build_is_drawn_in_a_narrow_pane_and_in_a_large_one() throws Exception {
        Path folder = Files.createDirectories(Path.of(System.getProperty("shots")));
        for (Builds build : Builds.values()) {
            for (boolean dark : new boolean[] {false, true}) {
                for (int[] size : new int[][] {{288, 480}, {860, 420}}) {
                    UnitSystem units = dark ? UnitSystem.INCH : UnitSystem.METRIC;
                    String name = "section-" + build.name().toLowerCase(Locale.ROOT).replace('_', '-') + (dark ? "-dark" : "") + "-" + size[0];
                    assertDrawn(name, picture(Section.of(build.result(units)), units, Palette.of(dark), size[0], size[1], folder.resolve(name + ".png")), Palette.of(dark));
                }
            }
        }
    }

    private record Drawn(Section section, SectionLayout layout, ImageData pixels) {
        RGB at(int x, int y) {
            return pixels.palette.getRGB(pixels.getPixel(x, y));
        }
    }

    private Drawn picture(Section section, UnitSystem units, Palette palette, int width, int height, Path file) {
        Image image = new Image(display, width, height);
        GC gc = new GC(image);
        try {
            gc.setBackground(palette.ground);
            gc.fillRectangle(0, 0, width, height);
            SectionLayout layout = SectionLayout.of(section, section.measures().stream().map(measure -> Units.format(measure.valueMm(), Quantity.LENGTH, units)).toList(),
                    new SectionLayout.Room(width, height, gc.getFontMetrics().getHeight(), SCREEN_PIXELS_PER_MM, text -> gc.stringExtent(text).x));
            new SectionPainter().paint(gc, section, layout, Optional.empty(), -1, palette);
            ImageLoader loader = new ImageLoader();
            loader.data = new ImageData[] {image.getImageData()};
            loader.save(file.toString(), SWT.IMAGE_PNG);
            return new Drawn(section, layout, image.getImageData());
        } finally {
            gc.dispose();
            image.dispose();
        }
    }

    /** Every value is there to be read: dark on light or light on dark in its room; and every piece is toned. */
    private static void assertDrawn(String name, Drawn drawn, Palette palette) {
        for (SectionLayout.Line line : drawn.layout().lines()) {
            double least = 1;
            double greatest = 0;
            SectionLayout.Box room = line.room();
            assertTrue(room.x() >= 0 && room.y() >= 0 && room.x() + room.width() <= drawn.pixels().width && room.y() + room.height() <= drawn.pixels().height, name + ": " + line.text() + " is cut off");
            for (int x = room.x(); x < room.x() + room.width(); x++) {
                for (int y = room.y(); y < room.y() + room.height(); y++) {
                    double light = luminance(drawn.at(x, y));
                    least = Math.min(least, light);
                    greatest = Math.max(greatest, light);
                }
            }
            assertTrue((greatest + 0.05) / (least + 0.05) >= 4.5, name + ": " + line.text() + " cannot be read (WCAG 2.1, 1.4.3)");
        }
        for (Section.Piece piece : drawn.section().pieces()) {
            int x = (int) Math.round(drawn.layout().view().toPixelX(piece.areas().get(0).centre().x));
            int y = (int) Math.round(drawn.layout().view().toPixelY(piece.areas().get(0).centre().y));
            assertNotEquals(palette.ground.getRGB(), drawn.at(x, y), name + ": " + piece.kind());
        }
        assertEquals(drawn.section().measures().size(), drawn.layout().rows().size(), name + ": each dimension has its name");
    }

    /** WCAG 2.1, relative luminance. */
    private static double luminance(RGB rgb) {
        return 0.2126 * linear(rgb.red) + 0.7152 * linear(rgb.green) + 0.0722 * linear(rgb.blue);
    }

    private static double linear(int channel) {
        double share = channel / 255.0;
        return share <= 0.04045 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4);
    }

    /** The palette's inks on its grounds. */
    @Test
    void inks_can_be_read_on_their_grounds_in_both_looks() {
        for (Palette palette : new Palette[] {Palette.light(), Palette.dark()}) {
            for (Color ground : new Color[] {palette.ground, palette.field}) {
                for (Color ink : new Color[] {palette.ink, palette.quiet, palette.accent}) {
                    double a = luminance(ink.getRGB());
                    double b = luminance(ground.getRGB());
                    assertTrue((Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05) >= 4.5);
                }
            }
        }
    }
}
