// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

import java.util.EnumSet;
import java.util.HashSet;
import java.util.Set;
import kerfglow.api.proof.Role;
import kerfglow.desktop.scene.Figure;

/** What of the proof is shown, and how. */
public final class Shown {
    /** Where the revision before is drawn. */
    public enum Old { NOT, OVER, BESIDE }

    private final Runnable changed;
    private final Set<String> hiddenLayers = new HashSet<>();
    private final Set<Role> hiddenRoles = EnumSet.noneOf(Role.class);
    private final Set<String> overlays = new HashSet<>();
    private boolean edgesAlone;
    private boolean findings = true;
    private boolean rulers = true;
    private Old old = Old.NOT;

    Shown(Runnable changed) {
        this.changed = changed;
    }

    /** Another proof: its layers are all shown, its overlays are not. */
    void reset() {
        hiddenLayers.clear();
        hiddenRoles.clear();
        overlays.clear();
        old = Old.NOT;
    }

    /** True when neither the layer nor all roles of a figure are turned off. */
    public boolean shows(Figure figure) {
        return !hiddenLayers.contains(figure.layer()) && (figure.roles().isEmpty() || !hiddenRoles.containsAll(figure.roles()));
    }

    public boolean showsLayer(String layer) {
        return !hiddenLayers.contains(layer);
    }

    public boolean showsRole(Role role) {
        return !hiddenRoles.contains(role);
    }

    public void setLayer(String layer, boolean show) {
        if (show ? hiddenLayers.remove(layer) : hiddenLayers.add(layer)) {
            changed.run();
        }
    }

    public void setRole(Role role, boolean show) {
        if (show ? hiddenRoles.remove(role) : hiddenRoles.add(role)) {
            changed.run();
        }
    }

    /** True when outlines are drawn instead of painted areas. */
    public boolean isEdgesAlone() {
        return edgesAlone;
    }

    public void setEdgesAlone(boolean value) {
        edgesAlone = value;
        changed.run();
    }

    public boolean isFindings() {
        return findings;
    }

    public void setFindings(boolean value) {
        findings = value;
        changed.run();
    }

    public boolean isRulers() {
        return rulers;
    }

    public void setRulers(boolean value) {
        rulers = value;
        changed.run();
    }

    /** Where the revision before is drawn, when there is one. */
    public Old old() {
        return old;
    }

    public void setOld(Old value) {
        if (old != value) {
            old = value;
            changed.run();
        }
    }

    /** True when an overlay layer of a check is shown; its name is {@code check/layer}. */
    public boolean showsOverlay(String name) {
        return overlays.contains(name);
    }

    public void setOverlay(String name, boolean show) {
        if (show ? overlays.add(name) : overlays.remove(name)) {
            changed.run();
        }
    }
}
