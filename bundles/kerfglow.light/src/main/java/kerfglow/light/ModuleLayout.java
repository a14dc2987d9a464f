// SPDX-License-Identifier: Apache-2.0
package kerfglow.light;

import java.util.List;
import java.util.Objects;
import org.locationtech.jts.geom.Geometry;

/** Puts light modules into a can. */
public interface ModuleLayout {
    /**
     * Lays modules out.
     *
     * @param task what is to be lit, and by what
     * @param pulse to be called often; throws when the work is over
     * @return never null; without modules where none fits
     */
    Result layOut(Task task, Runnable pulse);

    /**
     * What is to be lit.
     *
     * @param can the can
     * @param type the module to be used
     * @param keepClear where no module may lie: holes and keep-outs, mm; may be empty
     * @param uniformity the least level over the mean that is wanted, 0 to 1
     * @param contrast the Weber contrast between a peak and its surroundings that may remain
     */
    record Task(Can can, LightModuleType type, Geometry keepClear, double uniformity, double contrast) {
        public Task {
            Objects.requireNonNull(can, "can");
            Objects.requireNonNull(type, "type");
            Objects.requireNonNull(keepClear, "keepClear");
        }
    }

    /**
     * What was laid out.
     *
     * @param modules in the order of their strings
     * @param strings for each module the number of its string, from 1
     * @param pitchMm from module to module along a row, mm; 0 where there is at most one
     */
    record Result(List<LightModule> modules, List<Integer> strings, double pitchMm) {
        public Result {
            modules = List.copyOf(modules);
            strings = List.copyOf(strings);
            if (modules.size() != strings.size()) {
                throw new IllegalArgumentException(modules.size() + " modules need as many string numbers, not " + strings.size());
            }
        }
    }
}
