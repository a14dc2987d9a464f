// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import org.locationtech.jts.geom.Coordinate;

/** Sites at an even pitch along each centre line: where a search starts. */
final class Pattern {
    private final List<Site> sites;
    private final List<CentreLine> lines;

    Pattern(List<Site> sites, List<CentreLine> lines) {
        this.sites = sites;
        this.lines = lines;
    }

    /** The sites nearest to even steps along every line, half a step from its ends; a line shorter than half a pitch gets none. */
    List<Integer> sites(double pitchMm) {
        Set<Integer> chosen = new LinkedHashSet<>();
        for (CentreLine line : lines) {
            int steps = (int) Math.round(line.lengthMm() / pitchMm);
            for (int k = 0; k < steps; k++) {
                nearest(line.at((k + 0.5) / steps * line.lengthMm()), pitchMm / 2).ifPresent(chosen::add);
            }
        }
        return new ArrayList<>(chosen);
    }

    /** The sites nearest to even steps that begin and end at a distance from the ends of every open line: a long row with its ends lit. */
    List<Integer> between(double pitchMm, double endMm) {
        Set<Integer> chosen = new LinkedHashSet<>();
        for (CentreLine line : lines) {
            double inner = line.lengthMm() - 2 * endMm;
            int steps = Math.max(1, (int) Math.ceil(inner / pitchMm));
            for (int k = 0; k <= steps && inner > 0 && !line.closed(); k++) {
                nearest(line.at(endMm + (double) k / steps * inner), pitchMm / 2).ifPresent(chosen::add);
            }
        }
        return new ArrayList<>(chosen);
    }

    private OptionalInt nearest(Coordinate at, double within) {
        int best = -1;
        double least = within;
        for (int i = 0; i < sites.size(); i++) {
            double distance = Math.hypot(sites.get(i).x() - at.x, sites.get(i).y() - at.y);
            if (distance < least) {
                least = distance;
                best = i;
            }
        }
        return best < 0 ? OptionalInt.empty() : OptionalInt.of(best);
    }
}
