// SPDX-License-Identifier: Apache-2.0
package kerfglow.views;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import kerfglow.api.OverlayLayer;
import kerfglow.host.Result;

/** Finds the layers that checks offer by name: {@code check.layer}, for instance {@code glow.map}. */
public final class Layers {
    private static final String ALL = "all";

    private Layers() {
    }

    /** Every layer of the result by its name, in the order of the checks. */
    public static List<String> names(Result result) {
        return result.checks().stream().flatMap(row -> row.layers().stream().map(layer -> row.check() + "." + layer.id())).toList();
    }

    /**
     * The layers of these names, in their order; {@code all} is every layer.
     *
     * @throws IllegalArgumentException when there is none of a name; the message lists those that there are
     */
    public static List<OverlayLayer> named(Result result, List<String> names) {
        List<OverlayLayer> found = new ArrayList<>();
        for (String name : names) {
            List<OverlayLayer> of = result.checks().stream().flatMap(row -> row.layers().stream()
                    .filter(layer -> name.equals(ALL) || name.equals(row.check() + "." + layer.id()))).toList();
            if (of.isEmpty() && !name.equals(ALL)) {
                String known = names(result).stream().collect(Collectors.joining(", "));
                throw new IllegalArgumentException("there is no layer " + name + (known.isEmpty() ? "; no check offered any" : "; there are " + known));
            }
            found.addAll(of);
        }
        return found;
    }
}
