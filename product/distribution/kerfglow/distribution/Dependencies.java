// SPDX-License-Identifier: Apache-2.0
package kerfglow.distribution;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The libraries of the target platform: what they are called in Maven, known by their bytes, and the licence that docs/decisions.md gives for each. */
final class Dependencies {
    /** One row of the table in docs/decisions.md: {@code | group:artifact | version | licence | where | why |}. */
    private static final Pattern ROW = Pattern.compile("^\\| ([A-Za-z0-9.-]+:[A-Za-z0-9._-]+) \\| ([^|]+) \\| ([^|]+) \\|", Pattern.MULTILINE);
    private static final Pattern LOCATION = Pattern.compile("<location .*?</location>", Pattern.DOTALL);
    private static final Pattern ARTIFACT = Pattern.compile("<groupId>([^<]+)</groupId><artifactId>([^<]+)</artifactId><version>([^<]+)</version>");
    private static final Pattern WRAPPED = Pattern.compile("Bundle-SymbolicName: (\\S+)");

    /** A library: {@code wrapped} when the build gave it a manifest, so that its bytes are not those of Maven. */
    record Library(String group, String artifact, String version, String licence, boolean wrapped) {
    }

    private final Map<String, Library> byDigest = new HashMap<>();
    private final Map<String, Library> bySymbolicName = new HashMap<>();

    private Dependencies() {
    }

    static Dependencies read(Path top, Path repository) throws IOException {
        Map<String, String> licences = new HashMap<>();
        Matcher row = ROW.matcher(Files.readString(top.resolve("docs/decisions.md")));
        while (row.find()) {
            licences.put(row.group(1) + ":" + row.group(2).strip(), row.group(3).strip());
        }
        Dependencies result = new Dependencies();
        Matcher location = LOCATION.matcher(Files.readString(top.resolve("product/kerfglow.target")));
        while (location.find()) {
            Matcher wrapped = WRAPPED.matcher(location.group());
            boolean isWrapped = wrapped.find();
            Matcher artifact = ARTIFACT.matcher(location.group());
            while (artifact.find()) {
                String name = artifact.group(1) + ":" + artifact.group(2) + ":" + artifact.group(3);
                String licence = licences.get(name);
                if (licence == null) {
                    throw new IOException("docs/decisions.md, table of dependencies: there is no row for " + name + " of product/kerfglow.target; add one with its licence and why it is needed");
                }
                Library library = new Library(artifact.group(1), artifact.group(2), artifact.group(3), licence, isWrapped);
                if (isWrapped) {
                    result.bySymbolicName.put(wrapped.group(1), library);
                } else {
                    Path jar = repository.resolve(library.group.replace('.', '/')).resolve(library.artifact).resolve(library.version).resolve(library.artifact + "-" + library.version + ".jar");
                    if (Files.exists(jar)) { // what no platform of this build needs was not fetched
                        result.byDigest.put(sha256(jar), library);
                    }
                }
            }
        }
        return result;
    }

    /** The library that a shipped jar is. */
    Library of(Path jar, String symbolicName) throws IOException {
        Library library = byDigest.getOrDefault(sha256(jar), bySymbolicName.get(symbolicName));
        if (library == null) {
            throw new IOException(jar.getFileName() + " ships, but is no artifact that product/kerfglow.target names");
        }
        return library;
    }

    static String sha256(Path file) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(file)));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e); // every Java has it
        }
    }

    /** The SPDX ids of an expression such as {@code EPL-2.0 OR BSD-3-Clause}. */
    static List<String> ids(String expression) {
        List<String> ids = new ArrayList<>();
        for (String word : expression.replaceAll("[()]", " ").split("\\s+(OR|AND|WITH)\\s+")) {
            ids.add(word.strip());
        }
        return ids;
    }
}
