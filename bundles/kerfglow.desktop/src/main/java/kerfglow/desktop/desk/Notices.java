// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import kerfglow.job.JobDifference;
import kerfglow.job.JobFile;
import kerfglow.job.JobState;

/**
 * What a person must know of the job file that lies on the desk: work that an earlier start left, which is taken up or set aside; damage; that it
 * cannot be saved here. Touched from the window's thread alone.
 */
public final class Notices {
    private static final DateTimeFormatter WHEN = DateTimeFormatter.ofPattern("d MMMM uuuu 'at' H:mm", Locale.UK);

    private final Desk desk;
    private final ZoneId zone;
    private final List<Notice> notices = new ArrayList<>();
    private Optional<JobFile> about = Optional.empty();
    private Runnable changed = () -> { };

    /** @param zone in which a person reads times */
    public Notices(Desk desk, ZoneId zone) {
        this.desk = desk;
        this.zone = zone;
        desk.listen(Topic.JOB, this::look);
    }

    /** The one that shows them. */
    public void onChange(Runnable value) {
        changed = value;
    }

    /** In the order in which they are to be read. */
    public List<Notice> all() {
        return List.copyOf(notices);
    }

    private void look() {
        if (!desk.kept().file().equals(about)) {
            about = desk.kept().file();
            notices.removeIf(notice -> notice.kind() != Notice.Kind.TOLD);
            about.ifPresent(file -> notices.addAll(of(file, desk.job().orElseThrow().state(), zone)));
            changed.run();
        }
    }

    /**
     * What is to be told of a job file that was opened.
     *
     * @param saved the job as it was read
     */
    static List<Notice> of(JobFile file, JobState saved, ZoneId zone) {
        List<Notice> notices = new ArrayList<>();
        file.unsaved().filter(unsaved -> file.isUndecided()).ifPresent(unsaved -> notices.add(new Notice(Notice.Kind.OFFER, offer(file, saved, unsaved, zone))));
        String name = file.file().getFileName().toString();
        if (!file.contents().problems().isEmpty()) {
            notices.add(new Notice(Notice.Kind.DAMAGED, name + " is damaged; what can be read of it is shown. What is wrong: " + String.join("; ", file.contents().problems())
                    + file.contents().kept().map(kept -> ". The original is kept as " + kept.getFileName() + ".").orElse(".")));
        }
        unsavable(file).ifPresent(why -> notices.add(new Notice(Notice.Kind.UNSAVABLE, name + " cannot be saved here: " + why + ". " + (file.keepsUnsaved()
                ? "What you decide is kept until the next start; save it under another name to keep it for good."
                : "Save under another name before you go on: nothing that you decide is kept."))));
        return notices;
    }

    private static Optional<String> unsavable(JobFile file) {
        return file.heldBy().map(holder -> "another window has it open (" + holder + ")").or(file::readOnly)
                .or(() -> file.isWriteProtected() ? Optional.of("the file is write-protected") : Optional.empty());
    }

    private static String offer(JobFile file, JobState saved, JobFile.Unsaved unsaved, ZoneId zone) {
        List<String> what = JobDifference.words(saved, unsaved.state());
        return "Work on " + file.file().getFileName() + " was not saved when its window ended, last on " + when(unsaved.at(), zone) + ": " + String.join(", ", what) + "."
                + (unsaved.fitsFile() ? "" : " The job was saved by another window since; saving will ask before it writes over that.");
    }

    private static String when(Instant at, ZoneId zone) {
        return WHEN.format(at.atZone(zone));
    }

    /** True while work that was not saved is offered. */
    public boolean isOffering() {
        return notices.stream().anyMatch(notice -> notice.kind() == Notice.Kind.OFFER);
    }

    /** Goes on from what was not saved; a step that can be taken back. */
    public void takeUp() {
        if (isOffering() && about.isPresent()) {
            JobState taken = about.get().takeUnsaved();
            remove(Notice.Kind.OFFER);
            desk.job().orElseThrow().perform("Take up what was not saved", state -> taken);
        }
    }

    /** Does not go on from it: it is kept as a job file of its own. */
    public void setAside() {
        if (isOffering() && about.isPresent()) {
            try {
                Optional<Path> kept = about.get().setUnsavedAside();
                remove(Notice.Kind.OFFER);
                kept.ifPresent(file -> notices.add(new Notice(Notice.Kind.TOLD, "It is kept as " + file + ", which can be opened like any job.")));
            } catch (IOException failed) {
                desk.setWork(WorkState.failed("What was not saved cannot be set aside (" + failed.getMessage() + "); it stays where it is and is offered at the next start."));
            }
            changed.run();
        }
    }

    /** Something to be read. */
    public void tell(String words) {
        notices.add(new Notice(Notice.Kind.TOLD, words));
        changed.run();
    }

    /** The person has read one. An offer is answered, not read. */
    public void read(Notice notice) {
        if (notice.kind() != Notice.Kind.OFFER && notices.remove(notice)) {
            changed.run();
        }
    }

    private void remove(Notice.Kind kind) {
        notices.removeIf(notice -> notice.kind() == kind);
        changed.run();
    }
}
