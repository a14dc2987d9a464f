// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Optional;
import java.util.function.Consumer;
import kerfglow.job.Job;
import kerfglow.job.JobFile;
import kerfglow.job.JobNames;
import kerfglow.job.JobState;
import kerfglow.job.MarkMerge;

/** The job on the desk and the files that it lives in: the job file that keeps it, the proof's file that it is about. */
public final class KeptJob {
    private final Runnable changed;
    private final Consumer<String> trouble;
    private Optional<Job> job = Optional.empty();
    private Optional<JobFile> file = Optional.empty();
    private Optional<Path> proofFile = Optional.empty();
    private String proofName = "";

    /**
     * None yet.
     *
     * @param changed called when the job changed, or is kept elsewhere
     * @param trouble told, in words for people, what could not be kept
     */
    KeptJob(Runnable changed, Consumer<String> trouble) {
        this.changed = changed;
        this.trouble = trouble;
    }

    /** Takes up a job; the one before is put away. */
    void begin(Path proof, JobFile newFile, JobState state) {
        putAway();
        Job begun = new Job(state, Clock.systemUTC());
        begun.listen(this::jobChanged);
        job = Optional.of(begun);
        file = Optional.of(newFile);
        proofFile = Optional.of(proof);
        proofName = state.proof().file();
    }

    /** Ends autosave and gives the job back to others; what is not saved stays in the side file. */
    public void putAway() {
        file.ifPresent(each -> {
            try {
                each.close();
            } catch (IOException unwritable) {
                trouble.accept(each.file().getFileName() + ": what was not saved could not be kept (" + unwritable.getMessage() + ")");
            }
        });
        file = Optional.empty();
    }

    private void jobChanged() {
        Job current = job.orElseThrow();
        file.filter(each -> !current.state().proof().file().equals(proofName)).ifPresent(each -> {
            proofName = current.state().proof().file();
            proofFile = Optional.of(JobNames.proofFile(each.file(), current.state()));
        });
        file.ifPresent(each -> {
            if (current.isChanged()) {
                each.changed(current.state());
            } else {
                each.unchanged();
            }
        });
        changed.run();
    }

    Optional<Job> job() {
        return job;
    }

    /** The file that the job is kept in. */
    public Optional<JobFile> file() {
        return file;
    }

    Optional<Path> proofFile() {
        return proofFile;
    }

    /**
     * Saves the job.
     *
     * @param overwrite true to write over a file that somebody else changed
     * @throws IOException with a message for people when it cannot be saved
     */
    public void save(boolean overwrite) throws IOException {
        if (job.isPresent() && file.isPresent()) {
            file.get().save(job.get().state(), overwrite);
            job.get().markSaved();
        }
    }

    /**
     * Saves the job in another file and goes on there; when that fails, everything is as it was.
     *
     * @throws IOException with a message for people when it cannot be saved
     */
    public void saveIn(JobFile other) throws IOException {
        Job current = job.orElseThrow();
        Path from = file.orElseThrow().file();
        JobState moved = JobNames.relocated(current.state(), from, other.file());
        try {
            other.save(moved, true);
        } catch (IOException failed) {
            other.close();
            throw failed;
        }
        putAway();
        file = Optional.of(other);
        proofName = moved.proof().file();
        current.moved(from, other.file());
    }

    /**
     * Takes in the marks of a second reviewer's job file, which is only read.
     *
     * @return what came
     * @throws IOException with a message for people when it cannot be read
     */
    public MarkMerge.Report merge(Path other) throws IOException {
        JobFile.Contents contents = JobFile.read(other);
        if (contents.isNew()) {
            throw new IOException(other + ": there is no such file");
        }
        return job.orElseThrow(() -> new IOException("open the proof first that the marks are about")).merge(contents.state());
    }

    /** Takes another file for the proof of this job; it is read and checked, and compared with the one before. A step that can be taken back. */
    public void revise(Path other) {
        job.ifPresent(current -> file.ifPresent(kept -> current.takeRevision(JobNames.proofName(kept.file(), other.toAbsolutePath().normalize()))));
    }
}
