// SPDX-License-Identifier: Apache-2.0
package kerfglow.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import com.networknt.schema.ValidationMessage;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.jar.Attributes;
import java.util.jar.JarFile;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the archives say of their contents: bill of materials and licences against the jars that are in them. */
class SupplyTest {
    /** One that must be there, so that the comparison is not of two empty lists. */
    private static final String JTS = "pkg:maven/org.locationtech.jts/jts-core@1.20.0";
    private static final Map<String, Path> PROGRAMS = new TreeMap<>();

    @TempDir
    private static Path folder;

    @BeforeAll
    static void unpack() throws IOException, InterruptedException {
        for (String archive : Unpacked.ARCHIVES.keySet()) {
            PROGRAMS.put(archive, Unpacked.of(archive, folder));
        }
    }

    private static JsonNode bill(Path program) throws IOException {
        return new ObjectMapper().readTree(program.resolve("kerfglow.cdx.json").toFile());
    }

    /** ECMA-424, by its own schema. */
    @Test
    void the_bill_keeps_the_schema_of_CycloneDX() throws IOException {
        JsonSchemaFactory factory = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V7, builder -> builder.schemaMappers(mappers -> mappers
                .mapPrefix("http://cyclonedx.org/schema/", "classpath:")));
        try (InputStream schema = SupplyTest.class.getResourceAsStream("/bom-1.6.schema.json")) {
            var validator = factory.getSchema(schema);
            for (Path program : PROGRAMS.values()) {
                assertEquals(Set.of(), validator.validate(bill(program)).stream().map(ValidationMessage::getMessage).collect(Collectors.toSet()));
            }
            JsonNode wrong = new ObjectMapper().readTree("{\"bomFormat\": \"CycloneDX\", \"specVersion\": \"1.6\", \"components\": [{\"type\": \"library\"}]}");
            assertFalse(validator.validate(wrong).isEmpty(), "a component without a name is refused");
        }
    }

    @Test
    void the_bill_names_every_jar_that_ships_and_no_other() throws Exception {
        for (Map.Entry<String, Path> program : PROGRAMS.entrySet()) {
            Set<String> shipped = new TreeSet<>();
            for (Path jar : Unpacked.jars(program.getValue())) {
                try (JarFile file = new JarFile(jar.toFile())) {
                    Attributes manifest = file.getManifest().getMainAttributes();
                    String digest = HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(jar)));
                    shipped.add(manifest.getValue("Bundle-SymbolicName").replaceFirst(";.*", "") + " " + manifest.getValue("Bundle-Version") + " " + digest);
                }
            }
            Set<String> billed = new TreeSet<>();
            int known = 0;
            for (JsonNode component : bill(program.getValue()).get("components")) {
                assertEquals("SHA-256", component.at("/hashes/0/alg").asText());
                assertFalse(component.at("/licenses/0").isMissingNode(), component::toString);
                assertTrue(component.has("purl") != component.get("name").asText().startsWith("kerfglow."), component::toString);
                billed.add(component.get("name").asText() + " " + component.get("version").asText() + " " + component.at("/hashes/0/content").asText());
                known += component.path("purl").asText().equals(JTS) ? 1 : 0;
            }
            assertEquals(shipped, billed, program.getKey());
            assertEquals(1, known, JTS);
            assertEquals(Files.readString(program.getValue().resolve("kerfglow.cdx.json")), Files.readString(Unpacked.PRODUCTS.resolve(Unpacked.ARCHIVES.get(program.getKey()))), "the bill beside the archive");
        }
    }

    @Test
    void every_jar_has_its_licence_with_the_text() throws IOException {
        for (Path program : PROGRAMS.values()) {
            Path licences = program.resolve("licences");
            Map<String, String> listed = new TreeMap<>();
            for (String line : Files.readAllLines(licences.resolve("list.txt"))) {
                String[] cells = line.split("\t", -1);
                if (cells.length == 3) {
                    listed.put(cells[0], cells[1]);
                    assertTrue(cells[2].isEmpty() || Files.isDirectory(licences.resolve(cells[2])), line);
                }
            }
            assertEquals(Unpacked.jars(program).stream().map(jar -> jar.getFileName().toString()).collect(Collectors.toCollection(TreeSet::new)), listed.keySet());
            for (Map.Entry<String, String> each : listed.entrySet()) {
                for (String id : each.getValue().split(" (OR|AND|WITH) ")) {
                    assertTrue(Files.size(licences.resolve(id + ".txt")) > 500, id);
                }
                requireNoContradiction(program.resolve("plugins").resolve(each.getKey()), each.getValue());
            }
            assertTrue(Files.readString(licences.resolve("EPL-2.0.txt")).contains("Eclipse Public License - v 2.0"));
            assertTrue(Files.readString(program.resolve("LICENSE")).contains("Apache License"));
            assertTrue(Files.readString(licences.resolve("kerfglow.fonts/kerfglow-fonts-LiberationSans-LICENSE.txt")).contains("Reserved Font Name Liberation"));
            assertTrue(Files.readString(licences.resolve("org.apache.batik.css/NOTICE")).contains("World Wide Web Consortium"));
        }
    }

    /** What a jar says of itself, in its manifest or its about.html, is among what the list says. */
    private static void requireNoContradiction(Path jar, String licence) throws IOException {
        try (JarFile file = new JarFile(jar.toFile())) {
            String manifest = String.valueOf(file.getManifest().getMainAttributes().getValue("Bundle-License"));
            assertTrue(!manifest.toLowerCase(Locale.ROOT).contains("apache") || licence.contains("Apache-2.0"), jar + " says " + manifest);
            assertTrue(!manifest.toLowerCase(Locale.ROOT).contains("epl") || licence.contains("EPL-2.0"), jar + " says " + manifest);
            if (file.getEntry("about.html") != null) {
                try (InputStream about = file.getInputStream(file.getEntry("about.html"))) {
                    String words = new String(about.readAllBytes(), StandardCharsets.UTF_8).replaceAll("\\s+", " ");
                    assertTrue(words.contains("Eclipse Public License Version 2.0") && licence.equals("EPL-2.0"), jar + " and its about.html");
                }
            }
        }
    }

    /** Archives are for everybody: the same layout on each platform, and nothing of the machine that built them. */
    @Test
    void every_archive_has_command_demo_and_launcher_and_no_folder_of_the_build() throws IOException {
        List<byte[]> own = Stream.of(Kerfglow.TOP.toString(), System.getProperty("user.home") + "/", ".m2").map(text -> text.getBytes(StandardCharsets.UTF_8)).toList();
        for (Map.Entry<String, Path> program : PROGRAMS.entrySet()) {
            boolean windows = program.getKey().endsWith(".zip");
            assertTrue(windows || Files.isExecutable(program.getValue().resolve("kerfglow")), program.getKey());
            for (String file : List.of(windows ? "kerfglow.cmd" : "kerfglow", "command/config.ini", "configuration/config.ini", "demo/skelderfen.svg", "LICENSE")) {
                assertTrue(Files.isRegularFile(program.getValue().resolve(file)), program.getKey() + ": " + file);
            }
            List<Path> files;
            try (Stream<Path> walk = Files.walk(program.getValue())) {
                files = walk.filter(path -> Files.isRegularFile(path) && !path.toString().endsWith(".jar")).toList();
            }
            List<String> found = new ArrayList<>();
            for (Path file : files) {
                String text = Files.readString(file, StandardCharsets.ISO_8859_1);
                own.stream().filter(each -> text.contains(new String(each, StandardCharsets.ISO_8859_1))).forEach(each -> found.add(file + " " + new String(each, StandardCharsets.UTF_8)));
            }
            assertEquals(List.of(), found);
        }
    }

    /** What makes two builds alike (product/reproducible compares them whole): entries by name, one time, no owner. */
    @Test
    void entries_of_archives_are_in_order_and_of_one_time() throws Exception {
        for (String archive : List.of("kerfglow-linux.gtk.x86_64.tar.gz", "kerfglow-macosx.cocoa.aarch64.tar.gz")) {
            Process tar = new ProcessBuilder("tar", "--list", "--verbose", "--numeric-owner", "--utc", "--full-time", "--gzip", "--file", Unpacked.PRODUCTS.resolve(archive).toString())
                    .redirectError(ProcessBuilder.Redirect.INHERIT).start();
            List<String[]> lines = new String(tar.getInputStream().readAllBytes(), StandardCharsets.UTF_8).lines().map(line -> line.split(" +", 6)).toList();
            assertEquals(0, tar.waitFor());
            assertTrue(lines.size() > 100, "entries " + lines.size());
            assertEquals(Set.of("0/0"), lines.stream().map(line -> line[1]).collect(Collectors.toSet()));
            assertEquals(1, lines.stream().map(line -> line[3] + line[4]).distinct().count());
            List<String> names = lines.stream().map(line -> line[5]).toList();
            assertEquals(names.stream().sorted().toList(), names);
        }
    }
}
