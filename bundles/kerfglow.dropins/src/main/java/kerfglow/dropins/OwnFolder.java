// SPDX-License-Identifier: Apache-2.0
package kerfglow.dropins;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * A temporary folder that this object made. It deletes the files that were put in by name, and what the framework of a worker wrote. A lock
 * says that its process lives: what a process that was killed left behind goes at a later start, {@link #clearAbandoned}.
 */
final class OwnFolder {
    private static final String FRAMEWORK = "framework";
    private static final String LOCK = "in-use.lock";
    /** What there is to delete in one; anything else is not ours, and stays. */
    private static final Pattern FILES = Pattern.compile("bundle\\.jar|beside-[0-9]+\\.jar");
    /** Longer than it takes between making a folder and locking it. */
    private static final Duration LEAST_AGE = Duration.ofMinutes(10);
    /** Folders of this process, whose locks must not even be opened: closing any channel of a file lifts the process's locks on it (POSIX, fcntl). */
    private static final Set<Path> OWN = ConcurrentHashMap.newKeySet();

    private final Path path;
    private final FileChannel lock;

    OwnFolder(String prefix) throws IOException {
        path = Files.createTempDirectory(prefix);
        OWN.add(path);
        lock = FileChannel.open(path.resolve(LOCK), StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
        if (lock.tryLock() == null) {
            throw new IOException(path + " cannot be locked");
        }
    }

    Path path() {
        return path;
    }

    /** The file for the bundle itself. */
    Path bundle() {
        return path.resolve("bundle.jar");
    }

    /** The file for another bundle that lies beside it. */
    Path beside(int number) {
        return path.resolve("beside-" + number + ".jar");
    }

    /** Where a framework keeps its own files. */
    Path framework() {
        return path.resolve(FRAMEWORK);
    }

    /** Deletes it, as far as that can be done; links are deleted, never followed. */
    void delete() {
        try {
            clear(path);
            lock.close(); // Windows deletes no file that is open
            remove(path);
            OWN.remove(path);
        } catch (IOException left) {
            return; // it stays until a later start finds nobody in it
        }
    }

    /** Deletes what processes left in the folder for temporary files that have ended without deleting it. */
    static void clearAbandoned(Path temporary, String prefix, Instant now) {
        try (Stream<Path> all = Files.list(temporary)) {
            for (Path folder : all.filter(each -> each.getFileName().toString().startsWith(prefix) && !OWN.contains(each)).toList()) {
                clearIfAbandoned(folder, now);
            }
        } catch (IOException unreadable) {
            return; // nothing of ours depends on it
        }
    }

    private static void clearIfAbandoned(Path folder, Instant now) {
        Path file = folder.resolve(LOCK);
        try {
            if (!Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS) || !Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)
                    || Files.getLastModifiedTime(file, LinkOption.NOFOLLOW_LINKS).toInstant().plus(LEAST_AGE).isAfter(now)) {
                return;
            }
            boolean isFree;
            try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE, LinkOption.NOFOLLOW_LINKS); FileLock free = channel.tryLock()) {
                isFree = free != null;
            }
            if (isFree) { // and stays so: nobody goes back to a folder of his own
                clear(folder);
                remove(folder);
            }
        } catch (IOException notOurs) {
            return; // somebody else's, or in use
        }
    }

    private static void clear(Path folder) throws IOException {
        deleteTree(folder.resolve(FRAMEWORK));
        List<Path> files;
        try (Stream<Path> list = Files.list(folder)) {
            files = list.filter(each -> FILES.matcher(each.getFileName().toString()).matches()).toList();
        }
        for (Path file : files) {
            Files.deleteIfExists(file);
        }
    }

    private static void remove(Path folder) throws IOException {
        Files.deleteIfExists(folder.resolve(LOCK));
        Files.deleteIfExists(folder);
    }

    private static void deleteTree(Path tree) throws IOException {
        if (Files.isDirectory(tree, LinkOption.NOFOLLOW_LINKS)) {
            List<Path> inside;
            try (Stream<Path> list = Files.list(tree)) {
                inside = list.toList();
            }
            for (Path each : inside) {
                deleteTree(each);
            }
        }
        Files.deleteIfExists(tree);
    }
}
