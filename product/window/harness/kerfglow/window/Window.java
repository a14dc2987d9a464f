// SPDX-License-Identifier: Apache-2.0
package kerfglow.window;

import java.io.IOException;
import java.lang.reflect.Constructor;
import java.lang.reflect.Method;
import java.lang.reflect.Proxy;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import jakarta.annotation.PostConstruct;
import kerfglow.api.Check;
import kerfglow.desktop.DeskMaker;
import kerfglow.desktop.desk.Desk;
import kerfglow.desktop.desk.Notice;
import kerfglow.desktop.desk.Notices;
import kerfglow.desktop.desk.SheetEditor;
import kerfglow.desktop.desk.Worker;
import kerfglow.host.CheckCatalogue;
import kerfglow.host.Runner;
import kerfglow.svg.SvgImporter;
import org.eclipse.e4.core.contexts.IEclipseContext;
import org.eclipse.e4.ui.model.application.ui.basic.MWindow;
import org.eclipse.e4.ui.workbench.modeling.IWindowCloseHandler;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.CTabFolder;
import org.eclipse.swt.custom.CTabItem;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.dnd.DND;
import org.eclipse.swt.dnd.DropTarget;
import org.eclipse.swt.dnd.DropTargetEvent;
import org.eclipse.swt.dnd.DropTargetListener;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.DeviceData;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Menu;
import org.eclipse.swt.widgets.MenuItem;
import org.eclipse.swt.widgets.Shell;

/** The panes in a real window, arranged as the product arranges them, without e4 around them; driven as by a person. */
public final class Window implements AutoCloseable {
    private static final long LIMIT_NANOS = 180_000_000_000L;
    private static final int DIALOG_MILLIS = 150;
    private static final int FORGOTTEN_MILLIS = 20_000;

    private final Display display;
    private final Shell shell;
    private final Map<Class<?>, Object> shared;
    private volatile long turning;
    private long longestNanos;
    private final Deque<Consumer<Shell>> answers = new ArrayDeque<>();
    private final Set<Shell> answered = new HashSet<>();
    private final Set<Shell> forgotten = new HashSet<>();

    public Window(Path state, List<Check> checks) throws ReflectiveOperationException {
        this(state, checks, Optional.empty());
    }

    public Window(Path state, List<Check> checks, Optional<Path> demo) throws ReflectiveOperationException {
        DeviceData data = new DeviceData();
        data.tracking = true;
        display = new Display(data);
        CheckCatalogue catalogue = new CheckCatalogue();
        checks.forEach(check -> catalogue.add(check, "test", "1"));
        shared = DeskMaker.lay(display, new Runner(new SvgImporter(), catalogue), catalogue, state, demo);
        shell = new Shell(display);
        shared.put(MWindow.class, windowOfTheFramework());
        shell.setBounds(0, 0, 1440, 880);
        shell.setLayout(new FillLayout());
        SashForm columns = new SashForm(shell, SWT.HORIZONTAL);
        SashForm left = new SashForm(columns, SWT.VERTICAL);
        tabs(left, "MadeOfPart", "What it is made of");
        tabs(left, "BuiltPart", "How it is built", "SettingsPart", "Settings", "JobSheetPart", "Job sheet");
        tabs(columns, "ProofPart", "The proof", "DistancePart", "Seen from afar");
        SashForm right = new SashForm(columns, SWT.VERTICAL);
        tabs(right, "FoundPart", "What was found", "DecidedPart", "What was decided", "RevisionPart", "What changed");
        tabs(right, "ChosenPart", "Chosen finding");
        left.setWeights(4, 6);
        columns.setWeights(21, 50, 29);
        shell.open();
        leaveForgottenDialogs();
    }

    /** As the framework does: the window is closed when the handler that a pane has set admits it. */
    private MWindow windowOfTheFramework() {
        MWindow[] window = new MWindow[1];
        IEclipseContext context = proxy(IEclipseContext.class, (method, given) -> {
            if (method.getName().equals("set") && given[0] == IWindowCloseHandler.class) {
                shell.addListener(SWT.Close, event -> event.doit = ((IWindowCloseHandler) given[1]).close(window[0]));
            }
            return null;
        });
        window[0] = proxy(MWindow.class, (method, given) -> method.getName().equals("getContext") ? context : null);
        return window[0];
    }

    private static <T> T proxy(Class<T> type, BiFunction<Method, Object[], Object> answer) {
        return type.cast(Proxy.newProxyInstance(Window.class.getClassLoader(), new Class<?>[] {type}, (self, method, given) -> answer.apply(method, given)));
    }

    private void tabs(Composite parent, String... partsAndTitles) throws ReflectiveOperationException {
        CTabFolder folder = new CTabFolder(parent, SWT.BORDER);
        for (int i = 0; i < partsAndTitles.length; i += 2) {
            Composite pane = new Composite(folder, SWT.NONE);
            CTabItem tab = new CTabItem(folder, SWT.NONE);
            tab.setText(partsAndTitles[i + 1]);
            tab.setControl(pane);
            create(partsAndTitles[i], pane);
        }
        folder.setSelection(0);
    }

    /** As e4 does: the method that is marked to be called after construction gets what it asks for. */
    private void create(String part, Composite pane) throws ReflectiveOperationException {
        Class<?> type = Class.forName("kerfglow.desktop.parts." + part);
        Object made = type.getDeclaredConstructor().newInstance();
        Method create = Arrays.stream(type.getDeclaredMethods()).filter(method -> method.isAnnotationPresent(PostConstruct.class)).findFirst().orElseThrow();
        create.setAccessible(true);
        create.invoke(made, Arrays.stream(create.getParameterTypes()).map(wanted -> wanted == Composite.class ? pane : shared.get(wanted)).toArray());
    }

    public Desk desk() {
        return (Desk) shared.get(Desk.class);
    }

    public CheckCatalogue catalogue() {
        return (CheckCatalogue) shared.get(CheckCatalogue.class);
    }

    public Worker worker() {
        return (Worker) shared.get(Worker.class);
    }

    public SheetEditor editor() {
        return (SheetEditor) shared.get(SheetEditor.class);
    }

    /** Every control of a kind. */
    public <T extends Control> List<T> all(Composite in, Class<T> type) {
        List<T> all = new ArrayList<>();
        for (Control child : in.getChildren()) {
            if (type.isInstance(child)) {
                all.add(type.cast(child));
            }
            if (child instanceof Composite inner) {
                all.addAll(all(inner, type));
            }
        }
        return all;
    }

    /** What a control tells those who hear the window. */
    public String accessibleName(Control control) {
        Object name = control.getData("kerfglow.name");
        return name == null ? "" : name.toString();
    }

    public Display display() {
        return display;
    }

    public Shell shell() {
        return shell;
    }

    /** Opens a file and waits until all checks have ended. */
    public void open(Path file) {
        worker().open(file);
        await(() -> desk().result().isPresent() && desk().proofFile().isPresent() && !desk().work().busy(), "all checks of " + file);
    }

    /** Lets the window work until something is so, and what was asked for by then is painted. */
    public void await(BooleanSupplier so, String what) {
        turnUntil(so, what);
        settle();
    }

    /** Lets the window work until something is so, and not longer. */
    public void turnUntil(BooleanSupplier so, String what) {
        long start = System.nanoTime();
        while (!so.getAsBoolean()) {
            if (System.nanoTime() - start > LIMIT_NANOS) {
                throw new AssertionError("waited in vain for " + what + "; the window says: " + desk().work());
            }
            if (!turn()) {
                pause();
            }
        }
    }

    /** Lets what was asked for be painted. */
    public void settle() {
        settle(400);
    }

    /** Lets the window work for a while. */
    public void settle(int millis) {
        long until = System.nanoTime() + millis * 1_000_000L;
        while (System.nanoTime() < until) {
            if (!turn()) {
                pause();
            }
        }
    }

    /** One event; how long it takes is kept. */
    private boolean turn() {
        turning = System.nanoTime();
        boolean more = display.readAndDispatch();
        longestNanos = Math.max(longestNanos, System.nanoTime() - turning);
        turning = 0;
        return more;
    }

    /** How long the event takes that the window is at now, ms; 0 when it waits for one. May be asked on any thread. */
    public long turningMillis() {
        long since = turning;
        return since == 0 ? 0 : (System.nanoTime() - since) / 1_000_000;
    }

    /** The longest that an event has taken since this was asked last, ms. */
    public long longestMillis() {
        long longest = longestNanos / 1_000_000;
        longestNanos = 0;
        return longest;
    }

    private static void pause() {
        try {
            Thread.sleep(1);
        } catch (InterruptedException stopped) {
            throw new AssertionError(stopped);
        }
    }

    /** Chooses a line of the menu by the beginning of its text; returns false when it is greyed out. */
    public boolean menu(String text) {
        MenuItem item = find(shell.getMenuBar(), text).orElseThrow(() -> new AssertionError("no line of the menu begins with " + text));
        if (!item.isEnabled()) {
            return false;
        }
        item.notifyListeners(SWT.Selection, new org.eclipse.swt.widgets.Event());
        settle();
        return true;
    }

    /** The text of a line of the menu. */
    public String menuText(String text) {
        return find(shell.getMenuBar(), text).orElseThrow().getText();
    }

    private static Optional<MenuItem> find(Menu menu, String text) {
        for (MenuItem item : menu.getItems()) {
            if (item.getText().replace("&", "").startsWith(text)) {
                return Optional.of(item);
            }
            if (item.getMenu() != null) {
                Optional<MenuItem> inner = find(item.getMenu(), text);
                if (inner.isPresent()) {
                    return inner;
                }
            }
        }
        return Optional.empty();
    }

    /** The first control of a kind that fits. */
    public <T extends Control> T control(Composite in, Class<T> type, Predicate<T> fits) {
        return find(in, type, fits).orElseThrow(() -> new AssertionError("no such " + type.getSimpleName()));
    }

    private static <T extends Control> Optional<T> find(Composite in, Class<T> type, Predicate<T> fits) {
        for (Control child : in.getChildren()) {
            if (type.isInstance(child) && fits.test(type.cast(child))) {
                return Optional.of(type.cast(child));
            }
            if (child instanceof Composite inner) {
                Optional<T> found = find(inner, type, fits);
                if (found.isPresent()) {
                    return found;
                }
            }
        }
        return Optional.empty();
    }

    /** Brings a tab to the front. */
    public void tab(String title) {
        CTabFolder folder = control(shell, CTabFolder.class, each -> Arrays.stream(each.getItems()).anyMatch(item -> item.getText().equals(title)));
        folder.setSelection(Arrays.stream(folder.getItems()).filter(item -> item.getText().equals(title)).findFirst().orElseThrow());
        settle();
    }

    /** Presses a button by what it says. */
    public void press(Composite in, String text) {
        control(in, Button.class, button -> button.getText().equals(text)).notifyListeners(SWT.Selection, new Event());
        if (!shell.isDisposed()) {
            settle();
        }
    }

    /** What the notices above the proof say. */
    public List<String> notices() {
        return ((Notices) shared.get(Notices.class)).all().stream().map(Notice::words).toList();
    }

    /** Drops files on the window as another program does. */
    public void drop(Path... files) throws ReflectiveOperationException {
        Constructor<?> inner = Class.forName("org.eclipse.swt.dnd.DNDEvent").getDeclaredConstructor(); // what the toolkit makes of a drop; it offers no other way
        inner.setAccessible(true);
        Constructor<DropTargetEvent> made = DropTargetEvent.class.getConstructor(inner.getDeclaringClass());
        Event event = (Event) inner.newInstance();
        event.widget = shell;
        DropTargetEvent drop = made.newInstance(event);
        drop.data = Arrays.stream(files).map(Path::toString).toArray(String[]::new);
        for (DropTargetListener listener : ((DropTarget) shell.getData(DND.DROP_TARGET_KEY)).getDropListeners()) {
            listener.drop(drop);
        }
        settle();
    }

    /** Keeps what the screen shows as a picture; taken from outside, since the toolkit's own copy of the screen is not made anew. */
    public void shot(String name) throws IOException, InterruptedException {
        settle();
        shotAtOnce(name);
    }

    /** The same while a dialog waits for its answer. */
    public void shotAtOnce(String name) throws IOException, InterruptedException {
        Path folder = Path.of(System.getProperty("shots"));
        Files.createDirectories(folder);
        Process process = new ProcessBuilder("import", "-window", "root", folder.resolve(name + ".png").toString()).inheritIO().start();
        if (process.waitFor() != 0) {
            throw new IOException("ImageMagick's import ended with " + process.exitValue());
        }
    }

    /** The next dialog that comes up is answered by this; several are answered in the order given. */
    public void answerNext(Consumer<Shell> answer) {
        answers.add(answer);
        if (answers.size() == 1) {
            display.timerExec(DIALOG_MILLIS, this::answerDialog);
        }
    }

    private void answerDialog() {
        Optional<Shell> dialog = shell.isDisposed() ? Optional.empty()
                : Arrays.stream(display.getShells()).filter(each -> each.getParent() == shell && each.isVisible() && answered.add(each)).findFirst();
        Optional<Consumer<Shell>> answer = dialog.map(each -> answers.remove());
        if (!answers.isEmpty() && !shell.isDisposed()) {
            display.timerExec(DIALOG_MILLIS, this::answerDialog);
        }
        answer.ifPresent(each -> each.accept(dialog.get()));
    }

    /** A dialog that no test answers is left, so that the test fails instead of waiting for ever. */
    private void leaveForgottenDialogs() {
        if (!shell.isDisposed()) {
            for (Shell each : display.getShells()) {
                if (each.getParent() == shell && each.isVisible() && !forgotten.add(each)) {
                    each.close();
                }
            }
            display.timerExec(FORGOTTEN_MILLIS, this::leaveForgottenDialogs);
        }
    }

    /** What the toolkit still holds after the window is gone; colours need no disposal, and cursors of the system are the display's. */
    public List<Object> leftOver() {
        desk().kept().putAway();
        shell.dispose();
        while (display.readAndDispatch()) {
            // what was posted may still hold something
        }
        Set<Object> ofTheSystem = IntStream.rangeClosed(SWT.CURSOR_ARROW, SWT.CURSOR_HAND).mapToObj(display::getSystemCursor).collect(Collectors.toSet());
        return Arrays.stream(display.getDeviceData().objects).filter(each -> each != null && !(each instanceof Color) && !ofTheSystem.contains(each)).toList();
    }

    @Override
    public void close() {
        desk().kept().putAway();
        display.dispose();
    }
}
