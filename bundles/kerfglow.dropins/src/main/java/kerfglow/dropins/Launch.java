// SPDX-License-Identifier: Apache-2.0
package kerfglow.dropins;

import java.io.File;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.eclipse.core.runtime.FileLocator;
import org.osgi.framework.Bundle;
import org.osgi.framework.BundleContext;

/**
 * How a worker process is started: the same java, the framework of this program and those of its bundles that a check may see.
 *
 * @param framework the framework's jar
 * @param worker the jar of the worker, which holds the main class
 * @param bundles everything installed in the worker's framework
 */
record Launch(Path framework, Path worker, List<Path> bundles) {
    /** What the worker itself needs and what a check compiles against; those that are not installed are left out. */
    private static final List<String> NAMES = List.of("org.osgi.util.function", "org.osgi.util.promise", "org.osgi.service.component", "org.apache.felix.scr",
            "com.fasterxml.jackson.core.jackson-core", "org.locationtech.jts.jts-core", "kerfglow.api", "kerfglow.geometry", "kerfglow.light", "kerfglow.worker");
    private static final String MAIN = "kerfglow.worker.process.Main";

    static Launch ofThisProgram(BundleContext context) throws IOException {
        List<Path> bundles = new ArrayList<>();
        Path worker = null;
        for (String name : NAMES) {
            Optional<Bundle> bundle = Arrays.stream(context.getBundles()).filter(each -> name.equals(each.getSymbolicName())).findFirst();
            if (bundle.isPresent()) {
                worker = FileLocator.getBundleFileLocation(bundle.get()).orElseThrow(() -> new IOException("bundle " + name + " is no file")).toPath();
                bundles.add(worker);
            }
        }
        return new Launch(Path.of(URI.create(context.getProperty("osgi.framework").replace(" ", "%20"))), worker, bundles);
    }

    /** The command line. */
    List<String> command(int heapMib, Path storage) {
        List<String> command = new ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Xmx" + heapMib + "m",
                "-XX:+UseSerialGC", "-XX:+ExitOnOutOfMemoryError", "-XX:+DisplayVMOutputToStderr", "-Djava.awt.headless=true", "-Dfile.encoding=UTF-8",
                "-cp", framework + File.pathSeparator + worker, MAIN, storage.toString()));
        bundles.forEach(bundle -> command.add(bundle.toString()));
        return command;
    }
}
