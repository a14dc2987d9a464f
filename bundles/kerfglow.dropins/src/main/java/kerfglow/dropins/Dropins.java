// SPDX-License-Identifier: Apache-2.0
package kerfglow.dropins;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import kerfglow.api.Check;
import kerfglow.host.CheckCatalogue;
import org.osgi.framework.BundleContext;
import org.osgi.service.component.annotations.Activate;
import org.osgi.service.component.annotations.Component;
import org.osgi.service.component.annotations.Deactivate;
import org.osgi.service.component.annotations.Reference;

/** The folder of a shop's own checks. What lies in it is in the catalogue; nothing happens before somebody names the folder. */
@Component(service = Dropins.class)
public final class Dropins {
    /** Assumed: quick to the eye together with the start of a process, and two looks tell whether a file is still being copied. */
    private static final long LOOK_MILLIS = 250;
    /** Assumed: a person who looks at a result is not interrupted; a window left open overnight keeps no processes. */
    private static final long IDLE_SECONDS = 600;

    private final CheckCatalogue catalogue;
    private final BundleContext context;
    private final Processes processes;
    private final Map<String, Worker> workers = new HashMap<>();
    private SortedMap<String, BundleFile> seen = Collections.emptySortedMap();
    private SortedMap<String, BundleFile> brought = Collections.emptySortedMap();
    private Optional<String> noFolder = Optional.empty();
    private ScheduledExecutorService watching;

    /** Wired by the framework. */
    @Activate
    public Dropins(BundleContext context, @Reference CheckCatalogue catalogue) {
        this.context = context;
        this.processes = new Processes(context);
        this.catalogue = catalogue;
    }

    /** The folder that is used when nobody names another: what {@code KERFGLOW_CHECKS} says, else {@code .kerfglow/checks} in the person's home. */
    public static Path usualFolder() {
        String named = System.getenv("KERFGLOW_CHECKS");
        return named == null || named.isBlank() ? Path.of(System.getProperty("user.home"), ".kerfglow", "checks") : Path.of(named);
    }

    /**
     * Writes the project of a new check. Files that are there already are left as they are, but for the program's bundles in {@code lib}.
     *
     * @param id {@code owner.risk}, the id of the check to be
     * @param folder where the project comes to be
     * @return the files written
     * @throws IllegalArgumentException when the id is none; the message says what one is
     */
    public List<Path> newCheck(String id, Path folder) throws IOException {
        return NewCheck.write(id, folder, context);
    }

    /** Takes in what lies in the folder now, in place of what any other folder had; comes back when every bundle has said who it is. */
    public synchronized void use(Path folder) {
        unwatch();
        noFolder.ifPresent(before -> catalogue.refuse(before, Optional.empty()));
        noFolder = Files.exists(folder) && !Files.isDirectory(folder) ? Optional.of(folder.toString()) : Optional.empty();
        noFolder.ifPresent(now -> catalogue.refuse(now, Optional.of("checks are looked for in it, and it is a file, not a folder")));
        seen = BundleFile.in(folder);
        if (!seen.isEmpty()) {
            Processes.clearAbandoned();
        }
        bring(seen);
    }

    /** The same, and follows the folder from then on: what comes, changes or goes there does so in the catalogue within two seconds. */
    public synchronized void watch(Path folder) {
        use(folder);
        watching = Executors.newSingleThreadScheduledExecutor(work -> {
            Thread thread = new Thread(work, "checks folder");
            thread.setDaemon(true);
            return thread;
        });
        watching.scheduleWithFixedDelay(() -> look(folder), LOOK_MILLIS, LOOK_MILLIS, TimeUnit.MILLISECONDS);
    }

    private void unwatch() {
        if (watching != null) {
            watching.shutdown();
        }
        watching = null;
        keepSpare(false);
    }

    private void keepSpare(boolean value) {
        try {
            processes.keepSpare(value);
        } catch (IOException cannotStart) {
            return; // told by the bundle that needs a process
        }
    }

    private synchronized void look(Path folder) {
        if (watching == null) {
            return; // another folder was named meanwhile
        }
        keepSpare(Files.isDirectory(folder)); // who has no folder has no use for one
        SortedMap<String, BundleFile> now = BundleFile.in(folder);
        if (now.equals(seen) && !now.equals(brought)) { // a file that still grows is left for the next look
            bring(now);
        }
        seen = now;
        workers.values().forEach(worker -> worker.restAfter(IDLE_SECONDS));
    }

    private void bring(SortedMap<String, BundleFile> files) {
        brought.keySet().stream().filter(name -> !files.containsKey(name)).forEach(name -> catalogue.refuse(name, Optional.empty()));
        brought = files;
        workers.keySet().stream().filter(name -> !files.containsKey(name)).toList().forEach(this::remove);
        List<Worker> fresh = new ArrayList<>();
        files.forEach((name, file) -> {
            Worker there = workers.get(name);
            if (there == null || !there.file().equals(file) || there.refused().isPresent()) { // what a refused one missed may have come
                make(name, file, files).ifPresent(fresh::add);
            }
        });
        fresh.parallelStream().forEach(Worker::meet);
        fresh.forEach(this::takeOver);
    }

    private Optional<Worker> make(String name, BundleFile file, SortedMap<String, BundleFile> files) {
        try {
            return Optional.of(new Worker(processes, file, files.values().stream().filter(other -> other != file && other.isOfUseToOthers()).toList()));
        } catch (IOException unreadable) {
            catalogue.refuse(name, Optional.of("it cannot be read: " + unreadable.getMessage()));
            return Optional.empty();
        }
    }

    private void takeOver(Worker worker) {
        String name = worker.file().path().getFileName().toString();
        Worker before = workers.put(name, worker);
        catalogue.refuse(name, worker.refused());
        catalogue.change(before == null ? List.of() : checks(before), worker.checks());
        if (before != null) {
            before.close();
        }
    }

    private void remove(String name) {
        Worker worker = workers.remove(name);
        catalogue.refuse(name, Optional.empty());
        catalogue.change(checks(worker), List.of());
        worker.close();
    }

    private static List<Check> checks(Worker worker) {
        return worker.checks().stream().map(CheckCatalogue.Arrival::check).toList();
    }

    /** Ends every process; called when the program ends. */
    @Deactivate
    public synchronized void close() {
        unwatch();
        List.copyOf(workers.keySet()).forEach(this::remove);
    }
}
