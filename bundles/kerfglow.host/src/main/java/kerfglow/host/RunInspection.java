// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import kerfglow.api.Inspection;
import kerfglow.api.Settings;
import kerfglow.api.StockItem;
import kerfglow.api.StockKind;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Proof;

/** What every check of one run is given. */
record RunInspection(Proof proof, List<Part> allParts, SettingsInForce given, StockList stockList, UnitSystem units) {

    /** The view of one check, with its own time. */
    Inspection watchedBy(String check, double limitSeconds, Watcher watcher) {
        List<Part> checked = allParts.stream().filter(part -> part.role().isChecked()).toList();
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
            public UnitSystem units() {
                return units;
            }

            @Override
            public void checkpoint(double fraction) {
                deadline.compareAndSet(null, new Deadline(limitSeconds));
                deadline.get().require(watcher);
                watcher.progress(check, fraction);
            }
        };
    }
}
