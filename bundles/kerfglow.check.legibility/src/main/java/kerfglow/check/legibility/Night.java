// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import kerfglow.api.Inspection;
import kerfglow.api.Table;
import kerfglow.api.TableInfo;
import kerfglow.api.proof.Gradient.Shade;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.index.strtree.STRtree;

/**
 * Contrast of lettering by night, from the luminances that the check of light gives for lit parts.
 *
 * <p>A lit part has its mean luminance; around a part with a halo the wall has the halo's. Film on a lit part, vinyl or print, lets through the share that its colour's relative luminance says: white
 * all, black nothing; that is assumed, for films are sold by colour and told by no law. All else is unlit and has the luminance of the
 * wall, and nothing is darker than that. Compared in the places where contrast by day is.
 */
final class Night {
    /** The check whose table is read. */
    static final String CHECK = "glow";
    private static final String TABLE = "light";
    private static final String PART = "part";
    private static final String LUMINANCE = "mean-luminance";
    private static final String KIND = "kind";
    private static final String HALO = "halo";
    private static final Set<Role> FILMS = Set.of(Role.VINYL, Role.PRINT);
    static final String NOT_GIVEN = "Contrast by night needs the luminances of lit faces, which the check " + CHECK
            + " did not give in this run; contrast was measured by day.";
    static final String NOT_LIT = "Lettering that is not lit and has no lit part behind it has no contrast by night of its own.";
    static final String UNKNOWN_FILM = "What a film with a pattern, or a gradient without a known course, lets through is not known; its contrast by night was not measured.";

    /**
     * The least contrast of a line by night.
     *
     * @param letter luminance of the lettering, cd/m2
     * @param behind luminance of what lies behind it, cd/m2
     * @param place where, mm
     */
    record Contrast(double letter, double behind, Coordinate place) {
        double ratio() {
            return Math.max(letter, behind) / Math.min(letter, behind);
        }
    }

    /**
     * What was measured of a line.
     *
     * @param contrast empty where nothing is lit or nothing is known
     * @param missing why, a sentence; empty where all was measured
     */
    record Seen(Optional<Contrast> contrast, Optional<String> missing) {
    }

    private record Layer(Part part, IndexedPointInAreaLocator inside) {
    }

    private final Map<String, Double> lit = new HashMap<>();
    private final Map<String, Double> halos = new HashMap<>();
    private final STRtree tree = new STRtree();
    private final Inspection inspection;
    private final Coats coats;

    Night(Inspection inspection, Coats coats) {
        this.inspection = inspection;
        this.coats = coats;
        inspection.table(CHECK, TABLE).ifPresent(this::read);
        if (isGiven()) {
            inspection.parts().stream().filter(part -> !Coats.UNSEEN.contains(part.role()))
                    .forEach(part -> tree.insert(part.shape().getEnvelopeInternal(), new Layer(part, new IndexedPointInAreaLocator(part.shape()))));
        }
    }

    private void read(Table table) {
        List<String> columns = table.info().columns().stream().map(TableInfo.Column::id).toList();
        int part = columns.indexOf(PART);
        int luminance = columns.indexOf(LUMINANCE);
        int kind = columns.indexOf(KIND);
        if (part < 0 || luminance < 0) {
            return; // another table of that name
        }
        for (List<Object> row : table.rows()) {
            if (row.get(part) instanceof String id && row.get(luminance) instanceof Double value && value > 0) {
                (kind >= 0 && HALO.equals(row.get(kind)) ? halos : lit).put(id, value);
            }
        }
    }

    private boolean isGiven() {
        return !lit.isEmpty() || !halos.isEmpty();
    }

    Seen behind(Line line, Runnable pulse) {
        if (!isGiven()) {
            return new Seen(Optional.empty(), Optional.of(NOT_GIVEN));
        }
        double dark = inspection.settings().get(LegibilitySettings.NIGHT_WALL, line.first());
        Optional<Contrast> least = Optional.empty();
        Optional<String> missing = Optional.empty();
        for (Upright letter : line.letters()) {
            Part part = letter.piece().part();
            for (Coordinate place : Backdrop.places(letter)) {
                pulse.run();
                OptionalDouble ground = ground(place, part.order());
                if (ground.isEmpty() && halos.containsKey(part.id())) {
                    ground = OptionalDouble.of(halos.get(part.id()));
                }
                OptionalDouble own = own(part, place, ground);
                if (isUnknown(ground) || isUnknown(own)) {
                    missing = Optional.of(UNKNOWN_FILM);
                } else if (ground.isPresent() || own.isPresent()) {
                    Contrast here = new Contrast(Math.max(dark, own.orElse(dark)), Math.max(dark, ground.orElse(dark)), place);
                    least = least.isEmpty() || here.ratio() < least.get().ratio() ? Optional.of(here) : least;
                }
            }
        }
        return new Seen(least, missing.isEmpty() && least.isEmpty() ? Optional.of(NOT_LIT) : missing);
    }

    private static boolean isUnknown(OptionalDouble luminance) {
        return luminance.isPresent() && Double.isNaN(luminance.getAsDouble());
    }

    /** Luminance of the lettering; empty where it is unlit, NaN where it is not known. */
    private OptionalDouble own(Part part, Coordinate place, OptionalDouble ground) {
        if (lit.containsKey(part.id())) {
            return OptionalDouble.of(lit.get(part.id()));
        }
        return FILMS.contains(part.role()) && ground.isPresent() ? OptionalDouble.of(ground.getAsDouble() * transmission(part, place)) : OptionalDouble.empty();
    }

    /** Luminance of what lies below a place in paint order; empty where it is unlit, NaN where it is not known. */
    private OptionalDouble ground(Coordinate place, int order) {
        List<Part> below = new ArrayList<>();
        for (Object each : tree.query(new Envelope(place))) {
            Layer layer = (Layer) each;
            if (layer.part().order() < order && layer.inside().locate(place) != Location.EXTERIOR) {
                below.add(layer.part());
            }
        }
        below.sort(Comparator.comparingInt(Part::order).reversed());
        double through = 1;
        for (Part part : below) {
            if (lit.containsKey(part.id())) {
                return OptionalDouble.of(through * lit.get(part.id()));
            }
            if (!FILMS.contains(part.role())) {
                return OptionalDouble.empty();
            }
            through *= transmission(part, place);
        }
        return OptionalDouble.empty();
    }

    /** The share of light that a film lets through; NaN where its colour in the place is not known. */
    private double transmission(Part film, Coordinate place) {
        List<Shade> shades = coats.of(film, place).map(coat -> coat.at(place)).orElseGet(() -> film.paint().colours().stream().map(rgb -> new Shade(rgb, 1)).toList());
        return shades.size() == 1 ? 1 - shades.get(0).opacity() * (1 - Colours.luminance(shades.get(0).rgb())) : Double.NaN;
    }
}
