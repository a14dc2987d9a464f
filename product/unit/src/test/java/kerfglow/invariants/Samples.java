// SPDX-License-Identifier: Apache-2.0
package kerfglow.invariants;

import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.Shape;
import java.awt.font.FontRenderContext;
import java.awt.geom.AffineTransform;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import kerfglow.fonts.SansFont;

/** Four invented signs that between them break nearly every rule; lettering from the font that ships. */
final class Samples {
    private static final String RED = "#b03030";
    private static final String BLUE = "#203a80";
    private static final String WHITE = "#ffffff";
    private static final String PALE = "#f0ead8";
    private static final String GREY = "#808890";
    /** One black pixel and three white ones. */
    private static final String PICTURE = "data:image/png;base64,iVBORw0KGgoAAAANSUhEUgAAAAIAAAACCAAAAABX3VL4AAAADklEQVR4nGNg+M/w/z8ABf8C/qs4cRoAAAAASUVORK5CYII=";

    private Samples() {
    }

    static List<Sample> all() {
        return List.of(lit(), routed(), film(), drawn());
    }

    /** Face-lit letters: fit, returns, trim, light, power, weight, lettering. Modules are drawn, for laying them out is a search. */
    static Sample lit() {
        Map<String, List<Figure>> layers = new LinkedHashMap<>();
        List<Figure> faces = new ArrayList<>();
        faces.add(Figure.polygon("long", PALE, new double[] {150, 700, 2900, 700, 2900, 800, 150, 800}));
        List<Figure> unlit = new ArrayList<>();
        unlit.add(Figure.polygon("waist", PALE, new double[] {1300, 200, 1500, 200, 1500, 280, 1404, 350, 1500, 420, 1500, 500, 1300, 500, 1300, 420, 1396, 350, 1300, 280}));
        unlit.add(Figure.polygon("thin", PALE, new double[] {1600, 200, 1604, 200, 1604, 500, 1600, 500}));
        faces.add(Figure.polygon("framed", PALE, new double[] {1700, 200, 2000, 200, 2000, 500, 1700, 500}, new double[] {1800, 300, 1812, 300, 1812, 400, 1800, 400}));
        faces.add(Figure.polygon("plain", PALE, new double[] {2100, 200, 2400, 200, 2400, 500, 2100, 500}));
        faces.add(Figure.circle("round", PALE, 2600, 350, 100));
        unlit.add(Figure.circle("bead", PALE, 1640, 230, 11));
        unlit.add(Figure.polygon("notched", PALE, new double[] {2750, 200, 2950, 200, 2950, 500, 2750, 500, 2850, 490, 2751, 480}));
        List<Figure> letters = word("w", PALE, "open daily", 200, 940, 90);
        List<Figure> backs = new ArrayList<>();
        backs.add(Figure.polygon("b-framed", GREY, new double[] {1702.4, 202.4, 1997.6, 202.4, 1997.6, 497.6, 1702.4, 497.6},
                new double[] {1801, 301, 1811, 301, 1811, 399, 1801, 399}));
        backs.add(Figure.polygon("b-plain", GREY, new double[] {2102.4, 202.4, 2397.6, 202.4, 2397.6, 420, 2380, 420, 2380, 497.6, 2102.4, 497.6}));
        backs.add(Figure.circle("b-round", GREY, 2600, 350, 96.5));
        backs.add(Figure.rectangle("b-alone", GREY, 2100, 550, 60, 60));
        List<Figure> modules = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            modules.add(Figure.rectangle("m-long" + i, "#333333", 250 + 500 * i, 742.5, 70, 15));
        }
        modules.add(Figure.rectangle("m-plain1", "#333333", 2140, 280, 70, 15));
        modules.add(Figure.rectangle("m-plain2", "#333333", 2390, 280, 70, 15));
        modules.add(Figure.rectangle("m-framed", "#333333", 1720, 240, 70, 15));
        modules.add(Figure.rectangle("m-round", "#333333", 2565, 342.5, 70, 15));
        List<Figure> holes = List.of(Figure.circle("h1", "#000000", 2120, 220, 3), Figure.circle("h2", "#000000", 2380, 220, 3));
        layers.put("Backs", backs);
        layers.put("Faces", faces);
        layers.put("Unlit", unlit);
        layers.put("Name", word("f", PALE, "Sgn", 150, 500, 400));
        layers.put("Letters", letters);
        layers.put("Modules", modules);
        layers.put("Drain holes", holes);
        String sheet = """
                build: face-lit letters
                roles:
                  - {layer: Faces, role: face}
                  - {layer: Unlit, role: face}
                  - {layer: Name, role: face}
                  - {layer: Letters, role: vinyl}
                  - {layer: Backs, role: back}
                  - {layer: Modules, role: module}
                  - {layer: Drain holes, role: hole}
                materials:
                  - {role: face, material: acrylic, thickness: <4.5 mm>}
                  - {role: back, material: aluminium, thickness: <3 mm>}
                """;
        Map<String, Object> settings = new LinkedHashMap<>(Map.of("returns.depth", 60.0, "returns.thickness", 0.9, "legibility.distance", 30_000.0, "legibility.wall-colour", "#fbf8f0",
                "mount.wind-pressure", 800.0, "power.supplies", 1, "power.loading", 0.1, "glow.cell", 5.0, "fit.coldest", -50.0));
        settings.put("power.lead-in", 100_000.0);
        settings.put("power.conductor", "22 AWG");
        settings.put("glow.lit", new Choice("by build", "none", List.of("Unlit", "Name"))); // what has no module drawn is not to be laid out
        settings.put("legibility.lettering", new Choice("auto", "no", List.of("Unlit", "Faces")));
        settings.put("fit.make-backs", "assigned");
        settings.put("glow.spread", 3.0);
        return new Sample("lit letters", 3100, 1000, layers, Map.of(), sheet, settings, Map.of(
                "router-bits", List.of(item("3", "diameter", 3.0, "flute-length", 12.0), item("6", "diameter", 6.0, "flute-length", 25.0)),
                "sheets", List.of(item("plate", "width", 1500.0, "height", 2000.0)),
                "rolls", List.of(item("roll", "width", 610.0, "length", 50_000.0)),
                "coils", List.of(item("coil", "width", 60.0, "length", 1500.0, "thickness", 0.9)),
                "light-modules", List.of(item("module", "flux", 75.0, "beam-angle", 160.0, "length", 70.0, "width", 15.0, "watts", 3.0, "volts", 12.0, "mass", 0.02)),
                "power-supplies", List.of(item("supply", "volts", 12.0, "watts", 20.0))));
    }

    /** A panel with openings, some lettered, push-through letters, holes. */
    static Sample routed() {
        Map<String, List<Figure>> layers = new LinkedHashMap<>();
        layers.put("Panel", List.of(Figure.polygon("panel", GREY, new double[] {100, 100, 2100, 100, 2100, 1100, 1500, 1100, 1494, 1060, 1490, 1100, 100, 1100})));
        List<Figure> openings = new ArrayList<>(word("o", "#202020", "Rhône 84", 180, 420, 300));
        openings.add(Figure.rectangle("slot1", "#202020", 200, 500, 300, 1.2));
        openings.add(Figure.rectangle("slot2", "#202020", 200, 503, 300, 40));
        openings.add(Figure.polygon("key", "#202020", new double[] {600, 500, 800, 500, 800, 560, 740, 560, 740, 562.5, 600, 562.5}));
        openings.add(Figure.rectangle("over", "#202020", 2060, 600, 80, 60));
        openings.add(Figure.circle("off", "#202020", 2180, 300, 30));
        openings.add(Figure.rectangle("seat1", "#202020", 200, 700, 200, 120));
        openings.add(Figure.rectangle("seat2", "#202020", 500, 700, 200, 120));
        layers.put("Openings", openings);
        layers.put("Push-through", List.of(Figure.rectangle("push1", RED, 200.8, 700.8, 198.4, 118.4), Figure.rectangle("push2", RED, 503, 700.8, 196, 118.4)));
        List<Figure> letters = new ArrayList<>(word("t", PALE, "of the valley", 900, 950, 110));
        letters.add(Figure.circle("dot", PALE, 850, 900, 8));
        letters.add(Figure.polygon("arrow", PALE, new double[] {1700, 700, 1900, 750, 1700, 751}));
        layers.put("Plaque", letters);
        layers.put("Stud holes", List.of(Figure.circle("s1", "#000000", 120, 120, 4), Figure.circle("s2", "#000000", 2080, 1080, 4)));
        String sheet = """
                build: routed panel
                roles:
                  - {layer: Panel, role: panel}
                  - {layer: Openings, role: opening}
                  - {layer: Push-through, role: push-through}
                  - {layer: Plaque, role: face}
                  - {layer: Stud holes, role: hole}
                materials:
                  - {role: panel, material: aluminium, thickness: <3 mm>}
                  - {role: opening, material: aluminium, thickness: <3 mm>}
                  - {role: push-through, material: acrylic, thickness: <30 mm>}
                  - {role: face, material: acrylic, thickness: <6 mm>}
                """;
        return new Sample("routed panel", 2300, 1200, layers, Map.of(), sheet, Map.of("returns.thickness", 0.9, "mount.wind-pressure", 500.0, "mount.wind-area", "outline", "legibility.distance", 60_000.0,
                "legibility.rule", "accessibility", "trim.faces", "all", "trim.lip", 4.0, "legibility.wall-colour", "#e8e8e8", "fit.make-backs", "none"), Map.of(
                "router-bits", List.of(item("2", "diameter", 2.0, "flute-length", 6.0), item("3", "diameter", 3.0, "flute-length", 12.0), item("6", "diameter", 6.35, "flute-length", 25.0)),
                "sheets", List.of(item("small", "width", 900.0, "height", 1500.0), item("large", "width", 1500.0, "height", 1990.0))));
    }

    /** Film and print: colours that meet, pieces that cannot be weeded, panels wider than the roll. */
    static Sample film() {
        Map<String, List<Figure>> layers = new LinkedHashMap<>();
        layers.put("Ground", List.of(Figure.rectangle("ground", BLUE, 100, 100, 1900, 900)));
        List<Figure> red = new ArrayList<>(word("r", RED, "quay", 200, 500, 400));
        red.add(Figure.rectangle("bar1", RED, 300, 700, 400, 1.1));
        red.add(Figure.rectangle("bar2", RED, 300, 701.4, 400, 60));
        red.add(Figure.rectangle("crumb", RED, 900, 700, 1.2, 1.4));
        red.add(Figure.polygon("bolt", RED, new double[] {1000, 700, 1200, 700, 1200, 760, 1101, 760, 1101, 800, 1200, 800, 1200, 900, 1000, 900, 1000, 800, 1099.5, 800, 1099.5, 760, 1000, 760}));
        layers.put("Red", red);
        layers.put("Beside", List.of(Figure.rectangle("left", RED, 100, 1050, 200, 80), Figure.rectangle("right", WHITE, 300.4, 1050, 200, 80),
                Figure.rectangle("lower", RED, 600, 1050, 200, 80), Figure.rectangle("upper", BLUE, 799.5, 1050, 200, 80)));
        layers.put("Disc", List.of(Figure.circle("disc", GREY, 1650, 350, 150)));
        layers.put("White", List.of(Figure.rectangle("touch", WHITE, 1200, 700, 200, 200), Figure.rectangle("beside", WHITE, 700.4, 701.4, 100, 60),
                Figure.polygon("ring", WHITE, new double[] {1500, 600, 1800, 600, 1800, 900, 1500, 900}, new double[] {1501, 601, 1799, 601, 1799, 899, 1501, 899})));
        layers.put("Print", List.of(Figure.circle("printed", "#d0a040", 1650, 350, 150)));
        layers.put("Small", word("s", WHITE, "mind the step", 250, 950, 60));
        String sheet = """
                build: vinyl
                roles:
                  - {layer: Ground, role: vinyl}
                  - {layer: Red, role: vinyl}
                  - {layer: White, role: vinyl}
                  - {layer: Small, role: vinyl}
                  - {layer: Beside, role: vinyl}
                  - {layer: Disc, role: face}
                  - {layer: Print, role: print}
                """;
        return new Sample("film", 2100, 1250, layers, Map.of("Print", "<image id=\"picture\" x=\"1560\" y=\"260\" width=\"180\" height=\"180\" href=\"" + PICTURE + "\"/>"), sheet,
                Map.of("returns.thickness", 0.9, "legibility.distance", 25_000.0, "print.viewing-distance", 2000.0, "legibility.least-contrast", 8.0),
                Map.of("rolls", List.of(item("roll", "width", 610.0, "length", 50_000.0)), "router-bits", List.of(item("3", "diameter", 3.0, "flute-length", 12.0)),
                        "sheets", List.of(item("plate", "width", 1500.0, "height", 2000.0))));
    }

    /** What goes wrong in drawing: open, doubled, crossing, crumbs, traced outlines. Flat letters without sheets of their own. */
    static Sample drawn() {
        Map<String, List<Figure>> layers = new LinkedHashMap<>();
        List<Figure> shapes = new ArrayList<>();
        shapes.add(Figure.open("open", RED, 100, 100, 300, 100, 300, 300, 100, 300, 100, 180));
        shapes.add(Figure.open("nearly", RED, 400, 100, 600, 100, 600, 300, 400, 300, 400, 100.4));
        shapes.add(Figure.rectangle("twice1", RED, 700, 100, 200, 200));
        shapes.add(Figure.polygon("twice2", RED, new double[] {900, 300, 900, 100, 700, 100, 700, 300}));
        shapes.add(Figure.polygon("bow", RED, new double[] {1000, 100, 1200, 300, 1200, 100, 1000, 300}));
        shapes.add(Figure.rectangle("cross1", RED, 100, 400, 200, 60));
        shapes.add(Figure.rectangle("cross2", RED, 200, 420, 60, 200));
        shapes.add(Figure.rectangle("large", RED, 400, 400, 200, 200));
        shapes.add(Figure.circle("inside", RED, 500, 500, 40));
        shapes.add(Figure.rectangle("stretch1", RED, 700, 400, 100, 200));
        shapes.add(Figure.rectangle("stretch2", RED, 800, 420, 100, 100));
        shapes.add(Figure.rectangle("crumb", RED, 1000, 400, 0.4, 0.6));
        shapes.add(Figure.polygon("stray", RED, new double[] {1050, 400}));
        shapes.add(Figure.polygon("spiked", RED, new double[] {1100, 400, 1200, 400, 1200, 398, 1200, 500, 1100, 500}));
        shapes.add(traced());
        shapes.addAll(word("g", RED, "Vega", 100, 900, 200));
        layers.put("Letters", shapes);
        layers.put("Beside", List.of(Figure.rectangle("left", RED, 100, 1050, 200, 80), Figure.rectangle("right", WHITE, 300.4, 1050, 200, 80),
                Figure.rectangle("lower", RED, 600, 1050, 200, 80), Figure.rectangle("upper", BLUE, 799.5, 1050, 200, 80)));
        layers.put("Disc", List.of(Figure.circle("disc", GREY, 1650, 350, 150)));
        layers.put("White", List.of(Figure.circle("counter", WHITE, 850, 550, 30), Figure.rectangle("off", WHITE, -300, 100, 50, 50), Figure.rectangle("edge", WHITE, 1580, 700, 50, 50)));
        layers.put("Mixed", List.of(Figure.rectangle("under", BLUE, 100, 650, 150, 80), Figure.circle("over", WHITE, 175, 690, 20), Figure.rectangle("across", RED, 230, 670, 80, 30)));
        layers.put("Loose", List.of(Figure.open("piece1", RED, 700, 700, 900, 700, 900, 800), Figure.open("piece2", RED, 900, 800, 700, 800, 700, 700)));
        layers.put("Hidden", List.of());
        String beside = "<rect id=\"unseen\" x=\"1000\" y=\"700\" width=\"50\" height=\"50\" display=\"none\"/>"
                + "<linearGradient id=\"shade\"><stop stop-color=\"#fff\"/><stop offset=\"1\"/></linearGradient><rect id=\"shaded\" x=\"1100\" y=\"800\" width=\"60\" height=\"60\" fill=\"url(#shade)\"/>"
                + "<mask id=\"mask\"><rect width=\"2000\" height=\"2000\" fill=\"#fff\"/></mask><rect id=\"masked\" x=\"1200\" y=\"800\" width=\"60\" height=\"60\" mask=\"url(#mask)\"/>"
                + "<text id=\"text\" x=\"1300\" y=\"860\" font-family=\"No Such Font\" font-size=\"60\">Text</text>"
                + "<text id=\"shipped\" x=\"1300\" y=\"940\" font-family=\"Liberation Sans\" font-size=\"60\">Text</text>";
        String sheet = """
                build: flat cut letters
                roles:
                  - {layer: Letters, role: face}
                  - {layer: White, role: face}
                  - {layer: Mixed, role: face}
                materials:
                  - {role: face, material: acrylic, thickness: <6 mm>}
                """;
        return new Sample("drawn in haste", 1600, 1000, layers, Map.of("Hidden", beside,
                "Loose", "<path id=\"line\" d=\"M1100 700H1400\" fill=\"none\" stroke=\"#000000\" stroke-width=\"6\"/><path id=\"cut\" d=\"M1100 750H1400\" fill=\"none\" stroke=\"#000000\" stroke-width=\"0.25\"/>"),
                sheet, Map.of("returns.thickness", 0.9), Map.of("router-bits", List.of(item("3", "diameter", 3.0, "flute-length", 12.0)),
                        "sheets", List.of(item("plate", "width", 1500.0, "height", 2000.0))));
    }

    /** Stars of random corners, some lying across others, some with a hole. */
    static Sample random(long seed) {
        Random random = new Random(seed);
        List<Figure> stars = new ArrayList<>();
        for (int i = 0; i < 16; i++) {
            double x = 150 + 900 * random.nextDouble();
            double y = 150 + 900 * random.nextDouble();
            double size = 30 + 90 * random.nextDouble();
            int corners = 5 + random.nextInt(16);
            double[] star = star(random, x, y, size, 0.4, corners);
            stars.add(i % 3 == 0 ? Figure.polygon("star" + i, RED, star, star(random, x, y, 0.35 * size, 0.5, 7)) : Figure.polygon("star" + i, RED, star));
        }
        String sheet = """
                build: face-lit letters
                roles:
                  - {layer: Stars, role: face}
                materials:
                  - {role: face, material: acrylic, thickness: <4.5 mm>}
                """;
        return new Sample("stars " + seed, 1200, 1200, Map.of("Stars", stars), Map.of(), sheet, Map.of("glow.lit", "none", "returns.depth", 60.0, "returns.thickness", 0.9),
                Map.of("router-bits", List.of(item("3", "diameter", 3.0, "flute-length", 12.0), item("6", "diameter", 6.0, "flute-length", 25.0)),
                        "sheets", List.of(item("plate", "width", 1500.0, "height", 2000.0))));
    }

    private static double[] star(Random random, double x, double y, double size, double least, int corners) {
        double[] star = new double[2 * corners];
        for (int i = 0; i < corners; i++) {
            double radius = size * (least + (1 - least) * random.nextDouble());
            star[2 * i] = x + radius * Math.cos(2 * Math.PI * i / corners);
            star[2 * i + 1] = y + radius * Math.sin(2 * Math.PI * i / corners);
        }
        return star;
    }

    /** A circle as a tracer gives it: far too many corners, each a little off. */
    private static Figure traced() {
        Random random = new Random(3);
        double[] corners = new double[2 * 900];
        for (int i = 0; i < corners.length / 2; i++) {
            double angle = 4 * Math.PI * i / corners.length;
            double radius = 120 + 0.04 * random.nextDouble();
            corners[2 * i] = 1400 + radius * Math.cos(angle);
            corners[2 * i + 1] = 250 + radius * Math.sin(angle);
        }
        return Figure.polygon("traced", RED, corners);
    }

    /**
     * A choice that is another for some layers.
     *
     * @param all for all
     * @param other for those layers
     */
    record Choice(String all, String other, List<String> layers) {
        @Override
        public String toString() {
            StringBuilder text = new StringBuilder("[{value: " + all + "}");
            layers.forEach(layer -> text.append(", {value: ").append(other).append(", layer: ").append(layer).append('}'));
            return text.append(']').toString();
        }
    }

    private static Map<String, Object> item(String name, Object... fields) {
        Map<String, Object> item = new LinkedHashMap<>(Map.of("name", '"' + name + '"'));
        for (int i = 0; i < fields.length; i += 2) {
            item.put((String) fields[i], fields[i + 1]);
        }
        return item;
    }

    /** A word outlined, each letter a shape. */
    static List<Figure> word(String id, String paint, String text, double x, double y, double emMm) {
        try (InputStream file = SansFont.open()) {
            Font font = Font.createFont(Font.TRUETYPE_FONT, file).deriveFont(1000f);
            var glyphs = font.createGlyphVector(new FontRenderContext(null, true, true), text);
            AffineTransform place = AffineTransform.getTranslateInstance(x, y);
            place.scale(emMm / 1000, emMm / 1000);
            List<Figure> letters = new ArrayList<>();
            for (int i = 0; i < glyphs.getNumGlyphs(); i++) {
                Shape outline = glyphs.getGlyphOutline(i);
                if (!outline.getBounds2D().isEmpty()) {
                    letters.add(Figure.of(id + i, paint, outline.getPathIterator(place)));
                }
            }
            return letters;
        } catch (FontFormatException e) {
            throw new IllegalStateException(e);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
