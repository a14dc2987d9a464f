// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import kerfglow.desktop.desk.Desk;
import kerfglow.desktop.desk.FirstFile;
import kerfglow.desktop.desk.Habits;
import kerfglow.desktop.desk.Topic;
import kerfglow.desktop.desk.Worker;
import kerfglow.dropins.Dropins;
import kerfglow.host.CheckCatalogue;
import kerfglow.host.Runner;
import org.eclipse.e4.core.contexts.IEclipseContext;
import org.eclipse.e4.ui.workbench.lifecycle.PostContextCreate;
import org.eclipse.equinox.app.IApplicationContext;
import org.eclipse.swt.widgets.Display;
import org.osgi.framework.BundleContext;
import org.osgi.framework.FrameworkUtil;
import org.osgi.util.tracker.ServiceTracker;

/** Lays the desk before the window is built, so that the proof is read while the window starts. */
public final class Lifecycle {
    /** The words of the command line that open a file. */
    private static final String OPEN = "open";
    /** Where the launcher says that the demo lies. */
    private static final String DEMO = "kerfglow.demo";
    /** Set by the benchmark of the start. */
    private static final String TELL_START = "kerfglow.tell-start";
    private static final String LAYOUT = ".metadata/.plugins/org.eclipse.e4.workbench/workbench.xmi";
    /** Services are there in well under a second; a machine this slow is broken. */
    private static final long WAIT_MILLIS = 20_000;

    @PostContextCreate
    void layDesk(IApplicationContext application, IEclipseContext context) throws InterruptedException {
        BundleContext bundles = FrameworkUtil.getBundle(Lifecycle.class).getBundleContext();
        Runner runner = service(bundles, Runner.class);
        CheckCatalogue catalogue = service(bundles, CheckCatalogue.class);
        Optional<Path> demo = Optional.ofNullable(System.getProperty(DEMO)).map(Path::of).filter(Files::isRegularFile);
        Map<Class<?>, Object> shared = DeskMaker.lay(Display.getDefault(), runner, catalogue, stateFolder(), demo);
        shared.forEach((type, object) -> context.set(type.getName(), object));
        if (Boolean.getBoolean(TELL_START)) {
            tellStart((Desk) shared.get(Desk.class), Display.getDefault());
        }
        followChecksFolder(service(bundles, Dropins.class));
        forgetLayoutOfOtherVersion(bundles.getBundle().getVersion().toString(), (Habits) shared.get(Habits.class));
        Habits habits = (Habits) shared.get(Habits.class);
        Optional<Path> named = namedFile(application);
        named.ifPresent(habits::opened);
        named.or(() -> FirstFile.of(habits.recent(), demo, stateFolder().resolve(DeskMaker.UNSAVED))).ifPresent(((Worker) shared.get(Worker.class))::open);
    }

    /** Says how long it took until the first proof was painted. */
    private static void tellStart(Desk desk, Display display) {
        AtomicBoolean told = new AtomicBoolean();
        Runnable tell = () -> ProcessHandle.current().info().startInstant()
                .ifPresent(start -> System.err.println("first picture after " + Duration.between(start, Instant.now()).toMillis() + " ms"));
        desk.listen(Topic.PROOF, () -> {
            if (desk.proof().isPresent() && told.compareAndSet(false, true)) {
                display.asyncExec(() -> display.asyncExec(tell)); // the second turn comes after what the first asked to be painted
            }
        });
    }

    /** A shop's own checks come and go while the window is open; it does not wait for their processes. */
    private static void followChecksFolder(Dropins dropins) {
        Thread first = new Thread(() -> dropins.watch(Dropins.usualFolder()), "checks folder, first look");
        first.setDaemon(true);
        first.start();
    }

    /** The framework keeps the layout of the window; one that another version kept may lack a pane that this one has. */
    private static void forgetLayoutOfOtherVersion(String version, Habits habits) {
        if (!habits.isLayoutOf(version)) {
            try {
                Files.deleteIfExists(stateFolder().resolve(LAYOUT));
            } catch (IOException kept) {
                // then the old layout is shown, which is whole enough to work with
            }
            habits.setLayoutOf(version);
        }
    }

    private static <T> T service(BundleContext bundles, Class<T> type) throws InterruptedException {
        ServiceTracker<T, T> tracker = new ServiceTracker<>(bundles, type, null);
        tracker.open();
        T service = tracker.waitForService(WAIT_MILLIS);
        if (service == null) {
            throw new IllegalStateException("The program is not whole: its host or its importer did not start. Install it again.");
        }
        return service;
    }

    /** Where the framework keeps what belongs to this person's window. */
    private static Path stateFolder() {
        return Path.of(URI.create(System.getProperty("osgi.instance.area").replace(" ", "%20")));
    }

    private static Optional<Path> namedFile(IApplicationContext application) {
        List<String> words = List.of((String[]) application.getArguments().get(IApplicationContext.APPLICATION_ARGS));
        int open = words.indexOf(OPEN);
        return open >= 0 && open + 1 < words.size() ? Optional.of(Path.of(words.get(open + 1)).toAbsolutePath()) : Optional.empty();
    }
}
