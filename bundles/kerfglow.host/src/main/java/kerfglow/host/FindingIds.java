// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;

/**
 * Gives findings their ids and their order. An id is made of rule and place alone (the first place, to half a millimetre;
 * without a place the first element), so that the same fault keeps its id from run to run, whatever else is found.
 */
final class FindingIds {
    /** Coarse enough for rounding, fine enough to tell two faults of one rule apart; equals are numbered. */
    private static final double GRID_MM = 0.5;
    private static final int ID_DIGITS = 8;

    private FindingIds() {
    }

    static List<Result.ReportedFinding> assign(List<Result.ReportedFinding> findings) {
        List<Result.ReportedFinding> sorted = findings.stream().sorted(ORDER).toList();
        Map<String, Integer> uses = new HashMap<>();
        List<Result.ReportedFinding> named = new ArrayList<>();
        for (Result.ReportedFinding each : sorted) {
            String bare = digest(each);
            int use = uses.merge(bare, 1, Integer::sum);
            named.add(new Result.ReportedFinding(use == 1 ? bare : bare + "-" + use, each.rule(), each.severity(), each.severityReason(), each.parts(),
                    each.elements(), each.measured(), each.required(), each.places(), each.message(), each.fix()));
        }
        return named;
    }

    private static final Comparator<Result.ReportedFinding> ORDER = Comparator.comparing(Result.ReportedFinding::severity).reversed()
            .thenComparing(finding -> finding.rule().id())
            .thenComparingDouble(finding -> finding.places().isEmpty() ? Double.NEGATIVE_INFINITY : finding.places().get(0).at().y)
            .thenComparingDouble(finding -> finding.places().isEmpty() ? Double.NEGATIVE_INFINITY : finding.places().get(0).at().x)
            .thenComparing(Result.ReportedFinding::message);

    private static String digest(Result.ReportedFinding finding) {
        String place = finding.places().isEmpty() ? finding.elements().stream().findFirst().map(element -> "element " + element).orElse("proof")
                : Math.round(finding.places().get(0).at().x / GRID_MM) + " " + Math.round(finding.places().get(0).at().y / GRID_MM);
        try {
            byte[] hash = MessageDigest.getInstance("SHA-256").digest((finding.rule().id() + " " + place).getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(hash).substring(0, ID_DIGITS);
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java platform has SHA-256", impossible);
        }
    }
}
