// SPDX-License-Identifier: Apache-2.0
package kerfglow.fuzz;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import kerfglow.api.proof.ProofException;
import kerfglow.host.Result;
import kerfglow.host.RunRequest;
import kerfglow.host.Runner;
import kerfglow.host.SheetException;
import kerfglow.host.Watcher;

/** Any bytes as a job sheet or a shop sheet of a small sound proof, through the whole run: refused in words, or a whole result that can be written. */
final class Sheets {
    private static final String PROOF = "<svg xmlns='http://www.w3.org/2000/svg' width='90mm' height='60mm' viewBox='0 0 90 60'><g id='Letters'><path id='a' d='M5 5h30v40h-8v-30h-22z'/>"
            + "<rect id='b' x='45' y='5' width='30' height='40' fill='#123456'/></g></svg>";
    private final Path folder;
    private final Path proof;
    private final Runner runner = Bench.runner();

    Sheets(String target) {
        folder = Bench.folder(target);
        proof = Bench.write(folder.resolve("sign.svg"), PROOF.getBytes(StandardCharsets.UTF_8));
    }

    void tryAs(boolean isJob, byte[] bytes) {
        Optional<Path> sheet = Optional.of(Bench.write(folder.resolve("sheet.yaml"), bytes));
        int form = bytes.length % Forms.COUNT;
        Guard.over(folder.toString(), () -> {
            Result result = runner.run(new RunRequest(proof, isJob ? sheet : Optional.empty(), isJob ? Optional.empty() : sheet, List.of(), List.of()), Watcher.NONE);
            Forms.requireReadable(form, result);
        }, List.of(ProofException.class, SheetException.class));
    }
}
