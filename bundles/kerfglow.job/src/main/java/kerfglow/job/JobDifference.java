// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/** What one state of a job has decided that another has not, in words for a person. */
public final class JobDifference {
    private JobDifference() {
    }

    /**
     * The difference, one piece for each kind of thing: "2 marks added", "the job sheet changed". What a run showed is no decision and is not
     * told.
     *
     * @return empty when a person would see no difference
     */
    public static List<String> words(JobState from, JobState to) {
        List<String> words = new ArrayList<>();
        words.addAll(count("mark", from.marks(), to.marks(), Mark::id));
        words.addAll(count("waiver", from.waivers(), to.waivers(), Waiver::id));
        words.addAll(count("sign-off", from.signOffs(), to.signOffs(), SignOff::id));
        if (!SheetJson.canonical(from.sheet()).equals(SheetJson.canonical(to.sheet()))) {
            words.add("the job sheet changed");
        }
        if (!from.proof().file().equals(to.proof().file())) {
            words.add("another file for the proof, " + to.proof().file());
        }
        return words;
    }

    private static <T> List<String> count(String word, List<T> from, List<T> to, Function<T, String> id) {
        Map<String, T> before = new HashMap<>();
        from.forEach(each -> before.put(id.apply(each), each));
        int added = 0;
        int changed = 0;
        for (T each : to) {
            T old = before.remove(id.apply(each));
            added += old == null ? 1 : 0;
            changed += old == null || old.equals(each) ? 0 : 1;
        }
        List<String> words = new ArrayList<>();
        tell(words, added, word, "added");
        tell(words, changed, word, "changed");
        tell(words, before.size(), word, "taken out");
        return words;
    }

    private static void tell(List<String> words, int count, String word, String what) {
        if (count > 0) {
            words.add(count + " " + word + (count == 1 ? "" : "s") + " " + what);
        }
    }
}
