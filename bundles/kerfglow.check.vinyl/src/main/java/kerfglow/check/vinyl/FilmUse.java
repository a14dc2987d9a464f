// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.vinyl;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import kerfglow.api.Inspection;
import kerfglow.api.Settings;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import org.locationtech.jts.geom.Geometry;

/**
 * What one colour takes of its roll.
 *
 * @param film the colour
 * @param panels the pieces that are laid in panels
 * @param layout on the roll that leaves least waste; empty when there is no roll, or no plan of panels
 * @param widest the width that panels were measured against, mm; 0 when there is no roll
 */
record FilmUse(Film film, Map<Part, Optional<Panels>> panels, Optional<Layout> layout, double widest) {

    /** Waste of film, mm²; only with a layout. */
    double wasteMm2() {
        return layout.map(Layout::areaMm2).orElse(Double.NaN) - film.areaMm2();
    }

    static FilmUse of(Film film, List<Roll> stock, Inspection inspection, Set<String> missing, Runnable pulse) {
        Settings settings = inspection.settings();
        Part first = film.parts().get(0);
        double margin = settings.get(VinylSettings.FEED_MARGIN, first);
        List<Roll> rolls = stock.stream().filter(roll -> roll.isFor(film)).toList();
        if (rolls.isEmpty()) {
            missing.add("The shop sheet lists no roll of " + film.colour() + ", so film of that colour was not laid out.");
            return new FilmUse(film, Map.of(), Optional.empty(), 0);
        }
        double widest = rolls.stream().mapToDouble(roll -> roll.usableMm(margin)).max().orElseThrow();
        Map<Part, Optional<Panels>> panels = new LinkedHashMap<>();
        List<Geometry> pieces = new ArrayList<>();
        for (Part part : film.parts()) {
            pulse.run();
            if (Layout.fits(part.shape(), widest)) {
                pieces.add(part.shape());
                continue;
            }
            List<Geometry> keepOuts = inspection.parts(Role.KEEP_OUT).stream().map(keepOut -> (Geometry) keepOut.shape()).toList();
            Optional<Panels> plan = Panels.of(part.shape(), new Panels.Limits(widest, settings.get(VinylSettings.SEAM_OVERLAP, part),
                    settings.get(VinylSettings.DETAIL_CLEARANCE, part), settings.get(VinylSettings.DETAIL_WIDTH, part), keepOuts,
                    inspection.proof().chordErrorMm()), pulse);
            panels.put(part, plan);
            plan.ifPresent(found -> pieces.addAll(found.shapes()));
        }
        boolean whole = panels.values().stream().allMatch(Optional::isPresent);
        Optional<Layout> layout = !whole ? Optional.empty() : rolls.stream()
                .map(roll -> Layout.of(pieces, roll, roll.usableMm(margin), settings.get(VinylSettings.SPACING, first), settings.get(VinylSettings.LEADER, first)))
                .flatMap(Optional::stream).min(Comparator.comparingDouble(Layout::areaMm2).thenComparingDouble(each -> each.roll().widthMm()));
        return new FilmUse(film, panels, layout, widest);
    }
}
