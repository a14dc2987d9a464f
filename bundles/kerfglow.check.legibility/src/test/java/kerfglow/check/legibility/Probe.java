// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;
import java.util.*;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.*;
class Probe {
    @Test
    void probe() {
        String[][] fonts = {
            {"fonts-dejavu-core","fonts/truetype/dejavu/DejaVuSans.ttf"},{"","fonts/truetype/dejavu/DejaVuSerif-Bold.ttf"},{"","fonts/truetype/dejavu/DejaVuSansMono.ttf"},{"","fonts/truetype/dejavu/DejaVuSerif.ttf"},{"","fonts/truetype/dejavu/DejaVuSans-Bold.ttf"},
            {"","fonts/truetype/liberation/LiberationSans-Regular.ttf"},{"","fonts/truetype/liberation/LiberationSerif-Italic.ttf"},{"","fonts/truetype/liberation/LiberationSansNarrow-Bold.ttf"},{"","fonts/truetype/liberation/LiberationMono-Regular.ttf"},
            {"","texmf/fonts/opentype/public/tex-gyre/texgyreadventor-regular.otf"},{"","texmf/fonts/opentype/public/tex-gyre/texgyrebonum-bold.otf"},{"","texmf/fonts/opentype/public/tex-gyre/texgyrechorus-mediumitalic.otf"},{"","texmf/fonts/opentype/public/tex-gyre/texgyrecursor-regular.otf"},{"","texmf/fonts/opentype/public/tex-gyre/texgyreheros-bold.otf"},{"","texmf/fonts/opentype/public/tex-gyre/texgyreheroscn-bold.otf"},{"","texmf/fonts/opentype/public/tex-gyre/texgyrepagella-italic.otf"},{"","texmf/fonts/opentype/public/tex-gyre/texgyreschola-regular.otf"},{"","texmf/fonts/opentype/public/tex-gyre/texgyretermes-regular.otf"},
            {"","fonts/opentype/dancingscript/DancingScript-Regular.otf"},{"","fonts/opentype/lobster/lobster.otf"},{"","fonts/truetype/ecolier-court/Ecolier-court.ttf"}};
        for (String[] f : fonts) {
            OpenFont font = OpenFont.of(f[0], f[1], 150);
            Envelope h = font.glyph('H').getEnvelopeInternal();
            Envelope x = font.glyph('x').getEnvelopeInternal();
            System.out.printf("%s cap %.2f H %.3f..%.3f x %.2f x %.3f%n", f[1].replaceAll(".*/",""), font.capMm(), -h.getMaxY()/150, -h.getMinY()/font.capMm(), font.xMm(), -x.getMinY()/font.xMm());
            String text = "Hex Fruit King";
            double len = 900;
            show(font, "straight", font.straight(text));
            show(font, "rot17", OpenFont.turned(font.straight(text), 17));
            show(font, "rot-90", OpenFont.turned(font.straight(text), -90));
            show(font, "arch", font.arched(text, new Coordinate(0,0), 700, true));
            show(font, "smile", font.arched(text, new Coordinate(0,0), 700, false));
            show(font, "circle", font.arched(text+" "+text, new Coordinate(0,0), 400, true));
            show(font, "caps", font.straight("FINEST BREAD"));
            show(font,"tri", OpenFont.turned(font.straight("FINEST BREAD"),-8)); show(font, "round", font.straight("COGS oceo"));
        }
    }
    private void show(OpenFont font, String what, List<Polygon> polygons) {
        LineFinder.Found found = LineFinder.find(OpenFont.asPieces(polygons), 0.5, () -> { });
        StringBuilder s = new StringBuilder();
        for (Line line : found.lines()) {
            s.append(String.format(" [%s n%d m%d c%.2f cap %+.2f%% x %s ang %.2f%s]", line.frame().form(), line.letters().size(), line.marks().size(), line.confidence(), 100*(line.model().capMm()/font.capMm()-1),
                line.model().xMm().isPresent() ? String.format("%+.2f%%", 100*(line.model().xMm().getAsDouble()/font.xMm()-1)) : "-", Math.toDegrees(line.frame().angle()), line.isJoined() ? " joined" : ""));
        }
        System.out.println("   " + what + " pieces " + polygons.size() + " left " + found.left().size() + s);
    }
}
