// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.awt.geom.AffineTransform;
import java.util.List;
import java.util.Locale;

/** How a viewBox is fitted into a viewport: SVG 2, 8.6 and 8.7. */
final class Viewport {
    /** A rectangle in user units. */
    record Box(double x, double y, double width, double height) {
    }

    private Viewport() {
    }

    /** Four numbers, neither size negative. */
    static Box viewBox(String text) throws BadValueException {
        List<Double> v = NumberScanner.list(text);
        if (v.size() != 4) {
            throw new BadValueException("has " + v.size() + " numbers where 4 are expected");
        }
        if (v.get(2) < 0 || v.get(3) < 0) {
            throw new BadValueException("has a negative size");
        }
        return new Box(v.get(0), v.get(1), v.get(2), v.get(3));
    }

    /**
     * The transform from the viewBox into the viewport.
     *
     * @param aspect the value of preserveAspectRatio; empty for its default
     */
    static AffineTransform fit(Box viewBox, Box viewport, String aspect) throws BadValueException {
        double sx = viewport.width() / viewBox.width();
        double sy = viewport.height() / viewBox.height();
        String[] words = aspect.strip().isEmpty() ? new String[] {"xMidYMid"} : aspect.strip().split("\\s+");
        int first = words[0].equals("defer") && words.length > 1 ? 1 : 0;
        String align = words[first].toLowerCase(Locale.ROOT);
        boolean slice = words.length > first + 1 && words[first + 1].equals("slice");
        double dx = 0;
        double dy = 0;
        if (!align.equals("none")) {
            double s = slice ? Math.max(sx, sy) : Math.min(sx, sy);
            sx = s;
            sy = s;
            dx = (viewport.width() - viewBox.width() * s) * share(align, 0);
            dy = (viewport.height() - viewBox.height() * s) * share(align, 4);
        }
        return new AffineTransform(sx, 0, 0, sy, viewport.x() + dx - viewBox.x() * sx, viewport.y() + dy - viewBox.y() * sy);
    }

    static boolean isSlice(String aspect) {
        return aspect.contains("slice");
    }

    private static double share(String align, int from) throws BadValueException {
        if (align.length() == 8) {
            switch (align.substring(from + 1, from + 4)) {
                case "min":
                    return 0;
                case "mid":
                    return 0.5;
                case "max":
                    return 1;
                default:
            }
        }
        throw new BadValueException("has the alignment \"" + align + "\", which is not understood");
    }
}
