// SPDX-License-Identifier: Apache-2.0
package kerfglow.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.Paint;
import kerfglow.api.proof.Proof;
import kerfglow.api.proof.ProofImporter;
import kerfglow.host.CheckCatalogue;
import kerfglow.host.Runner;
import kerfglow.testkit.CheckTester;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

class CheckCommandTest {
    private static final String CONTENT = "what the customer sent";
    @TempDir
    private Path folder;
    private final ByteArrayOutputStream said = new ByteArrayOutputStream();

    private final ProofImporter importer = (file, options) -> new Proof(file.toString(), "0".repeat(64), 100, 100, 1, options.chordErrorMm(),
            List.of(Element.builder("bar").layer("L").fill(Paint.colour(0)).fillArea(CheckTester.wkt("POLYGON ((0 0, 40 0, 40 20, 0 20, 0 0))")).build()), List.of());

    private int check(String... words) {
        PrintStream stream = new PrintStream(said, true, StandardCharsets.UTF_8);
        return new CommandLine(new CheckCommand(new Runner(importer, new CheckCatalogue()), stream, stream, Terminal.NONE)).execute(words);
    }

    private Path proof(String name) throws IOException {
        Path proof = folder.resolve(name);
        Files.createDirectories(proof.getParent());
        return Files.writeString(proof, CONTENT);
    }

    @Test
    void an_overlay_never_takes_the_place_of_the_proof() throws IOException {
        Path proof = proof("sign.svg");
        assertEquals(2, check(proof.toString(), "--overlay", folder.resolve("./sign.svg").toString()));
        assertTrue(said.toString(StandardCharsets.UTF_8).contains("the proof itself"), said::toString);
        assertEquals(CONTENT, Files.readString(proof));
        assertEquals(0, check(proof.toString(), "--overlay", folder.resolve("marked.svg").toString()));
        assertTrue(Files.readString(folder.resolve("marked.svg")).contains("<svg"));
        assertEquals(CONTENT, Files.readString(proof));
    }

    @Test
    void a_folder_for_overlays_may_have_points_in_its_path() throws IOException {
        Path proof = proof("sign.svg");
        Path target = folder.resolve("v1.2/./out");
        assertEquals(0, check(proof.toString(), "--overlay", target.toString()), said::toString);
        assertTrue(Files.exists(folder.resolve("v1.2/out/sign.overlay.png")));
        assertEquals(2, check(proof.toString(), "--overlay", folder.resolve("x.gif").toString()));
    }

    @Test
    void proofs_of_one_name_keep_pictures_of_their_own() throws IOException {
        proof("a/sign.svg");
        proof("b/sign.svg");
        assertEquals(0, check(folder.resolve("a").toString(), folder.resolve("b").toString(), "--overlay", folder.resolve("out").toString()));
        assertTrue(Files.exists(folder.resolve("out/sign.overlay.svg")) && Files.exists(folder.resolve("out/sign-2.overlay.svg")));
    }
}
