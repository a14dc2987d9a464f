// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.glow;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import kerfglow.api.Inspection;
import kerfglow.api.Quantity;
import kerfglow.api.Settings;
import kerfglow.api.StockItem;
import kerfglow.api.Units;
import kerfglow.api.proof.Part;
import kerfglow.light.LightModuleType;

/**
 * The module that lights a part.
 *
 * @param type what it is
 * @param cablePitchMm greatest distance to the next on its own cable, mm; 0 for any
 */
record ModuleChoice(LightModuleType type, double cablePitchMm) {
    /**
     * The stocked one that is named, or the first, or what the settings say where none is stocked.
     *
     * @param missing told when it is not from stock
     */
    static ModuleChoice of(Inspection inspection, Part part, Set<String> missing) {
        Settings settings = inspection.settings();
        List<StockItem> stock = inspection.stock(GlowSettings.MODULES);
        String wanted = settings.get(GlowSettings.MODULE, part).strip();
        Optional<StockItem> found = stock.stream().filter(item -> wanted.isEmpty() || item.name().equalsIgnoreCase(wanted)).findFirst();
        if (found.isPresent()) {
            StockItem item = found.get();
            return new ModuleChoice(new LightModuleType(item.name(), item.get(GlowSettings.STOCK_FLUX), item.get(GlowSettings.STOCK_BEAM),
                    item.get(GlowSettings.STOCK_LENGTH), item.get(GlowSettings.STOCK_WIDTH), item.get(GlowSettings.STOCK_HEIGHT),
                    item.get(GlowSettings.STOCK_EMITTERS), item.get(GlowSettings.STOCK_EMITTER_PITCH)), item.get(GlowSettings.STOCK_CABLE_PITCH));
        }
        LightModuleType plain = new LightModuleType(wanted, settings.get(GlowSettings.FLUX, part), settings.get(GlowSettings.BEAM, part),
                settings.get(GlowSettings.LENGTH, part), settings.get(GlowSettings.WIDTH, part), settings.get(GlowSettings.HEIGHT, part),
                settings.get(GlowSettings.EMITTERS, part), settings.get(GlowSettings.EMITTER_PITCH, part));
        missing.add((wanted.isEmpty() ? "The shop sheet lists no light module" : "The shop sheet lists no light module \"" + wanted + "\"")
                + "; reckoned with " + Units.format(plain.fluxLm(), Quantity.LUMINOUS_FLUX, inspection.units()) + " in a beam of "
                + Units.format(plain.beamDegrees(), Quantity.ANGLE, inspection.units()) + ".");
        return new ModuleChoice(plain, 0);
    }
}
