// SPDX-License-Identifier: Apache-2.0
package kerfglow.fuzz;

import java.io.File;
import java.io.FileDescriptor;
import java.lang.management.ManagementFactory;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.security.Permission;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentSkipListSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Watches what the program touches while it works on one input: no file but those given, no network, no other program; and no more processor time than
 * a person waits for. Memory is bounded by the heap of the process, waiting by the fuzzer's own limit.
 */
@SuppressWarnings("removal") // Java 17 has it, and nothing else sees every opened file; what ships does not use it
final class Guard extends SecurityManager {
    /** Of all threads. The promise for any file is 10 s. */
    private static final double MOST_SECONDS = 10;
    private static final com.sun.management.OperatingSystemMXBean PROCESS = (com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();

    /** What the Java platform reads for itself: its own files, classes, fonts and their list, the state of the process. */
    private static final List<String> PLATFORM = Stream.concat(
            Stream.of(System.getProperty("java.home"), "/usr/share/fonts", "/usr/local/share/fonts", "/usr/share/texmf", "/usr/share/fontconfig", "/etc/fonts", "/var/cache/fontconfig",
                    "/usr/share/java", "/proc", "/sys", "/dev/random", "/dev/urandom", "/etc/timezone", "/etc/localtime", "/etc/os-release", "/usr/share/zoneinfo", System.getProperty("java.io.tmpdir"),
                    System.getProperty("user.home") + "/.java",
                    System.getProperty("user.home") + "/.fonts", System.getProperty("user.home") + "/.local/share/fonts"),
            Stream.of(System.getProperty("java.class.path").split(File.pathSeparator))).map(path -> new File(path).getAbsolutePath()).collect(Collectors.toUnmodifiableList());

    private static final String READ = "read ";
    private static final String OWN_NAME = ownName();
    private static final Guard ONLY = new Guard();
    private final Set<String> touched = new ConcurrentSkipListSet<>();
    private volatile String given;

    static {
        System.setSecurityManager(ONLY);
    }

    /** Work that throws what it is allowed to throw. */
    @FunctionalInterface
    interface Work {
        void run() throws Exception;
    }

    /**
     * Does the work under watch.
     *
     * @param folder the only one that it may touch
     * @param allowed what the work may throw: what the program promises for bad input
     */
    static void over(String folder, Work work, List<Class<? extends Exception>> allowed) {
        double seconds = seconds(folder, work, allowed);
        if (seconds >= MOST_SECONDS) { // once more, since a first time may also load and instrument a thousand classes
            seconds = seconds(folder, work, allowed);
        }
        require(seconds < MOST_SECONDS, "took " + seconds + " s of processor time");
    }

    private static double seconds(String folder, Work work, List<Class<? extends Exception>> allowed) {
        ONLY.touched.clear();
        ONLY.given = new File(folder).getAbsolutePath();
        long before = PROCESS.getProcessCpuTime();
        try {
            work.run();
        } catch (Exception thrown) {
            if (allowed.stream().noneMatch(type -> type.isInstance(thrown))) {
                throw new AssertionError("not what the program promises for bad input: " + thrown, thrown);
            }
            require(thrown.getMessage() != null && !thrown.getMessage().isBlank(), "a refusal without words: " + thrown);
        } finally {
            ONLY.given = null;
        }
        double seconds = (PROCESS.getProcessCpuTime() - before) / 1e9;
        Set<String> outside = ONLY.touched.stream().filter(each -> !each.startsWith(READ) || new File(each.substring(READ.length())).isFile()).collect(Collectors.toSet());
        require(outside.isEmpty(), "touched " + outside); // looking whether something is there opens nothing
        return seconds;
    }

    static void require(boolean holds, String otherwise) {
        if (!holds) {
            throw new AssertionError(otherwise);
        }
    }

    private static String ownName() {
        try {
            return InetAddress.getLocalHost().getHostName();
        } catch (UnknownHostException nameless) {
            return "localhost";
        }
    }

    private void touch(String how, String what) {
        String folder = given;
        String path = new File(what).getAbsolutePath();
        if (folder != null && !path.startsWith(folder) && PLATFORM.stream().noneMatch(path::startsWith)) {
            touched.add(how + path);
        }
    }

    @Override
    public void checkPermission(Permission permission) {
        // everything is allowed; it is only looked at
    }

    @Override
    public void checkRead(String file) {
        touch(READ, file);
    }

    @Override
    public void checkRead(FileDescriptor open) {
        // it was looked at when it was opened
    }

    @Override
    public void checkWrite(String file) {
        touch("write ", file);
    }

    @Override
    public void checkDelete(String file) {
        touch("delete ", file);
    }

    @Override
    public void checkExec(String command) {
        if (given != null) {
            touched.add("run " + command);
        }
    }

    @Override
    public void checkConnect(String host, int port) {
        if (given != null && !(port < 0 && host.equals(OWN_NAME))) { // below 0: the name alone is looked up; the font list and the lock of a job ask for our own
            touched.add("call " + host + ":" + port);
        }
    }
}
