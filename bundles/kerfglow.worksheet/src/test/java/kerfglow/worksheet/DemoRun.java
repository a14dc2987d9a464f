// SPDX-License-Identifier: Apache-2.0
package kerfglow.worksheet;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import kerfglow.api.Check;
import kerfglow.host.CheckCatalogue;
import kerfglow.host.RunRequest;
import kerfglow.host.Runner;
import kerfglow.host.Watcher;
import kerfglow.job.ReviewedResult;
import kerfglow.svg.SvgImporter;

/** A real run over the sample data with every check on the class path, so that a shop sheet has no stock that nobody knows. */
final class DemoRun {
    private DemoRun() {
    }

    /** What the sample sign needs; light takes long and lights nothing there. */
    private static final List<String> WITHOUT_LIGHT = List.of("fit", "mount", "returns", "router", "sheet", "trim", "vinyl");

    /** A proof of the sample data. */
    static ReviewedResult of(String proof, String... settings) throws Exception {
        return of(Path.of(System.getProperty("testdata"), proof), WITHOUT_LIGHT, settings);
    }

    /** Any proof, with some checks, or all when none are named. */
    static ReviewedResult of(Path proof, List<String> only, String... settings) throws Exception {
        CheckCatalogue catalogue = new CheckCatalogue();
        Path classes = Path.of(Check.class.getProtectionDomain().getCodeSource().getLocation().toURI());
        try (Stream<Path> walk = Files.walk(classes.resolve("kerfglow/check"))) {
            for (Path file : walk.filter(each -> each.getFileName().toString().endsWith("Check.class")).sorted().toList()) {
                String name = classes.relativize(file).toString().replace('/', '.').replaceFirst("\\.class$", "");
                if (Class.forName(name).getDeclaredConstructor().newInstance() instanceof Check check) {
                    catalogue.add(check, "test", "1.0.0");
                }
            }
        }
        return ReviewedResult.undecided(new Runner(new SvgImporter(), catalogue).run(new RunRequest(proof, Optional.empty(), Optional.empty(), List.of(settings), only), Watcher.NONE));
    }
}
