// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.awt.geom.AffineTransform;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import kerfglow.api.proof.Effect;

/**
 * What an element finds around it. Immutable; the transform is never changed in place.
 *
 * @param toMm from user units to mm on the sign
 * @param style the style of the element around
 * @param lengths the nearest viewport
 * @param clip what may be seen
 * @param effects what groups around it do that a cutter cannot follow
 * @param isDisplayed false below display: none
 * @param isClear true below opacity 0
 * @param layer the layer, or empty while none is found
 * @param dataPart the nearest data-part, or empty
 * @param ids ids of the groups around it, innermost first
 * @param nesting how many elements are around it
 */
record Place(AffineTransform toMm, Style style, Lengths lengths, Clip clip, Set<Effect> effects, boolean isDisplayed,
        boolean isClear, String layer, String dataPart, List<String> ids, int nesting) {

    Place moved(AffineTransform inner) {
        if (inner.isIdentity()) {
            return this;
        }
        AffineTransform all = new AffineTransform(toMm);
        all.concatenate(inner);
        return new Place(all, style, lengths, clip, effects, isDisplayed, isClear, layer, dataPart, ids, nesting);
    }

    Place styled(Style inner) {
        return new Place(toMm, inner, lengths.withFontSize(inner.fontSize()), clip, effects, isDisplayed, isClear, layer, dataPart,
                ids, nesting);
    }

    Place within(Lengths viewport) {
        return new Place(toMm, style, viewport, clip, effects, isDisplayed, isClear, layer, dataPart, ids, nesting);
    }

    Place clipped(Clip inner) {
        return new Place(toMm, style, lengths, inner, effects, isDisplayed, isClear, layer, dataPart, ids, nesting);
    }

    Place with(Set<Effect> more) {
        if (effects.containsAll(more)) {
            return this;
        }
        Set<Effect> all = EnumSet.copyOf(more);
        all.addAll(effects);
        return new Place(toMm, style, lengths, clip, all, isDisplayed, isClear, layer, dataPart, ids, nesting);
    }

    Place hidden() {
        return new Place(toMm, style, lengths, clip, effects, false, isClear, layer, dataPart, ids, nesting);
    }

    Place clear() {
        return new Place(toMm, style, lengths, clip, effects, isDisplayed, true, layer, dataPart, ids, nesting);
    }

    Place inLayer(String name) {
        return new Place(toMm, style, lengths, clip, effects, isDisplayed, isClear, name, dataPart, ids, nesting);
    }

    /** One level deeper, below an element with this id and data-part, either of which may be empty. */
    Place below(String id, String part) {
        List<String> path = ids;
        if (!id.isEmpty()) {
            path = new ArrayList<>(ids.size() + 1);
            path.add(id);
            path.addAll(ids);
        }
        return new Place(toMm, style, lengths, clip, effects, isDisplayed, isClear, layer, part.isEmpty() ? dataPart : part, path,
                nesting + 1);
    }
}
