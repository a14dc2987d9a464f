// SPDX-License-Identifier: Apache-2.0
package kerfglow.api;

import java.util.List;
import org.osgi.annotation.versioning.ConsumerType;

/**
 * A plug-in that looks for one production risk. Register it as an OSGi service; the host does the rest: settings, time limit,
 * severity, waivers and reports. Keep no state between calls: {@link #inspect} may run for several proofs at once. Never call
 * another check; its numbers are read through {@link Inspection#tables}.
 */
@ConsumerType
public interface Check {
    /** Who it is; never null, always equal. */
    CheckInfo info();

    /**
     * The ids of checks whose tables this one reads through {@link Inspection#tables}. The host runs those first; one that is not
     * installed, not asked for, or failed leaves its tables empty. Checks that read each other in a circle are refused.
     */
    default List<String> reads() {
        return List.of();
    }

    /**
     * Measures one proof.
     *
     * @param inspection what was drawn, what it becomes, the settings; not to be changed
     * @return never null. Anything thrown, other than cancellation, is a defect of the check: it costs this check's result and
     *     nothing else
     */
    Outcome inspect(Inspection inspection);
}
