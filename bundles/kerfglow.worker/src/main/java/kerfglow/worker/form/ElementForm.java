// SPDX-License-Identifier: Apache-2.0
package kerfglow.worker.form;

import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.stream.Collectors;
import kerfglow.api.proof.Effect;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.Gradient;
import kerfglow.api.proof.ImageInfo;
import kerfglow.api.proof.Outline;
import kerfglow.api.proof.Paint;
import kerfglow.api.proof.TextRun;
import kerfglow.api.proof.Visibility;
import org.locationtech.jts.geom.Geometry;

/** An element: its fields are named as its getters. */
final class ElementForm {
    private ElementForm() {
    }

    static Map<String, Object> fields(Element element) {
        Map<String, Object> fields = new LinkedHashMap<>();
        fields.put("id", element.id());
        fields.put("tag", element.tag());
        fields.put("layer", element.layer());
        fields.put("label", element.label());
        fields.put("dataPart", element.dataPart());
        fields.put("idPath", element.idPath());
        fields.put("line", element.line());
        fields.put("order", element.order());
        fields.put("origin", element.origin());
        fields.put("fill", element.fill());
        fields.put("fillGradient", element.fillGradient());
        fields.put("stroke", element.stroke());
        fields.put("strokeGradient", element.strokeGradient());
        fields.put("strokeWidthMm", element.strokeWidthMm());
        fields.put("fillArea", element.fillArea());
        fields.put("strokeArea", element.strokeArea());
        fields.put("outlines", element.outlines());
        fields.put("visibility", element.visibility());
        fields.put("effects", element.effects());
        fields.put("text", element.text());
        fields.put("image", element.image());
        return fields;
    }

    static Element read(FormNode node) {
        Element.Builder builder = Element.builder(node.text("id")).tag(node.text("tag")).layer(node.text("layer")).label(node.text("label"))
                .dataPart(node.text("dataPart")).idPath(node.texts("idPath")).line((int) node.whole("line")).order((int) node.whole("order"))
                .origin(node.value("origin", Element.Origin.class)).fill(node.value("fill", Paint.class))
                .stroke(node.value("stroke", Paint.class), node.number("strokeWidthMm")).fillArea(node.value("fillArea", Geometry.class))
                .strokeArea(node.value("strokeArea", Geometry.class)).outlines(node.values("outlines", Outline.class))
                .visibility(node.value("visibility", Visibility.class)).effects(effects(node));
        optional(node, "fillGradient", Gradient.class, builder, Element.Builder::fillGradient);
        optional(node, "strokeGradient", Gradient.class, builder, Element.Builder::strokeGradient);
        optional(node, "text", TextRun.class, builder, Element.Builder::text);
        optional(node, "image", ImageInfo.class, builder, Element.Builder::image);
        return builder.build();
    }

    private static <T> void optional(FormNode node, String field, Class<T> type, Element.Builder builder, BiConsumer<Element.Builder, T> set) {
        if (node.raw(field) != null) {
            set.accept(builder, node.value(field, type));
        }
    }

    private static Set<Effect> effects(FormNode node) {
        return node.values("effects", Effect.class).stream().collect(Collectors.toCollection(() -> EnumSet.noneOf(Effect.class)));
    }
}
