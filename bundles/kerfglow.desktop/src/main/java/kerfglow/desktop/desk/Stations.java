// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.StringJoiner;
import kerfglow.api.Severity;
import kerfglow.host.Result;

/** What each station of the floor has to expect of this proof. */
public final class Stations {
    /**
     * One station.
     *
     * @param station which
     * @param words clear, how many of each weight, or why nothing is known
     */
    public record Row(Station station, String words) {
    }

    private Stations() {
    }

    /**
     * One row for each station, in the order of the floor; the one for other checks only when it has something to say.
     *
     * @param findings what was found so far
     * @param ended the checks that have ended
     * @param allEnded false while others still run
     */
    public static List<Row> rows(List<Result.ReportedFinding> findings, List<Result.CheckRow> ended, boolean allEnded) {
        List<Row> rows = new ArrayList<>();
        for (Station station : Station.values()) {
            List<Result.ReportedFinding> here = findings.stream().filter(finding -> Station.ofRule(finding.rule().id()) == station).toList();
            List<Result.CheckRow> checks = ended.stream().filter(row -> Station.of(row.check()) == station).toList();
            if (station != Station.OTHER || !here.isEmpty() || !checks.isEmpty()) {
                rows.add(new Row(station, words(here, checks, allEnded)));
            }
        }
        return rows;
    }

    private static String words(List<Result.ReportedFinding> here, List<Result.CheckRow> checks, boolean allEnded) {
        StringJoiner words = new StringJoiner(", ");
        for (Severity severity : List.of(Severity.STOP, Severity.REVIEW, Severity.INFO)) {
            long count = here.stream().filter(finding -> finding.severity() == severity).count();
            if (count > 0) {
                words.add(count + " " + severity.word());
            }
        }
        checks.stream().filter(row -> row.status() != Result.Status.PASSED && row.status() != Result.Status.FINDINGS)
                .forEach(row -> words.add(row.check() + " " + row.status().word()));
        if (words.length() > 0) {
            return words.toString();
        }
        if (checks.isEmpty()) {
            return allEnded ? "no check is installed" : "not yet known";
        }
        return "clear";
    }
}
