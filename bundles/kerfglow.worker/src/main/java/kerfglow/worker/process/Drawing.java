// SPDX-License-Identifier: Apache-2.0
package kerfglow.worker.process;

import java.util.List;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Proof;

/** The proof and its parts, kept for the next run, with what tells that nobody changed them. */
record Drawing(Proof proof, List<Part> parts, long print) {
    static Drawing of(Proof proof, List<Part> parts) {
        return new Drawing(proof, parts, GeometryPrint.of(proof, parts));
    }

    boolean isChanged() {
        return GeometryPrint.of(proof, parts) != print;
    }
}
