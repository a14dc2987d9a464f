// SPDX-License-Identifier: Apache-2.0
package kerfglow.host;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import kerfglow.api.Check;
import kerfglow.api.CheckInfo;
import kerfglow.api.Setting;
import kerfglow.api.SharedSettings;
import org.osgi.framework.ServiceReference;
import org.osgi.service.component.annotations.Component;
import org.osgi.service.component.annotations.Reference;
import org.osgi.service.component.annotations.ReferenceCardinality;
import org.osgi.service.component.annotations.ReferencePolicy;

/** The checks that are there now. They come and go while the program runs. */
@Component(service = CheckCatalogue.class)
public final class CheckCatalogue {
    /**
     * A check that is there.
     *
     * @param info who it says it is
     * @param version the version of the bundle that brought it
     * @param reads ids of the checks whose tables it reads
     * @param check itself; only the runner calls it
     */
    public record Entry(CheckInfo info, String version, List<String> reads, Check check) {
    }

    /**
     * A service that cannot be used.
     *
     * @param bundle the bundle that brought it
     * @param why the reason, for people
     */
    public record Refused(String bundle, String why) {
    }

    /**
     * A check that comes.
     *
     * @param check the check
     * @param bundle name of the bundle that brings it
     * @param version version of that bundle
     */
    public record Arrival(Check check, String bundle, String version) {
    }

    private record Refusal(Arrival arrival, String why) {
    }

    private final Map<Check, Entry> entries = new IdentityHashMap<>();
    private final Map<Check, Refusal> refused = new IdentityHashMap<>();
    private final Map<String, Refused> unusable = new TreeMap<>();
    private final List<Runnable> listeners = new CopyOnWriteArrayList<>();

    @Reference(cardinality = ReferenceCardinality.MULTIPLE, policy = ReferencePolicy.DYNAMIC)
    void addCheck(Check check, ServiceReference<Check> reference) {
        add(check, reference.getBundle().getSymbolicName(), reference.getBundle().getVersion().toString());
    }

    /**
     * Takes a check in; one that cannot say who it is, or says that it is another, is refused. The framework does this; by hand it
     * serves to run checks without one.
     *
     * @param check the check
     * @param bundle name of the bundle that brings it
     * @param version version of that bundle
     */
    public void add(Check check, String bundle, String version) {
        change(List.of(), List.of(new Arrival(check, bundle, version)));
    }

    /**
     * Takes checks out and others in, as one change: a new version takes over without a gap. One that was refused because another had its
     * place is taken in when that one goes. Then tells whoever listens.
     */
    public void change(Collection<? extends Check> gone, Collection<Arrival> come) {
        synchronized (this) {
            gone.forEach(check -> {
                entries.remove(check);
                refused.remove(check);
            });
            come.forEach(this::take);
            if (!gone.isEmpty()) {
                refused.values().stream().map(Refusal::arrival).sorted(Comparator.comparing(Arrival::bundle)).toList().forEach(this::take);
            }
        }
        listeners.forEach(Runnable::run);
    }

    /**
     * Remembers that a file brings no check, or forgets it.
     *
     * @param bundle the file or bundle
     * @param why the reason, for people; empty when there is none any more
     */
    public void refuse(String bundle, Optional<String> why) {
        Optional<Refused> now = why.map(words -> new Refused(bundle, words));
        Optional<Refused> before;
        synchronized (this) {
            before = Optional.ofNullable(unusable.remove(bundle));
            now.ifPresent(refusal -> unusable.put(bundle, refusal));
        }
        if (!now.equals(before)) {
            listeners.forEach(Runnable::run);
        }
    }

    /** Calls back after each change, on the thread that made it, until it is taken out with {@link #unlisten}. */
    public void listen(Runnable listener) {
        listeners.add(listener);
    }

    /** Calls back no more. */
    public void unlisten(Runnable listener) {
        listeners.remove(listener);
    }

    private void take(Arrival arrival) {
        Check check = arrival.check();
        refused.remove(check);
        try {
            CheckInfo info = check.info();
            Optional<String> clash = clash(info);
            if (clash.isPresent()) {
                refused.put(check, new Refusal(arrival, clash.get()));
            } else {
                entries.put(check, new Entry(info, arrival.version(), List.copyOf(check.reads()), check));
            }
        } catch (RuntimeException | LinkageError defect) { // LinkageError: its bundle imports too little
            refused.put(check, new Refusal(arrival, "it cannot say who it is: " + defect));
        }
    }

    /** What of it is another's already: its id, or the key of a setting (of two, nobody could say which is meant). */
    private Optional<String> clash(CheckInfo info) {
        Optional<String> id = entries.values().stream().filter(other -> other.info().id().equals(info.id()))
                .map(other -> "a check with the id " + info.id() + " is there already, version " + other.version()).findFirst();
        Set<String> taken = settings(entries.values()).stream().filter(setting -> !SharedSettings.ALL.contains(setting)).map(Setting::key).collect(Collectors.toSet());
        return id.or(() -> info.settings().stream().map(Setting::key).filter(taken::contains).findFirst().map(key -> "its setting " + key + " is another's already"));
    }

    void removeCheck(Check check) {
        change(List.of(check), List.of());
    }

    /** The checks that are there, by id. */
    public synchronized List<Entry> entries() {
        Map<String, Entry> byId = new TreeMap<>();
        entries.values().forEach(entry -> byId.put(entry.info().id(), entry));
        return List.copyOf(byId.values());
    }

    /** The services and bundles that cannot be used, by bundle. */
    public synchronized List<Refused> refused() {
        Stream<Refused> checks = refused.values().stream().map(refusal -> new Refused(refusal.arrival().bundle(), refusal.why()));
        return Stream.concat(checks, unusable.values().stream()).sorted(Comparator.comparing(Refused::bundle)).toList();
    }

    /** Every setting that can be given: the host's and those of the checks. */
    static Collection<Setting<?>> settings(Collection<Entry> entries) {
        List<Setting<?>> settings = new ArrayList<>(HostSettings.ALL);
        entries.forEach(entry -> settings.addAll(entry.info().settings()));
        return settings;
    }
}
