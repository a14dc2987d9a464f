// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What is selected on the canvas and in the lists; immutable.
 *
 * @param things in the order selected; the last one is the one that details are shown of
 */
public record Selection(List<Thing> things) {
    /** Nothing. */
    public static final Selection NONE = new Selection(List.of());

    /** Something that can be selected, by its id; a light by its place in the job sheet's list. */
    public record Thing(Kind kind, String id) {
    }

    /** What can be selected; what lies above on the canvas comes first. */
    public enum Kind { MARK, FINDING, LIGHT, PART }

    public Selection {
        things = List.copyOf(new LinkedHashSet<>(things));
    }

    public static Selection of(Kind kind, String id) {
        return new Selection(List.of(new Thing(kind, id)));
    }

    /** The one that details are shown of. */
    public Optional<Thing> lead() {
        return things.isEmpty() ? Optional.empty() : Optional.of(things.get(things.size() - 1));
    }

    public boolean contains(Kind kind, String id) {
        return things.contains(new Thing(kind, id));
    }

    /** The ids selected of one kind. */
    public List<String> ids(Kind kind) {
        return things.stream().filter(thing -> thing.kind() == kind).map(Thing::id).toList();
    }

    /**
     * After a click. The uppermost thing is selected; a click at the same place again goes one deeper, and from the lowest back to the
     * uppermost. With the key for more the uppermost joins the selection, or leaves it. A click on nothing selects nothing, with the key it
     * changes nothing.
     *
     * @param under what lies under the pointer, uppermost first
     * @param more true while the key for more is held
     */
    public Selection clicked(List<Thing> under, boolean more) {
        if (under.isEmpty()) {
            return more ? this : NONE;
        }
        if (more) {
            return toggled(under.get(0));
        }
        int at = things.size() == 1 ? under.indexOf(things.get(0)) : -1;
        return new Selection(List.of(under.get((at + 1) % under.size())));
    }

    /** With this thing more, or without it when it was selected. */
    public Selection toggled(Thing thing) {
        List<Thing> others = new ArrayList<>(things);
        if (!others.remove(thing)) {
            others.add(thing);
        }
        return new Selection(others);
    }

    /** After a frame was drawn: what lies in it, or that as well with the key for more. */
    public Selection framed(List<Thing> inside, boolean more) {
        List<Thing> all = new ArrayList<>(more ? things : List.of());
        all.addAll(inside);
        return new Selection(all);
    }

    /** Without what is not there any more, for instance after undo or a new run. */
    public Selection kept(Set<Thing> there) {
        return new Selection(things.stream().filter(there::contains).toList());
    }
}
