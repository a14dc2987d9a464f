// SPDX-License-Identifier: Apache-2.0
package kerfglow.cli;

import java.nio.file.Path;
import java.util.Set;
import kerfglow.api.proof.ImportOptions;
import kerfglow.api.proof.ProofException;
import kerfglow.api.proof.ProofImporter;

/**
 * Reads a tiny proof that ships with the program, so that a second core loads what reading needs, Batik and the fonts above all, while the first still
 * gathers the checks and reads words and sheets. The first proof of a process takes several times as long as the second, nearly all of it loading.
 * Changes no result, and nobody waits for it.
 */
final class FirstProof {
    /** Where the launcher says that the tiny proof lies; without it nothing is read ahead. */
    static final String PROPERTY = "kerfglow.first";

    private FirstProof() {
    }

    /** Returns at once. Reads ahead only for a command that reads proofs, and where there is a second core. */
    static void expect(String[] words, Set<String> reading, ProofImporter importer) {
        String proof = System.getProperty(PROPERTY);
        if (proof != null && words.length > 1 && reading.contains(words[0]) && Runtime.getRuntime().availableProcessors() > 1) {
            Thread ahead = new Thread(() -> read(proof, importer), "first proof");
            ahead.setDaemon(true);
            ahead.start();
        }
    }

    private static void read(String proof, ProofImporter importer) {
        try {
            importer.read(Path.of(proof), ImportOptions.defaults());
        } catch (ProofException | RuntimeException | Error e) {
            // The person's own proof meets the same fault and tells it; a program that ends meanwhile takes the classes away.
        }
    }
}
