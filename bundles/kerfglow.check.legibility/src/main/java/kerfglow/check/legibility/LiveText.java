// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.TextRun;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.util.AffineTransformation;

/** Takes the heights of lines that are live text from their font instead of their outlines. */
final class LiveText {
    /** Runs of one line whose fonts agree like this have one height; rounding. */
    private static final double SAME = 1e-6;
    /** Outlines and font must agree like this, or the outlines are of something else than the font's plain letters. Assumed: ascenders
     * that stand for capitals are up to a tenth higher. */
    private static final double LIKE = 0.12;

    private LiveText() {
    }

    /** The live text of a line, or empty. */
    static String words(Line line, Map<String, Element> elements) {
        Set<String> ids = new LinkedHashSet<>();
        line.parts().forEach(part -> ids.addAll(part.elements()));
        return String.join(" ", ids.stream().flatMap(id -> text(id, elements).stream()).map(TextRun::text).toList());
    }

    /** The line with the heights of its font; empty unless all of it is live text of one height. */
    static Optional<Line> exact(Line line, Map<String, Element> elements) {
        List<TextRun> runs = new ArrayList<>();
        for (Part part : line.parts()) {
            for (String id : part.elements()) {
                Optional<TextRun> run = text(id, elements);
                if (run.isEmpty()) {
                    return Optional.empty();
                }
                runs.add(run.get());
            }
        }
        OptionalDouble cap = common(runs.stream().map(TextRun::capHeightMm).toList());
        OptionalDouble x = common(runs.stream().map(TextRun::xHeightMm).toList());
        if (cap.isEmpty() || x.isEmpty()) {
            return Optional.empty();
        }
        LineModel model = line.model();
        double base = base(line, runs);
        if (model.xMm().isPresent()) {
            return isLike(model.capMm(), cap.getAsDouble()) && isLike(model.xMm().getAsDouble(), x.getAsDouble())
                    ? Optional.of(line.with(model.with(base, cap.getAsDouble(), x))) : Optional.empty();
        }
        boolean small = Math.abs(Math.log(model.capMm() / x.getAsDouble())) < Math.abs(Math.log(model.capMm() / cap.getAsDouble()));
        double only = small ? x.getAsDouble() : cap.getAsDouble();
        return isLike(model.capMm(), only) ? Optional.of(line.with(model.with(base, only, OptionalDouble.empty()))) : Optional.empty();
    }

    private static Optional<TextRun> text(String id, Map<String, Element> elements) {
        return Optional.ofNullable(elements.get(id)).flatMap(Element::text);
    }

    private static OptionalDouble common(List<OptionalDouble> heights) {
        if (heights.isEmpty() || heights.stream().anyMatch(OptionalDouble::isEmpty)) {
            return OptionalDouble.empty();
        }
        double first = heights.get(0).getAsDouble();
        return heights.stream().allMatch(each -> Math.abs(each.getAsDouble() - first) <= SAME * first) ? heights.get(0) : OptionalDouble.empty();
    }

    private static boolean isLike(double outline, double font) {
        return Math.abs(outline / font - 1) <= LIKE;
    }

    /** The level of the font's base line where the line is straight and has one; else that of the outlines. */
    private static double base(Line line, List<TextRun> runs) {
        if (line.frame().form() != Frame.Form.STRAIGHT || runs.stream().anyMatch(run -> run.baseLine().isEmpty())) {
            return line.model().base();
        }
        AffineTransformation up = line.letters().get(0).up(); // one turn for all of a straight line
        double sum = 0;
        for (TextRun run : runs) {
            LineString ends = run.baseLine().get();
            for (Coordinate end : List.of(ends.getCoordinateN(0), ends.getCoordinateN(1))) {
                double level = up.transform(end, new Coordinate()).y;
                if (Math.abs(level - line.model().base()) > LineModel.NEAR * line.model().capMm()) {
                    return line.model().base(); // set in several lines, or not along this one
                }
                sum += level;
            }
        }
        return sum / runs.size() / 2;
    }
}
