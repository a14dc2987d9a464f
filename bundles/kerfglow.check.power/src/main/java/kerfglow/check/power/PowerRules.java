// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.power;

import java.util.List;
import kerfglow.api.Rule;
import kerfglow.api.Severity;

/** What the check of power can report. */
final class PowerRules {
    /** Stands beside every figure. */
    static final String CAUTION = "Figures are estimates for planning: NEC Article 600 or the local equivalent governs, and a licensed electrician decides.";

    static final Rule OVERLOAD = new Rule("power.overload", Severity.STOP,
            "A string, a circuit or the supplies carry more than they may",
            "An overloaded supply runs hot, dims the sign and fails early; an overlong string overloads its own cable.",
            "Split the string, or take a larger supply or one more. " + CAUTION,
            "common practice, no source (80 % loading); Class 2 limits: NEC chapter 9, table 11(B), 2005 edition, from secondary pages");
    static final Rule VOLTAGE_DROP = new Rule("power.voltage-drop", Severity.REVIEW,
            "The last module of a string gets too little voltage",
            "Modules at the end of the string are dimmer than those at its start, and drivers may not start in the cold.",
            "Take a thicker conductor, feed the string in its middle, split it, or bring the supply nearer. " + CAUTION,
            "Ohm's law; resistances: ASTM B258, NEC chapter 9, table 8, IEC 60228");
    static final Rule PLAN = new Rule("power.plan", Severity.INFO,
            "Modules, strings, supplies and energy",
            "Supplies and cable are ordered, and the circuit in the wall is planned, before the sign is wired.",
            "Order by the plan and have it checked. " + CAUTION,
            "the modules of check glow, the shop sheet, and the settings of this check");

    static final List<Rule> ALL = List.of(OVERLOAD, VOLTAGE_DROP, PLAN);

    private PowerRules() {
    }
}
