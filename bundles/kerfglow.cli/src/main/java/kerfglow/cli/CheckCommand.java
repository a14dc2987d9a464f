// SPDX-License-Identifier: Apache-2.0
package kerfglow.cli;

import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import kerfglow.api.Severity;
import kerfglow.api.proof.ProofException;
import kerfglow.host.Result;
import kerfglow.host.RunRequest;
import kerfglow.host.Runner;
import kerfglow.host.SheetException;
import kerfglow.job.JobFile;
import kerfglow.job.JobFileException;
import kerfglow.job.JobState;
import kerfglow.job.ReviewedResult;
import kerfglow.views.JsonView;
import kerfglow.views.OverlayPicture;
import kerfglow.views.TextView;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Checks proofs and shows what was found. One bad file does not stop the rest. */
@Command(name = "check", mixinStandardHelpOptions = true, sortOptions = false, description = "Checks proofs (SVG files, job files, or folders of SVG files) and shows what was found.",
        footer = {"", "Exit status: 0 nothing at or above the threshold, 1 something is, 2 a file, a sheet or the words of the command are at fault,",
            "3 a check failed or timed out, or the program did. Of several files the first of 2, 3, 1, 0 that occurred."})
final class CheckCommand implements Callable<Integer> {
    private static final String OVERLAY_ENDING = ".overlay";

    /** How the result is written. */
    enum Format { text, json }

    @Parameters(arity = "1..*", paramLabel = "FILE", description = "SVG files, job files (.kerfglow), or folders whose SVG files are checked.")
    private List<String> files;
    @Option(names = "--job", paramLabel = "SHEET", description = "Job sheet; else NAME.job.yaml beside the proof, if it is there.")
    private String job;
    @Option(names = "--shop", paramLabel = "SHEET", description = "Shop sheet; else the one that the job sheet names.")
    private String shop;
    @Option(names = "--set", paramLabel = "KEY=VALUE", description = "Gives a setting, or KEY[role=face]=VALUE for some parts. Repeat as needed.")
    private List<String> settings = List.of();
    @Option(names = "--only", paramLabel = "CHECK", split = ",", description = "Runs these checks alone.")
    private List<String> only = List.of();
    @Option(names = "--format", paramLabel = "FORMAT", description = "text or json. Default: ${DEFAULT-VALUE}.")
    private Format format = Format.text;
    @Option(names = "--overlay", paramLabel = "PICTURE",
            description = "Draws the findings on the proof: a file that ends in .svg or .png, or a folder. Repeat for both.")
    private List<String> overlays = List.of();
    @Option(names = "--threshold", paramLabel = "SEVERITY", description = "Least severity that makes the exit status 1: stop, review or info. Default: stop.")
    private Severity threshold = Severity.STOP;

    private final Runner runner;
    private final PrintStream out;
    private final PrintStream err;
    private final Terminal terminal;
    private final List<ReviewedResult> results = new ArrayList<>();
    private final List<JsonView.Unusable> unusable = new ArrayList<>();
    private final List<ExitStatus> statuses = new ArrayList<>();
    private final Set<Path> drawn = new HashSet<>();

    CheckCommand(Runner runner, PrintStream out, PrintStream err, Terminal terminal) {
        this.runner = runner;
        this.out = out;
        this.err = err;
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws InterruptedException {
        List<Path> proofs = proofs();
        Optional<String> wrong = job != null && proofs.stream().anyMatch(JobFile::isJobFile) ? Optional.of("--job " + job + ": a job file holds a job sheet of its own; leave one of them out")
                : wrongOverlay(proofs);
        if (wrong.isPresent()) {
            err.println("kerfglow: " + wrong.get());
            return ExitStatus.INPUT.code();
        }
        for (Path proof : proofs) {
            check(proof);
        }
        if (format == Format.json) {
            writeJson(proofs.size() > 1);
        } else if (results.size() + unusable.size() > 1) {
            out.println();
            results.forEach(result -> out.println(TextView.summary(result)));
            unusable.forEach(each -> out.println(each.file() + ": not checked: " + each.error()));
        }
        return ExitStatus.of(statuses).code();
    }

    private List<Path> proofs() {
        List<Path> proofs = new ArrayList<>();
        for (String name : files) {
            try {
                Path path = Path.of(name);
                if (Files.isDirectory(path)) {
                    List<Path> inside = inside(path);
                    if (inside.isEmpty()) {
                        refuse(name, "there is no SVG file in this folder");
                    }
                    proofs.addAll(inside);
                } else {
                    proofs.add(path);
                }
            } catch (InvalidPathException notAPath) {
                refuse(name, "this is not a file name");
            } catch (IOException unreadable) {
                refuse(name, "the folder cannot be read: " + unreadable.getMessage());
            }
        }
        return proofs;
    }

    private static List<Path> inside(Path folder) throws IOException {
        try (Stream<Path> walk = Files.walk(folder)) {
            return walk.filter(Files::isRegularFile).filter(path -> {
                String name = path.getFileName().toString().toLowerCase(Locale.ROOT);
                return name.endsWith(".svg") && !name.endsWith(OVERLAY_ENDING + ".svg");
            }).sorted().toList();
        }
    }

    private void refuse(String file, String why) {
        err.println("kerfglow: " + file + ": " + why);
        unusable.add(new JsonView.Unusable(file, why));
        statuses.add(ExitStatus.INPUT);
    }

    /** What is wrong with the words after --overlay, if anything; told before any work is done. */
    private Optional<String> wrongOverlay(List<Path> proofs) {
        for (String overlay : overlays) {
            Path target = Path.of(overlay);
            boolean isFile = isPicture(overlay) && !Files.isDirectory(target);
            if (!isFile && lastName(target).matches(".+\\..+") && !overlay.endsWith("/") && !Files.isDirectory(target)) {
                return Optional.of("--overlay " + overlay + ": write a name that ends in .svg or .png, or a folder");
            }
            if (isFile && proofs.size() > 1) {
                return Optional.of("--overlay " + overlay + ": there are several proofs; name a folder to put their pictures in");
            }
            if (isFile && proofs.stream().anyMatch(proof -> isSame(proof, target))) {
                return Optional.of("--overlay " + overlay + ": that is the proof itself, which is never written over; choose another name");
            }
        }
        return Optional.empty();
    }

    private static String lastName(Path path) {
        return path.getFileName() == null ? "" : path.getFileName().toString();
    }

    private static boolean isSame(Path proof, Path target) {
        try {
            return Files.exists(target) && Files.isSameFile(proof, target);
        } catch (IOException unreadable) {
            return false; // reading the proof will say what is wrong with it
        }
    }

    private static boolean isPicture(String name) {
        String lower = name.toLowerCase(Locale.ROOT);
        return lower.endsWith(".svg") || lower.endsWith(".png");
    }

    private void check(Path proof) throws InterruptedException {
        ProgressLine progress = new ProgressLine(err, terminal.progress(), proof.toString());
        try {
            ReviewedResult result = JobFile.isJobFile(proof) ? runJob(proof, progress) : ReviewedResult.undecided(
                    runner.run(new RunRequest(proof, Optional.ofNullable(job).map(Path::of), Optional.ofNullable(shop).map(Path::of), settings, only), progress));
            progress.done();
            for (String overlay : overlays) {
                draw(result.result(), proof, Path.of(overlay));
            }
            results.add(result);
            statuses.add(result.isBroken() ? ExitStatus.BROKEN : result.has(threshold) ? ExitStatus.FOUND : ExitStatus.CLEAR);
            if (format == Format.text) {
                out.print(TextView.of(result, terminal.colour()));
                out.flush();
            }
        } catch (ProofException | SheetException | JobFileException unfit) {
            progress.done();
            refuse(proof.toString(), unfit.getMessage());
        } catch (IOException unwritable) {
            refuse(proof.toString(), "a picture cannot be written: " + unwritable);
        } catch (OutOfMemoryError tooLarge) {
            progress.done();
            err.println("kerfglow: " + proof + ": too large for the memory that the program may use; set KERFGLOW_VMARGS=-Xmx8g and try again");
            unusable.add(new JsonView.Unusable(proof.toString(), "out of memory"));
            statuses.add(ExitStatus.BROKEN);
        } catch (RuntimeException | Error defect) { // an Error too: one bad file must not stop the rest
            progress.done();
            err.println("kerfglow: " + proof + ": the program failed: " + defect + ". This is a defect of the program; please report it with the file.");
            unusable.add(new JsonView.Unusable(proof.toString(), "the program failed: " + defect));
            statuses.add(ExitStatus.BROKEN);
        }
    }

    /** A job file brings its proof, its job sheet and what was decided. */
    private ReviewedResult runJob(Path file, ProgressLine progress) throws IOException, ProofException, SheetException, InterruptedException {
        JobState state = JobFile.readWhole(file);
        RunRequest request = new RunRequest(JobFile.proofFile(file, state), Optional.of(state.sheet()), Optional.empty(), Optional.ofNullable(shop).map(Path::of), settings, only);
        return ReviewedResult.of(state, runner.run(request, progress));
    }

    private void draw(Result result, Path proof, Path target) throws IOException {
        if (isPicture(target.toString()) && !Files.isDirectory(target)) {
            if (isSame(Path.of(result.proof().file()), target)) { // the proof of a job file is known only now
                throw new IOException("--overlay " + target + " is the proof itself, which is never written over");
            }
            write(result, target);
            return;
        }
        Files.createDirectories(target);
        String bare = proof.getFileName().toString().replaceFirst("\\.[^.]*$", "");
        String name = bare + OVERLAY_ENDING;
        for (int i = 2; !drawn.add(target.resolve(name)); i++) { // proofs of one name from several folders
            name = bare + "-" + i + OVERLAY_ENDING;
        }
        write(result, target.resolve(name + ".svg"));
        write(result, target.resolve(name + ".png"));
    }

    private static void write(Result result, Path picture) throws IOException {
        if (picture.toAbsolutePath().getParent() != null) {
            Files.createDirectories(picture.toAbsolutePath().getParent());
        }
        if (picture.toString().toLowerCase(Locale.ROOT).endsWith(".svg")) {
            Files.writeString(picture, OverlayPicture.svg(result));
        } else {
            ImageIO.write(OverlayPicture.image(result), "png", picture.toFile());
        }
    }

    private void writeJson(boolean several) {
        Writer writer = new OutputStreamWriter(out, StandardCharsets.UTF_8);
        if (!several && results.size() == 1 && unusable.isEmpty()) {
            JsonView.write(results.get(0), writer);
        } else {
            JsonView.writeReviewed(results, unusable, writer);
        }
        out.flush();
    }
}
