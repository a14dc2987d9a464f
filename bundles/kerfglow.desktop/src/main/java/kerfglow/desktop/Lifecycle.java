// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop;

import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import kerfglow.api.Units;
import kerfglow.desktop.desk.Background;
import kerfglow.desktop.desk.DemoFile;
import kerfglow.desktop.desk.Desk;
import kerfglow.desktop.desk.Habits;
import kerfglow.desktop.desk.Screen;
import kerfglow.desktop.desk.Worker;
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
    private static final String HABITS = "habits.properties";
    /** Services are there in well under a second; a machine this slow is broken. */
    private static final long WAIT_MILLIS = 20_000;

    @PostContextCreate
    void layDesk(IApplicationContext application, IEclipseContext context) throws InterruptedException {
        BundleContext bundles = FrameworkUtil.getBundle(Lifecycle.class).getBundleContext();
        ServiceTracker<Runner, Runner> tracker = new ServiceTracker<>(bundles, Runner.class, null);
        tracker.open();
        Runner runner = tracker.waitForService(WAIT_MILLIS);
        if (runner == null) {
            throw new IllegalStateException("The program is not whole: its host or its importer did not start. Install it again.");
        }
        Display display = Display.getDefault();
        Desk desk = new Desk();
        Worker worker = new Worker(desk, runner, change -> {
            if (!display.isDisposed()) {
                display.asyncExec(change);
            }
        });
        Habits habits = new Habits(stateFolder().resolve(HABITS));
        desk.setScreen(habits.screen().orElseGet(() -> new Screen(display.getDPI().x / Units.MM_PER_INCH)));
        desk.setDark(habits.isDark());
        DemoFile demo = new DemoFile(Optional.ofNullable(System.getProperty(DEMO)).map(Path::of).filter(Files::isRegularFile));
        context.set(Habits.class, habits);
        context.set(DemoFile.class, demo);
        context.set(Desk.class, desk);
        context.set(Background.class, new Background());
        context.set(Worker.class, worker);
        Optional<Path> named = namedFile(application);
        named.ifPresent(habits::opened);
        named.or(demo::file).ifPresent(worker::open);
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
