// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.artwork;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import kerfglow.api.Finding;
import kerfglow.api.Measure;
import kerfglow.api.Rule;
import kerfglow.api.Severity;
import kerfglow.api.proof.Effect;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.ImageInfo;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.api.proof.TextRun;
import kerfglow.api.proof.Visibility;
import org.locationtech.jts.geom.Geometry;

/** What shows on screen but gives a cutter no outline to follow: live text, live strokes, lines, images, effects. */
final class NotCuttable {
    static final Rule TEXT = new Rule("artwork.live-text", Severity.REVIEW, "Lettering is still live text",
            "It has outlines only where its font is installed, and the next program may set it in another one or break the line elsewhere.",
            "Turn the text into outlines before the file leaves the designer.", "common practice, no source");
    static final Rule SUBSTITUTED = new Rule("artwork.substituted-font", Severity.STOP, "Live text is set in another font than was asked for",
            "What is measured here, and would be cut, is not the lettering that the customer approved.",
            "Have the text turned into outlines where the font is installed, or install the font.", "common practice, no source");
    static final Rule STROKE = new Rule("artwork.live-stroke", Severity.REVIEW, "A stroke paints area that is no outline yet",
            "CAD and cutters follow the line in its middle; the painted edges become geometry only when the stroke is expanded.",
            "Expand the stroke and unite it with its fill, or delete it.", "common practice, no source");
    static final Rule CUT_LINE = new Rule("artwork.cut-line", Severity.REVIEW, "A cut line counts as a part of its own",
            "What a line paints is a strip as thin as the line, and the checks measure that strip; a shape that is only drawn round is not measured at all.",
            "Fill the shapes and take the line off; or give the line the role note where it is only for show.", "geometry");
    static final Rule IMAGE = new Rule("artwork.image", Severity.REVIEW, "An image stands in the artwork",
            "Pixels have no outline, so nothing of it can be cut; at best it can be printed.",
            "Redraw it as shapes, or put it in a layer of notes when it is only for show.", "common practice, no source");
    static final Rule MASK = new Rule("artwork.mask", Severity.STOP, "A mask decides what is seen",
            "The outline that is measured and cut is that of the whole shape, not of what shows through the mask.",
            "Cut the shape to what is to be seen and take the mask off.", "common practice, no source");
    static final Rule EFFECT = new Rule("artwork.effect", Severity.REVIEW, "A shape is painted with an effect that no cutter follows",
            "Sheet and film have one flat colour and a sharp edge; shading, blur, transparency and markers get lost without a word.",
            "Replace the effect by flat shapes, or give the shape the role print.", "common practice, no source");

    /** A printer makes these; a mask and a marker change the outline and count there too. */
    private static final Set<Effect> PRINTABLE = EnumSet.of(Effect.GRADIENT, Effect.PATTERN, Effect.FILTER, Effect.PARTIAL_OPACITY,
            Effect.BLEND_MODE);

    private final Artwork artwork;
    private final List<Gatherer> gatherers = new ArrayList<>();

    private NotCuttable(Artwork artwork) {
        this.artwork = artwork;
    }

    static List<Finding> find(Artwork artwork) {
        NotCuttable rules = new NotCuttable(artwork);
        Gatherer text = rules.gatherer(TEXT);
        Gatherer substituted = rules.gatherer(SUBSTITUTED);
        Gatherer stroke = rules.gatherer(STROKE);
        Gatherer cutLine = rules.gatherer(CUT_LINE);
        Gatherer image = rules.gatherer(IMAGE);
        Gatherer mask = rules.gatherer(MASK);
        Gatherer effect = rules.gatherer(EFFECT);
        for (Element element : artwork.elements()) {
            if (element.visibility() != Visibility.SHOWN || !artwork.isOfTheSign(element)) {
                continue;
            }
            element.text().ifPresent(run -> rules.addText(element, run, run.substituted() ? SUBSTITUTED : TEXT,
                    run.substituted() ? substituted : text));
            element.image().ifPresent(info -> rules.addImage(element, info, image));
            if (!element.strokeArea().isEmpty() && !artwork.isHairline(element)) {
                rules.addStroke(element, stroke);
            } else if (artwork.parts(element).stream().anyMatch(part -> part.sources().equals(Set.of(Part.Source.STROKE)))) {
                rules.addCutLine(element, cutLine);
            }
            rules.addEffects(element, mask, effect);
        }
        List<Finding> findings = new ArrayList<>();
        rules.gatherers.forEach(gatherer -> findings.addAll(gatherer.findings()));
        return findings;
    }

    private Gatherer gatherer(Rule rule) {
        Gatherer gatherer = new Gatherer(artwork, rule);
        gatherers.add(gatherer);
        return gatherer;
    }

    private void addText(Element element, TextRun run, Rule rule, Gatherer into) {
        String asked = run.fontAsked().isEmpty() ? "no font" : "font " + run.fontAsked();
        String used = run.substituted() ? "; it is not here, so " + run.fontUsed() + " stands in for it" : "";
        add(into, rule, element, artwork.name(element) + " is live text, \"" + run.text() + "\", in " + asked + ", "
                + artwork.length(run.sizeMm()) + " em" + used);
    }

    private void addImage(Element element, ImageInfo info, Gatherer into) {
        String pixels = info.pixelWidth() > 0 && info.pixelHeight() > 0 ? info.pixelWidth() + " by " + info.pixelHeight() + " pixels"
                : "pixels that cannot be read";
        add(into, IMAGE, element, artwork.name(element) + " is an image of " + pixels + " over " + artwork.length(info.widthMm()) + " by "
                + artwork.length(info.heightMm()) + (info.embedded() ? "" : "; its pixels are not in the file")
                + "; it cannot be cut");
    }

    private void addStroke(Element element, Gatherer into) {
        Geometry place = element.strokeArea();
        String message = artwork.name(element) + " has a live stroke " + artwork.length(element.strokeWidthMm()) + " wide in "
                + element.stroke() + (element.fill().isPainted() && !element.fillArea().isEmpty()
                        ? ", which makes its shape larger by half of that all round" : "");
        into.add(element, place, artwork.finding(STROKE, message, List.of(element)).place(place)
                .measured(Measure.mm(element.strokeWidthMm())).build());
    }

    private void addCutLine(Element element, Gatherer into) {
        String message = artwork.name(element) + " has a line " + artwork.length(element.strokeWidthMm()) + " wide in " + element.stroke()
                + (element.fillArea().isEmpty() ? " and no fill; the line itself is measured, not the shape inside it"
                        : "; it is measured beside the filled shape, as a part of its own");
        into.add(element, element.strokeArea(), artwork.finding(CUT_LINE, message, List.of(element)).place(element.strokeArea())
                .measured(Measure.mm(element.strokeWidthMm())).build());
    }

    private void addEffects(Element element, Gatherer mask, Gatherer effect) {
        Set<Effect> effects = EnumSet.noneOf(Effect.class);
        effects.addAll(element.effects());
        List<Part> parts = artwork.parts(element);
        if (!parts.isEmpty() && parts.stream().allMatch(part -> part.role() == Role.PRINT)) {
            effects.removeAll(PRINTABLE);
        }
        if (effects.remove(Effect.MASK)) {
            add(mask, MASK, element, artwork.name(element) + " is seen through a mask; its whole outline is measured");
        }
        if (!effects.isEmpty()) {
            String words = effects.stream().map(each -> each.name().toLowerCase(Locale.ROOT).replace('_', ' '))
                    .collect(Collectors.joining(", "));
            add(effect, EFFECT, element, artwork.name(element) + " is painted with " + words + ", which no cutter follows", words);
        }
    }

    private void add(Gatherer into, Rule rule, Element element, String message) {
        add(into, rule, element, message, "");
    }

    private void add(Gatherer into, Rule rule, Element element, String message, String cause) {
        Geometry place = element.fillArea().isEmpty() ? element.strokeArea() : element.fillArea();
        Finding.Builder finding = artwork.finding(rule, message, List.of(element)).cause(cause);
        into.add(element, place, place.isEmpty() ? finding.build() : finding.place(place).build());
    }
}
