// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.GraphicsEnvironment;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import kerfglow.fonts.SansFont;
import org.apache.batik.bridge.FontFace;
import org.apache.batik.bridge.FontFamilyResolver;
import org.apache.batik.gvt.font.GVTFontFamily;

/**
 * Chooses the font for live text: the first family asked for that is installed, else the one that ships with the program. Batik asks
 * here for every family, so that it never falls back on its own.
 */
final class Fonts implements FontFamilyResolver {
    static final String FALLBACK = SansFont.FAMILY;

    /** @param asked the family named first; @param used the family that outlines come from; @param substituted true when not asked for */
    record Choice(String asked, String used, boolean substituted) {
    }

    private final Map<String, String> installed = new HashMap<>();
    private final Font fallbackFont;
    private final GVTFontFamily fallback;

    Fonts() {
        for (String family : GraphicsEnvironment.getLocalGraphicsEnvironment().getAvailableFontFamilyNames(Locale.ROOT)) {
            installed.put(family.toLowerCase(Locale.ROOT), family);
        }
        // Java's own logical fonts differ from machine to machine and are no family that a proof means.
        for (String logical : List.of("dialog", "dialoginput", "sansserif", "serif", "monospaced")) {
            installed.remove(logical);
        }
        try (InputStream in = SansFont.open()) {
            fallbackFont = Font.createFont(Font.TRUETYPE_FONT, in);
            fallback = new ExactFont.Family(FALLBACK, fallbackFont);
        } catch (IOException e) {
            throw new UncheckedIOException("the font that ships with the program cannot be read", e);
        } catch (FontFormatException e) {
            throw new IllegalStateException("the font that ships with the program is damaged", e);
        }
    }

    Choice choose(String families) {
        List<String> asked = new ArrayList<>();
        for (String part : CssText.split(families, ',')) {
            String name = part.strip().replaceAll("^[\"']|[\"']$", "").strip().replaceAll("\\s+", " ");
            if (!name.isEmpty()) {
                asked.add(name);
            }
        }
        String first = asked.isEmpty() ? "sans-serif" : asked.get(0);
        for (String name : asked) {
            if (name.equalsIgnoreCase(FALLBACK)) {
                return new Choice(first, FALLBACK, false);
            }
            String family = installed.get(name.toLowerCase(Locale.ROOT));
            if (family != null) {
                return new Choice(first, family, false);
            }
        }
        return new Choice(first, FALLBACK, true);
    }

    /** True when neither the family nor the font that ships has the character. */
    boolean lacks(String family, int character) {
        return !fallbackFont.canDisplay(character)
                && (family.equals(FALLBACK) || !new Font(family, Font.PLAIN, 1).canDisplay(character));
    }

    @Override
    public GVTFontFamily resolve(String family) {
        return family.equals(FALLBACK) ? fallback : new ExactFont.Family(family);
    }

    @Override
    public GVTFontFamily resolve(String family, FontFace face) {
        return resolve(family);
    }

    @Override
    public GVTFontFamily loadFont(InputStream in, FontFace face) {
        return fallback; // fonts in files are never loaded
    }

    @Override
    public GVTFontFamily getDefault() {
        return fallback;
    }

    @Override
    public GVTFontFamily getFamilyThatCanDisplay(char character) {
        return fallback;
    }
}
