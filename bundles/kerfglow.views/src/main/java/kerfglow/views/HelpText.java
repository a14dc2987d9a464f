// SPDX-License-Identifier: Apache-2.0
package kerfglow.views;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import kerfglow.api.CheckInfo;
import kerfglow.api.Concerns;
import kerfglow.api.Rule;
import kerfglow.api.Setting;
import kerfglow.api.StockKind;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.Role;
import kerfglow.host.CheckCatalogue;
import kerfglow.host.HostSettings;

/** What the checks say of themselves. */
public final class HelpText {
    private static final int WIDTH = 100;

    private HelpText() {
    }

    /** Every check with its rules, settings and kinds of stock. */
    public static String checks(List<CheckCatalogue.Entry> entries) {
        StringBuilder out = new StringBuilder();
        for (CheckCatalogue.Entry entry : entries) {
            CheckInfo info = entry.info();
            out.append(info.id()).append("  ").append(info.title()).append(" (version ").append(entry.version()).append(")\n");
            concerns(out, info.concerns());
            for (Rule rule : info.rules()) {
                out.append(String.format("  %-6s  %-28s %s%n", rule.severity().word(), rule.id(), rule.summary()));
            }
            settings(out, info.settings());
            for (StockKind kind : info.stock()) {
                out.append("  stock ").append(kind.name()).append(": ").append(kind.title()).append('\n');
                kind.fields().forEach(field -> setting(out, field, "must be given"));
            }
            out.append('\n');
        }
        out.append("host  settings of the program itself\n");
        settings(out, HostSettings.ALL);
        return out.toString();
    }

    private static void concerns(StringBuilder out, Concerns concerns) {
        if (!concerns.roles().isEmpty()) {
            out.append("  about   parts of role ").append(concerns.roles().stream().map(Role::word).sorted().collect(Collectors.joining(", "))).append('\n');
        }
        if (!concerns.builds().isEmpty()) {
            out.append("  about   signs built as ").append(String.join(", ", concerns.builds())).append('\n');
        }
    }

    private static void settings(StringBuilder out, List<Setting<?>> settings) {
        if (!settings.isEmpty()) {
            out.append("  settings\n");
            settings.forEach(setting -> setting(out, setting, "no value until one is given"));
        }
    }

    private static <T> void setting(StringBuilder out, Setting<T> setting, String withoutDefault) {
        String indent = "    ";
        out.append(indent).append(setting.key()).append(": ").append(setting.title()).append('\n');
        String usual = setting.defaultValue() == null ? "" : setting.format(setting.defaultValue(), UnitSystem.METRIC);
        String value = setting.defaultValue() == null ? withoutDefault : usual.isEmpty() ? "may be left out" : "default " + usual;
        String detail = value + "; range " + setting.range(UnitSystem.METRIC) + "; " + setting.reason() + " [" + setting.source() + "]";
        Wrap.lines(detail, WIDTH - indent.length() - 2).forEach(line -> out.append(indent).append("  ").append(line).append('\n'));
    }

    /**
     * The page of a check, or the part of it that is about one rule.
     *
     * @param name id of a check or of a rule
     * @return empty when there is no such check or rule
     */
    public static Optional<String> explain(String name, List<CheckCatalogue.Entry> entries) {
        for (CheckCatalogue.Entry entry : entries) {
            if (entry.info().id().equals(name)) {
                return Optional.of(entry.info().page());
            }
            for (Rule rule : entry.info().rules()) {
                if (rule.id().equals(name)) {
                    return Optional.of(rule(rule, entry.info()));
                }
            }
        }
        return Optional.empty();
    }

    private static String rule(Rule rule, CheckInfo info) {
        StringBuilder out = new StringBuilder();
        out.append(rule.id()).append("  (").append(rule.severity().word()).append(")\n").append(rule.summary()).append(".\n\n");
        labelled(out, "why   ", rule.why());
        labelled(out, "do    ", rule.fix());
        labelled(out, "from  ", rule.source());
        out.append('\n').append(section(info.page(), rule.id())).append('\n');
        List<Setting<?>> named = info.settings().stream().filter(setting -> section(info.page(), rule.id()).contains(setting.key())).toList();
        settings(out, named.isEmpty() ? info.settings() : named);
        return out.toString();
    }

    private static void labelled(StringBuilder out, String label, String text) {
        List<String> lines = Wrap.lines(text, WIDTH - label.length());
        for (int i = 0; i < lines.size(); i++) {
            out.append(i == 0 ? label : " ".repeat(label.length())).append(lines.get(i)).append('\n');
        }
    }

    /** The text under a heading of the page, up to the next heading of the same level. */
    private static String section(String page, String heading) {
        String text = "\n" + page;
        int start = text.indexOf("\n## " + heading + "\n");
        int body = text.indexOf('\n', start + 1) + 1;
        int end = text.indexOf("\n## ", body);
        return (end < 0 ? text.substring(body) : text.substring(body, end)).strip() + "\n";
    }
}
