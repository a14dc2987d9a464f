// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import kerfglow.api.Check;
import kerfglow.api.PlacedModule;
import kerfglow.api.Setting;
import kerfglow.api.StockItem;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Proof;

/** How checks ended last time, and what they were given, so that a check whose givens are the same need not run again. */
final class CheckMemory {
    /**
     * What a check was given. Proof and parts are compared as objects: whoever keeps them hands out the same ones.
     *
     * @param build empty unless the check asked for it; likewise {@code modules}
     */
    private record Givens(Check check, Proof proof, List<Part> parts, List<Value> values, List<List<StockItem>> stock, UnitSystem units, Optional<String> build,
            List<PlacedModule> modules, List<Result.CheckRow> read) {
        boolean same(Givens other) {
            return check == other.check && proof == other.proof && parts == other.parts && values.equals(other.values) && stock.equals(other.stock)
                    && units == other.units && build.equals(other.build) && modules.equals(other.modules) && sameRows(other.read);
        }

        private boolean sameRows(List<Result.CheckRow> others) {
            if (read.size() != others.size()) {
                return false;
            }
            for (int i = 0; i < read.size(); i++) {
                Result.CheckRow one = read.get(i);
                Result.CheckRow other = others.get(i);
                if (one != other && !(one.check().equals(other.check()) && one.status() == other.status() && one.tables().equals(other.tables()))) { // tables are all that one check sees of another
                    return false;
                }
            }
            return true;
        }
    }

    /** A value that could hold, without where it came from. */
    private record Value(String key, String scope, Object value) {
    }

    private record Kept(Givens givens, RunInspection.Asked asked, CheckRun.Ended ended) {
    }

    private final Map<String, Kept> kept = new HashMap<>();

    /** How the check ended when it was given the same; only answers that depend on nothing else are kept. */
    Optional<CheckRun.Ended> recall(CheckCatalogue.Entry entry, RunInspection inspection, List<Result.CheckRow> read) {
        Kept last = kept.get(entry.info().id());
        return last != null && last.givens.same(givens(entry, inspection, read, last.asked)) ? Optional.of(last.ended) : Optional.empty();
    }

    /** How long a check took when it ran last; 0 when that is not known. */
    long millis(CheckCatalogue.Entry entry) {
        Kept last = kept.get(entry.info().id());
        return last == null ? 0 : last.ended.row().millis();
    }

    void keep(CheckCatalogue.Entry entry, RunInspection inspection, List<Result.CheckRow> read, RunInspection.Asked asked, CheckRun.Ended ended) {
        if (ended.row().status() == Result.Status.FAILED || ended.row().status() == Result.Status.TIMED_OUT) {
            kept.remove(entry.info().id()); // chance had a hand in it; it gets another try
        } else {
            kept.put(entry.info().id(), new Kept(givens(entry, inspection, read, asked), asked, ended));
        }
    }

    private static Givens givens(CheckCatalogue.Entry entry, RunInspection inspection, List<Result.CheckRow> read, RunInspection.Asked asked) {
        List<String> keys = entry.info().settings().stream().map(Setting::key).toList();
        return new Givens(entry.check(), inspection.proof(), inspection.parts(),
                inspection.given().used().stream().filter(used -> keys.contains(used.key())).map(used -> new Value(used.key(), used.scope(), used.value())).collect(Collectors.toList()),
                entry.info().stock().stream().map(kind -> inspection.stockList().items(kind)).toList(), inspection.units(),
                asked.build() ? inspection.job().build() : Optional.empty(), asked.modules() ? inspection.job().modules() : List.of(), read);
    }
}
