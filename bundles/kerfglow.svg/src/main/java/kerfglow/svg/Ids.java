// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;

/** Hands out ids that are unique in the proof: the file's own first, then with ~2, ~3 for repeats and for what use shows again. */
final class Ids {
    private final Set<String> taken;
    private final Map<String, Integer> repeats = new HashMap<>();
    private final Map<String, Integer> numbers = new HashMap<>();
    private final Set<String> given = new HashSet<>();

    Ids(Set<String> inFile) {
        taken = inFile;
    }

    String of(String fileId, String tag) {
        if (fileId.isEmpty()) {
            String id;
            do {
                id = tag + "-" + numbers.merge(tag, 1, Integer::sum);
            } while (taken.contains(id) || !given.add(id));
            return id;
        }
        String id = fileId;
        while (!given.add(id)) {
            do {
                id = fileId + "~" + (repeats.merge(fileId, 1, Integer::sum) + 1);
            } while (taken.contains(id));
        }
        return id;
    }
}
