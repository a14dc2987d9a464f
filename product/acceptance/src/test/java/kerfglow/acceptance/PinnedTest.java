// SPDX-License-Identifier: Apache-2.0
package kerfglow.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/** Every library and every plug-in of the build at one version, and each in the table of docs/decisions.md. */
class PinnedTest {
    private static final Path TOP = Kerfglow.TOP;
    /** Maven's own words for whatever is newest, its ranges, and versions that change under their name. */
    private static final Pattern LOOSE = Pattern.compile("LATEST|RELEASE|.*-SNAPSHOT|[\\[(].*|.*[,\\])]|.*\\$\\{.*");
    private static final Pattern ROW = Pattern.compile("^\\| ([A-Za-z0-9.-]+:[A-Za-z0-9._-]+) \\| ([^|]+) \\| ([^|]+) \\| (runs|build|tests|build, tests) \\| ([^|]+) \\|$", Pattern.MULTILINE);

    @Test
    void versions_are_exact() throws Exception {
        assertTrue(LOOSE.matcher("[1.0,2.0)").matches() && LOOSE.matcher("1.0-SNAPSHOT").matches() && LOOSE.matcher("${unknown}").matches() && !LOOSE.matcher("1.3.04").matches());
        Map<String, Set<String>> used = used();
        assertTrue(used.size() > 80, "found " + used.size());
        used.forEach((name, versions) -> {
            assertEquals(1, versions.size(), name + " is used in several versions: " + versions);
            assertFalse(versions.stream().anyMatch(version -> version.isEmpty() || LOOSE.matcher(version).matches()), name + " " + versions);
        });
    }

    /** Repositories change what they serve under one address; Maven artifacts do not. */
    @Test
    void the_target_platform_is_of_Maven_artifacts_alone() throws Exception {
        Document target = parsed(TOP.resolve("product/kerfglow.target"));
        List<Element> locations = elements(target.getDocumentElement(), "location");
        assertFalse(locations.isEmpty());
        locations.forEach(location -> assertEquals("Maven", location.getAttribute("type")));
        assertEquals(List.of(), elements(target.getDocumentElement(), "repository"));
        for (Path pom : poms()) {
            assertEquals(List.of(), elements(parsed(pom).getDocumentElement(), "repository"), pom::toString);
            assertEquals(List.of(), elements(parsed(pom).getDocumentElement(), "pluginRepository"), pom::toString);
        }
    }

    @Test
    void each_dependency_is_in_the_table_with_licence_and_reason_and_no_other() throws Exception {
        Map<String, Set<String>> listed = new TreeMap<>();
        Matcher row = ROW.matcher(Files.readString(TOP.resolve("docs/decisions.md")));
        while (row.find()) {
            assertTrue(listed.put(row.group(1), new TreeSet<>(Set.of(row.group(2).strip()))) == null, row.group(1) + " is listed twice");
            assertTrue(row.group(5).strip().length() > 3 && row.group(3).matches("[A-Za-z0-9.+-]+( (OR|AND|WITH) [A-Za-z0-9.+-]+)*"), row.group());
        }
        Set<Map.Entry<String, Set<String>>> missing = new HashSet<>(used().entrySet());
        missing.removeAll(listed.entrySet());
        Set<Map.Entry<String, Set<String>>> needless = new HashSet<>(listed.entrySet());
        needless.removeAll(used().entrySet());
        assertEquals(Set.of(), missing, "used by the build, but in no row of the table in docs/decisions.md");
        assertEquals(Set.of(), needless, "rows of the table in docs/decisions.md that no build file uses");
    }

    /** Name to versions, of all poms, the target platform and the scripts. */
    private static Map<String, Set<String>> used() throws Exception {
        Map<String, Set<String>> used = new TreeMap<>();
        Map<String, String> parent = properties(parsed(TOP.resolve("pom.xml")));
        List<Path> files = new ArrayList<>(poms());
        files.add(TOP.resolve("product/kerfglow.target"));
        for (Path file : files) {
            Document document = parsed(file);
            Map<String, String> known = new TreeMap<>(parent);
            known.putAll(properties(document));
            for (String kind : List.of("dependency", "plugin")) {
                for (Element element : elements(document.getDocumentElement(), kind)) {
                    String group = text(element, "groupId").isEmpty() ? "org.apache.maven.plugins" : text(element, "groupId");
                    String version = text(element, "version");
                    for (Map.Entry<String, String> property : known.entrySet()) {
                        version = version.replace("${" + property.getKey() + "}", property.getValue());
                    }
                    used.computeIfAbsent(group + ":" + text(element, "artifactId"), name -> new TreeSet<>()).add(version);
                }
            }
        }
        String script = Files.readString(TOP.resolve("product/mvn"));
        Matcher maven = Pattern.compile("(?m)^version=(\\S+)$").matcher(script);
        assertTrue(maven.find());
        used.put("org.apache.maven:apache-maven", new TreeSet<>(Set.of(maven.group(1))));
        Matcher plugin = Pattern.compile("(org\\.apache\\.maven\\.plugins:[a-z-]+):([0-9][^:]*):").matcher(script);
        while (plugin.find()) {
            used.computeIfAbsent(plugin.group(1), name -> new TreeSet<>()).add(plugin.group(2));
        }
        return used;
    }

    private static List<Path> poms() throws IOException {
        List<Path> poms = new ArrayList<>();
        Files.walkFileTree(TOP, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult preVisitDirectory(Path folder, BasicFileAttributes attributes) {
                String name = folder.getFileName().toString();
                return !folder.equals(TOP) && (name.startsWith(".") || name.equals("target") || name.equals("src")) ? FileVisitResult.SKIP_SUBTREE : FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
                if (file.getFileName().toString().equals("pom.xml") || file.getFileName().toString().equals("tools-pom.xml")) {
                    poms.add(file);
                }
                return FileVisitResult.CONTINUE;
            }
        });
        assertTrue(poms.size() > 30, "found " + poms.size());
        return poms;
    }

    private static Document parsed(Path file) throws Exception {
        return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(file.toFile());
    }

    private static Map<String, String> properties(Document pom) {
        Map<String, String> properties = new TreeMap<>();
        for (Element block : elements(pom.getDocumentElement(), "properties")) {
            for (Node node = block.getFirstChild(); node != null; node = node.getNextSibling()) {
                if (node instanceof Element property) {
                    properties.put(property.getTagName(), property.getTextContent().strip());
                }
            }
        }
        return properties;
    }

    private static List<Element> elements(Element root, String name) {
        List<Element> found = new ArrayList<>();
        var nodes = root.getElementsByTagName(name);
        for (int i = 0; i < nodes.getLength(); i++) {
            found.add((Element) nodes.item(i));
        }
        return found;
    }

    private static String text(Element parent, String name) {
        for (Node node = parent.getFirstChild(); node != null; node = node.getNextSibling()) {
            if (node instanceof Element element && element.getTagName().equals(name)) {
                return element.getTextContent().strip();
            }
        }
        return "";
    }
}
