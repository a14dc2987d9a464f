// SPDX-License-Identifier: Apache-2.0
package kerfglow.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import kerfglow.api.proof.ProofImporter;
import kerfglow.dropins.Dropins;
import kerfglow.host.CheckCatalogue;
import kerfglow.host.Runner;
import org.eclipse.equinox.app.IApplication;
import org.eclipse.equinox.app.IApplicationContext;
import org.osgi.framework.BundleContext;
import org.osgi.framework.FrameworkUtil;
import org.osgi.util.tracker.ServiceTracker;

/** Where the framework hands over to the command line; its return value is the exit status. */
public final class Application implements IApplication {
    /** Services are there in well under a second; a machine this slow is broken. */
    private static final long WAIT_MILLIS = 20_000;

    @Override
    public Object start(IApplicationContext context) throws InterruptedException {
        String[] arguments = (String[]) context.getArguments().get(IApplicationContext.APPLICATION_ARGS);
        context.applicationRunning();
        PrintStream out = new PrintStream(new FileOutputStream(FileDescriptor.out), false, StandardCharsets.UTF_8);
        PrintStream err = new PrintStream(new FileOutputStream(FileDescriptor.err), true, StandardCharsets.UTF_8);
        BundleContext bundles = FrameworkUtil.getBundle(Application.class).getBundleContext();
        ProofImporter importer = service(bundles, ProofImporter.class);
        if (importer != null) {
            FirstProof.expect(arguments, Program.CHECKING, importer);
        }
        Runner runner = service(bundles, Runner.class);
        CheckCatalogue catalogue = service(bundles, CheckCatalogue.class);
        Dropins dropins = service(bundles, Dropins.class);
        if (runner == null || catalogue == null || dropins == null) {
            err.println("kerfglow: the program is not whole: its host or its importer did not start. Install it again.");
            return ExitStatus.BROKEN.code();
        }
        try {
            return new Program(runner, catalogue, OwnChecks.of(dropins), out, err, Terminal.ofThisProcess()).run(arguments);
        } finally {
            out.flush();
        }
    }

    private static <T> T service(BundleContext bundles, Class<T> type) throws InterruptedException {
        ServiceTracker<T, T> tracker = new ServiceTracker<>(bundles, type, null);
        tracker.open();
        return tracker.waitForService(WAIT_MILLIS);
    }

    @Override
    public void stop() {
        // the process ends; a run holds nothing that must be closed
    }
}
