// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import kerfglow.host.JobSheet;
import kerfglow.host.Result;
import kerfglow.host.ShopSheet;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class SignOffTest {
    private final Job job = new Job(Samples.state(), Samples.CLOCK);
    private Result result;

    @BeforeEach
    void checked() {
        result = Samples.with(Samples.result("one", Samples.letters(), List.of(Samples.finding("a", Samples.GAP, 2, 3, "POINT (10 10)"),
                Samples.finding("b", Samples.THIN, 2, 3, "POINT (10 90)"),
                Samples.finding("c", Samples.NUMBER, 2, 3, "POINT (10 50)"))),
                List.of(Samples.row("fit", Result.Status.NOT_MEASURED), Samples.row("router", Result.Status.FINDINGS), Samples.row("trim", Result.Status.FAILED)));
        job.show(result);
    }

    private ReviewedResult reviewed() {
        return job.reviewed().orElseThrow();
    }

    private void sign() {
        job.waive(result.findings().get(0), "hidden", "Rhea");
        job.waive(result.checks().get(2), "no trim here", "Rhea");
        assertEquals(List.of(), job.signOff("Rhea", "go"));
    }

    /** Why the only sign-off is void. */
    private List<String> why() {
        return reviewed().signOffs().get(0).voidBecause();
    }

    @Test
    void it_is_refused_while_a_stop_is_undecided_or_a_check_failed() {
        List<String> refusals = job.signOff("Rhea", "");
        assertEquals(2, refusals.size(), refusals::toString);
        assertTrue(refusals.get(0).contains("The stop a (router.narrow-gap) is undecided") && refusals.get(1).contains("The check trim failed"), refusals::toString);
        job.waive(result.findings().get(0), "hidden", "Rhea");
        assertEquals(1, job.signOff("Rhea", "").size());
        assertEquals(List.of(), job.state().signOffs());
        job.waive(result.checks().get(2), "no trim here", "Rhea");
        assertEquals(List.of(), job.signOff("Rhea", ""));
        assertThrows(IllegalArgumentException.class, () -> job.signOff(" ", ""));
    }

    @Test
    void it_is_refused_before_anything_was_checked_and_after_the_sheet_was_changed() {
        assertEquals(1, new Job(Samples.state(), Samples.CLOCK).signOff("Rhea", "").size());
        sign();
        job.changeSheet("Change title", sheet -> SheetEdits.withTitle(sheet, "other"));
        assertTrue(job.signOff("Rhea", "").get(0).contains("run them again"));
    }

    @Test
    void it_says_who_when_and_what_was_open() {
        job.mark(new MarkShape.Note(new PointMm(1, 1)), "The blue?", "Odo");
        sign();
        SignOff signOff = reviewed().signedOff().orElseThrow();
        assertEquals("Rhea", signOff.author());
        assertEquals(Samples.NOON, signOff.at());
        assertEquals(List.of("finding", "mark", "check", "check"), signOff.open().stream().map(SignOff.OpenItem::kind).toList());
        assertEquals("b", signOff.open().get(0).id(), "a review that nobody decided; a number for the floor is not open");
        assertEquals("failed: why; accepted by Rhea: no trim here", signOff.open().get(3).text());
    }

    @Test
    void it_stays_while_the_same_is_checked_again() {
        sign();
        job.show(result);
        assertEquals(List.of(), why());
    }

    @Test
    void it_is_void_when_proof_sheet_setting_stock_or_check_changes() {
        sign();
        job.show(new Result(Samples.result("two", Samples.letters(), List.of()).proof(), result.job(), result.shop(), result.units(), result.parts(), result.findings(), result.checks(),
                result.settings(), List.of()));
        assertEquals(List.of("The proof changed since."), why());

        job.show(with(result.shop(), List.of(new Result.SettingUsed("router.least-stroke", "all", 3.1, "mm", "check")), result.checks()));
        assertEquals(List.of("A setting, or the shop's stock or severities, changed since."), why());

        ShopSheet shop = new ShopSheet("shop.yaml", "", result.shop().units(),
                Map.of("router-bits", List.of(new ShopSheet.RawItem(Map.of("diameter", new ShopSheet.RawField("3 mm", "shop.yaml line 2")), "x"))),
                List.of(), List.of());
        job.show(with(shop, result.settings(), result.checks()));
        assertEquals(List.of("A setting, or the shop's stock or severities, changed since."), why());

        job.show(with(result.shop(), result.settings(), List.of(result.checks().get(0), result.checks().get(2),
                new Result.CheckRow("router", "router", "1.0.1", Result.Status.FINDINGS, 1, "", List.of(), List.of()))));
        assertEquals(List.of("The set of checks, or a check's version, changed since."), why());

        JobSheet sheet = SheetEdits.withTitle(JobSheet.NONE, "other");
        job.changeSheet("Change title", any -> sheet);
        job.show(new Result(result.proof(), sheet, result.shop(), result.units(), result.parts(), result.findings(), result.checks(), result.settings(), List.of()));
        assertEquals(List.of("The job sheet changed since."), why());
        job.undo();
        job.show(result);
        assertEquals(List.of(), why(), "all is as it was signed");
    }

    private Result with(ShopSheet shop, List<Result.SettingUsed> settings, List<Result.CheckRow> checks) {
        return new Result(result.proof(), result.job(), shop, result.units(), result.parts(), result.findings(), checks, settings, List.of());
    }

    @Test
    void where_a_setting_is_written_does_not_matter() {
        sign();
        job.show(with(result.shop(), List.of(new Result.SettingUsed("router.least-stroke", "all", 3.0, "mm", "job.yaml line 7")), result.checks()));
        assertEquals(List.of(), why());
    }

    @Test
    void it_is_void_when_the_waiver_it_relied_on_is_withdrawn() {
        sign();
        job.withdrawWaiver(job.state().waivers().get(0).id());
        assertEquals(1, why().size());
        assertTrue(reviewed().signedOff().isEmpty());
    }
}
