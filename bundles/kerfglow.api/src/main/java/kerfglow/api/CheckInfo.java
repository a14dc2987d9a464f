// SPDX-License-Identifier: Apache-2.0
package kerfglow.api;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Pattern;

/**
 * Who a check is; asked once, when it arrives.
 *
 * @param id lower case with hyphens; ours are bare ({@code router}), a shop's own begin with its owner ({@code acme.seams})
 * @param title what it looks for, a noun phrase
 * @param rules every rule that it can report; ids begin with the check's id and a point
 * @param settings every setting that it reads; keys begin with the check's id and a point, but for those of {@link SharedSettings}
 * @param stock the kinds of stock that it looks at
 * @param tables the schemas of its own numbers
 * @param page its page of help, Markdown, with a heading {@code ## rule-id} for each rule
 * @param concerns which proofs it is about
 */
public record CheckInfo(String id, String title, List<Rule> rules, List<Setting<?>> settings, List<StockKind> stock,
        List<TableInfo> tables, String page, Concerns concerns) {
    /** One or more words with points between them, so that a table of results, a job sheet and a command line can all hold it. */
    private static final Pattern ID = Pattern.compile("[a-z][a-z0-9-]*(\\.[a-z][a-z0-9-]*)*");

    public CheckInfo {
        if (!ID.matcher(id).matches()) {
            throw new IllegalArgumentException("check id must read check or owner.check, lower case: " + id);
        }
        Objects.requireNonNull(concerns, "concerns");
        Objects.requireNonNull(title, "title");
        rules = List.copyOf(rules);
        settings = List.copyOf(settings);
        stock = List.copyOf(stock);
        tables = List.copyOf(tables);
        requireOwn(id, "rule", rules, Rule::id);
        requireOwn(id, "setting", settings.stream().filter(setting -> !SharedSettings.ALL.contains(setting)).toList(), Setting::key);
        for (Rule rule : rules) {
            if (!("\n" + page).contains("\n## " + rule.id() + "\n")) {
                throw new IllegalArgumentException("the page of check " + id + " has no heading \"## " + rule.id() + "\"");
            }
        }
    }

    /** A check that is about every proof. */
    public CheckInfo(String id, String title, List<Rule> rules, List<Setting<?>> settings, List<StockKind> stock, List<TableInfo> tables, String page) {
        this(id, title, rules, settings, stock, tables, page, Concerns.ALL);
    }

    private static <T> void requireOwn(String id, String what, List<T> things, Function<T, String> name) {
        Set<String> seen = new HashSet<>();
        for (T thing : things) {
            if (!name.apply(thing).startsWith(id + ".")) {
                throw new IllegalArgumentException(what + " " + name.apply(thing) + " must begin with " + id + ".");
            }
            if (!seen.add(name.apply(thing))) {
                throw new IllegalArgumentException("check " + id + " has the " + what + " " + name.apply(thing) + " twice");
            }
        }
    }

    /**
     * Reads a check's page, kept beside its class.
     *
     * @throws UncheckedIOException when it is not there
     */
    public static String page(Class<?> check, String name) {
        try (InputStream in = check.getResourceAsStream(name)) {
            if (in == null) {
                throw new IOException("no page " + name + " beside " + check.getName());
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException missing) {
            throw new UncheckedIOException(missing);
        }
    }
}
