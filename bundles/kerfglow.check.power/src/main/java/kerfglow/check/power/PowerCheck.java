// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.power;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import kerfglow.api.Check;
import kerfglow.api.CheckInfo;
import kerfglow.api.Finding;
import kerfglow.api.Inspection;
import kerfglow.api.Outcome;
import kerfglow.api.OverlayLayer;
import kerfglow.api.Quantity;
import kerfglow.api.Settings;
import kerfglow.api.StockItem;
import kerfglow.api.StockKind;
import kerfglow.api.Table;
import kerfglow.api.Units;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.osgi.service.component.annotations.Component;

/**
 * Puts the light modules that check glow placed into strings, chooses conductors and supplies, and says what they take. A plan,
 * never an approval.
 *
 * <p>Cost: n² in the modules of a part for the way of the cable.
 */
@Component
public final class PowerCheck implements Check {
    /** Kind of stock that it reads, beside check glow. */
    public static final StockKind MODULES = PowerSettings.MODULES;
    /** Kind of stock that it reads. */
    public static final StockKind POWER_SUPPLIES = PowerSettings.POWER_SUPPLIES;

    private static final String GLOW = "glow";
    private static final String GLOW_MODULES = "modules";

    private final CheckInfo info = new CheckInfo("power", "Strings, conductors and supplies of the light modules", PowerRules.ALL, PowerSettings.ALL,
            List.of(MODULES, POWER_SUPPLIES), PowerTables.ALL, CheckInfo.page(PowerCheck.class, "page.md"));

    @Override
    public CheckInfo info() {
        return info;
    }

    @Override
    public List<String> reads() {
        return List.of(GLOW);
    }

    @Override
    public Outcome inspect(Inspection inspection) {
        List<Lamp> lamps = inspection.table(GLOW, GLOW_MODULES).map(PowerCheck::lamps).orElse(List.of());
        if (lamps.isEmpty()) {
            return Outcome.notMeasured("Check glow placed no light modules in this run, so there is nothing to wire.");
        }
        return new Run(inspection).outcome(lamps);
    }

    private static List<Lamp> lamps(Table table) {
        List<String> columns = table.info().columns().stream().map(column -> column.id()).toList();
        List<Lamp> lamps = new ArrayList<>();
        for (List<Object> row : table.rows()) {
            Function<String, Object> cell = id -> columns.contains(id) ? row.get(columns.indexOf(id)) : null;
            if (cell.apply("x") instanceof Double x && cell.apply("y") instanceof Double y) {
                lamps.add(new Lamp(text(cell.apply("part")), new Coordinate(x, y), cell.apply("turn") instanceof Double turn ? turn : Double.NaN,
                        text(cell.apply("type")), text(cell.apply("string"))));
            }
        }
        return lamps;
    }

    private static String text(Object cell) {
        return cell instanceof String text ? text : "";
    }

    /** One run of the check. */
    private static final class Run {
        private static final double HALF = 0.5;

        private final Inspection inspection;
        private final Settings settings;
        private final GeometryFactory factory = new GeometryFactory();
        private final Set<String> missing = new LinkedHashSet<>();
        private final List<Supply> supplies;
        private final Map<String, ModuleType> types = new LinkedHashMap<>();

        Run(Inspection inspection) {
            this.inspection = inspection;
            settings = inspection.settings();
            List<StockItem> listed = inspection.stock(POWER_SUPPLIES);
            supplies = listed.isEmpty() ? Supply.USUAL : listed.stream().map(Supply::of).toList();
            inspection.stock(MODULES).stream().map(ModuleType::of).forEach(type -> types.put(type.name(), type));
        }

        Outcome outcome(List<Lamp> lamps) {
            Wiring wiring = wiring(lamps);
            Runnable pulse = () -> inspection.checkpoint(HALF);
            Map<String, List<Lamp>> byType = new LinkedHashMap<>();
            lamps.forEach(lamp -> byType.computeIfAbsent(lamp.type(), type -> new ArrayList<>()).add(lamp));
            List<Plan> plans = new ArrayList<>();
            byType.forEach((name, group) -> plan(name, group, wiring, pulse).ifPresent(plans::add));
            if (plans.isEmpty()) {
                return new Outcome(List.of(), List.of(), List.of(), List.copyOf(missing), false);
            }
            if (inspection.stock(POWER_SUPPLIES).isEmpty()) {
                missing.add("The shop sheet lists no power supplies; planned with the common sizes "
                        + String.join(" and ", supplies.stream().map(Supply::name).toList()) + ".");
            }
            Totals totals = Totals.of(plans, settings);
            PowerRows rows = new PowerRows(inspection, factory);
            PowerFindings writer = new PowerFindings(inspection, factory);
            List<Finding> findings = new ArrayList<>();
            plans.forEach(plan -> rows.add(plan).forEach((name, string) -> findings.addAll(writer.ofString(name, string, plan, wiring))));
            int present = settings.get(PowerSettings.SUPPLIES);
            if (present > 0 && totals.supplies() > present) {
                findings.add(writer.tooFewSupplies(totals.supplies(), present, totals.watts()));
            }
            findings.add(writer.plan(totals));
            inspection.checkpoint(1);
            return Outcome.of(findings).withTables(rows.tables(totals, settings)).withLayers(List.of(new OverlayLayer("strings", "Strings of light modules", rows.ways())))
                    .withMissing(List.copyOf(missing));
        }

        private Optional<Plan> plan(String name, List<Lamp> lamps, Wiring wiring, Runnable pulse) {
            ModuleType type = types.get(name);
            if (type == null || type.watts() <= 0) {
                missing.add(name.isEmpty() ? "The modules are none of the shop sheet's list light-modules, so their watts are not known; " + lamps.size() + " modules were not planned."
                        : "The shop sheet's list light-modules says no watts for \"" + name + "\", so " + lamps.size() + " modules of it were not planned.");
                return Optional.empty();
            }
            List<Supply> fitting = supplies.stream().filter(supply -> supply.isFor(type)).toList();
            if (fitting.isEmpty()) {
                missing.add("No power supply of " + Units.format(type.volts(), Quantity.VOLTAGE, inspection.units()) + " is listed, so " + lamps.size()
                        + " modules \"" + name + "\" were not planned.");
                return Optional.empty();
            }
            return Optional.of(Plan.best(new Route(pulse).of(lamps), type, fitting, wiring, settings.get(PowerSettings.LOADING),
                    settings.get(PowerSettings.CLASS_TWO), pulse));
        }

        private Wiring wiring(List<Lamp> lamps) {
            String chosen = settings.get(PowerSettings.CONDUCTOR);
            List<Conductor> conductors = Conductor.of(chosen).map(List::of).orElseGet(() -> Conductor.forFeeds(inspection.units()));
            return new Wiring(feedFrom(lamps), settings.get(PowerSettings.LEAD_IN), settings.get(PowerSettings.SLACK), settings.get(PowerSettings.PASSAGE), conductors,
                    settings.get(PowerSettings.TEMPERATURE), settings.get(PowerSettings.ALLOWED_DROP));
        }

        private Function<Coordinate, Coordinate> feedFrom(List<Lamp> lamps) {
            if (settings.get(PowerSettings.SUPPLY_PLACE).equals(PowerSettings.GIVEN_POINT)) {
                Coordinate given = new Coordinate(settings.get(PowerSettings.SUPPLY_X), settings.get(PowerSettings.SUPPLY_Y));
                return at -> given;
            }
            Envelope sign = new Envelope();
            lamps.forEach(lamp -> sign.expandToInclude(lamp.at()));
            Set<String> lit = new LinkedHashSet<>(lamps.stream().map(Lamp::part).toList());
            inspection.parts().stream().filter(part -> lit.contains(part.id())).forEach(part -> sign.expandToInclude(part.shape().getEnvelopeInternal()));
            return at -> nearestOnEdge(sign, at);
        }

        private static Coordinate nearestOnEdge(Envelope sign, Coordinate at) {
            return Stream.of(new Coordinate(at.x, sign.getMaxY()), new Coordinate(at.x, sign.getMinY()), new Coordinate(sign.getMinX(), at.y),
                    new Coordinate(sign.getMaxX(), at.y)).min(Comparator.comparingDouble(at::distance)).orElseThrow();
        }
    }
}
