// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * Modules at an even pitch along each centre line, in even rows where the stroke is wide.
 *
 * @param sites where they may lie
 */
record Pattern(Sites sites) {
    /** Half a step from the ends. */
    static final double HALF = 0.5;

    /**
     * Even steps along every line; a line shorter than half a pitch gets none.
     *
     * @param end how far the first is from the beginning of a line, the last from the end of an open one, and rows from walls, in steps
     */
    List<Integer> even(double pitchMm, double end) {
        Set<Integer> chosen = new LinkedHashSet<>();
        for (int i = 0; i < sites.lines().size(); i++) {
            CentreLine line = sites.lines().get(i);
            int count = (int) Math.round(line.lengthMm() / pitchMm);
            double step = line.lengthMm() / (line.closed() ? count : count - 1 + 2 * end);
            for (int k = 0; k < count; k++) {
                chosen.addAll(sites.rows(i, count == 1 ? line.lengthMm() / 2 : (k + end) * step, pitchMm, end));
            }
        }
        return new ArrayList<>(chosen);
    }

    /** Even steps that begin and end at a distance from the ends of every open line: a long row with its ends lit. */
    List<Integer> between(double pitchMm, double endMm) {
        Set<Integer> chosen = new LinkedHashSet<>();
        for (int i = 0; i < sites.lines().size(); i++) {
            CentreLine line = sites.lines().get(i);
            double inner = line.lengthMm() - 2 * endMm;
            int steps = Math.max(1, (int) Math.ceil(inner / pitchMm));
            for (int k = 0; k <= steps && inner > 0 && !line.closed(); k++) {
                chosen.addAll(sites.rows(i, endMm + (double) k / steps * inner, pitchMm, HALF));
            }
        }
        return new ArrayList<>(chosen);
    }
}
