// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.sheet;

import java.util.List;
import kerfglow.api.Rule;
import kerfglow.api.Severity;

/** What the check of sheets can report. */
final class SheetRules {
    static final Rule TOO_LARGE = new Rule("sheet.too-large", Severity.STOP,
            "A part fits no stocked sheet",
            "It cannot be cut in one piece from what is stocked; found late, the seam goes where the eye is.",
            "Order a larger sheet, or split the part where the seam is short and hidden best.",
            "geometry: the hull of the part in the sheet less its margin, at every angle at which it can begin to fit");
    static final Rule COUNT = new Rule("sheet.count", Severity.INFO,
            "How many sheets the parts take",
            "Sheets are ordered before nesting is done; a first estimate says how many at least and how many will do.",
            "Order by the estimate, and let the nesting on the machine better it.",
            "maximal rectangles, best short side fit: J. Jylänki, A Thousand Ways to Pack the Bin, 2010; bound: geometry");

    static final List<Rule> ALL = List.of(TOO_LARGE, COUNT);

    private SheetRules() {
    }
}
