// SPDX-License-Identifier: Apache-2.0
package kerfglow.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
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

class FloorFilesTest {
    @TempDir
    private Path folder;
    private final ByteArrayOutputStream said = new ByteArrayOutputStream();

    private final ProofImporter importer = (file, options) -> new Proof(file.toString(), "0".repeat(64), 100, 100, 1, options.chordErrorMm(),
            List.of(Element.builder("bar").layer("L").fill(Paint.colour(0)).fillArea(CheckTester.wkt("POLYGON ((0 0, 40 0, 40 20, 0 20, 0 0))")).build()), List.of());

    private int outlines(String... words) {
        PrintStream stream = new PrintStream(said, true, StandardCharsets.UTF_8);
        return new CommandLine(new OutlinesCommand(new Runner(importer, new CheckCatalogue()), stream, stream, Terminal.NONE)).execute(words);
    }

    private Path proof() throws IOException {
        return Files.writeString(folder.resolve("bar.svg"), "what the customer sent");
    }

    private String said() {
        return said.toString(StandardCharsets.UTF_8);
    }

    @Test
    void a_folder_gets_one_of_each_kind() throws IOException {
        assertEquals(0, outlines(proof().toString(), "--to", folder.resolve("made").toString()), this::said);
        assertTrue(Files.readString(folder.resolve("made/bar.outlines.dxf")).contains("LWPOLYLINE"));
        assertTrue(Files.readString(folder.resolve("made/bar.outlines.svg")).contains("id=\"faces\""));
        assertTrue(said().contains(folder.resolve("made/bar.outlines.dxf").toString()), this::said);
    }

    @Test
    void both_forms_at_once() throws IOException {
        assertEquals(0, outlines(proof().toString(), "--to", folder.resolve("a.dxf").toString(), "--to", folder.resolve("deep/a.svg").toString()), this::said);
        assertTrue(Files.exists(folder.resolve("a.dxf")) && Files.readString(folder.resolve("deep/a.svg")).contains("id=\"faces\""));
    }

    @Test
    void worksheet_and_pattern_are_written_in_every_form() throws IOException {
        PrintStream stream = new PrintStream(said, true, StandardCharsets.UTF_8);
        Runner runner = new Runner(importer, new CheckCatalogue());
        String made = folder.resolve("made").toString();
        assertEquals(0, new CommandLine(new WorksheetCommand(runner, stream, stream, Terminal.NONE)).setCaseInsensitiveEnumValuesAllowed(true)
                .execute(proof().toString(), "--to", made, "--revision", "B", "--paper", "letter"), this::said);
        assertTrue(Files.readString(folder.resolve("made/bar.worksheet.csv")).contains("header,,,,revision,Revision,B,"));
        assertTrue(Files.readString(folder.resolve("made/bar.worksheet.json")).contains("\"worksheet\" : 1"));
        assertTrue(Files.size(folder.resolve("made/bar.worksheet.pdf")) > 1000);
        assertEquals(0, new CommandLine(new PatternCommand(runner, stream, stream, Terminal.NONE)).execute(proof().toString(), "--to", made, "--roll", "610 mm"), this::said);
        assertTrue(Files.size(folder.resolve("made/bar.pattern.pdf")) > 1000);
        assertEquals(2, new CommandLine(new PatternCommand(runner, stream, stream, Terminal.NONE)).execute(proof().toString(), "--to", made, "--page", "b9"));
        assertTrue(said().contains("--page b9: \"b9\" is no page: write a4"), this::said);
    }

    @Test
    void something_newer_is_not_written_over_unless_told() throws IOException {
        Path target = Files.writeString(folder.resolve("mine.dxf"), "an hour of work");
        Path proof = proof();
        Files.setLastModifiedTime(target, FileTime.fromMillis(Files.getLastModifiedTime(proof).toMillis() + 60_000));
        assertEquals(2, outlines(proof.toString(), "--to", target.toString()));
        assertEquals("an hour of work", Files.readString(target));
        assertTrue(said().contains("--replace"), this::said);
        assertEquals(0, outlines(proof.toString(), "--to", target.toString(), "--replace"), this::said);
        assertTrue(Files.readString(target).contains("LWPOLYLINE"));
    }

    @Test
    void the_proof_itself_is_never_written_over() throws IOException {
        Path proof = proof();
        assertEquals(2, outlines(proof.toString(), "--to", proof.toString(), "--replace"));
        assertEquals("what the customer sent", Files.readString(proof));
    }

    @Test
    void words_that_make_no_sense_are_told_before_any_work() throws IOException {
        Path proof = proof();
        assertEquals(2, outlines(proof.toString(), "--to", folder.resolve("a.pdf").toString()));
        assertTrue(said().contains("ends in .dxf or .svg"), this::said);
        assertEquals(2, outlines(proof.toString(), "--to", folder.resolve("bar.dxf").toString(), "--from-behind", "lids"));
        assertTrue(said().contains("lids: there is no such layer; known: faces, backs"), this::said);
        assertFalse(Files.exists(folder.resolve("bar.dxf")));
    }
}
