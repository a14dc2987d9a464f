// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import java.util.stream.Collectors;
import kerfglow.api.Severity;
import kerfglow.host.Result;

/** Where on the floor a finding is felt, in the order in which the floor works. Which check belongs where stands in {@code stations.properties}. */
public enum Station {
    ROUTER, BENDER, ASSEMBLY, LIGHT, FILM, WALL,
    /** Checks of which it is not known, such as a shop's own. */
    OTHER;

    /** {@code router}, {@code bender}, {@code assembly}, {@code light}, {@code film}, {@code wall} or {@code other}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /**
     * What a station has to expect.
     *
     * @param station the station
     * @param items its findings, in the order of the result
     * @param checks the rows of its checks
     * @param reviewed the result that it is from
     */
    public record Outlook(Station station, List<FindingItem> items, List<Result.CheckRow> checks, ReviewedResult reviewed) {
        /** How many a person must still decide. */
        public long toDecide() {
            return items.stream().filter(FindingItem::isToDecide).count();
        }

        /** True when every check of the station measured all that it had to, and nothing is left to decide. */
        public boolean isClear() {
            return !checks.isEmpty() && toDecide() == 0 && missing().isEmpty();
        }

        private List<Result.CheckRow> missing() {
            return checks.stream().filter(row -> row.status() == Result.Status.NOT_MEASURED || ReviewedResult.isBroken(row) && reviewed.waiver(row).isEmpty()).toList();
        }

        /** For a person: {@code clear}, or how many of each weight, and what was not measured. */
        public String words() {
            if (checks.isEmpty()) {
                return "not checked";
            }
            String counts = Arrays.stream(Severity.values()).sorted((a, b) -> b.compareTo(a)).filter(severity -> severity != Severity.INFO)
                    .map(severity -> count(severity)).filter(text -> !text.isEmpty()).collect(Collectors.joining(", "));
            String missing = missing().stream().map(row -> row.check() + " " + row.status().word()).collect(Collectors.joining(", "));
            return counts.isEmpty() && missing.isEmpty() ? "clear" : counts.isEmpty() ? missing : missing.isEmpty() ? counts : counts + "; " + missing;
        }

        private String count(Severity severity) {
            long count = items.stream().filter(item -> item.finding().severity() == severity && item.isToDecide()).count();
            return count == 0 ? "" : count + " " + severity.word();
        }
    }

    /** Every station with what it has to expect, in the order of the floor; other only when there is something. */
    public static List<Outlook> outlooks(ReviewedResult reviewed) {
        Properties stations = stations();
        List<FindingItem> items = FindingList.items(reviewed);
        List<Outlook> outlooks = new ArrayList<>();
        for (Station station : values()) {
            List<FindingItem> own = items.stream().filter(item -> of(stations, item.check()) == station).toList();
            List<Result.CheckRow> rows = reviewed.result().checks().stream().filter(row -> of(stations, row.check()) == station).toList();
            if (station != OTHER || !rows.isEmpty()) {
                outlooks.add(new Outlook(station, own, rows, reviewed));
            }
        }
        return outlooks;
    }

    private static Station of(Properties stations, String check) {
        return valueOf(stations.getProperty(check, OTHER.word()).strip().toUpperCase(Locale.ROOT));
    }

    private static Properties stations() {
        Properties stations = new Properties();
        try (InputStream in = Station.class.getResourceAsStream("stations.properties")) {
            stations.load(in);
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
        return stations;
    }
}
