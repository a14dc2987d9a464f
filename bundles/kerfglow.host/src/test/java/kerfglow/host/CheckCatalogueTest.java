// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import kerfglow.api.Check;
import kerfglow.api.CheckInfo;
import kerfglow.api.Inspection;
import kerfglow.api.Outcome;
import kerfglow.api.Setting;
import org.junit.jupiter.api.Test;

class CheckCatalogueTest {
    private final CheckCatalogue catalogue = new CheckCatalogue();

    private record Named(String id, List<Setting<?>> settings) implements Check {
        Named(String id, String... keys) {
            this(id, List.of(keys).stream().<Setting<?>>map(key -> Setting.flag(key, "trial", false, "trial", "trial")).toList());
        }

        @Override
        public CheckInfo info() {
            return new CheckInfo(id, "trial", List.of(), settings, List.of(), List.of(), "");
        }

        @Override
        public Outcome inspect(Inspection inspection) {
            return Outcome.of(List.of());
        }
    }

    private List<String> versions() {
        return catalogue.entries().stream().map(CheckCatalogue.Entry::version).toList();
    }

    /** As when the jar of a new version is laid beside the old one, which is then taken away. */
    @Test
    void of_two_with_one_id_the_second_takes_over_when_the_first_goes() {
        Check first = new Named("trial");
        Check second = new Named("trial", "trial.a");
        catalogue.add(first, "trial-1", "1");
        catalogue.add(second, "trial-2", "2");
        assertEquals(List.of("1"), versions());
        assertEquals(List.of(new CheckCatalogue.Refused("trial-2", "a check with the id trial is there already, version 1")), catalogue.refused());
        catalogue.change(List.of(first), List.of());
        assertEquals(List.of("2"), versions());
        assertEquals(List.of(), catalogue.refused());
        catalogue.change(List.of(second), List.of());
        assertEquals(List.of(), versions());
    }

    @Test
    void no_check_takes_the_key_of_a_setting_that_is_the_programs_or_anothers() {
        catalogue.add(new Named("host", HostSettings.MOST_FINDINGS.key()), "a", "1");
        catalogue.add(new Named("acme.seams", "acme.seams.gap"), "b", "2");
        catalogue.add(new Named("acme", "acme.seams.gap"), "c", "3");
        assertEquals(List.of("2"), versions());
        assertEquals(List.of(new CheckCatalogue.Refused("a", "its setting host.most-findings is another's already"),
                new CheckCatalogue.Refused("c", "its setting acme.seams.gap is another's already")), catalogue.refused());
    }
}
