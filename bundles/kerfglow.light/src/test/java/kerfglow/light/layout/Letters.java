// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import java.util.List;
import kerfglow.geometry.FontLetters;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;

/** Shapes for tests: WKT, and outlined lettering of an open font (Debian's package fonts-dejavu-core). */
final class Letters {
    private Letters() {
    }

    static Polygon wkt(String text) {
        try {
            return (Polygon) new WKTReader().read(text);
        } catch (ParseException wrong) {
            throw new IllegalArgumentException(text, wrong);
        }
    }

    static Polygon bar(double length, double width) {
        return wkt("POLYGON ((0 0, %1$s 0, %1$s %2$s, 0 %2$s, 0 0))".formatted(length, width));
    }

    static Polygon letter(String font, String text, double sizeMm) {
        return letters(font, text, sizeMm).get(0);
    }

    static List<Polygon> letters(String font, String text, double sizeMm) {
        return FontLetters.of(font, text, sizeMm);
    }
}
