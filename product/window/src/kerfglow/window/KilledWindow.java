// SPDX-License-Identifier: Apache-2.0
package kerfglow.window;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import kerfglow.check.artwork.ArtworkCheck;
import kerfglow.job.MarkShape;
import kerfglow.job.PointMm;

/** A window in a process of its own, in which a mark is made and nothing is saved; it waits to be killed. */
public final class KilledWindow {
    static final String TEXT = "made just before the end";

    private KilledWindow() {
    }

    public static void main(String[] args) throws Exception {
        try (Window window = new Window(Files.createTempDirectory("state"), List.of(new ArtworkCheck()))) {
            window.open(Path.of(args[0]));
            window.desk().job().orElseThrow().mark(new MarkShape.Note(new PointMm(1, 1)), TEXT, "M. Reviewer");
            window.await(() -> false, "the end");
        }
    }
}
