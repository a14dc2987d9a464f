// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import kerfglow.api.UnitSystem;
import kerfglow.host.GivenValue;
import kerfglow.host.JobSheet;
import kerfglow.host.Scope;

/**
 * Writes a job sheet as JSON under the keys of the YAML job sheet; since JSON is a subset of YAML 1.2 (its section 1.3), the host reads
 * both with the same code. Lengths are written in mm with all their digits.
 */
final class SheetJson {
    private final JsonGenerator json;
    private final Optional<Path> folder;

    private SheetJson(JsonGenerator json, Optional<Path> folder) {
        this.json = json;
        this.folder = folder;
    }

    /**
     * Writes the sheet as an object.
     *
     * @param folder what the path of the shop sheet is to count from
     */
    static void write(JobSheet sheet, Path folder, JsonGenerator json) throws IOException {
        new SheetJson(json, Optional.of(folder)).sheet(sheet);
    }

    /** The sheet on one line, the same for equal sheets wherever they are kept; what a sign-off is bound to. */
    static String canonical(JobSheet sheet) {
        StringWriter out = new StringWriter();
        try (JsonGenerator json = JsonText.generator(out)) {
            new SheetJson(json, Optional.empty()).sheet(sheet);
        } catch (IOException never) {
            throw new UncheckedIOException(never);
        }
        return out.toString();
    }

    private void sheet(JobSheet sheet) throws IOException {
        json.writeStartObject();
        if (!sheet.title().isEmpty()) {
            json.writeStringField("title", sheet.title());
        }
        if (sheet.shopSheet().isPresent()) {
            json.writeStringField("shop", folder.map(base -> relative(base, sheet.shopSheet().get())).orElse(String.valueOf(sheet.shopSheet().get().getFileName())));
        }
        if (sheet.units().isPresent()) {
            json.writeStringField("units", sheet.units().get() == UnitSystem.INCH ? "inch" : "metric");
        }
        if (sheet.scale().isPresent()) {
            json.writeFieldName("scale");
            json.writeNumber(plain(sheet.scale().getAsDouble()));
        }
        if (sheet.knownDimension().isPresent()) {
            known(sheet.knownDimension().get());
        }
        text("build", sheet.build());
        array("roles", sheet.roles(), rule -> {
            json.writeStartObject();
            selector(rule.selector());
            json.writeStringField("role", rule.role().word());
            json.writeEndObject();
        });
        array("materials", sheet.materials(), rule -> {
            json.writeStartObject();
            text("role", rule.scope().role().map(role -> role.word()));
            text("layer", rule.scope().layer());
            text("part", rule.scope().part());
            text("fill", rule.fillRgb().map(SheetJson::colour));
            json.writeStringField("material", rule.material());
            length("thickness", rule.thicknessMm());
            json.writeEndObject();
        });
        array("knock-out", sheet.knockOut().stream().sorted().toList(), rgb -> json.writeString(colour(rgb)));
        settings(sheet.settings());
        array("modules", sheet.modules(), module -> {
            json.writeStartObject();
            length("x", OptionalDouble.of(module.xMm()));
            length("y", OptionalDouble.of(module.yMm()));
            if (module.turnDegrees() != 0) {
                json.writeStringField("turn", plain(module.turnDegrees()));
            }
            if (!module.string().isEmpty()) {
                json.writeStringField("string", module.string());
            }
            json.writeEndObject();
        });
        json.writeEndObject();
    }

    private void known(JobSheet.KnownDimension known) throws IOException {
        json.writeObjectFieldStart("known-dimension");
        selector(known.selector());
        length(known.horizontal() ? "width" : "height", OptionalDouble.of(known.lengthMm()));
        json.writeEndObject();
    }

    private void selector(JobSheet.Selector selector) throws IOException {
        text("layer", selector.layer());
        text("label", selector.label());
        text("id", selector.id());
        text("fill", selector.fillRgb().map(SheetJson::colour));
        text("data-part", selector.dataPart());
    }

    private void settings(List<GivenValue> values) throws IOException {
        Map<String, List<GivenValue>> byKey = folder.isPresent() ? new LinkedHashMap<>() : new TreeMap<>(); // between keys order means nothing
        values.forEach(value -> byKey.computeIfAbsent(value.key(), key -> new ArrayList<>()).add(value));
        if (byKey.isEmpty()) {
            return;
        }
        json.writeObjectFieldStart("settings");
        for (Map.Entry<String, List<GivenValue>> entry : byKey.entrySet()) {
            array(entry.getKey(), entry.getValue(), value -> {
                if (value.scope().equals(Scope.ALL)) {
                    json.writeString(value.text());
                } else {
                    json.writeStartObject();
                    json.writeStringField("value", value.text());
                    scope(value.scope());
                    json.writeEndObject();
                }
            });
        }
        json.writeEndObject();
    }

    private void scope(Scope scope) throws IOException {
        text("role", scope.role().map(role -> role.word()));
        text("material", scope.material());
        length("thickness", scope.thicknessMm());
        text("layer", scope.layer());
        text("part", scope.part());
    }

    private interface Item<T> {
        void write(T item) throws IOException;
    }

    private <T> void array(String name, List<T> items, Item<T> each) throws IOException {
        if (items.isEmpty()) {
            return;
        }
        json.writeArrayFieldStart(name);
        for (T item : items) {
            each.write(item);
        }
        json.writeEndArray();
    }

    private void text(String name, Optional<String> value) throws IOException {
        if (value.isPresent()) {
            json.writeStringField(name, value.get());
        }
    }

    private void length(String name, OptionalDouble valueMm) throws IOException {
        if (valueMm.isPresent()) {
            json.writeStringField(name, plain(valueMm.getAsDouble()) + " mm");
        }
    }

    /** All digits that tell the number from its neighbours, and no exponent, which sheets do not read. */
    private static String plain(double value) {
        return new BigDecimal(Double.toString(value)).stripTrailingZeros().toPlainString();
    }

    private static String colour(int rgb) {
        return String.format(Locale.ROOT, "#%06x", rgb);
    }

    /** A path with forward slashes from a folder; as it is where no such path exists, for instance on another drive. */
    static String relative(Path folder, Path file) {
        Path target = file.toAbsolutePath().normalize();
        try {
            return folder.toAbsolutePath().normalize().relativize(target).toString().replace('\\', '/');
        } catch (IllegalArgumentException otherDrive) {
            return target.toString();
        }
    }
}
