// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import java.util.Optional;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.Paint;
import kerfglow.api.proof.Role;

/** Holds the job sheet's selectors against what was drawn. */
final class Selectors {
    private Selectors() {
    }

    /** True when all that the selector gives fits the element, painted with this paint. */
    static boolean fits(JobSheet.Selector selector, Element element, Paint paint) {
        return selector.layer().map(each -> Glob.matches(each, element.layer())).orElse(true)
                && selector.label().map(each -> Glob.matches(each, element.label())).orElse(true)
                && selector.id().map(each -> Glob.matches(each, element.id()) || element.idPath().stream().anyMatch(id -> Glob.matches(each, id)))
                        .orElse(true)
                && selector.fillRgb().map(each -> paint.kind() == Paint.Kind.COLOUR && paint.rgb() == each).orElse(true)
                && selector.dataPart().map(each -> Glob.matches(each, element.dataPart())).orElse(true);
    }

    /** The role that the job sheet gives, else the one that {@code data-part} names, else none. */
    static Optional<Role> role(JobSheet job, Element element, Paint paint) {
        for (JobSheet.RoleRule rule : job.roles()) {
            if (fits(rule.selector(), element, paint)) {
                return Optional.of(rule.role());
            }
        }
        return Role.of(element.dataPart());
    }
}
