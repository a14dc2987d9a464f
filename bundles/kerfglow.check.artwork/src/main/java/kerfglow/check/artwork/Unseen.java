// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.artwork;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import kerfglow.api.Finding;
import kerfglow.api.Measure;
import kerfglow.api.Rule;
import kerfglow.api.Severity;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.Outline;
import kerfglow.api.proof.Visibility;
import org.locationtech.jts.geom.Geometry;

/** Elements that are in the file and not seen: one finding for each layer and way of not being seen. */
final class Unseen {
    static final Rule RULE = new Rule("artwork.hidden", Severity.REVIEW, "Something in the file is not seen",
            "CAD often takes over what a viewer hides, so an old version gets cut; or a shape that belongs to the sign was hidden and is missed.",
            "Delete what is left over, and show what belongs to the sign.", "common practice, no source");

    /** Elements named in a message; more do not fit on a line. */
    private static final int NAMED = 3;

    private record Group(String layer, Visibility visibility) {
    }

    private Unseen() {
    }

    static List<Finding> find(Artwork artwork) {
        Map<Group, List<Element>> groups = new LinkedHashMap<>();
        for (Element element : artwork.elements()) {
            if (element.visibility() != Visibility.SHOWN && artwork.isOfTheSign(element)) {
                groups.computeIfAbsent(new Group(element.layer(), element.visibility()), any -> new ArrayList<>()).add(element);
            }
        }
        List<Finding> findings = new ArrayList<>();
        groups.forEach((group, elements) -> findings.add(finding(artwork, group, elements)));
        return findings;
    }

    private static Finding finding(Artwork artwork, Group group, List<Element> elements) {
        String names = String.join(", ", elements.stream().limit(NAMED).map(artwork::name).toList())
                + (elements.size() > NAMED ? " and " + (elements.size() - NAMED) + " more" : "");
        String verb = elements.size() == 1 ? " is " : " are ";
        Finding.Builder finding = artwork.finding(RULE, names + verb + words(group.visibility()), elements)
                .measured(Measure.count(elements.size())).required(Measure.count(0)).cause(group.visibility().name());
        List<Geometry> shapes = elements.stream().flatMap(element -> element.outlines().stream()).map(Outline::path)
                .filter(path -> !path.isEmpty()).toList();
        if (!shapes.isEmpty()) {
            finding.at(shapes.get(0).getCoordinate()).place(shapes.get(0).getFactory().buildGeometry(shapes));
        }
        return finding.build();
    }

    private static String words(Visibility visibility) {
        return switch (visibility) {
            case NOT_DISPLAYED -> "switched off (display: none)";
            case HIDDEN -> "hidden (visibility)";
            case TRANSPARENT -> "wholly transparent";
            case UNPAINTED -> "painted with neither fill nor stroke";
            case CLIPPED_AWAY -> "wholly clipped away";
            case SHOWN -> "shown";
        };
    }
}
