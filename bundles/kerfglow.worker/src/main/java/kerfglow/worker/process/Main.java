// SPDX-License-Identifier: Apache-2.0
package kerfglow.worker.process;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Dictionary;
import java.util.Hashtable;
import java.util.List;
import java.util.Map;
import java.util.ServiceLoader;
import org.osgi.framework.Bundle;
import org.osgi.framework.BundleContext;
import org.osgi.framework.BundleException;
import org.osgi.framework.Constants;
import org.osgi.framework.launch.Framework;
import org.osgi.framework.launch.FrameworkFactory;

/**
 * Starts the framework of a worker process. Arguments: a folder for the framework's own files, then the program's bundles. The streams to
 * the host become services, which is what {@link Conversation} waits for; what the shop's bundle prints goes elsewhere.
 */
public final class Main {
    /** Property of the services that are the streams to the host. */
    static final String HOST = "kerfglow.worker";

    private Main() {
    }

    /** Runs until the host closes the stream. */
    public static void main(String[] arguments) throws BundleException {
        OutputStream toHost = new FileOutputStream(FileDescriptor.out);
        System.setOut(System.err);
        Framework framework = ServiceLoader.load(FrameworkFactory.class).iterator().next().newFramework(Map.of(Constants.FRAMEWORK_STORAGE, arguments[0]));
        framework.init();
        BundleContext context = framework.getBundleContext();
        Dictionary<String, String> host = new Hashtable<>(Map.of(HOST, "host"));
        context.registerService(InputStream.class, System.in, host);
        context.registerService(OutputStream.class, toHost, host);
        System.setIn(InputStream.nullInputStream()); // a bundle that reads a line would wait for it, or take the host's words away
        List<Bundle> bundles = new ArrayList<>();
        for (int i = 1; i < arguments.length; i++) {
            bundles.add(context.installBundle("reference:" + Path.of(arguments[i]).toUri()));
        }
        framework.start();
        for (Bundle bundle : bundles) {
            bundle.start();
        }
    }
}
