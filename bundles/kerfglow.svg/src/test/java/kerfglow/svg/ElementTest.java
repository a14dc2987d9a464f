// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import javax.imageio.ImageIO;
import kerfglow.api.proof.Effect;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.ImageInfo;
import kerfglow.api.proof.ImportOptions;
import kerfglow.api.proof.Outline;
import kerfglow.api.proof.Paint;
import kerfglow.api.proof.Proof;
import kerfglow.api.proof.Visibility;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Point;

/** What is told about elements besides their areas. */
class ElementTest {
    private static final String DOT = "<rect width='1' height='1'/>";

    /** Terms of design.md, section 1, "layer". */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "<g id='FACE'>D</g><g id='BACK'>D</g>                                | FACE BACK",
        "<g id='wrap'><g id='FACE'>D</g><g id='BACK'>D</g></g>               | FACE BACK",
        "<g><g id='wrap'><g id='FACE'>D</g>D</g></g><defs><path/></defs>     | FACE (root)",
        "<g id='FACE'><g id='letter'>D</g></g><g id='BACK'><g>D</g></g>      | FACE BACK",
        "<g id='FACE'>D</g>                                                  | FACE",
        "<g id='wrap'><g id='FACE'>D</g></g>                                 | FACE",
        "D<g><g id='BACK'>D</g></g>                                          | (root) BACK",
        "D                                                                   | (root)",
        "<g id='a' xmlns:i='urn:x' i:label='Face layer'>D</g>D               | Face_layer (root)",
        "<g id='a' aria-label='Vinyl'>D</g>D                                 | Vinyl (root)",
        "<g id='a'><title>Film</title>D</g>D                                 | Film (root)",
        "<g xmlns:i='urn:x' i:label='Faces'><g id='g10'>D</g>D</g>           | Faces Faces",
        "<g id='g2'><g xmlns:i='urn:x' i:label='Faces'><g id='g10'>D</g></g></g> | Faces",
        "<g xmlns:i='urn:x' i:label='All'><g i:label='Faces'>D</g><g id='g10'>D</g></g> | Faces g10",
        "<g id='Layer_1'>D</g><g id='Layer_2'>D</g>                          | Layer_1 Layer_2",
        "<defs><g id='in'>D</g></defs><use href='#in'/><g id='BACK'><use href='#in'/></g> | (root) BACK"})
    void layers(String content, String expected) {
        Proof proof = Svg.read(Svg.in100(content.replace("D", DOT)));
        assertEquals(expected, proof.elements().stream().map(e -> e.layer().replace(' ', '_')).collect(Collectors.joining(" ")));
    }

    @Test
    void ids_are_unique_and_use_has_its_own() {
        Proof proof = Svg.read(Svg.in100("<defs><g id='g'><rect id='r' width='1' height='1'/></g></defs><use id='u' href='#g'/><use href='#g'/>"
                + DOT + DOT + "<rect id='rect-2' width='1' height='1'/><rect id='r~3' width='1' height='1'/><use href='#r'/>"));
        assertEquals(List.of("r", "r~2", "rect-1", "rect-3", "rect-2", "r~3", "r~4"), proof.elements().stream().map(Element::id).toList());
        assertEquals(List.of("r", "g", "u"), proof.elements().get(0).idPath());
        for (int i = 0; i < proof.elements().size(); i++) {
            assertEquals(i, proof.elements().get(i).order());
        }
    }

    @Test
    void labels_lines_and_parts_are_kept() {
        Proof proof = Svg.read("<svg xmlns='http://www.w3.org/2000/svg' width='9' height='9'>\n<g data-part='face'>\n"
                + "<rect width='1' height='1' aria-label='Letter A'/>\n<rect data-part='back' width='1' height='1'/></g></svg>");
        assertEquals(List.of(3, 4), proof.elements().stream().map(Element::line).toList());
        assertEquals(List.of("face", "back"), proof.elements().stream().map(Element::dataPart).toList());
        assertEquals("Letter A", proof.elements().get(0).label());
        assertEquals(64, proof.sha256().length());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "<rect width='1' height='1'/>                                         | SHOWN",
        "<g display='none'><rect width='1' height='1'/></g>                   | NOT_DISPLAYED",
        "<rect width='1' height='1' style='display:none'/>                    | NOT_DISPLAYED",
        "<g visibility='hidden'><rect width='1' height='1'/></g>              | HIDDEN",
        "<rect width='1' height='1' visibility='collapse'/>                   | HIDDEN",
        "<g opacity='0'><rect width='1' height='1'/></g>                      | TRANSPARENT",
        "<rect width='1' height='1' fill-opacity='0'/>                        | TRANSPARENT",
        "<rect width='1' height='1' fill='transparent'/>                      | TRANSPARENT",
        "<rect width='1' height='1' fill='none'/>                             | UNPAINTED",
        "<rect width='1' height='1' fill='none' stroke='red' stroke-width='0'/> | UNPAINTED",
        "<clipPath id='c'/><rect width='1' height='1' clip-path='url(#c)'/>   | CLIPPED_AWAY",
        "<svg width='5' height='5'><rect x='9' width='1' height='1'/></svg>   | CLIPPED_AWAY",
        "<switch><g/><rect width='1' height='1'/></switch>                    | NOT_DISPLAYED"})
    void visibility(String content, Visibility expected) {
        assertEquals(expected, Svg.only(content).visibility());
    }

    @Test
    void what_is_hidden_keeps_its_area() {
        assertEquals(1, Svg.only("<rect width='1' height='1' display='none'/>").fillArea().getArea(), 1e-9);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "<linearGradient id='p'><stop stop-color='#0f0'/><stop offset='1'/></linearGradient><rect width='1' height='1' fill='url(#p)'/> | GRADIENT",
        "<linearGradient id='q'><stop stop-color='#0f0'/><stop offset='1'/></linearGradient><radialGradient id='p' href='#q'/><rect width='1' height='1' fill='url(#p)'/> | GRADIENT",
        "<pattern id='p'/><rect width='1' height='1' fill='url(#p) red'/>          | PATTERN",
        "<mask id='m'/><g mask='url(#m)'><rect width='1' height='1'/></g>          | MASK",
        "<filter id='f'/><rect width='1' height='1' style='filter:url(#f)'/>       | FILTER",
        "<rect width='1' height='1' opacity='50%'/>                                | PARTIAL_OPACITY",
        "<rect width='1' height='1' fill='#ff000080'/>                             | PARTIAL_OPACITY",
        "<g style='mix-blend-mode:multiply'><rect width='1' height='1'/></g>       | BLEND_MODE",
        "<marker id='k'/><path d='M0 0h1v1' marker-mid='url(#k)'/>                 | MARKER",
        "<rect width='1' height='1'/>                                              | ''"})
    void effects(String content, String expected) {
        Set<Effect> effects = expected.isEmpty() ? EnumSet.noneOf(Effect.class) : EnumSet.of(Effect.valueOf(expected));
        Element element = Svg.only(content);
        assertEquals(effects, element.effects());
        assertTrue(element.fillArea().getArea() > 0, "the outline is kept");
    }

    /** Values from CSS Color 4. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"#0f8|#00ff88", "#0f8f|#00ff88", "rebeccapurple|#663399", "rgb(255,0,51)|#ff0033", "rgb(100%, 0%, 20%)|#ff0033",
        "rgb(255 0 51 / 100%)|#ff0033", "hsl(120, 100%, 25%)|#008000", "hsl(0.5turn 100% 50%)|#00ffff", "currentColor|#0000ff", "CornflowerBlue|#6495ed",
        "var(--x)|#123456", "var(--y, red)|#ff0000", "inherit|#ffa500", "url(#none) lime|#00ff00"})
    void colours(String fill, String expected) {
        assertEquals(expected, Svg.only("<g color='blue' fill='orange' style='--x:#123456'><rect width='1' height='1' style='fill:" + fill
                + "'/></g>").fill().toString());
    }

    @Test
    void gradients_tell_their_colours() {
        Element e = Svg.only("<linearGradient id='p'><stop stop-color='#0f0'/><stop offset='1'/></linearGradient>"
                + "<rect width='1' height='1' fill='url(#p)'/>");
        assertEquals(new Paint(Paint.Kind.GRADIENT, 0x00ff00, List.of(0x00ff00, 0)), e.fill());
    }

    @Test
    void outlines_tell_subpaths_and_nodes_as_drawn() {
        Element e = Svg.only("<path d='M0 0 H10 V10 z M20 0 C 20 10 30 10 30 0 M40 40 M50 0 L60 0 L50 5 L50 0'/>");
        List<Outline> outlines = e.outlines();
        assertEquals(List.of(true, false, false, true), outlines.stream().map(Outline::closed).toList());
        assertEquals(List.of(3, 2, 1, 3), outlines.stream().map(o -> o.nodes().getNumGeometries()).toList());
        assertTrue(outlines.get(1).path().getNumPoints() > 10, "the curve is flattened");
        assertTrue(outlines.get(2).path() instanceof Point);
        assertEquals(4, Svg.only("<circle r='5'/>").outlines().get(0).nodes().getNumGeometries());
        assertEquals(8, Svg.only("<rect width='9' height='9' rx='1'/>").outlines().get(0).nodes().getNumGeometries());
    }

    @ParameterizedTest
    @ValueSource(strings = {"png", "jpg", "gif"})
    void images_keep_place_size_and_pixels(String format) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        assertTrue(ImageIO.write(new BufferedImage(300, 150, BufferedImage.TYPE_INT_RGB), format, bytes));
        String uri = "data:image/" + format + ";base64," + Base64.getEncoder().encodeToString(bytes.toByteArray());
        Element e = Svg.only("<image x='10' y='20' width='40' height='40' transform='scale(2)' href='" + uri + "'/>");
        assertEquals(new ImageInfo(300, 150, 80, 40, true), e.image().orElseThrow());
        assertEquals("Env[20.0 : 100.0, 60.0 : 100.0]", e.fillArea().getEnvelopeInternal().toString());
        assertEquals(Element.Origin.IMAGE, e.origin());
    }

    @Test
    void images_elsewhere_keep_their_rectangle() {
        Element e = Svg.only("<image width='40' height='30' href='file:///etc/hostname'/>");
        assertEquals(new ImageInfo(0, 0, 40, 30, false), e.image().orElseThrow());
        assertEquals(1200, e.fillArea().getArea(), 1e-9);
    }

    @Test
    void notes_name_the_element_as_the_proof_does() {
        Proof proof = Svg.read(Svg.in100(DOT + "<rect width='1' height='1' fill='octarine'/><rect id='r' width='1' height='1' fill='octarine'/>"));
        assertEquals(List.of("rect-2", "r"), proof.notes().stream().map(n -> n.element()).toList());
    }

    @Test
    void selectors_see_where_the_used_element_stands() {
        Proof proof = Svg.read(Svg.in100("<style>#d > rect.k:first-child {fill:red}</style><defs id='d'><rect id='r' class='j k' width='1' height='1'/></defs>"
                + "<use href='#r'/>"));
        assertEquals("#ff0000", proof.elements().get(0).fill().toString());
    }

    @Test
    void geometry_in_style_wins_over_attributes() {
        Proof proof = Svg.read(Svg.in100("<style>circle{r:20px} path{d:path('M0 0H10V10z')}</style><circle r='1'/><path d='M0 0'/>"
                + "<rect style='width:10px;height:20px' width='auto' rx='auto'/>"));
        assertEquals(Math.PI * 400, proof.elements().get(0).fillArea().getArea(), 1);
        assertEquals(50, proof.elements().get(1).fillArea().getArea(), 1e-9);
        assertEquals(200, proof.elements().get(2).fillArea().getArea(), 1e-9);
    }

    @Test
    void transform_origin_and_angles_of_css() {
        assertEquals("Env[20.0 : 40.0, -10.0 : 30.0]", Svg.only("<rect x='10' width='40' height='20' "
                + "style='transform: rotate(0.25turn); transform-origin: 30px 10px'/>").fillArea().getEnvelopeInternal().toString());
    }

    @Test
    void progress_rises_to_one() {
        List<Double> told = new ArrayList<>();
        Svg.read(Svg.in100(DOT.repeat(1000)), ImportOptions.defaults().withProgress(told::add));
        assertTrue(told.size() > 5);
        assertEquals(1.0, told.get(told.size() - 1));
        assertEquals(told.stream().sorted().toList(), told);
    }

    /** A proof of 2,000 letters with 490,000 corners: a few seconds, warm, on one thread. */
    @Test
    void large_proof() {
        StringBuilder svg = new StringBuilder();
        for (int i = 0; i < 2000; i++) {
            svg.append("<g transform='translate(").append(i % 50 * 60).append(' ').append(i / 50 * 60).append(")'><path d='M0 25");
            for (int k = 0; k < 5; k++) {
                svg.append("c5 ").append(-9 - k).append(" 3 -14 5 -5");
            }
            svg.append("S30 60 0 25z M5 30c3 3 9 2 12 0z'/></g>");
        }
        String text = Svg.in100(svg.toString());
        ImportOptions fine = ImportOptions.defaults().withChordErrorMm(0.008);
        int corners = Svg.read(text, fine).elements().stream().flatMap(e -> e.outlines().stream()).mapToInt(o -> o.path().getNumPoints()).sum();
        assertTrue(corners > 490_000 && corners < 1_000_000, corners + " corners");
        long start = System.nanoTime();
        Proof proof = Svg.read(text, fine);
        double seconds = (System.nanoTime() - start) / 1e9;
        assertTrue(seconds < 5, seconds + " s");
        assertTrue(proof.elements().stream().map(Element::fillArea).allMatch(Geometry::isValid));
        assertFalse(proof.elements().isEmpty());
    }
}
