// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Reads colours as CSS Color 4 writes them: keywords, hexadecimal, rgb() and hsl(), old and new forms. */
final class Colours {
    /**
     * A colour.
     *
     * @param rgb 0xRRGGBB
     * @param alpha 0 (clear) to 1
     */
    record Colour(int rgb, double alpha) {
    }

    private static final int HEX = 16;
    private static final double FULL = 255;
    private final Map<String, Integer> keywords = new HashMap<>();

    Colours() {
        try (BufferedReader in = new BufferedReader(new InputStreamReader(
                Colours.class.getResourceAsStream("colours.txt"), StandardCharsets.UTF_8))) {
            in.lines().filter(line -> !line.startsWith("#")).map(line -> line.split(" "))
                    .forEach(pair -> keywords.put(pair[0], Integer.parseInt(pair[1], HEX)));
        } catch (IOException e) {
            throw new UncheckedIOException("the list of colour keywords is missing from the bundle", e);
        }
    }

    Colour parse(String text) throws BadValueException {
        String word = text.strip().toLowerCase(Locale.ROOT);
        Integer keyword = keywords.get(word);
        if (keyword != null) {
            return new Colour(keyword, 1);
        }
        if (word.equals("transparent")) {
            return new Colour(0, 0);
        }
        if (word.startsWith("#")) {
            return hex(word.substring(1));
        }
        int open = word.indexOf('(');
        if (open > 0 && word.endsWith(")")) {
            List<Argument> v = arguments(word.substring(open + 1, word.length() - 1));
            switch (word.substring(0, open)) {
                case "rgb", "rgba":
                    return rgb(v);
                case "hsl", "hsla":
                    return hsl(v);
                default:
            }
        }
        throw new BadValueException("has \"" + text.strip() + "\", which is no colour that is understood");
    }

    private record Argument(double number, String unit) {
        double share(double full) {
            return Math.max(0, Math.min(1, unit.equals("%") ? number / 100 : number / full));
        }
    }

    private static Colour hex(String digits) throws BadValueException {
        boolean isShort = digits.length() == 3 || digits.length() == 4;
        if (!digits.matches("[0-9a-f]+") || !isShort && digits.length() != 6 && digits.length() != 8) {
            throw new BadValueException("has \"#" + digits + "\", which is no colour");
        }
        String all = isShort ? digits.replaceAll("(.)", "$1$1") : digits;
        double alpha = all.length() == 8 ? Integer.parseInt(all.substring(6), HEX) / FULL : 1;
        return new Colour(Integer.parseInt(all.substring(0, 6), HEX), alpha);
    }

    private static Colour rgb(List<Argument> v) {
        return new Colour(pack(v.get(0).share(FULL), v.get(1).share(FULL), v.get(2).share(FULL)), alpha(v));
    }

    /** CSS Color 4, section 7. */
    private static Colour hsl(List<Argument> v) {
        double turn = switch (v.get(0).unit()) {
            case "rad" -> v.get(0).number() / (2 * Math.PI);
            case "grad" -> v.get(0).number() / 400;
            case "turn" -> v.get(0).number();
            default -> v.get(0).number() / 360;
        };
        double saturation = v.get(1).share(100);
        double light = v.get(2).share(100);
        return new Colour(pack(hue(0, turn, saturation, light), hue(8, turn, saturation, light),
                hue(4, turn, saturation, light)), alpha(v));
    }

    private static double hue(int n, double turn, double saturation, double light) {
        double k = (n + (turn - Math.floor(turn)) * 12) % 12;
        return light - saturation * Math.min(light, 1 - light) * Math.max(-1, Math.min(Math.min(k - 3, 9 - k), 1));
    }

    private static double alpha(List<Argument> v) {
        return v.size() > 3 ? v.get(3).share(1) : 1;
    }

    private static int pack(double r, double g, double b) {
        return (int) Math.round(r * FULL) << 16 | (int) Math.round(g * FULL) << 8 | (int) Math.round(b * FULL);
    }

    private static List<Argument> arguments(String text) throws BadValueException {
        NumberScanner in = new NumberScanner(text.replace('/', ',').strip());
        List<Argument> v = new ArrayList<>();
        while (!in.isAtEnd()) {
            v.add(new Argument(in.number(), in.word()));
            in.skipSeparator();
        }
        if (v.size() < 3 || v.size() > 4) {
            throw new BadValueException("has " + v.size() + " numbers in a colour");
        }
        return v;
    }
}
