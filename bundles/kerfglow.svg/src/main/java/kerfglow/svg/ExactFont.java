// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.awt.Font;
import java.awt.font.TextAttribute;
import java.awt.font.TransformAttribute;
import java.awt.geom.AffineTransform;
import java.text.AttributedCharacterIterator;
import java.util.HashMap;
import java.util.Map;
import org.apache.batik.gvt.font.AWTFontFamily;
import org.apache.batik.gvt.font.AWTGVTFont;
import org.apache.batik.gvt.font.GVTFont;
import org.apache.batik.gvt.font.GVTFontFace;

/**
 * Batik's font, drawn large. Batik draws every glyph at 48 units to the em and enlarges it, so that outlines are rounded to 1/3072 em;
 * here they come at a size at which nothing is rounded.
 */
final class ExactFont extends AWTGVTFont {
    /** A multiple of 1024 and 2048, the units to the em of most fonts; outlines come in 1/64 of a unit of this size. */
    private static final float DRAWN_SIZE = 8192;
    /** Part of the font itself, so that Batik's cache of glyphs keeps it apart from the same font drawn small. */
    private static final AffineTransform ENLARGED = AffineTransform.getScaleInstance(DRAWN_SIZE / FONT_SIZE, DRAWN_SIZE / FONT_SIZE);

    private ExactFont(Font font, double size) {
        super(font.deriveFont(ENLARGED), size);
        scale = size / DRAWN_SIZE;
    }

    private ExactFont(Map<?, ?> attributes) {
        super(attributes);
        scale = size / DRAWN_SIZE;
    }

    @Override
    public GVTFont deriveFont(float newSize) {
        return new ExactFont(awtFont, newSize);
    }

    /** A family whose fonts are exact. */
    static final class Family extends AWTFontFamily {
        /** An installed family. */
        Family(String name) {
            super(name);
        }

        /** A font that is not installed. */
        Family(String name, Font font) {
            super(new GVTFontFace(name), font);
        }

        @Override
        public GVTFont deriveFont(float size, AttributedCharacterIterator characters) {
            return deriveFont(size, characters.getAttributes());
        }

        @Override
        @SuppressWarnings("rawtypes") // as Batik declares it
        public GVTFont deriveFont(float size, Map attributes) {
            if (font != null) {
                return new ExactFont(font, size);
            }
            Map<Object, Object> own = new HashMap<>();
            for (Object key : attributes.keySet()) {
                own.put(key, attributes.get(key));
            }
            own.put(TextAttribute.SIZE, size);
            own.put(TextAttribute.FAMILY, fontFace.getFamilyName());
            own.put(TextAttribute.TRANSFORM, new TransformAttribute(ENLARGED));
            own.remove(TEXT_COMPOUND_DELIMITER);
            return new ExactFont(own);
        }
    }
}
