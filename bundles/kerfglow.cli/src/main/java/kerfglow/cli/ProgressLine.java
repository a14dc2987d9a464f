// SPDX-License-Identifier: Apache-2.0
package kerfglow.cli;

import java.io.PrintStream;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import kerfglow.host.Watcher;
import kerfglow.views.PlainText;

/** One line on standard error that says how far a long run is; nothing for short ones. */
final class ProgressLine implements Watcher {
    /** A run that ends sooner needs no line. */
    private static final long QUIET_NANOS = 700_000_000L;
    private static final long STEP_NANOS = 100_000_000L;
    private static final String ERASE_LINE = "\r\u001b[K"; // ECMA-48, erase in line

    private final PrintStream err;
    private boolean shown;
    private final String file;
    private final Map<String, Integer> percent = new TreeMap<>();
    private final long startNanos = System.nanoTime();
    private long lastNanos;
    private boolean drawn;

    ProgressLine(PrintStream err, String file) {
        this.err = err;
        this.file = PlainText.of(file);
    }

    /** Others that are at work wait for their turn on the line. */
    synchronized void show() {
        shown = true;
    }

    @Override
    public synchronized void progress(String what, double fraction) {
        percent.put(what, (int) Math.floor(100 * Math.min(1, Math.max(0, fraction))));
        long now = System.nanoTime();
        if (shown && now - startNanos > QUIET_NANOS && now - lastNanos > STEP_NANOS) {
            lastNanos = now;
            drawn = true;
            err.print(ERASE_LINE + file + "  " + percent.entrySet().stream().filter(stage -> stage.getValue() < 100)
                    .map(stage -> String.format(Locale.ROOT, "%s %d %%", stage.getKey(), stage.getValue())).collect(Collectors.joining(", ")));
            err.flush();
        }
    }

    /** Nothing to ask: on the command line a run is stopped by ending the process. */
    @Override
    public boolean isCancelled() {
        return false;
    }

    /** Takes the line away. */
    synchronized void done() {
        if (drawn) {
            err.print(ERASE_LINE);
            err.flush();
        }
    }
}
