// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import kerfglow.api.PlacedModule;
import kerfglow.api.Table;
import kerfglow.api.TableInfo;
import kerfglow.api.proof.Part;
import kerfglow.host.JobSheet;
import kerfglow.host.Result;
import kerfglow.job.SheetEdits;
import org.locationtech.jts.algorithm.locate.SimplePointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Location;

/**
 * The light modules of a job: those that a person placed, and those that a check laid out. A check lays out no part in which a person placed a
 * module; so when the first one of a part is moved, taken out or added, all that were laid out in it go on from there as placed ones.
 */
public final class Lights {
    private static final Set<String> COLUMNS = Set.of("part", "x", "y", "turn", "how");
    private static final String TABLE = "modules";
    private static final String LAID_OUT = "laid out";
    private static final double FULL_TURN_DEGREES = 360;

    private final JobSheet sheet;
    private final List<Part> parts;
    private final List<Light> all;

    /**
     * One module.
     *
     * @param module where it is
     * @param index its place in the job sheet; empty when it was laid out
     * @param part id of the part that it was laid out in; empty for a placed one
     */
    public record Light(PlacedModule module, OptionalInt index, String part) {
        public boolean isPlaced() {
            return index.isPresent();
        }

        private Coordinate at() {
            return new Coordinate(module.xMm(), module.yMm());
        }
    }

    /**
     * A change.
     *
     * @param name for undo
     * @param change of the job sheet
     * @param index where the module that was changed stands in the job sheet afterwards; empty when it was taken out
     */
    public record Edit(String name, UnaryOperator<JobSheet> change, OptionalInt index) {
    }

    private Lights(JobSheet sheet, List<Part> parts, List<Light> laidOut) {
        this.sheet = sheet;
        this.parts = parts;
        all = new ArrayList<>();
        for (int i = 0; i < sheet.modules().size(); i++) {
            all.add(new Light(sheet.modules().get(i), OptionalInt.of(i), ""));
        }
        laidOut.stream().filter(light -> placedIn(light.part()).isEmpty()).forEach(all::add); // else the layout is of a run before
    }

    /** Those of the job on the desk. */
    public static Lights of(Desk desk) {
        return of(desk.job().map(job -> job.state().sheet()).orElse(JobSheet.NONE), desk.parts(), desk.result().map(Result::checks).orElse(List.of()).stream()
                .flatMap(row -> row.tables().stream()).toList());
    }

    /** Those of a job sheet and of what checks measured: a table "modules" with part, x, y, turn and how. */
    public static Lights of(JobSheet sheet, List<Part> parts, List<Table> tables) {
        return new Lights(sheet, parts, tables.stream().filter(Lights::isOfModules).flatMap(table -> laidOut(table).stream()).toList());
    }

    private static boolean isOfModules(Table table) {
        return table.info().id().equals(TABLE) && table.info().columns().stream().map(TableInfo.Column::id).toList().containsAll(COLUMNS);
    }

    private static List<Light> laidOut(Table table) {
        List<String> columns = table.info().columns().stream().map(TableInfo.Column::id).toList();
        return table.rows().stream().filter(row -> LAID_OUT.equals(row.get(columns.indexOf("how"))))
                .map(row -> new Light(new PlacedModule((Double) row.get(columns.indexOf("x")), (Double) row.get(columns.indexOf("y")), (Double) row.get(columns.indexOf("turn"))),
                        OptionalInt.empty(), (String) row.get(columns.indexOf("part"))))
                .toList();
    }

    private List<PlacedModule> placedIn(String part) {
        return parts.stream().filter(each -> each.id().equals(part)).flatMap(each -> sheet.modules().stream().filter(module -> lies(new Coordinate(module.xMm(), module.yMm()), each)))
                .toList();
    }

    private static boolean lies(Coordinate at, Part part) {
        return part.shape().getEnvelopeInternal().contains(at) && SimplePointInAreaLocator.locate(at, part.shape()) != Location.EXTERIOR;
    }

    /** Placed ones in the order of the job sheet, then laid out ones. */
    public List<Light> all() {
        return List.copyOf(all);
    }

    /** The nearest one whose centre lies within reach. */
    public Optional<Light> near(Coordinate at, double reachMm) {
        return all.stream().filter(light -> light.at().distance(at) <= reachMm).min(Comparator.comparingDouble(light -> light.at().distance(at)));
    }

    public Edit moved(Light light, Coordinate to) {
        return changed("Move light module", light, light.module().at(to.x, to.y, light.module().turnDegrees()));
    }

    public Edit turned(Light light, double byDegrees) {
        double turn = (light.module().turnDegrees() + byDegrees) % FULL_TURN_DEGREES;
        return changed("Turn light module", light, light.module().at(light.module().xMm(), light.module().yMm(), turn));
    }

    private Edit changed(String name, Light light, PlacedModule module) {
        List<PlacedModule> adopted = adopted(light.part());
        int index = index(light, adopted);
        adopted.set(index, module);
        return new Edit(name, with(adopted), OptionalInt.of(index));
    }

    public Edit without(Light light) {
        List<PlacedModule> adopted = adopted(light.part());
        adopted.remove(index(light, adopted));
        return new Edit("Take light module out", with(adopted), OptionalInt.empty());
    }

    /** One more. */
    public Edit with(Coordinate at) {
        List<PlacedModule> adopted = adopted(all.stream().map(Light::part).filter(part -> parts.stream().anyMatch(each -> each.id().equals(part) && lies(at, each))).findFirst().orElse(""));
        adopted.add(new PlacedModule(at.x, at.y, 0));
        return new Edit("Add light module", with(adopted), OptionalInt.of(adopted.size() - 1));
    }

    /** None placed any more: checks lay out what is not drawn. */
    public Edit none() {
        return new Edit("Lay light modules out again", with(List.of()), OptionalInt.empty());
    }

    /** The placed ones, and after them what was laid out in a part. */
    private List<PlacedModule> adopted(String part) {
        List<PlacedModule> adopted = new ArrayList<>(sheet.modules());
        laidOutIn(part).forEach(light -> adopted.add(light.module()));
        return adopted;
    }

    private List<Light> laidOutIn(String part) {
        return all.stream().filter(light -> !light.isPlaced() && light.part().equals(part)).toList();
    }

    private int index(Light light, List<PlacedModule> adopted) {
        return light.index().orElseGet(() -> {
            List<Light> own = laidOutIn(light.part());
            int place = IntStream.range(0, own.size()).filter(i -> own.get(i) == light || own.get(i).equals(light)).findFirst()
                    .orElseThrow(() -> new IllegalArgumentException("no such light module: " + light));
            return adopted.size() - own.size() + place;
        });
    }

    private static UnaryOperator<JobSheet> with(List<PlacedModule> modules) {
        List<PlacedModule> fixed = List.copyOf(modules);
        return sheet -> SheetEdits.withModules(sheet, fixed);
    }
}
