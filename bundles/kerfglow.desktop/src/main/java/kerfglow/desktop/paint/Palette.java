// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.paint;

import kerfglow.api.Severity;
import org.eclipse.swt.graphics.Color;

/**
 * The colours of the window, light and dark. Ink on its ground has a contrast of at least 4.5 (W3C WCAG 2.1, 1.4.3); the page of the proof
 * stays white, since the artwork's colours are judged on it.
 */
public final class Palette {
    public final Color ground;
    public final Color field;
    public final Color ink;
    public final Color quiet;
    public final Color line;
    public final Color surround;
    public final Color accent;
    /** Tones of what is cut in a section; hatching tells them apart as well. */
    public final Color masonry;
    public final Color metal;
    public final Color plastic;
    public final Color device;
    /** Ground of a field in which something cannot be read. */
    public final Color wrong;
    /** Light on its way. */
    public final Color light = colour(0xf2b632);
    /** Ink of reviewers' marks. */
    public final Color mark = colour(0x7a1f8a);
    /** Light modules that a hand places. */
    public final Color module = colour(0x2a6f3c);
    /** The outline as it would be right. */
    public final Color suggested = colour(0x0b6e4f);
    public final Color page = colour(0xffffff);
    /** Ink on the page, which is white in both looks. */
    public final Color onPage = colour(0x22262b);
    public final Color casing = colour(0xffffff);
    private final Color stop = colour(0xb3152b);
    private final Color review = colour(0x9a5b00);
    private final Color info = colour(0x1f5f8b);

    private Palette(int ground, int field, int ink, int quiet, int line, int surround, int accent, int masonry, int metal, int plastic, int device, int wrong) {
        this.ground = colour(ground);
        this.field = colour(field);
        this.ink = colour(ink);
        this.quiet = colour(quiet);
        this.line = colour(line);
        this.surround = colour(surround);
        this.accent = colour(accent);
        this.masonry = colour(masonry);
        this.metal = colour(metal);
        this.plastic = colour(plastic);
        this.device = colour(device);
        this.wrong = colour(wrong);
    }

    /** Ink on paper. */
    public static Palette light() {
        return new Palette(0xf4f2ee, 0xfdfcfa, 0x22262b, 0x5b6168, 0xc9c5bd, 0xdedbd4, 0x0f6b6b, 0xe9e2d4, 0xcdd3d9, 0xcfe6ef, 0x3c444c, 0xf6d5d5);
    }

    /** For a room where a screen must not glare. */
    public static Palette dark() {
        return new Palette(0x25282c, 0x1d2023, 0xe8e6e1, 0xa9adb2, 0x44494f, 0x17191b, 0x56c2bd, 0x3a362f, 0x4a525a, 0x2c4b57, 0x8d969f, 0x5c2a2f);
    }

    /** The palette of a look. */
    public static Palette of(boolean dark) {
        return dark ? dark() : light();
    }

    /** The colour of a weight, for marks on the proof; the marks' shapes differ too. */
    public Color of(Severity severity) {
        return switch (severity) {
            case STOP -> stop;
            case REVIEW -> review;
            case INFO -> info;
        };
    }

    /** A colour from 0xRRGGBB; needs no disposal. */
    public static Color colour(int rgb) {
        return new Color(rgb >> 16 & 0xff, rgb >> 8 & 0xff, rgb & 0xff);
    }
}
