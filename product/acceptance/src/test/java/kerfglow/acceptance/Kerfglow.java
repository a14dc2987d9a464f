// SPDX-License-Identifier: Apache-2.0
package kerfglow.acceptance;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** The built program, run as a process. */
final class Kerfglow {
    static final Path TOP = Path.of(System.getProperty("top")).toAbsolutePath().normalize();
    static final Path TESTDATA = TOP.resolve("testdata");
    private static final long LIMIT_SECONDS = 120;

    /** What a run printed and how it ended. */
    record Ran(int status, String out, String err, double seconds) {
    }

    private Kerfglow() {
    }

    /** The program of this platform. */
    static Path program() throws IOException {
        Path products = TOP.resolve("product/target/products/kerfglow/linux");
        try (Stream<Path> walk = Files.walk(products)) {
            return walk.filter(path -> path.getFileName().toString().equals("kerfglow") && Files.isRegularFile(path)).findFirst()
                    .orElseThrow(() -> new IOException("no program below " + products + "; build the product first (product/verify)"));
        }
    }

    /** Runs with a heap of 1 GiB, far below what a shop's machine has. */
    static Ran run(String... arguments) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(program().toString()));
        command.addAll(List.of(arguments));
        Path out = Files.createTempFile("kerfglow", ".out");
        Path err = Files.createTempFile("kerfglow", ".err");
        ProcessBuilder builder = new ProcessBuilder(command).directory(TOP.toFile()).redirectOutput(out.toFile()).redirectError(err.toFile());
        builder.environment().put("KERFGLOW_VMARGS", "-Xmx1g");
        long start = System.nanoTime();
        Process process = builder.start();
        process.getOutputStream().close();
        if (!process.waitFor(LIMIT_SECONDS, TimeUnit.SECONDS)) {
            process.destroyForcibly();
            throw new IOException("did not end within " + LIMIT_SECONDS + " s: " + command);
        }
        double seconds = (System.nanoTime() - start) / 1e9;
        Ran ran = new Ran(process.exitValue(), Files.readString(out, StandardCharsets.UTF_8), Files.readString(err, StandardCharsets.UTF_8), seconds);
        Files.delete(out);
        Files.delete(err);
        return ran;
    }
}
