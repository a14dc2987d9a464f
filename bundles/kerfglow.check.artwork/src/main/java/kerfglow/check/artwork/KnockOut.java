// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.artwork;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import kerfglow.api.Finding;
import kerfglow.api.Measure;
import kerfglow.api.Quantity;
import kerfglow.api.Rule;
import kerfglow.api.Setting;
import kerfglow.api.Severity;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.Paint;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.index.strtree.STRtree;

/** Parts drawn in a light colour, or in the colour of what lies below, on top of another part: maybe meant to take it away. */
final class KnockOut {
    static final Rule RULE = new Rule("artwork.maybe-knock-out", Severity.REVIEW, "A shape on top may be meant to knock out what lies below",
            "A counter drawn as a white shape looks right on the proof, but the part below is cut without it and the white shape becomes "
                    + "a part of its own.",
            "If it is meant as a counter, subtract it, or list its colour under knock-out in the job sheet; if not, give it a role of its own.",
            "common practice, no source");
    static final Setting<Double> LIGHTNESS = Setting.number("artwork.knock-out-lightness",
            "relative luminance from which a colour may stand for nothing", Quantity.RATIO, 0.8, 0, 1,
            "Assumed: white and near white are drawn for paper or light", "common practice, no source");

    // Relative luminance of an sRGB colour, WCAG 2.2, definition of "relative luminance".
    private static final double RED_SHARE = 0.2126;
    private static final double GREEN_SHARE = 0.7152;
    private static final double BLUE_SHARE = 0.0722;
    private static final double LINEAR_BELOW = 0.04045;
    private static final double LINEAR_SLOPE = 12.92;
    private static final double OFFSET = 0.055;
    private static final double EXPONENT = 2.4;
    private static final double FULL = 255;

    private final Artwork artwork;
    private final STRtree tree = new STRtree();
    private final List<Layered> parts = new ArrayList<>();

    /** A part with what makes many containment tests fast. */
    private record Layered(Part part, PreparedGeometry shape) {
    }

    private KnockOut(Artwork artwork) {
        this.artwork = artwork;
        for (Part part : artwork.inspection().parts()) {
            if (part.role() != Role.HOLE && part.role() != Role.OPENING && part.role() != Role.KEEP_OUT && part.role() != Role.MODULE) {
                Layered layered = new Layered(part, PreparedGeometryFactory.prepare(part.shape()));
                parts.add(layered);
                tree.insert(part.shape().getEnvelopeInternal(), layered);
            }
        }
        tree.build();
    }

    static List<Finding> find(Artwork artwork) {
        KnockOut rule = new KnockOut(artwork);
        Gatherer found = new Gatherer(artwork, RULE);
        for (Layered top : rule.parts) {
            rule.look(top.part(), found);
        }
        return found.findings();
    }

    /** Only a part of the same role can be a slip: another role was given on purpose. */
    private void look(Part top, Gatherer found) {
        if (top.paint().kind() != Paint.Kind.COLOUR) {
            return;
        }
        List<Part> below = below(top);
        Optional<Part> sameRole = below.stream().filter(part -> part.role() == top.role() && !part.paint().equals(top.paint())).findFirst();
        if (sameRole.isEmpty()) {
            return;
        }
        Part under = sameRole.get();
        boolean film = !top.role().isRouted(); // light film on dark film is the usual way to letter
        boolean light = !film && luminance(top.paint().rgb()) >= artwork.inspection().settings().get(LIGHTNESS, top)
                && luminance(top.paint().rgb()) > luminance(under.paint().rgb());
        boolean background = below.stream().anyMatch(part -> part.order() < under.order() && part.paint().equals(top.paint()));
        if (!light && !background) {
            return;
        }
        Envelope extent = top.shape().getEnvelopeInternal();
        String message = "A " + top.role().word() + " in " + top.paint() + ", " + artwork.length(extent.getWidth()) + " by "
                + artwork.length(extent.getHeight()) + ", lies on top of " + under.role().word() + " " + under.id() + " in " + under.paint()
                + (background ? " and has the colour of what lies below that" : " and is light")
                + "; it may be meant as a counter, but is measured as a part";
        Finding finding = Finding.of(RULE, message).place(top.shape()).parts(top.id(), under.id()).measured(Measure.count(1)).build();
        found.add(Element.builder(top.id()).layer(top.layer()).build(), top.shape(), finding);
    }

    /** The parts that a part lies wholly within and above, the topmost first. */
    private List<Part> below(Part top) {
        List<Part> below = new ArrayList<>();
        for (Object each : tree.query(top.shape().getEnvelopeInternal())) {
            Layered other = (Layered) each;
            if (other.part() != top && other.part().order() < top.order()
                    && other.part().shape().getEnvelopeInternal().contains(top.shape().getEnvelopeInternal())
                    && other.shape().covers(top.shape())) {
                below.add(other.part());
            }
        }
        below.sort((one, two) -> Integer.compare(two.order(), one.order()));
        return below;
    }

    static double luminance(int rgb) {
        return RED_SHARE * linear(rgb >> 16 & 0xFF) + GREEN_SHARE * linear(rgb >> 8 & 0xFF) + BLUE_SHARE * linear(rgb & 0xFF);
    }

    private static double linear(int channel) {
        double value = channel / FULL;
        return value <= LINEAR_BELOW ? value / LINEAR_SLOPE : Math.pow((value + OFFSET) / (1 + OFFSET), EXPONENT);
    }
}
