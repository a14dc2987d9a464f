// SPDX-License-Identifier: Apache-2.0
package kerfglow.worker.form;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import kerfglow.api.CheckInfo;
import kerfglow.api.Finding;
import kerfglow.api.Outcome;
import kerfglow.api.OverlayLayer;
import kerfglow.api.Table;

/** What a check answers. */
public final class OutcomeForm {
    private OutcomeForm() {
    }

    /**
     * The fields of an outcome.
     *
     * @param mostFindings further ones are left out, and a sentence says so
     */
    public static Map<String, Object> fields(Outcome outcome, int mostFindings) {
        List<String> missing = new ArrayList<>(outcome.missing());
        int reported = outcome.findings().size();
        if (reported > mostFindings) {
            missing.add("It reported " + reported + " findings; the first " + mostFindings + " are kept (host.most-findings).");
        }
        Map<String, Object> fields = new LinkedHashMap<>();
        fields.put("measured", outcome.measured());
        fields.put("findings", outcome.findings().subList(0, Math.min(reported, mostFindings)));
        fields.put("tables", outcome.tables());
        fields.put("layers", outcome.layers());
        fields.put("missing", missing);
        return fields;
    }

    /** The outcome of a check. */
    public static Outcome read(FormNode node, CheckInfo info) {
        List<Finding> findings = node.nodes("findings").stream().map(each -> FindingForm.read(each, info)).toList();
        return new Outcome(findings, node.values("tables", Table.class), node.values("layers", OverlayLayer.class), node.texts("missing"), node.flag("measured"));
    }
}
