// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

import java.util.List;

/** Where on the floor a finding is met, in the order in which a sign passes through the shop. */
public enum Station {
    /** What is wrong with the drawing reaches no machine; it is put right first. */
    DRAWING("Drawing", List.of("artwork")),
    ROUTER("Router", List.of("router", "sheet")),
    BENDER("Bender", List.of("returns")),
    ASSEMBLY("Assembly", List.of("fit", "trim")),
    LIGHT("Light", List.of("glow", "power")),
    FILM("Film", List.of("vinyl", "print")),
    WALL("Wall", List.of("mount", "legibility")),
    /** A shop's own checks that say nothing of where they belong. */
    OTHER("Elsewhere", List.of());

    private final String title;
    private final List<String> checks;

    Station(String title, List<String> checks) {
        this.title = title;
        this.checks = checks;
    }

    public String title() {
        return title;
    }

    /** The station of a check; those that are not known here are met elsewhere. */
    public static Station of(String check) {
        for (Station station : values()) {
            if (station.checks.contains(check)) {
                return station;
            }
        }
        return OTHER;
    }

    /** The station of a rule: that of the check whose name its id begins with. */
    public static Station ofRule(String rule) {
        return of(rule.substring(0, rule.lastIndexOf('.')));
    }
}
