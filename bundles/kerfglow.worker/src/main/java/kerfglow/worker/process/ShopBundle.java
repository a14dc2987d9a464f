// SPDX-License-Identifier: Apache-2.0
package kerfglow.worker.process;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import kerfglow.api.Check;
import org.osgi.framework.Bundle;
import org.osgi.framework.BundleContext;
import org.osgi.framework.BundleException;
import org.osgi.framework.InvalidSyntaxException;
import org.osgi.framework.ServiceReference;

/** The bundle that this process is for, its checks, and what it says of itself. */
final class ShopBundle {
    /** Services of a bundle are there when it has started; one that registers them from a thread of its own gets this long. */
    private static final long PATIENCE_MILLIS = 1000;
    private static final long LOOK_MILLIS = 20;
    /** Declarative Services names a component after its class unless told otherwise. */
    private static final String COMPONENT_NAME = "component.name";

    private final BundleContext context;
    private final Map<String, Check> checks = new ConcurrentHashMap<>();

    ShopBundle(BundleContext context) {
        this.context = context;
    }

    /**
     * Starts it.
     *
     * @param file the bundle
     * @param beside what else lies in the folder, for it to import from
     * @return the fields of the message that says who it is or why not
     */
    Map<String, Object> start(Path file, List<Path> beside) {
        List<String> wrong = new ArrayList<>();
        List<Object> infos = new ArrayList<>();
        Bundle bundle = null;
        try {
            bundle = install(file);
            for (Path other : beside) {
                installBeside(other);
            }
            if (bundle.getSymbolicName() == null) {
                wrong.add("it is no OSGi bundle: its manifest has no Bundle-SymbolicName");
            } else {
                bundle.start();
                infos.addAll(infos(bundle, wrong));
            }
        } catch (BundleException unresolved) {
            List<String> missing = bundle == null ? List.of() : Unresolved.of(bundle, context);
            wrong.addAll(missing.isEmpty() ? List.of("it does not start: " + Thrown.deepest(unresolved)) : missing);
        } catch (IOException unreadable) {
            wrong.add("it cannot be read: " + unreadable.getMessage());
        } catch (Throwable defect) { // whatever a shop's code does is told, not suffered
            wrong.add("it cannot say who it is: " + Thrown.words(defect));
        }
        Map<String, Object> fields = new LinkedHashMap<>();
        fields.put("bundle", bundle == null || bundle.getSymbolicName() == null ? file.getFileName().toString() : bundle.getSymbolicName());
        fields.put("version", bundle == null ? "0.0.0" : bundle.getVersion().toString());
        fields.put("checks", infos);
        fields.put("wrong", wrong);
        return fields;
    }

    private Bundle install(Path file) throws IOException, BundleException {
        try (InputStream in = Files.newInputStream(file)) {
            return context.installBundle(file.toUri().toString(), in);
        }
    }

    private void installBeside(Path other) throws IOException {
        try {
            install(other);
        } catch (BundleException notABundle) {
            return; // told by the process that is for it
        }
    }

    private List<Object> infos(Bundle bundle, List<String> wrong) throws InterruptedException, InvalidSyntaxException {
        List<Object> infos = new ArrayList<>();
        for (ServiceReference<Check> reference : references(bundle)) {
            Check check = context.getService(reference);
            if (check == null) {
                wrong.add("a check of it cannot be made: " + whyNot(bundle, String.valueOf(reference.getProperty(COMPONENT_NAME))));
                continue;
            }
            Map<String, Object> fields = new LinkedHashMap<>();
            fields.put("info", check.info());
            fields.put("reads", check.reads());
            checks.put(check.info().id(), check);
            infos.add(fields);
        }
        if (infos.isEmpty() && wrong.isEmpty()) {
            wrong.add("it brings no check: no service of type kerfglow.api.Check; is the class marked with @Component?");
        }
        return infos;
    }

    /** Makes the class again by hand, because who made it the first time keeps to himself why it could not. */
    private static String whyNot(Bundle bundle, String className) {
        try {
            bundle.loadClass(className).getConstructor().newInstance();
            return "its component description is at fault";
        } catch (Throwable defect) { // whatever a shop's code does is told, not suffered
            return Thrown.deepest(defect);
        }
    }

    private List<ServiceReference<Check>> references(Bundle bundle) throws InterruptedException, InvalidSyntaxException {
        long start = System.nanoTime(); // a clock that is set back must not make it wait
        while (true) {
            Collection<ServiceReference<Check>> all = context.getServiceReferences(Check.class, null);
            List<ServiceReference<Check>> own = all.stream().filter(each -> bundle.equals(each.getBundle())).sorted().toList();
            if (!own.isEmpty() || System.nanoTime() - start > TimeUnit.MILLISECONDS.toNanos(PATIENCE_MILLIS)) {
                return own;
            }
            Thread.sleep(LOOK_MILLIS);
        }
    }

    /** The check of that id; it was there when the bundle started. */
    Check check(String id) {
        return checks.get(id);
    }
}
