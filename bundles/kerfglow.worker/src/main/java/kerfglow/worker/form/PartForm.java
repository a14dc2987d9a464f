// SPDX-License-Identifier: Apache-2.0
package kerfglow.worker.form;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import kerfglow.api.proof.Paint;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

/** A part: its fields are named as the setters of its builder. */
final class PartForm {
    private PartForm() {
    }

    static Map<String, Object> fields(Part part) {
        Map<String, Object> fields = new LinkedHashMap<>();
        fields.put("id", part.id());
        fields.put("role", part.role());
        fields.put("shape", part.shape());
        fields.put("assigned", part.isAssigned());
        fields.put("layer", part.layer());
        fields.put("paint", part.paint());
        fields.put("order", part.order());
        fields.put("drilled", part.drilled());
        fields.put("elements", part.elements());
        fields.put("sources", part.sources().stream().sorted().toList());
        fields.put("sheetMaterial", part.sheetMaterial());
        fields.put("thicknessMm", part.thicknessMm());
        return fields;
    }

    static Part read(FormNode node) {
        Part.Builder builder = Part.builder(node.text("id"), node.value("role", Role.class), node.value("shape", Polygon.class)).assigned(node.flag("assigned"))
                .layer(node.text("layer")).paint(node.value("paint", Paint.class)).order((int) node.whole("order")).drilled(node.value("drilled", Geometry.class))
                .elements(node.texts("elements")).sources(Set.copyOf(node.values("sources", Part.Source.class)));
        if (node.raw("sheetMaterial") != null) {
            builder.sheetMaterial(node.text("sheetMaterial"));
        }
        if (node.raw("thicknessMm") != null) {
            builder.thicknessMm(node.number("thicknessMm"));
        }
        return builder.build();
    }
}
