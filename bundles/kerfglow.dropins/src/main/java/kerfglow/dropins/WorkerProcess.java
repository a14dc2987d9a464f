// SPDX-License-Identifier: Apache-2.0
package kerfglow.dropins;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.lang.ref.WeakReference;
import java.nio.file.Path;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import kerfglow.api.Inspection;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Proof;
import kerfglow.worker.form.FormException;
import kerfglow.worker.form.FormNode;
import kerfglow.worker.form.FormReader;
import kerfglow.worker.form.FormWriter;

/** One worker process and the conversation with it. When it ends, for whatever reason, every exchange with it ends with words. */
final class WorkerProcess {
    /** Assumed: far more than ten thousand findings with their places; what is longer is no answer for people. */
    private static final long MOST_ANSWER_BYTES = 64L << 20;
    private static final int PIPE_BYTES = 1 << 16;
    private static final long DYING_SECONDS = 5;
    private static final String FOLDER = "kerfglow-worker";

    private final int heapMib;
    private final OwnFolder folder;
    private final Process process;
    private final FormWriter out;
    private final ExecutorService writing;
    private final Thread errors;
    private final Thread answers;
    private final CompletableFuture<Void> ready = new CompletableFuture<>();
    private final CompletableFuture<FormNode> checks = new CompletableFuture<>();
    private final Map<Long, Exchange> exchanges = new ConcurrentHashMap<>();
    private final Set<Exchange> stopping = ConcurrentHashMap.newKeySet();
    private final LastWords lastWords = new LastWords();
    private volatile String unreadable;
    private volatile String ended;
    private volatile boolean retired;
    private volatile long lastUsedNanos = System.nanoTime();
    private long runs;
    private WeakReference<Proof> sentProof = new WeakReference<>(null);
    private List<WeakReference<Part>> sentParts = List.of();

    /** Starts a process that waits to be told which bundle it is for. */
    WorkerProcess(Launch launch, int heapMib) throws IOException {
        this.heapMib = heapMib;
        folder = new OwnFolder(FOLDER);
        process = new ProcessBuilder(launch.command(heapMib, folder.framework())).directory(folder.path().toFile()).start();
        out = new FormWriter(new BufferedOutputStream(process.getOutputStream(), PIPE_BYTES));
        writing = Executors.newSingleThreadExecutor(work -> daemon("worker input", work));
        errors = daemon("worker errors", () -> lastWords.drain(process.getErrorStream()));
        errors.start();
        answers = daemon("worker answers", this::listen);
        answers.start();
    }

    private static Thread daemon(String name, Runnable work) {
        Thread thread = new Thread(work, name);
        thread.setDaemon(true);
        return thread;
    }

    /** Deletes what processes that were killed left in the folder for temporary files. */
    static void clearAbandoned() {
        OwnFolder.clearAbandoned(Path.of(System.getProperty("java.io.tmpdir")), FOLDER, Instant.now());
    }

    /** When it listens; fails with words when it ends before. */
    CompletableFuture<Void> ready() {
        return ready;
    }

    /**
     * Tells it which bundle it is for; only once.
     *
     * @param beside the other bundles, for it to import from
     * @return what it says of itself; fails with words when it ends before
     */
    CompletableFuture<FormNode> start(Path bundle, List<Path> beside) {
        send("start", Map.of("bundle", bundle.toString(), "beside", beside.stream().map(Path::toString).toList()));
        return checks;
    }

    private void send(String kind, Map<String, ?> fields) {
        try {
            writing.execute(() -> {
                try {
                    out.message(kind, fields);
                } catch (IOException | RuntimeException broken) { // what listens at its other end tells why
                    kill();
                }
            });
        } catch (RejectedExecutionException over) {
            kill();
        }
    }

    int heapMib() {
        return heapMib;
    }

    /** False once it has ended, or must not be used any more. */
    boolean isUsable() {
        return ended == null && !retired && process.isAlive();
    }

    /** Whole seconds since somebody asked it something; 0 while something runs. */
    long idleSeconds() {
        return exchanges.isEmpty() ? TimeUnit.NANOSECONDS.toSeconds(System.nanoTime() - lastUsedNanos) : 0;
    }

    /** Begins a call of a check. The proof is sent once for all calls about it. */
    synchronized Exchange inspect(String check, Inspection inspection, Map<String, Object> given, int mostFindings) {
        lastUsedNanos = System.nanoTime();
        Proof proof = inspection.proof();
        List<Part> parts = inspection.parts();
        if (sentProof.get() != proof || !isSent(parts)) {
            sentProof = new WeakReference<>(proof);
            sentParts = parts.stream().map(WeakReference::new).toList();
            send("drawing", Map.of("proof", proof, "parts", parts));
        }
        Exchange exchange = new Exchange(++runs, this);
        exchanges.put(exchange.run(), exchange);
        Map<String, Object> fields = new LinkedHashMap<>();
        fields.put("run", exchange.run());
        fields.put("check", check);
        fields.put("mostFindings", mostFindings);
        fields.put("given", given);
        send("inspect", fields);
        if (ended != null) {
            over(exchange);
        }
        return exchange;
    }

    private boolean isSent(List<Part> parts) {
        if (parts.size() != sentParts.size()) {
            return false;
        }
        for (int i = 0; i < parts.size(); i++) {
            if (sentParts.get(i).get() != parts.get(i)) {
                return false;
            }
        }
        return true;
    }

    /** Asks a call to stop; until it has, the process may be ended. */
    void cancel(Exchange exchange) {
        stopping.add(exchange);
        send("cancel", Map.of("run", exchange.run()));
    }

    /** Waits until every call that was asked to stop has ended, alone or with the process. */
    void settle() throws InterruptedException {
        for (Exchange exchange : List.copyOf(stopping)) {
            try {
                exchange.answer().get(DYING_SECONDS, TimeUnit.SECONDS);
            } catch (ExecutionException | TimeoutException stuck) {
                kill();
            }
            stopping.remove(exchange);
        }
    }

    /** Takes no further calls; ends when the last one has been answered. */
    void retire() {
        retired = true;
        if (exchanges.isEmpty()) {
            kill();
        }
    }

    /** Ends it, with whatever it started. */
    void kill() {
        process.descendants().forEach(ProcessHandle::destroyForcibly);
        process.destroyForcibly();
    }

    /** Ends it and waits until nothing is left of it. */
    void close() {
        kill();
        try {
            answers.join(TimeUnit.SECONDS.toMillis(DYING_SECONDS));
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
        }
    }

    private void listen() {
        try {
            FormReader in = new FormReader(process.getInputStream(), MOST_ANSWER_BYTES);
            for (FormNode message = in.next(); message != null; message = in.next()) {
                hear(message);
            }
        } catch (FormException wrong) {
            unreadable = wrong.getMessage();
        } catch (IOException | ClassCastException notAnAnswer) {
            unreadable = "it is no message";
        } finally {
            end();
        }
    }

    private void hear(FormNode message) {
        if (message.text("kind").equals("ready")) {
            ready.complete(null);
            return;
        }
        if (message.text("kind").equals("checks")) {
            checks.complete(message);
            return;
        }
        boolean isLast = !message.text("kind").equals("progress");
        Exchange exchange = isLast ? exchanges.remove(message.whole("run")) : exchanges.get(message.whole("run"));
        if (isLast && (retired || message.raw("retire") == Boolean.TRUE || message.whole("threads") > 0)) {
            retire();
        }
        if (exchange != null) {
            exchange.hear(message);
        }
        lastUsedNanos = System.nanoTime();
    }

    private void end() {
        boolean byItself = unreadable == null;
        if (!byItself) {
            kill();
        }
        try {
            process.waitFor(DYING_SECONDS, TimeUnit.SECONDS); // its output is closed: it is dying, or a bundle closed it
            kill();
            process.waitFor(DYING_SECONDS, TimeUnit.SECONDS);
            errors.join(TimeUnit.SECONDS.toMillis(1));
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
        }
        ended = byItself ? death() : "what its process answered cannot be used: " + unreadable;
        writing.shutdownNow();
        ready.completeExceptionally(new IOException(ended));
        checks.completeExceptionally(new IOException(ended));
        exchanges.values().forEach(this::over);
        folder.delete();
    }

    private String death() {
        return lastWords.areOutOfMemory() ? "it used more than the " + heapMib + " MiB of memory that it may (host.worker-heap)"
                : "its process ended with status " + (process.isAlive() ? "unknown" : process.exitValue()) + " while it worked" + lastWords.clause();
    }

    private void over(Exchange exchange) {
        exchanges.remove(exchange.run());
        exchange.hear(new FormNode("message", Map.of("kind", "failed", "run", exchange.run(), "why", ended)));
    }
}
