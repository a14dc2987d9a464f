// SPDX-License-Identifier: Apache-2.0
package kerfglow.worker.form;

import java.util.LinkedHashMap;
import java.util.Map;
import kerfglow.api.Quantity;
import kerfglow.api.Setting;
import kerfglow.api.SharedSettings;

/** The declaration of a setting. One that is shared comes back as the shared one itself. */
final class SettingForm {
    private SettingForm() {
    }

    static Map<String, Object> fields(Setting<?> setting) {
        Map<String, Object> fields = new LinkedHashMap<>();
        fields.put("key", setting.key());
        fields.put("title", setting.title());
        fields.put("type", setting.type());
        fields.put("quantity", setting.quantity());
        fields.put("defaultValue", setting.defaultValue());
        fields.put("min", setting.min());
        fields.put("max", setting.max());
        fields.put("choices", setting.choices());
        fields.put("reason", setting.reason());
        fields.put("source", setting.source());
        return fields;
    }

    static Setting<?> read(FormNode node) {
        String key = node.text("key");
        return SharedSettings.ALL.stream().filter(shared -> shared.key().equals(key)).findFirst().orElseGet(() -> own(key, node));
    }

    private static Setting<?> own(String key, FormNode node) {
        String title = node.text("title");
        String reason = node.text("reason");
        String source = node.text("source");
        Object usual = node.raw("defaultValue");
        String name = node.name() + ".defaultValue";
        try {
            return switch (node.value("type", Setting.Type.class)) {
                case NUMBER -> Setting.number(key, title, node.value("quantity", Quantity.class), usual == null ? null : FormNode.numberOf(name, usual),
                        node.number("min"), node.number("max"), reason, source);
                case COUNT -> Setting.count(key, title, usual == null ? null : (Integer) (int) FormNode.numberOf(name, usual), (int) node.number("min"),
                        (int) node.number("max"), reason, source);
                case FLAG -> Setting.flag(key, title, (Boolean) usual, reason, source);
                case CHOICE -> Setting.choice(key, title, (String) usual, node.texts("choices"), reason, source);
                case TEXT -> Setting.text(key, title, (String) usual, reason, source);
            };
        } catch (IllegalArgumentException | ClassCastException wrong) {
            throw new FormException(wrong.getMessage(), wrong);
        }
    }

    /** A value of a setting, as the setting's type has it; null where there is none. */
    static Object valueOf(Setting<?> setting, Object read) {
        if (read == null) {
            return null;
        }
        return switch (setting.type()) {
            case NUMBER -> (Object) FormNode.numberOf(setting.key(), read);
            case COUNT -> (Object) (int) FormNode.numberOf(setting.key(), read);
            case FLAG, CHOICE, TEXT -> read;
        };
    }
}
