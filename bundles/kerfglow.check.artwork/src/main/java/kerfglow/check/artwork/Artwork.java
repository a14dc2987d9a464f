// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.artwork;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import kerfglow.api.Finding;
import kerfglow.api.Inspection;
import kerfglow.api.Rule;
import kerfglow.api.Setting;
import kerfglow.api.SharedSettings;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.Outline;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Visibility;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateArrays;
import org.locationtech.jts.geom.LineString;

/** The proof as the rules look at it: which elements become something, what they become, and how a message names them. */
final class Artwork {
    /** Strokes thinner than a plotter's blade or any bit are drawn to say "cut here", not to be made. */

    /** Coordinates are kept to this; a limit that is missed by less is kept. Design of the import: right to 0.001 mm up to 4 m. */
    static final double RESOLUTION_MM = 0.001;

    private final Inspection inspection;
    private final Map<String, List<Part>> partsByElement = new HashMap<>();
    private final Set<String> noteLayers = new HashSet<>();
    private final List<Contour> contours = new ArrayList<>();

    Artwork(Inspection inspection) {
        this.inspection = inspection;
        for (Part part : inspection.parts()) {
            part.elements().forEach(id -> partsByElement.computeIfAbsent(id, any -> new ArrayList<>(1)).add(part));
        }
        collectNoteLayers();
        for (Element element : inspection.proof().elements()) {
            if (isCut(element)) {
                addContours(element);
            }
        }
    }

    /** What is drawn there is seen but becomes nothing, so the job sheet calls it note or unused. */
    private void collectNoteLayers() {
        Set<String> used = new HashSet<>();
        for (Element element : inspection.proof().elements()) {
            if (partsByElement.containsKey(element.id())) {
                used.add(element.layer());
            } else if (element.visibility() == Visibility.SHOWN && element.origin() != Element.Origin.IMAGE && paintsArea(element)) {
                noteLayers.add(element.layer());
            }
        }
        noteLayers.removeAll(used);
    }

    private void addContours(Element element) {
        List<Outline> outlines = element.outlines();
        for (int i = 0; i < outlines.size(); i++) {
            if (outlines.get(i).path() instanceof LineString line) {
                Coordinate[] points = CoordinateArrays.removeRepeatedPoints(line.getCoordinates());
                if (points.length > 1) {
                    contours.add(new Contour(contours.size(), element, parts(element).get(0), outlines.get(i), points));
                }
            }
        }
    }

    Inspection inspection() {
        return inspection;
    }

    List<Element> elements() {
        return inspection.proof().elements();
    }

    /** The outlines that a blade or a bit is to follow, in paint order; never those of live text. */
    List<Contour> contours() {
        return contours;
    }

    /** The parts that an element is in; empty for notes, leftovers and what paints nothing. */
    List<Part> parts(Element element) {
        return partsByElement.getOrDefault(element.id(), List.of());
    }

    static boolean paintsArea(Element element) {
        return !element.fillArea().isEmpty() || !element.strokeArea().isEmpty();
    }

    /**
     * True when an element is the sign's own: it is in a part, or it could be in none (hidden, without area, an image) and does
     * not lie in a layer of notes.
     */
    boolean isOfTheSign(Element element) {
        if (partsByElement.containsKey(element.id())) {
            return true;
        }
        boolean couldBeNone = element.visibility() != Visibility.SHOWN || element.image().isPresent() || !paintsArea(element);
        return couldBeNone && !noteLayers.contains(element.layer());
    }

    /** True when the outlines of an element as drawn are what is cut: it is filled, or stroked with a hairline. */
    private boolean isCut(Element element) {
        if (element.origin() != Element.Origin.SHAPE || element.visibility() != Visibility.SHOWN || parts(element).isEmpty()) {
            return false;
        }
        return !element.fillArea().isEmpty() || isHairline(element);
    }

    boolean isHairline(Element element) {
        return element.stroke().isPainted() && !parts(element).isEmpty()
                && element.strokeWidthMm() <= inspection.settings().get(SharedSettings.HAIRLINE, parts(element).get(0));
    }

    /** For a message: {@code path a1 (layer Faces, line 12)}. */
    String name(Element element) {
        String line = element.line() > 0 ? ", line " + element.line() : "";
        String layer = element.layer().isEmpty() ? "no layer" : "layer " + element.layer();
        return element.tag() + " " + element.id() + " (" + layer + line + ")";
    }

    /** A length in the units of the job. */
    String length(double mm) {
        return inspection.length(mm);
    }

    /** A place in the units of the job, from the top left of the proof. */
    String place(Coordinate at) {
        return "x " + length(at.x) + ", y " + length(at.y);
    }

    /** Starts a finding about elements; parts are those that they are in. */
    Finding.Builder finding(Rule rule, String message, List<Element> about) {
        return Finding.of(rule, message).elements(about.stream().map(Element::id).distinct().toList())
                .parts(about.stream().flatMap(element -> parts(element).stream()).map(Part::id).distinct().toList());
    }
}
