// SPDX-License-Identifier: Apache-2.0
package kerfglow.fuzz;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.List;
import kerfglow.api.CheckInfo;
import kerfglow.check.artwork.ArtworkCheck;
import kerfglow.worker.form.FormException;
import kerfglow.worker.form.FormNode;
import kerfglow.worker.form.FormReader;
import kerfglow.worker.form.OutcomeForm;

/** Any bytes as what the process of a shop's own check answers: an outcome, or one of the exceptions that the host catches there. */
public final class Messages {
    private static final CheckInfo INFO = new ArtworkCheck().info();
    private static final long MOST_BYTES = 1 << 20;

    private Messages() {
    }

    public static void fuzzerTestOneInput(byte[] bytes) {
        Guard.over("", () -> {
            FormReader in = new FormReader(new ByteArrayInputStream(bytes), MOST_BYTES);
            for (FormNode message = in.next(); message != null; message = in.next()) {
                OutcomeForm.read(message.node("outcome"), INFO);
            }
        }, List.of(FormException.class, IOException.class, IllegalArgumentException.class, ClassCastException.class));
    }
}
