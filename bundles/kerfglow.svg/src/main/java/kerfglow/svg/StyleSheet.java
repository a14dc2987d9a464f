// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import kerfglow.api.proof.ImportNote.Kind;
import org.apache.batik.css.engine.sac.CSSConditionFactory;
import org.apache.batik.css.engine.sac.CSSSelectorFactory;
import org.apache.batik.css.engine.sac.ExtendedSelector;
import org.apache.batik.css.parser.Parser;
import org.w3c.css.sac.CSSException;
import org.w3c.css.sac.DescendantSelector;
import org.w3c.css.sac.Selector;
import org.w3c.css.sac.SelectorList;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * The rules of all style elements, in cascade order. Batik reads and matches the selectors; values stay text, because Batik's
 * value parser is single precision and throws on newer forms.
 */
final class StyleSheet {
    /** One property. */
    record Declaration(String property, String value, boolean important) {
    }

    private record Rule(ExtendedSelector selector, List<Declaration> declarations, int order) {
    }

    /** Assumed: media rules stand inside each other once or twice. */
    private static final int DEEPEST = 8;
    private final List<Rule> rules = new ArrayList<>();
    /** How many rules have 0, 1, 2... descendant combinators: each lets the matcher try every ancestor. */
    private final Map<Integer, Integer> byCombinators = new HashMap<>();
    private final Report report;
    private final Budget budget;

    StyleSheet(SvgSource source, Report report, Budget budget) {
        this.report = report;
        this.budget = budget;
        collect(source.root());
        // Specificity first, then the order in the file: CSS Cascade 4, section 6.
        rules.sort(Comparator.comparingInt((Rule r) -> r.selector().getSpecificity()).thenComparingInt(Rule::order));
    }

    /** The declarations that meet the element, weakest first. */
    List<Declaration> of(Element element) {
        if (rules.isEmpty()) {
            return List.of();
        }
        int depth = 1;
        for (Node at = element.getParentNode(); at != null; at = at.getParentNode()) {
            depth++;
        }
        for (Map.Entry<Integer, Integer> entry : byCombinators.entrySet()) {
            budget.styleMatches(entry.getValue() * Math.pow(depth, entry.getKey()));
        }
        List<Declaration> found = new ArrayList<>();
        for (Rule rule : rules) {
            if (rule.selector().match(element, null)) {
                found.addAll(rule.declarations());
            }
        }
        return found;
    }

    /** The declarations of a style attribute or of a rule's braces. */
    static List<Declaration> declarations(String text) {
        List<Declaration> found = new ArrayList<>();
        for (String part : CssText.split(CssText.withoutComments(text), ';')) {
            int colon = part.indexOf(':');
            if (colon <= 0) {
                continue;
            }
            String name = part.substring(0, colon).strip();
            String value = part.substring(colon + 1).strip();
            String lower = value.toLowerCase(Locale.ROOT);
            boolean important = lower.endsWith("important") && lower.lastIndexOf('!') >= 0
                    && lower.substring(lower.lastIndexOf('!') + 1).strip().equals("important");
            if (important) {
                value = value.substring(0, value.lastIndexOf('!')).strip();
            }
            if (!value.isEmpty()) {
                found.add(new Declaration(name.startsWith("--") ? name : name.toLowerCase(Locale.ROOT), value, important));
            }
        }
        return found;
    }

    private void collect(Element element) {
        for (Element child : Names.children(element)) {
            if (Names.isSvg(child, "style")) {
                read(child);
            } else {
                collect(child);
            }
        }
    }

    private void read(Element style) {
        String type = style.getAttributeNS(null, "type").strip();
        if (!type.isEmpty() && !type.equals("text/css")) {
            report.add(Kind.UNSUPPORTED, style, "a style sheet of type " + type + " is not understood and left out");
            return;
        }
        if (isForScreen(style.getAttributeNS(null, "media"), style)) {
            rules(CssText.withoutComments(style.getTextContent()).replace("<!--", "").replace("-->", ""), style, 0);
        }
    }

    private void rules(String text, Element style, int depth) {
        if (depth > DEEPEST) {
            report.add(Kind.UNSUPPORTED, style, "media rules inside each other more than " + DEEPEST + " deep are left out");
            return;
        }
        for (CssText.Block block : CssText.blocks(text)) {
            String prelude = block.prelude();
            if (!prelude.startsWith("@")) {
                rule(prelude, block.body(), style);
                continue;
            }
            String name = prelude.split("[\\s({\"']", 2)[0].toLowerCase(Locale.ROOT);
            switch (name) {
                case "@media" -> {
                    if (isForScreen(prelude.substring(name.length()), style)) {
                        rules(block.body(), style, depth + 1);
                    }
                }
                case "@charset", "@namespace", "@page" -> { }
                case "@import" -> report.add(Kind.REFUSED_REFERENCE, style, "the style sheet " + prelude.substring(name.length()).strip()
                        + " is not fetched; its rules do not hold");
                case "@font-face" -> report.add(block.body().contains("url(") ? Kind.REFUSED_REFERENCE : Kind.UNSUPPORTED, style,
                        "a font that comes with the file (@font-face) is not used; text in it is substituted");
                case "@keyframes" -> report.add(Kind.ANIMATION, style, "the animation " + prelude + " is left out; the still state is used");
                default -> report.add(Kind.UNSUPPORTED, style, "the style sheet's " + name + " is not understood and left out");
            }
        }
    }

    private void rule(String prelude, String body, Element style) {
        Parser parser = new Parser();
        parser.setSelectorFactory(CSSSelectorFactory.INSTANCE);
        parser.setConditionFactory(new CSSConditionFactory(null, "class", null, "id"));
        try {
            SelectorList selectors = parser.parseSelectors(prelude);
            List<Declaration> declarations = declarations(body);
            for (int i = 0; i < selectors.getLength(); i++) {
                byCombinators.merge(combinators(selectors.item(i)), 1, Integer::sum);
                rules.add(new Rule((ExtendedSelector) selectors.item(i), declarations, rules.size()));
            }
        } catch (CSSException | IOException | ClassCastException e) {
            report.add(Kind.UNSUPPORTED, style, "the style rule \"" + prelude + "\" is not understood and left out");
        }
    }

    private static int combinators(Selector selector) {
        int count = 0;
        Selector at = selector;
        while (at instanceof DescendantSelector pair) {
            count += pair.getSelectorType() == Selector.SAC_DESCENDANT_SELECTOR ? 1 : 0;
            at = pair.getAncestorSelector();
        }
        return count;
    }

    /** The tool shows artwork as a screen does. */
    private boolean isForScreen(String media, Element style) {
        for (String query : media.strip().toLowerCase(Locale.ROOT).split(",")) {
            String word = query.strip();
            if (word.isEmpty() || word.equals("all") || word.equals("screen")) {
                return true;
            }
            if (!Map.of("print", 1, "speech", 1).containsKey(word)) {
                report.add(Kind.UNSUPPORTED, style, "the media query \"" + word + "\" is not understood; its rules are left out");
            }
        }
        return false;
    }
}
