// SPDX-License-Identifier: Apache-2.0
package kerfglow.acceptance;

import java.io.File;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Map;
import java.util.jar.Attributes;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;
import java.util.jar.Manifest;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.tools.ToolProvider;

/** Makes small check bundles at test time: one class, compiled against the published bundles of the built program. */
final class ShopBundle {
    private final String className;
    private final byte[] bytes;

    private ShopBundle(String className, byte[] bytes) {
        this.className = className;
        this.bytes = bytes;
    }

    /** Compiles a class without nested ones. */
    static ShopBundle compile(Path folder, String className, String source) throws IOException {
        Path file = folder.resolve(className.replace('.', '/') + ".java");
        Files.createDirectories(file.getParent());
        Files.writeString(file, source);
        List<String> words = List.of("--release", "17", "-proc:none", "-cp", classPath(), "-d", folder.toString(), file.toString());
        int status = ToolProvider.getSystemJavaCompiler().run(null, null, null, words.toArray(new String[0]));
        if (status != 0) {
            throw new IOException("the source does not compile: " + source);
        }
        return new ShopBundle(className, Files.readAllBytes(folder.resolve(className.replace('.', '/') + ".class")));
    }

    private static String classPath() throws IOException {
        try (Stream<Path> plugins = Files.list(Kerfglow.program().resolveSibling("plugins"))) {
            return plugins.filter(path -> path.getFileName().toString().matches("(kerfglow\\.api|kerfglow\\.geometry|org\\.locationtech\\.jts).*"))
                    .map(Path::toString).collect(Collectors.joining(File.pathSeparator));
        }
    }

    /**
     * Writes it as a bundle, whole or not at all.
     *
     * @param headers further headers, which outweigh the usual ones
     * @param resources further files by name
     */
    void write(Path jar, String symbolicName, String version, Map<String, String> headers, Map<String, String> resources) throws IOException {
        Manifest manifest = new Manifest();
        Attributes main = manifest.getMainAttributes();
        main.put(Attributes.Name.MANIFEST_VERSION, "1.0");
        main.putValue("Bundle-ManifestVersion", "2");
        main.putValue("Bundle-SymbolicName", symbolicName);
        main.putValue("Bundle-Version", version);
        main.putValue("Import-Package", "kerfglow.api;version=\"[1.1,2)\",kerfglow.api.proof;version=\"[1.1,2)\",org.locationtech.jts.geom");
        main.putValue("Service-Component", "OSGI-INF/check.xml");
        headers.forEach(main::putValue);
        Path whole = jar.resolveSibling(jar.getFileName() + ".part");
        try (OutputStream out = Files.newOutputStream(whole); JarOutputStream zip = new JarOutputStream(out, manifest)) {
            entry(zip, className.replace('.', '/') + ".class", bytes);
            entry(zip, "OSGI-INF/check.xml", text("<scr:component xmlns:scr=\"http://www.osgi.org/xmlns/scr/v1.4.0\" name=\"" + className + "\"><implementation class=\""
                    + className + "\"/><service><provide interface=\"kerfglow.api.Check\"/></service></scr:component>"));
            for (Map.Entry<String, String> resource : resources.entrySet()) {
                entry(zip, resource.getKey(), text(resource.getValue()));
            }
        }
        Files.move(whole, jar, StandardCopyOption.REPLACE_EXISTING);
    }

    private static byte[] text(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static void entry(JarOutputStream zip, String name, byte[] bytes) throws IOException {
        zip.putNextEntry(new JarEntry(name));
        zip.write(bytes);
        zip.closeEntry();
    }
}
