// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Puts the marks of a second reviewer's job file into the first's, by their ids. Answers of both are kept. Where one version
 * came of the other, that one stands; where both were changed apart, the newer wins and the older is kept beside it as a mark of its own.
 *
 * @param marks all marks afterwards
 * @param report what came, for the person
 */
public record MarkMerge(List<Mark> marks, Report report) {
    /**
     * What came.
     *
     * @param added marks that were not there
     * @param changed marks that the other side had changed later
     * @param conflicts marks that both sides had changed in shape, text or settled state; both versions are kept
     * @param same marks that were equal, or newer here
     */
    public record Report(int added, int changed, int conflicts, int same) {
        /** For a person. */
        public String told() {
            return added + " new, " + changed + " changed, " + conflicts + " in both versions, " + same + " already here";
        }
    }

    /**
     * Merges.
     *
     * @param own the marks here
     * @param others those of the other file
     */
    public static MarkMerge of(List<Mark> own, List<Mark> others) {
        Map<String, Mark> merged = new LinkedHashMap<>();
        own.forEach(mark -> merged.put(mark.id(), mark));
        int added = 0;
        int changed = 0;
        int conflicts = 0;
        int same = 0;
        for (Mark theirs : others) {
            Mark ours = merged.get(theirs.id());
            if (ours == null) {
                merged.put(theirs.id(), theirs);
                added++;
                continue;
            }
            Mark newer = theirs.cameOf(ours) || !ours.cameOf(theirs) && theirs.modified().isAfter(ours.modified()) ? theirs : ours;
            Mark older = newer == ours ? theirs : ours;
            Mark result = withAnswers(newer, older);
            merged.put(ours.id(), result);
            if (saysOtherwise(ours, theirs) && !holdsCopy(merged, older)) {
                Mark copy = copy(older);
                merged.put(copy.id(), copy);
                conflicts++;
            } else if (result.equals(ours)) {
                same++;
            } else {
                changed++;
            }
        }
        return new MarkMerge(List.copyOf(merged.values()), new Report(added, changed, conflicts, same));
    }

    /** Versions of one time are one, wherever a new revision of the proof may have moved them. */
    private static boolean saysOtherwise(Mark a, Mark b) {
        return !a.modified().equals(b.modified()) && !a.cameOf(b) && !b.cameOf(a)
                && (!a.text().equals(b.text()) || !a.shape().equals(b.shape()) || !a.settled().equals(b.settled()));
    }

    private static Mark copy(Mark older) {
        return new Mark(copyId(older), older.shape(), older.text(), older.author(), older.created(), older.modified(), older.answers(), older.settled(), older.earlier(), older.proofSha256());
    }

    /** Made of the id and the time, so that merging the same file twice adds nothing. */
    private static String copyId(Mark older) {
        return older.id() + "#" + older.modified().toEpochMilli();
    }

    private static boolean holdsCopy(Map<String, Mark> merged, Mark older) {
        return merged.containsKey(copyId(older));
    }

    private static Mark withAnswers(Mark newer, Mark older) {
        Map<String, Mark.Answer> answers = new HashMap<>();
        older.answers().forEach(answer -> answers.put(answer.id(), answer));
        newer.answers().forEach(answer -> answers.put(answer.id(), answer));
        List<Mark.Answer> inOrder = new ArrayList<>(answers.values());
        inOrder.sort(Comparator.comparing(Mark.Answer::created).thenComparing(Mark.Answer::id));
        return new Mark(newer.id(), newer.shape(), newer.text(), newer.author(), newer.created(), newer.modified(), inOrder, newer.settled(), newer.earlier(), newer.proofSha256());
    }
}
