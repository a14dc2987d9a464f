// SPDX-License-Identifier: Apache-2.0
package kerfglow.worker.process;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Proof;
import kerfglow.worker.form.FormException;
import kerfglow.worker.form.FormNode;
import kerfglow.worker.form.FormReader;
import kerfglow.worker.form.FormWriter;
import org.osgi.framework.BundleContext;
import org.osgi.service.component.annotations.Activate;
import org.osgi.service.component.annotations.Component;
import org.osgi.service.component.annotations.Reference;

/**
 * Does what the host says and answers. There is one only where the streams to the host are services, so in a worker process. The thread
 * that listens never runs a shop's code, so that it can end the process whatever that does. It deletes nothing: folders belong to the host.
 */
@Component(immediate = true, service = {})
public final class Conversation {
    /** The host is trusted; its messages are as long as the proof is large. */
    private static final long NO_LIMIT = Long.MAX_VALUE;

    private final FormReader in;
    private final FormWriter out;
    private final ShopBundle bundle;
    private final Printed printed;
    private final Map<Long, Run> runs = new ConcurrentHashMap<>();
    private Drawing drawing;

    /** Begins to listen. */
    @Activate
    public Conversation(@Reference(target = "(" + Main.HOST + "=host)") InputStream in, @Reference(target = "(" + Main.HOST + "=host)") OutputStream out,
            BundleContext context) throws IOException {
        this.out = new FormWriter(out);
        this.bundle = new ShopBundle(context);
        this.printed = Printed.takeOver();
        answer("ready", Map.of());
        this.in = new FormReader(in, NO_LIMIT); // waits for the host's first word, which comes after ours
        new Thread(this::listen, "host").start();
    }

    private void listen() {
        try {
            for (FormNode message = in.next(); message != null; message = in.next()) {
                hear(message);
            }
            Runtime.getRuntime().halt(0); // not exit: a shop's shutdown hook could hang
        } catch (IOException | RuntimeException defect) {
            System.err.println("the host's message cannot be read: " + defect);
            System.err.flush();
        } finally {
            Runtime.getRuntime().halt(1);
        }
    }

    private void hear(FormNode message) {
        switch (message.text("kind")) {
            case "start" -> {
                List<Path> beside = message.texts("beside").stream().map(Path::of).toList();
                thread("bundle", () -> answer("checks", bundle.start(Path.of(message.text("bundle")), beside)));
            }
            case "drawing" -> drawing = Drawing.of(message.value("proof", Proof.class), message.values("parts", Part.class));
            case "inspect" -> {
                Run run = new Run(message, bundle.check(message.text("check")), drawing, printed, this::answer);
                runs.put(run.number(), run);
                thread("check", () -> {
                    run.run(() -> runs.size() == 1);
                    runs.remove(run.number());
                });
            }
            case "cancel" -> {
                Run run = runs.get(message.whole("run"));
                if (run != null) {
                    run.cancel();
                }
            }
            default -> throw new FormException("there is no message " + message.text("kind"));
        }
    }

    private static void thread(String name, Runnable work) {
        Thread thread = new Thread(work, name);
        thread.setDaemon(true);
        thread.start();
    }

    private void answer(String kind, Map<String, ?> fields) {
        try {
            out.message(kind, fields);
        } catch (IOException hostIsGone) {
            Runtime.getRuntime().halt(0);
        } catch (Throwable unwritable) { // a message that broke off in the middle: nothing can be said any more but why
            new PrintStream(new FileOutputStream(FileDescriptor.err), true, StandardCharsets.UTF_8).println("what it says cannot be written: " + Thrown.words(unwritable));
            Runtime.getRuntime().halt(1);
        }
    }
}
