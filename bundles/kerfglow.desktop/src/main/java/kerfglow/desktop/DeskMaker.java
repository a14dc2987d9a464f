// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop;

import java.nio.file.Path;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Executor;
import kerfglow.api.Units;
import kerfglow.desktop.desk.Background;
import kerfglow.desktop.desk.DemoFile;
import kerfglow.desktop.desk.Desk;
import kerfglow.desktop.desk.Habits;
import kerfglow.desktop.desk.Notices;
import kerfglow.desktop.desk.Screen;
import kerfglow.desktop.desk.SheetEditor;
import kerfglow.desktop.desk.Worker;
import kerfglow.host.CheckCatalogue;
import kerfglow.host.Runner;
import kerfglow.job.JobFile;
import org.eclipse.swt.widgets.Display;

/** Lays a desk: makes every object that the panes share. */
public final class DeskMaker {
    /** Folder for what is entered into jobs that cannot be written to where they lie. */
    static final String UNSAVED = "unsaved";
    private static final String HABITS = "habits.properties";

    private DeskMaker() {
    }

    /**
     * Makes the shared objects.
     *
     * @param display its thread is the one that touches the desk
     * @param runner the road to the checks
     * @param catalogue which checks there are
     * @param state the folder where the window keeps what it remembers
     * @param demo the proof that a first start shows
     * @return each object under its class
     */
    public static Map<Class<?>, Object> lay(Display display, Runner runner, CheckCatalogue catalogue, Path state, Optional<Path> demo) {
        Habits habits = new Habits(state.resolve(HABITS));
        Desk desk = new Desk();
        desk.setScreen(habits.screen().orElseGet(() -> new Screen(display.getDPI().x / Units.MM_PER_INCH)));
        desk.setDark(habits.isDark());
        Executor windowThread = change -> {
            if (!display.isDisposed()) {
                display.asyncExec(change);
            }
        };
        JobFile.Options options = JobFile.Options.of(problem -> windowThread.execute(() -> desk.setWork(desk.work().withRemark(problem)))).withOwnFolder(state.resolve(UNSAVED));
        Worker worker = new Worker(desk, runner, options, windowThread);
        catalogue.listen(() -> windowThread.execute(worker::checkAgain)); // a check came, went or was replaced
        Map<Class<?>, Object> shared = new HashMap<>();
        shared.put(Habits.class, habits);
        shared.put(DemoFile.class, new DemoFile(demo));
        shared.put(Desk.class, desk);
        shared.put(Worker.class, worker);
        shared.put(JobFile.Options.class, options);
        shared.put(Notices.class, new Notices(desk, ZoneId.systemDefault()));
        shared.put(Background.class, new Background());
        shared.put(CheckCatalogue.class, catalogue);
        shared.put(SheetEditor.class, new SheetEditor(desk, catalogue));
        return shared;
    }
}
