// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import kerfglow.api.Inspection;
import kerfglow.api.PlacedModule;
import kerfglow.api.Settings;
import kerfglow.api.StockItem;
import kerfglow.api.StockKind;
import kerfglow.api.Table;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Proof;

/** What the checks of one run are given. */
record RunInspection(Proof proof, List<Part> parts, SettingsInForce given, StockList stockList, UnitSystem units, JobSheet job) {

    /** What a check asked for that most do not, so that it need not run again when that alone changes. */
    static final class Asked {
        private volatile boolean build;
        private volatile boolean modules;

        boolean build() {
            return build;
        }

        boolean modules() {
            return modules;
        }
    }

    /**
     * The view of one check, with its own time.
     *
     * @param measured rows of the checks that this one reads
     * @param asked told what the check asks for
     */
    Inspection of(CheckCatalogue.Entry entry, List<Result.CheckRow> measured, Asked asked, double limitSeconds, Watcher watcher) {
        List<Part> checked = parts.stream().filter(part -> part.role().isChecked()).toList();
        AtomicReference<Deadline> deadline = new AtomicReference<>();
        return new Inspection() {
            @Override
            public Proof proof() {
                return proof;
            }

            @Override
            public List<Part> parts() {
                return checked;
            }

            @Override
            public Settings settings() {
                return given;
            }

            @Override
            public List<StockItem> stock(StockKind kind) {
                return stockList.items(kind);
            }

            @Override
            public Optional<String> build() {
                asked.build = true;
                return job.build();
            }

            @Override
            public List<PlacedModule> placedModules() {
                asked.modules = true;
                return job.modules();
            }

            @Override
            public List<Table> tables(String check) {
                if (!entry.reads().contains(check)) {
                    throw new IllegalArgumentException("the check reads tables of " + check + " but does not name it in reads()");
                }
                return measured.stream().filter(row -> row.check().equals(check)).findFirst().map(Result.CheckRow::tables).orElse(List.of());
            }

            @Override
            public UnitSystem units() {
                return units;
            }

            @Override
            public void checkpoint(double fraction) {
                deadline.compareAndSet(null, new Deadline(limitSeconds));
                deadline.get().require(watcher);
                watcher.progress(entry.info().id(), fraction);
            }
        };
    }
}
