// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Assumptions;

/** A file system of a few hundred kilobytes, which only root may mount: elsewhere the test is skipped by name. */
public final class SmallDisk implements AutoCloseable {
    private static final int KIB = 256;

    private final Path folder;

    /** Mounts it on a folder. */
    public SmallDisk(Path folder) throws IOException, InterruptedException {
        this.folder = folder;
        Assumptions.assumeTrue(run("mount", "-t", "tmpfs", "-o", "size=" + KIB + "k", "tmpfs", folder.toString()) == 0, "a small file system cannot be mounted here");
    }

    /** Fills it but for a few bytes; returns the file to delete to make room. */
    public Path fill() throws IOException {
        Path filler = folder.resolve("filler");
        try (var out = Files.newOutputStream(filler)) {
            while (true) {
                out.write(new byte[1024]);
            }
        } catch (IOException full) {
            return filler;
        }
    }

    /** From now on nothing can be written there, not even by root; what is open stays open. A second mount on top, since one with open files does not become read-only. */
    void readOnly(boolean value) throws IOException, InterruptedException {
        boolean done = value ? run("mount", "--bind", folder.toString(), folder.toString()) == 0 && run("mount", "-o", "remount,bind,ro", folder.toString()) == 0
                : run("umount", folder.toString()) == 0;
        if (!done) {
            throw new IOException(folder + " cannot be mounted again");
        }
    }

    @Override
    public void close() throws IOException, InterruptedException {
        run("umount", folder.toString());
    }

    private static int run(String... command) throws IOException, InterruptedException {
        try {
            return new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(ProcessBuilder.Redirect.DISCARD).start().waitFor();
        } catch (IOException noSuchProgram) {
            return -1;
        }
    }
}
