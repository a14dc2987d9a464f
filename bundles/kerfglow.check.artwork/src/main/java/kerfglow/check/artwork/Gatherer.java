// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.artwork;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import kerfglow.api.Finding;
import kerfglow.api.Measure;
import kerfglow.api.Rule;
import kerfglow.api.Setting;
import kerfglow.api.proof.Element;
import org.locationtech.jts.geom.Geometry;

/** Keeps places of one rule apart while a person can read them all, and takes those of a layer together beyond that. */
final class Gatherer {
    static final Setting<Integer> LIST_AT_MOST = Setting.count("artwork.list-at-most",
            "places of one rule and layer that are listed singly", 25, 0, 100_000,
            "Assumed: more than a screenful of like places is one fault of the drawing, not many", "common practice, no source");

    private final Artwork artwork;
    private final Rule rule;
    private final Map<String, List<Place>> byLayer = new LinkedHashMap<>();

    private record Place(Element element, Geometry geometry, Finding single) {
    }

    Gatherer(Artwork artwork, Rule rule) {
        this.artwork = artwork;
        this.rule = rule;
    }

    /** Adds a place with the finding that it has when it stands by itself. */
    void add(Element element, Geometry geometry, Finding single) {
        byLayer.computeIfAbsent(element.layer(), layer -> new ArrayList<>()).add(new Place(element, geometry, single));
    }

    List<Finding> findings() {
        int most = artwork.inspection().settings().get(LIST_AT_MOST);
        List<Finding> findings = new ArrayList<>();
        byLayer.forEach((layer, places) -> {
            if (places.size() <= most) {
                places.forEach(place -> findings.add(place.single()));
            } else {
                findings.add(together(layer, places));
            }
        });
        return findings;
    }

    private Finding together(String layer, List<Place> places) {
        String message = places.size() + " places in " + (layer.isEmpty() ? "no layer" : "layer " + layer) + "; the first: "
                + places.get(0).single().message();
        Finding.Builder finding = artwork.finding(rule, message, places.stream().map(Place::element).distinct().toList())
                .measured(Measure.count(places.size()));
        List<Geometry> geometries = places.stream().map(Place::geometry).filter(geometry -> !geometry.isEmpty()).toList();
        if (!geometries.isEmpty()) {
            places.get(0).single().at().ifPresent(finding::at);
            finding.place(geometries.get(0).getFactory().buildGeometry(geometries));
        }
        return finding.build();
    }
}
