// SPDX-License-Identifier: Apache-2.0
package kerfglow.worker.form;

import java.util.LinkedHashMap;
import java.util.Map;
import kerfglow.api.CheckInfo;
import kerfglow.api.Finding;
import kerfglow.api.Measure;
import kerfglow.api.Rule;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;

/** A finding: its fields are named as its getters; the rule is told by its id. */
final class FindingForm {
    private FindingForm() {
    }

    static Map<String, Object> fields(Finding finding) {
        Map<String, Object> fields = new LinkedHashMap<>();
        fields.put("rule", finding.rule().id());
        fields.put("message", finding.message());
        fields.put("place", finding.place());
        fields.put("at", finding.at());
        fields.put("measured", finding.measured());
        fields.put("required", finding.required());
        fields.put("parts", finding.parts());
        fields.put("elements", finding.elements());
        fields.put("fix", finding.fix());
        fields.put("suggestion", finding.suggestion());
        fields.put("cause", finding.cause());
        return fields;
    }

    /** The finding of a check, whose rules tell what the rule's id stands for. */
    static Finding read(FormNode node, CheckInfo info) {
        String id = node.text("rule");
        Rule rule = info.rules().stream().filter(each -> each.id().equals(id)).findFirst()
                .orElseThrow(() -> new FormException("it reported the rule " + id + ", which it does not declare"));
        Finding.Builder finding = Finding.of(rule, node.text("message")).measured(node.value("measured", Measure.class)).required(node.value("required", Measure.class))
                .parts(node.texts("parts")).elements(node.texts("elements")).fix(node.value("fix", String.class)).cause(node.text("cause"));
        if (node.raw("at") != null) {
            finding.at(node.value("at", Coordinate.class)); // first: a place alone would look for a point inside itself
        }
        if (node.raw("place") != null) {
            finding.place(node.value("place", Geometry.class));
        }
        if (node.raw("suggestion") != null) {
            finding.suggestion(node.value("suggestion", Geometry.class));
        }
        return finding.build();
    }
}
