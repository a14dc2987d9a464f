// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.glow;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import kerfglow.api.Quantity;
import kerfglow.api.Table;
import kerfglow.api.TableInfo;
import kerfglow.api.TableInfo.Column;
import kerfglow.light.Levels;
import kerfglow.light.LightMap;
import kerfglow.light.LightModule;
import org.locationtech.jts.geom.Coordinate;

/** The numbers that the glow check measures beyond its findings. */
final class GlowTables {
    static final TableInfo LIGHT = new TableInfo("light", "Light by part", List.of(
            Column.text("part", "Part"),
            Column.text("kind", "What is lit: face or halo"),
            Column.number("least-lux", "Least illuminance on the inner side", Quantity.ILLUMINANCE),
            Column.number("mean-lux", "Mean illuminance on the inner side", Quantity.ILLUMINANCE),
            Column.number("greatest-lux", "Greatest illuminance on the inner side", Quantity.ILLUMINANCE),
            Column.number("least-luminance", "Least luminance", Quantity.LUMINANCE),
            Column.number("mean-luminance", "Mean luminance", Quantity.LUMINANCE),
            Column.number("greatest-luminance", "Greatest luminance", Quantity.LUMINANCE),
            Column.geometry("least-at", "Place of the least luminance"),
            Column.geometry("greatest-at", "Place of the greatest luminance"),
            Column.geometry("least-lux-at", "Place of the least illuminance"),
            Column.geometry("greatest-lux-at", "Place of the greatest illuminance"),
            Column.number("uniformity", "Least over mean luminance", Quantity.RATIO),
            Column.number("least-to-greatest", "Least over greatest luminance", Quantity.RATIO),
            Column.number("direct", "Share of the light on the face that comes straight from a module", Quantity.RATIO),
            Column.number("through", "Share of the modules' light that leaves through the face", Quantity.RATIO),
            Column.number("lit-area", "Lit area", Quantity.AREA),
            Column.number("modules", "Modules", Quantity.COUNT),
            Column.number("pitch", "Distance from module to module, the middle one", Quantity.LENGTH),
            Column.number("depth", "Depth, or stand-off of a halo", Quantity.LENGTH),
            Column.number("cell", "Cell of the map", Quantity.LENGTH)));
    static final TableInfo MODULES = new TableInfo("modules", "Light modules", List.of(
            Column.text("part", "Part"),
            Column.number("x", "x of the centre", Quantity.LENGTH),
            Column.number("y", "y of the centre", Quantity.LENGTH),
            Column.number("turn", "Turn of the long side", Quantity.ANGLE),
            Column.text("type", "Type"),
            Column.text("how", "Drawn, placed or laid out"),
            Column.number("flux", "Light", Quantity.LUMINOUS_FLUX),
            Column.geometry("at", "Centre"),
            Column.text("string", "String that a person gave it")));
    static final TableInfo GRID = new TableInfo("grid", "The map, a row for each lit cell (glow.grid)", List.of(
            Column.text("part", "Part"),
            Column.number("x", "x of the centre", Quantity.LENGTH),
            Column.number("y", "y of the centre", Quantity.LENGTH),
            Column.number("lux", "Illuminance on the inner side", Quantity.ILLUMINANCE),
            Column.number("luminance", "Luminance", Quantity.LUMINANCE)));
    static final List<TableInfo> ALL = List.of(LIGHT, MODULES, GRID);

    private GlowTables() {
    }

    static List<Table> of(List<LitFace> faces, boolean withGrid) {
        List<List<Object>> light = new ArrayList<>();
        List<List<Object>> modules = new ArrayList<>();
        for (LitFace face : faces) {
            if (face.isLit()) {
                light.add(light(face));
            }
            face.cans().forEach(piece -> addModules(face, piece, modules));
        }
        List<Table> tables = new ArrayList<>(List.of(new Table(LIGHT, light), new Table(MODULES, modules)));
        if (withGrid) {
            List<List<Object>> cells = new ArrayList<>();
            faces.forEach(face -> face.maps().forEach(map -> addCells(face, map, cells)));
            tables.add(new Table(GRID, cells));
        }
        return tables;
    }

    private static List<Object> light(LitFace face) {
        Levels lux = face.lux();
        Levels luminance = face.luminance();
        return Arrays.<Object>asList(face.task().part().id(), face.task().halo() ? GlowSettings.HALO : GlowSettings.FACE, lux.least(), lux.mean(), lux.greatest(),
                luminance.least(), luminance.mean(), luminance.greatest(), face.factory().createPoint(luminance.leastAt()),
                face.factory().createPoint(luminance.greatestAt()), face.factory().createPoint(lux.leastAt()), face.factory().createPoint(lux.greatestAt()), luminance.uniformity(), luminance.leastToGreatest(), face.directShare(),
                face.task().halo() ? null : face.through(), face.litAreaMm2(), (double) face.modules().size(), face.pitchMm() > 0 ? face.pitchMm() : null,
                face.task().depthMm(), face.task().cellMm());
    }

    private static void addModules(LitFace face, LitFace.Piece piece, List<List<Object>> rows) {
        for (int i = 0; i < piece.modules().size(); i++) {
            LightModule module = piece.modules().get(i);
            rows.add(Arrays.<Object>asList(face.task().part().id(), module.xMm(), module.yMm(), module.turnDegrees(), module.type().name(), piece.how().get(i),
                    module.type().fluxLm(), face.factory().createPoint(new Coordinate(module.xMm(), module.yMm())), string(face.task(), module)));
        }
    }

    private static String string(LitTask task, LightModule module) {
        return task.given().stream().filter(each -> each.xMm() == module.xMm() && each.yMm() == module.yMm()).map(GivenModule::string).findFirst().orElse("");
    }

    private static void addCells(LitFace face, LightMap map, List<List<Object>> rows) {
        for (int i = 0; i < map.grid().size(); i++) {
            if (map.isLit(i)) {
                Coordinate at = map.grid().at(i);
                rows.add(Arrays.<Object>asList(face.task().part().id(), at.x, at.y, map.lux()[i], map.luminance()[i]));
            }
        }
    }
}
