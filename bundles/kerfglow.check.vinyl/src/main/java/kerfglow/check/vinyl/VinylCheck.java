// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.vinyl;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import kerfglow.api.Check;
import kerfglow.api.CheckInfo;
import kerfglow.api.Finding;
import kerfglow.api.Inspection;
import kerfglow.api.Outcome;
import kerfglow.api.OverlayLayer;
import kerfglow.api.Setting;
import kerfglow.api.Settings;
import kerfglow.api.StockItem;
import kerfglow.api.StockKind;
import kerfglow.api.Workers;
import kerfglow.api.proof.Part;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.index.strtree.STRtree;
import org.osgi.service.component.annotations.Component;

/**
 * Finds what cannot be cut, weeded or laid in film, colour by colour in paint order, and says how much film each colour takes.
 *
 * <p>Cost: near n log n in the vertices of each colour; for pieces wider than the roll a few hundred places of seams in two directions.
 */
@Component
public final class VinylCheck implements Check {
    /** The kind of stock that it reads. */
    public static final StockKind ROLLS = VinylSettings.ROLLS;
    /** Field of {@link #ROLLS}, mm. */
    public static final Setting<Double> ROLL_WIDTH = VinylSettings.WIDTH;

    private final CheckInfo info = new CheckInfo("vinyl", "Film that cannot be cut, weeded or laid, and how much it takes", VinylRules.ALL, VinylSettings.ALL,
            List.of(ROLLS), VinylTables.ALL, CheckInfo.page(VinylCheck.class, "page.md"));

    /** A colour and the limits for each of its pieces, read before any thread starts. */
    private record Task(Film film, List<Weeding.Limits> limits) {
    }

    @Override
    public CheckInfo info() {
        return info;
    }

    @Override
    public Outcome inspect(Inspection inspection) {
        List<Film> films = Film.of(inspection);
        if (films.isEmpty()) {
            return Outcome.notMeasured("No part of this proof is film.");
        }
        Settings settings = inspection.settings();
        Set<String> missing = new LinkedHashSet<>();
        Workers workers = new Workers(inspection);
        workers.expect(films.size());
        List<Weeding> weedings = workers.map(films.stream()
                .map(film -> new Task(film, film.parts().stream().map(part -> Weeding.Limits.of(settings, part)).toList())).toList(),
                task -> Weeding.of(task.film(), task.limits(), workers::pulse));
        List<Roll> stock = rolls(inspection, missing);
        List<FilmUse> uses = films.stream().map(film -> FilmUse.of(film, stock, inspection, missing, workers::pulse)).toList();
        List<Effort> efforts = new ArrayList<>();
        List<Finding> findings = new ArrayList<>();
        VinylFindings writer = new VinylFindings(inspection);
        for (int i = 0; i < films.size(); i++) {
            efforts.add(Effort.of(films.get(i), weedings.get(i).wastePieces(), settings));
            findings.addAll(writer.of(films.get(i), weedings.get(i), Weeding.Limits.of(settings, films.get(i).parts().get(0))));
            findings.addAll(writer.seams(uses.get(i)));
            writer.use(uses.get(i), efforts.get(i)).ifPresent(findings::add);
        }
        List<Meeting> meetings = meetings(films, settings, workers::pulse);
        meetings.forEach(meeting -> findings.add(writer.of(meeting, limits(settings, meeting.lower()))));
        return Outcome.of(findings).withTables(VinylTables.of(uses, efforts, meetings)).withLayers(layers(uses)).withMissing(List.copyOf(missing));
    }

    private static List<Roll> rolls(Inspection inspection, Set<String> missing) {
        List<StockItem> listed = inspection.stock(ROLLS);
        List<Roll> rolls = listed.isEmpty() ? VinylSettings.usual(inspection.units()) : listed.stream().map(Roll::of).toList();
        if (listed.isEmpty()) {
            missing.add("The shop sheet lists no rolls; measured with the common widths " + String.join(" and ", rolls.stream().map(Roll::name).toList()) + ".");
        }
        return rolls;
    }

    private static Meetings.Limits limits(Settings settings, Part lower) {
        return new Meetings.Limits(settings.get(VinylSettings.LEAST_OVERLAP, lower), settings.get(VinylSettings.MEANT_GAP, lower),
                settings.get(VinylSettings.REGISTRATION, lower), settings.get(VinylSettings.MEETING_ANGLE, lower), settings.get(VinylSettings.LEAST_EDGE, lower));
    }

    private static List<Meeting> meetings(List<Film> films, Settings settings, Runnable pulse) {
        if (films.size() < 2) {
            return List.of();
        }
        STRtree index = new STRtree();
        List<FilmPiece> pieces = new ArrayList<>();
        for (Part part : films.stream().flatMap(film -> film.parts().stream()).toList()) {
            pulse.run();
            FilmPiece piece = FilmPiece.of(part);
            pieces.add(piece);
            index.insert(piece.box(), piece);
        }
        List<Meeting> found = new ArrayList<>();
        for (FilmPiece lower : pieces) {
            Meetings.Limits limits = limits(settings, lower.part());
            List<FilmPiece> neighbours = near(index, lower.box(), limits);
            for (FilmPiece upper : neighbours) {
                pulse.run();
                if (upper.part().order() > lower.part().order() && !upper.part().paint().equals(lower.part().paint())) {
                    List<Meetings.Cover> covers = near(index, upper.box(), limits).stream().filter(third -> third != lower && third != upper)
                            .map(third -> new Meetings.Cover(third, third.part().order() > upper.part().order())).toList();
                    found.addAll(Meetings.of(lower, upper, limits, covers, pulse));
                }
            }
        }
        return found;
    }

    private static List<FilmPiece> near(STRtree index, Envelope box, Meetings.Limits limits) {
        Envelope near = new Envelope(box);
        near.expandBy(limits.reachMm());
        List<FilmPiece> pieces = new ArrayList<>();
        index.query(near).forEach(each -> pieces.add((FilmPiece) each));
        pieces.sort(Comparator.comparingInt((FilmPiece piece) -> piece.part().order()).thenComparing(piece -> piece.part().id()));
        return pieces;
    }

    private static List<OverlayLayer> layers(List<FilmUse> uses) {
        List<OverlayLayer.Item> seams = new ArrayList<>();
        for (FilmUse use : uses) {
            for (Optional<Panels> plan : use.panels().values()) {
                for (Geometry seam : plan.map(Panels::seams).orElse(List.of())) {
                    seams.add(new OverlayLayer.Item(seam, Double.NaN, use.film().colour()));
                }
            }
        }
        return List.of(new OverlayLayer("seams", "Seams of film that is wider than the roll", seams));
    }
}
