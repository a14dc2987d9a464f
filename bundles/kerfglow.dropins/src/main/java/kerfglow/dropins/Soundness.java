// SPDX-License-Identifier: Apache-2.0
package kerfglow.dropins;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.IntStream;
import kerfglow.api.Finding;
import kerfglow.api.Outcome;
import kerfglow.api.OverlayLayer;
import kerfglow.api.Table;
import kerfglow.api.TableInfo;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.valid.IsValidOp;
import org.locationtech.jts.operation.valid.TopologyValidationError;

/** Looks whether what a check answered can be drawn and written; views rely on it. */
final class Soundness {
    /** Assumed: a message is a sentence or two; this is a page. */
    private static final int MOST_CHARACTERS = 4000;

    private Soundness() {
    }

    /** What is wrong with it, in words. */
    static Optional<String> fault(Outcome outcome) {
        for (Finding finding : outcome.findings()) {
            String what = "it reported " + finding.rule().id();
            if (finding.message().isBlank() || finding.message().length() > MOST_CHARACTERS) {
                return Optional.of(what + " with a message of " + finding.message().length() + " characters; from 1 to " + MOST_CHARACTERS + " can be shown");
            }
            Optional<String> wrong = finding.place().flatMap(Soundness::fault).or(() -> finding.suggestion().flatMap(Soundness::fault));
            if (wrong.isPresent()) {
                return Optional.of(what + " with " + wrong.get());
            }
        }
        for (OverlayLayer layer : outcome.layers()) {
            for (OverlayLayer.Item item : layer.items()) {
                Optional<String> wrong = fault(item.shape());
                if (wrong.isPresent()) {
                    return Optional.of("its overlay layer " + layer.id() + " holds " + wrong.get());
                }
            }
        }
        return outcome.tables().stream().map(Soundness::fault).flatMap(Optional::stream).findFirst();
    }

    private static Optional<String> fault(Table table) {
        for (int column = 0; column < table.info().columns().size(); column++) {
            if (table.info().columns().get(column).type() == TableInfo.Type.GEOMETRY) {
                int at = column;
                Optional<String> wrong = table.rows().stream().map(row -> (Geometry) row.get(at)).filter(cell -> cell != null && (isNested(cell) || !cell.isEmpty()))
                        .map(Soundness::fault).flatMap(Optional::stream).findFirst();
                if (wrong.isPresent()) {
                    return Optional.of("its table " + table.info().id() + " holds " + wrong.get());
                }
            }
        }
        return Optional.empty();
    }

    /** Collections in collections may go so deep that whatever draws or writes them fails; nobody needs them. */
    private static boolean isNested(Geometry geometry) {
        return isCollection(geometry) && IntStream.range(0, geometry.getNumGeometries()).anyMatch(i -> isCollection(geometry.getGeometryN(i)));
    }

    private static boolean isCollection(Geometry geometry) {
        return geometry.getGeometryType().equals(Geometry.TYPENAME_GEOMETRYCOLLECTION);
    }

    private static Optional<String> fault(Geometry geometry) {
        if (isNested(geometry)) {
            return Optional.of("a collection of geometries inside another");
        }
        if (geometry.isEmpty()) {
            return Optional.of("an empty geometry");
        }
        if (Arrays.stream(geometry.getCoordinates()).anyMatch(at -> !Double.isFinite(at.x) || !Double.isFinite(at.y))) {
            return Optional.of("a geometry that is not finite");
        }
        TopologyValidationError error = new IsValidOp(geometry).getValidationError();
        return Optional.ofNullable(error).map(found -> "an invalid geometry (" + found + ")");
    }
}
