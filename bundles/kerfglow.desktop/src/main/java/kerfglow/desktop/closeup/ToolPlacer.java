// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.closeup;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import kerfglow.api.Quantity;
import kerfglow.api.UnitSystem;
import kerfglow.api.Units;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import kerfglow.host.Result;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;
import org.locationtech.jts.operation.distance.DistanceOp;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/**
 * Puts what works at a station to a place: the router's bit as near as it comes, the bender's strip around the contour, the moulding's lip
 * along the edge, the back inside its face, the light modules. The checks say what they found and not what did it, so the tool is told from the check's name; a check that is not known
 * here gets none.
 */
final class ToolPlacer {
    private static final GeometryFactory FACTORY = new GeometryFactory();
    /** The erosion below rounds inward; a ten thousandth of a millimetre keeps a bit that just fits. */
    private static final double JUST_FITS_MM = 1e-4;
    /** Fine enough for a disc of some hundred pixels. */
    private static final int SEGMENTS = 24;

    private final ShopFacts facts;
    private final UnitSystem units;

    ToolPlacer(ShopFacts facts, UnitSystem units) {
        this.facts = facts;
        this.units = units;
    }

    /** The size of the tool, mm; empty when there is none. */
    OptionalDouble sizeMm(Result.ReportedFinding finding) {
        return switch (check(finding)) {
            case "router" -> finding.parts().stream().map(facts::bitMm).filter(OptionalDouble::isPresent).findFirst().orElse(OptionalDouble.empty());
            case "returns" -> facts.setting("returns.thickness");
            case "trim" -> facts.setting("trim.lip");
            default -> OptionalDouble.empty();
        };
    }

    private static String check(Result.ReportedFinding finding) {
        return finding.rule().id().substring(0, finding.rule().id().lastIndexOf('.'));
    }

    /** The long side of the light modules that a finding is about; empty for other findings. */
    Optional<Double> moduleMm(Result.ReportedFinding finding) {
        return isAboutLight(finding) ? facts.modules().stream().map(module -> module.size().lengthMm()).max(Double::compare) : Optional.empty();
    }

    private static boolean isAboutLight(Result.ReportedFinding finding) {
        return check(finding).equals("glow") || check(finding).equals("power");
    }

    /** The tool at a place, cut to what is seen. */
    Optional<Tool> place(Result.ReportedFinding finding, Result.Place place, List<Part> concerned, Envelope window) {
        if (isAboutLight(finding)) {
            return modules(window);
        }
        if (check(finding).equals("fit")) {
            return inside(concerned, window);
        }
        return edgeTool(finding, place, concerned, window);
    }

    private Optional<Tool> edgeTool(Result.ReportedFinding finding, Result.Place place, List<Part> concerned, Envelope window) {
        OptionalDouble size = sizeMm(finding);
        if (size.isEmpty() || concerned.isEmpty() || !(size.getAsDouble() > 0)) {
            return Optional.empty();
        }
        double sizeMm = size.getAsDouble();
        Part part = concerned.get(0);
        Envelope reach = new Envelope(window);
        reach.expandBy(2 * sizeMm);
        Geometry around = FACTORY.toGeometry(reach);
        Geometry shape = part.shape().intersection(around);
        return switch (check(finding)) {
            case "router" -> Optional.of(bit(units, part.role() == Role.OPENING ? shape : around.difference(shape), place.at(), sizeMm));
            case "returns" -> band(part.shape(), shape, sizeMm, window, "strip of ");
            case "trim" -> band(part.shape(), shape, -sizeMm, window, "lip of ");
            default -> Optional.empty();
        };
    }

    /** The modules that are seen, to size and turned as they lie. */
    private Optional<Tool> modules(Envelope window) {
        List<ShopFacts.Module> seen = facts.modules().stream().filter(module -> outline(module).getEnvelopeInternal().intersects(window)).toList();
        if (seen.isEmpty()) {
            return Optional.empty();
        }
        ModuleSize size = seen.get(0).size();
        return Optional.of(new Tool(FACTORY.createMultiPolygon(seen.stream().map(ToolPlacer::outline).toArray(Polygon[]::new)),
                (seen.size() == 1 ? "light module of " : "light modules of ") + length(size.lengthMm()) + " by " + length(size.widthMm())));
    }

    static Polygon outline(ShopFacts.Module module) {
        double cos = Math.cos(Math.toRadians(module.turnDegrees()));
        double sin = Math.sin(Math.toRadians(module.turnDegrees()));
        double along = module.size().lengthMm() / 2;
        double across = module.size().widthMm() / 2;
        Coordinate[] corners = new Coordinate[5];
        for (int i = 0; i < corners.length; i++) {
            double dx = i % 4 == 0 || i == 3 ? -along : along;
            double dy = i % 4 < 2 ? -across : across;
            corners[i] = new Coordinate(module.at().x + dx * cos - dy * sin, module.at().y + dx * sin + dy * cos);
        }
        return FACTORY.createPolygon(corners);
    }

    /** What goes inside: a back in its face, a push-through in its opening; where no back is drawn, the one that the check made. */
    private Optional<Tool> inside(List<Part> concerned, Envelope window) {
        Envelope reach = new Envelope(window);
        reach.expandBy(Math.max(window.getWidth(), window.getHeight())); // its cut edges lie out of sight
        for (Role role : List.of(Role.PUSH_THROUGH, Role.BACK)) {
            List<Geometry> own = concerned.stream().filter(part -> part.role() == role).map(part -> (Geometry) part.shape()).toList();
            Optional<Tool> tool = within(own, reach, role.word());
            if (tool.isPresent()) {
                return tool;
            }
        }
        List<Geometry> drawn = facts.parts(Role.BACK).stream().filter(back -> concerned.stream().anyMatch(face -> face.shape().contains(back.shape().getInteriorPoint())))
                .map(part -> (Geometry) part.shape()).toList();
        return within(drawn, reach, "back").or(() -> within(facts.layer("fit", "made-backs").stream()
                .filter(back -> concerned.stream().anyMatch(face -> face.shape().getEnvelopeInternal().contains(back.getEnvelopeInternal()))).toList(), reach, "back made from the face"));
    }

    private static Optional<Tool> within(List<Geometry> shapes, Envelope reach, String words) {
        List<Geometry> seen = shapes.stream().filter(shape -> shape.getEnvelopeInternal().intersects(reach)).map(shape -> OverlayNGRobust.overlay(shape, FACTORY.toGeometry(reach), OverlayNG.INTERSECTION))
                .filter(shape -> shape.getDimension() == 2).toList();
        return seen.isEmpty() ? Optional.empty() : Optional.of(new Tool(FACTORY.buildGeometry(seen), words));
    }

    /** The disc of the bit where it comes nearest to a place; where it does not fit at all, upon the place itself. */
    static Tool bit(UnitSystem units, Geometry waste, Coordinate at, double diameterMm) {
        Geometry reached = BufferOp.bufferOp(waste, -diameterMm / 2 + JUST_FITS_MM, new BufferParameters(SEGMENTS));
        boolean fits = !reached.isEmpty();
        Coordinate centre = fits ? DistanceOp.nearestPoints(reached, FACTORY.createPoint(at))[0] : at;
        String words = "bit of " + Units.format(diameterMm, Quantity.LENGTH, units) + (fits ? "" : ", which does not fit");
        return new Tool(FACTORY.createPoint(centre).buffer(diameterMm / 2, SEGMENTS), words);
    }

    /** What lies along the contour of a part, outside (above 0) or inside of it. */
    private Optional<Tool> band(Geometry whole, Geometry shape, double widthMm, Envelope window, String what) {
        Geometry edge = whole.getBoundary().intersection(FACTORY.toGeometry(window));
        if (edge.isEmpty()) {
            return Optional.empty();
        }
        Geometry both = BufferOp.bufferOp(edge, Math.abs(widthMm), new BufferParameters(SEGMENTS, BufferParameters.CAP_FLAT));
        Geometry band = widthMm > 0 ? both.difference(shape) : both.intersection(shape);
        return band.isEmpty() ? Optional.empty() : Optional.of(new Tool(band, what + length(Math.abs(widthMm))));
    }

    private String length(double mm) {
        return Units.format(mm, Quantity.LENGTH, units);
    }
}
