// SPDX-License-Identifier: Apache-2.0
package kerfglow.bench;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import kerfglow.api.Check;
import kerfglow.api.Setting;
import kerfglow.api.UnitSystem;
import kerfglow.check.artwork.ArtworkCheck;
import kerfglow.check.fit.FitCheck;
import kerfglow.check.glow.GlowCheck;
import kerfglow.check.legibility.LegibilityCheck;
import kerfglow.check.mount.MountCheck;
import kerfglow.check.power.PowerCheck;
import kerfglow.check.print.PrintCheck;
import kerfglow.check.returns.ReturnsCheck;
import kerfglow.check.router.RouterCheck;
import kerfglow.check.sheet.SheetCheck;
import kerfglow.check.trim.TrimCheck;
import kerfglow.check.vinyl.VinylCheck;
import kerfglow.desktop.desk.SheetEditor;
import kerfglow.desktop.desk.Topic;
import kerfglow.desktop.section.Section;
import kerfglow.desktop.section.SectionEdit;
import kerfglow.host.CheckCatalogue;
import kerfglow.host.Result;
import kerfglow.host.Scope;
import kerfglow.window.Window;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Tree;

/**
 * How long a changed setting takes to be seen: in a real window with the demo and every check, from the moment at which the setting is given its
 * value to the moment at which the canvas and the list of findings are painted with what every check found that uses the setting. Light and power
 * are not waited for, nor a check that reads their tables when they run again too. Every setting of every other check is changed there and back,
 * for everything or for one layer; thicknesses are changed in the section.
 */
public final class SettingBenchmark {
    private static final Set<String> LIGHT = Set.of("glow", "power");
    private static final List<String> DEMO = List.of("skelderfen.svg", "skelderfen.job.yaml", "shop.yaml");
    /** There and back; what comes before is not counted, since the program is still being compiled then. */
    private static final int COUNTED = 3;
    private static final int WARM = 1;
    private static final double MOST_MILLIS = 100;
    /** Changes before any is measured: the program is still being compiled. */
    private static final int FIRST = 60;
    /** A person looks before the next change; what was painted in the meantime is no cost of it. */
    private static final int AFTER_MILLIS = 100;
    private static final double NANOS = 1e6;
    private static final OperatingSystemMXBean SYSTEM = (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();

    /** One change of a setting: its name, the checks that use it, and what is done to change it there (true) or back. */
    private record Change(String name, Set<String> users, Function<Boolean, Optional<String>> deed) {
    }

    /** @param shown ms until it is seen; @param whole ms until every check has ended, light too; @param processor ms that the whole process used until it was seen */
    private record Cost(double shown, double whole, double processor) {
    }

    private final Window window;
    private final List<CheckCatalogue.Entry> entries;
    private final Canvas canvas;
    private final Tree list;

    private SettingBenchmark(Window window) {
        this.window = window;
        entries = window.catalogue().entries();
        list = window.control(window.shell(), Tree.class, Tree::getHeaderVisible);
        canvas = window.control(window.shell(), Canvas.class, each -> window.accessibleName(each).startsWith("Proof with findings"));
    }

    static List<Check> checks() {
        return List.of(new ArtworkCheck(), new RouterCheck(), new FitCheck(), new ReturnsCheck(), new TrimCheck(), new SheetCheck(), new VinylCheck(), new PrintCheck(), new MountCheck(),
                new LegibilityCheck(), new GlowCheck(), new PowerCheck());
    }

    /** @param args the folder with the demo; then, if given, what the names of the changes must hold that are measured */
    public static void main(String[] args) throws Exception {
        Path folder = Files.createTempDirectory("settings");
        for (String name : DEMO) {
            Files.copy(Path.of(args[0]).resolve(name), folder.resolve(name));
        }
        boolean within;
        try (Window window = new Window(folder.resolve("state"), checks())) {
            window.open(folder.resolve("skelderfen.svg"));
            window.tab("Settings");
            within = new SettingBenchmark(window).run(args.length > 1 ? args[1] : "");
        }
        System.exit(within ? 0 : 1);
    }

    private boolean run(String wanted) {
        List<Change> changes = changes().stream().filter(change -> change.name().contains(wanted)).toList();
        for (int i = 0; i < FIRST; i++) {
            cost(changes.get(i / 2 % changes.size()), i % 2 == 0);
        }
        Map<String, List<Double>> byCheck = new LinkedHashMap<>();
        int late = 0;
        for (Change change : changes) {
            List<Cost> costs = new ArrayList<>();
            for (int i = 0; i < WARM + COUNTED; i++) {
                Optional<Cost> cost = cost(change, i % 2 == 0);
                if (i >= WARM) {
                    cost.ifPresent(costs::add);
                }
            }
            if (costs.isEmpty()) {
                continue;
            }
            double[] shown = costs.stream().mapToDouble(Cost::shown).sorted().toArray();
            change.users().forEach(check -> Arrays.stream(shown).forEach(each -> byCheck.computeIfAbsent(check, key -> new ArrayList<>()).add(each)));
            late += shown[shown.length / 2] > MOST_MILLIS ? 1 : 0;
            System.out.printf(Locale.ROOT, "%-60s shown: median %4.0f ms, worst %4.0f ms, %4.0f ms of the processors; all ended: median %5.0f ms%n", change.name(), shown[shown.length / 2],
                    shown[shown.length - 1], median(costs.stream().map(Cost::processor).toList()), median(costs.stream().map(Cost::whole).toList()));
        }
        byCheck.forEach((check, shown) -> System.out.printf(Locale.ROOT, "%-12s %3d changes: median %4.0f ms, 95 of 100 below %4.0f ms, worst %4.0f ms%n", check, shown.size(), median(shown),
                shown.stream().sorted().toList().get(shown.size() * 95 / 100), shown.stream().mapToDouble(each -> each).max().orElse(0)));
        System.out.printf(Locale.ROOT, "%d settings and dimensions; %d of them not within %.0f ms at the median%n", changes.size(), late, MOST_MILLIS);
        return late == 0;
    }

    private static double median(List<Double> values) {
        return values.stream().sorted().toList().get(values.size() / 2);
    }

    private List<Change> changes() {
        SheetEditor editor = window.editor();
        List<Change> changes = new ArrayList<>();
        for (Setting<?> setting : editor.settings()) {
            Set<String> users = new TreeSet<>(editor.users(setting));
            users.removeAll(LIGHT);
            if (users.isEmpty()) {
                continue;
            }
            values(setting, Scope.ALL).ifPresent(values -> changes.add(new Change(setting.key(), users, there -> there ? editor.change(setting, values[1], Scope.ALL)
                    : back(setting, values[0], Scope.ALL))));
        }
        Scope layer = new Scope(Optional.empty(), Optional.empty(), OptionalDouble.empty(), Optional.of("Letter faces"), Optional.empty());
        for (String key : List.of("router.least-width.acrylic", "fit.clearance", "trim.lip", "returns.thickness", "artwork.node-tolerance", "legibility.stroke-least")) {
            editor.settings().stream().filter(setting -> setting.key().equals(key)).forEach(setting -> values(setting, Scope.ALL).ifPresent(values -> changes.add(new Change(key + " of one layer",
                    geometric(editor.users(setting)), there -> there ? editor.change(setting, values[1], layer) : back(setting, values[0], layer)))));
        }
        for (Section.Measure measure : Section.of(window.desk().result().orElseThrow()).measures()) {
            if (measure.target() instanceof Section.Target.OfThickness target) {
                changes.add(new Change("thickness of " + target.role().word() + " in the section", geometric(entries.stream().map(entry -> entry.info().id()).toList()),
                        there -> editor.change(measure, (there ? measure.valueMm() * 1.25 : measure.valueMm()) + " mm")));
            }
        }
        return changes;
    }

    private static Set<String> geometric(List<String> checks) {
        return checks.stream().filter(check -> !LIGHT.contains(check)).collect(Collectors.toCollection(TreeSet::new));
    }

    private Optional<String> back(Setting<?> setting, String value, Scope scope) {
        if (value.isEmpty() || !scope.equals(Scope.ALL)) {
            window.editor().reset(setting, scope);
            return Optional.empty();
        }
        return window.editor().change(setting, value, scope);
    }

    /** The value now (empty when there is none) and another one a little off; absent for a setting that cannot be anything else. */
    private <T> Optional<String[]> values(Setting<T> setting, Scope scope) {
        String now = window.editor().text(setting, scope);
        switch (setting.type()) {
            case CHOICE, FLAG -> {
                return setting.choices().stream().filter(each -> !each.equals(now)).findFirst().map(each -> new String[] {now, each});
            }
            case NUMBER, COUNT -> {
                double value = now.isEmpty() ? setting.min() : ((Number) setting.parse(now)).doubleValue();
                double step = setting.type() == Setting.Type.COUNT ? 1 : Math.max(Math.abs(value) * 0.2, (setting.max() - setting.min()) * 1e-4);
                for (double by = step; by <= setting.max() - setting.min(); by *= 2) { // what is written is rounded, and may say the same
                    double other = value + by <= setting.max() ? value + by : value - by;
                    @SuppressWarnings("unchecked") // numbers are Double, counts Integer, by the setting's factories
                    T typed = (T) (setting.type() == Setting.Type.COUNT ? (Object) (int) other : (Object) other);
                    String text = setting.format(typed, UnitSystem.METRIC);
                    if (other >= setting.min() && !text.equals(now)) {
                        return Optional.of(new String[] {now, text});
                    }
                }
                return Optional.empty();
            }
            default -> {
                return Optional.empty();
            }
        }
    }

    /** Empty when the change was refused. */
    private Optional<Cost> cost(Change change, boolean there) {
        Map<String, Result.CheckRow> before = rows();
        Set<String> awaited = change.users().stream().filter(check -> !waitsForLight(check, change)).collect(Collectors.toCollection(TreeSet::new));
        double[] at = new double[5]; // found, canvas painted, list painted, processor time, back from giving the value
        long start = System.nanoTime();
        long used = SYSTEM.getProcessCpuTime();
        Runnable found = () -> {
            if (at[0] == 0) {
                Map<String, Result.CheckRow> now = rows();
                at[0] = awaited.stream().allMatch(check -> now.get(check) != before.get(check)) ? System.nanoTime() - start : 0;
            }
        };
        org.eclipse.swt.widgets.Listener painted = event -> painted(event, at, System.nanoTime() - start, used);
        window.desk().listen(Topic.FINDINGS, found);
        canvas.addListener(SWT.Paint, painted);
        list.addListener(SWT.Paint, painted);
        try {
            Optional<String> refused = change.deed().apply(there);
            at[4] = System.nanoTime() - start;
            if (refused.isPresent()) {
                System.out.println(change.name() + " is left out: " + refused.get());
                return Optional.empty();
            }
            window.turnUntil(() -> at[1] > 0 && at[2] > 0, change.name());
            Map<String, Result.CheckRow> now = rows();
            if (Boolean.getBoolean("settings.rows")) {
                System.out.println(now.values().stream().filter(row -> row != before.get(row.check())).map(row -> row.check() + " " + row.millis()).toList() + String.format(Locale.ROOT,
                        " ms; given %.0f, found %.0f, list painted %.0f, canvas painted %.0f", at[4] / NANOS, at[0] / NANOS, at[2] / NANOS, at[1] / NANOS));
            }
            window.turnUntil(() -> !window.desk().work().busy() && window.desk().result().isPresent(), change.name() + " to the end");
            double whole = System.nanoTime() - start;
            window.settle(AFTER_MILLIS);
            return Optional.of(new Cost(Math.max(at[1], at[2]) / NANOS, whole / NANOS, at[3] / NANOS));
        } finally {
            window.desk().forget(Topic.FINDINGS, found);
            canvas.removeListener(SWT.Paint, painted);
            list.removeListener(SWT.Paint, painted);
        }
    }

    private void painted(Event event, double[] at, double nanos, long used) {
        int which = event.widget == canvas ? 1 : 2;
        if (at[0] > 0 && at[which] == 0) {
            at[which] = nanos;
            at[3] = SYSTEM.getProcessCpuTime() - used;
        }
    }

    private Map<String, Result.CheckRow> rows() {
        return window.desk().reviewed().map(each -> each.result().checks().stream().collect(Collectors.toMap(Result.CheckRow::check, row -> row))).orElse(Map.of());
    }

    /** True for a check that reads a light check which runs again too: it cannot end before that. */
    private boolean waitsForLight(String check, Change change) {
        Set<String> again = entries.stream().filter(entry -> change.users().contains(entry.info().id()) || change.name().startsWith("thickness")
                || entry.info().settings().stream().anyMatch(setting -> change.name().startsWith(setting.key()))).map(entry -> entry.info().id()).collect(Collectors.toCollection(TreeSet::new));
        entries.stream().filter(entry -> entry.reads().stream().anyMatch(again::contains)).forEach(entry -> again.add(entry.info().id())); // glow reads trim
        return entries.stream().filter(entry -> entry.info().id().equals(check)).flatMap(entry -> entry.reads().stream()).anyMatch(read -> LIGHT.contains(read) && again.contains(read));
    }
}
