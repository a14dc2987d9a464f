// SPDX-License-Identifier: Apache-2.0
package kerfglow.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Path;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import kerfglow.api.proof.ProofException;
import kerfglow.api.proof.ProofImporter;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

class FirstProofTest {
    private static final String TINY = "tiny.svg";

    private final BlockingQueue<Path> read = new LinkedBlockingQueue<>();
    private final ProofImporter importer = (file, options) -> {
        read.add(file);
        throw new ProofException("nobody is told of this", 0, 0, null);
    };

    @AfterEach
    void forget() {
        System.clearProperty(FirstProof.PROPERTY);
    }

    private void expect(String... words) {
        FirstProof.expect(words, Program.CHECKING, importer);
    }

    @Test
    void a_command_that_reads_proofs_reads_the_tiny_one_ahead_and_no_fault_of_it_is_told() throws InterruptedException {
        assumeTrue(Runtime.getRuntime().availableProcessors() > 1, "one core reads nothing ahead");
        System.setProperty(FirstProof.PROPERTY, TINY);
        for (String command : Program.CHECKING) {
            expect(command, "sign.svg");
            assertEquals(Path.of(TINY), read.poll(10, TimeUnit.SECONDS), command);
        }
    }

    @Test
    void nothing_is_read_ahead_for_other_words_or_where_no_proof_is_named() throws InterruptedException {
        expect("check", "sign.svg");
        System.setProperty(FirstProof.PROPERTY, TINY);
        expect();
        expect("check");
        expect("explain", "router");
        expect("--help");
        assertNull(read.poll(300, TimeUnit.MILLISECONDS));
    }
}
