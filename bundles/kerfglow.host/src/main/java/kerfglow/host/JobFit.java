// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.Paint;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Proof;

/** Finds the rules of a job sheet that fit nothing in the proof: a slip of the pen there would otherwise change the sign unseen. */
final class JobFit {
    private JobFit() {
    }

    /** One sentence that names all rules that fit nothing, or empty when each fits something. */
    static Optional<String> remark(JobSheet job, Proof proof, List<Part> parts) {
        List<String> idle = new ArrayList<>();
        for (JobSheet.RoleRule rule : job.roles()) {
            if (proof.elements().stream().noneMatch(element -> fits(rule.selector(), element))) {
                idle.add(words(rule.selector()) + " (role " + rule.role().word() + ")");
            }
        }
        for (JobSheet.MaterialRule rule : job.materials()) {
            if (parts.stream().noneMatch(part -> PartMaker.fits(rule, part))) {
                String scope = rule.scope().equals(Scope.ALL) && rule.fillRgb().isPresent() ? "" : rule.scope() + " ";
                idle.add(scope + rule.fillRgb().map(rgb -> "fill " + Paint.colour(rgb) + " ").orElse("") + "(material " + rule.material() + ")");
            }
        }
        for (int rgb : job.knockOut().stream().sorted().toList()) {
            if (proof.elements().stream().noneMatch(element -> element.fill().equals(Paint.colour(rgb)))) {
                idle.add(Paint.colour(rgb) + " (knock-out)");
            }
        }
        return idle.isEmpty() ? Optional.empty()
                : Optional.of("Nothing in the proof fits these rules of " + job.from() + ": " + String.join("; ", idle) + ".");
    }

    private static boolean fits(JobSheet.Selector selector, Element element) {
        return Selectors.fits(selector, element, element.fill()) || Selectors.fits(selector, element, element.stroke());
    }

    private static String words(JobSheet.Selector selector) {
        List<String> words = new ArrayList<>();
        selector.layer().ifPresent(text -> words.add("layer " + text));
        selector.label().ifPresent(text -> words.add("label " + text));
        selector.id().ifPresent(text -> words.add("id " + text));
        selector.fillRgb().ifPresent(rgb -> words.add("fill " + Paint.colour(rgb)));
        selector.dataPart().ifPresent(text -> words.add("data-part " + text));
        return String.join(", ", words);
    }
}
