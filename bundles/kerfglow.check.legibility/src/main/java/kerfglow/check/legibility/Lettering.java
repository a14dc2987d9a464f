// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import kerfglow.api.Inspection;
import kerfglow.api.Settings;
import kerfglow.api.proof.Paint;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import org.locationtech.jts.geom.Envelope;

/**
 * All lines of lettering of a proof, top to bottom, and the parts that are none.
 *
 * <p>Lines are looked for among parts of one role, layer and colour; then lines and single letters of other colours of the same
 * layer that continue a line join it. Lettering that stands twice in one place, as a push-through letter and its opening or a letter and
 * its shadow do, is reported once: the one on top.
 *
 * @param lines of lettering
 * @param graphics what else there is
 */
record Lettering(List<Line> lines, List<Graphic> graphics) {
    /**
     * A part that is no lettering.
     *
     * @param confidence that it is none, 0 to 1
     */
    record Graphic(Part part, double confidence) {
    }

    private static final Role[] ROLES = {Role.FACE, Role.OPENING, Role.PUSH_THROUGH, Role.VINYL, Role.PRINT};
    /** Lines of one line in two colours agree so well in height. Assumed. */
    private static final double SAME_SIZE = 0.05;
    /** Two lines in one place share so much of their boxes. Assumed: shadows and clearances shift them a little. */
    private static final double ONE_PLACE = 0.6;
    private static final double SIZE_OF_COPY = 0.25;
    private static final double SURE = 1;
    /** How sure it is that a shape by itself is no letter. Assumed: most signs spell their letters in rows. */
    private static final double LONE_SHAPE = 0.75;
    private static final double SOLID_SHAPE = 0.95;

    private record Group(Role role, String layer, Paint paint, boolean said) {
    }

    static Lettering of(Inspection inspection, Runnable pulse) {
        Settings settings = inspection.settings();
        double least = settings.get(LegibilitySettings.CONFIDENCE);
        Map<Group, List<Piece>> groups = new LinkedHashMap<>();
        List<Graphic> graphics = new ArrayList<>();
        for (Part part : inspection.parts(ROLES)) {
            String asked = settings.get(LegibilitySettings.LETTERING, part);
            if (asked.equals(LegibilitySettings.NO)) {
                graphics.add(new Graphic(part, SURE));
            } else {
                groups.computeIfAbsent(new Group(part.role(), part.layer(), part.paint(), asked.equals(LegibilitySettings.YES)),
                        any -> new ArrayList<>()).add(Piece.of(part));
            }
        }
        List<Line> lines = new ArrayList<>();
        List<Piece> left = new ArrayList<>();
        groups.forEach((group, pieces) -> {
            LineFinder.Found found = LineFinder.find(pieces, group.said() ? 0 : least, pulse);
            List<Line> all = new ArrayList<>(found.lines());
            if (group.said()) { // what stands on no line with others is a letter by itself
                found.left().forEach(piece -> all.addAll(LineFinder.find(List.of(piece), 0, pulse).lines()));
                all.replaceAll(line -> Line.of(line.frame(), line.model(), line.marks(), SURE));
            } else {
                left.addAll(found.left());
            }
            lines.addAll(all);
        });
        join(lines, left, pulse);
        left.forEach(piece -> graphics.add(new Graphic(piece.part(), Likeness.isStroked(piece) ? LONE_SHAPE : SOLID_SHAPE)));
        lines.sort(Comparator.comparingDouble((Line line) -> line.place().getEnvelopeInternal().getMinY())
                .thenComparingDouble(line -> line.place().getEnvelopeInternal().getMinX()));
        return new Lettering(onTop(lines), graphics);
    }

    /** Joins what continues a straight line in another colour. */
    private static void join(List<Line> lines, List<Piece> left, Runnable pulse) {
        for (int i = 0; i < lines.size(); i++) {
            boolean again = true;
            while (again) {
                pulse.run();
                again = false;
                Line line = lines.get(i);
                for (int k = lines.size() - 1; k > i && !again; k--) {
                    Line other = lines.get(k);
                    if (isOneLayer(line.first(), other.first()) && isNear(line, other.place().getEnvelopeInternal())
                            && extend(lines, i, letters(other), other.marks())) {
                        lines.remove(k);
                        again = true;
                    }
                }
                for (int k = left.size() - 1; k >= 0 && !again; k--) {
                    Piece piece = left.get(k);
                    if (isOneLayer(line.first(), piece.part()) && isNear(line, piece.shape().getEnvelopeInternal())
                            && extend(lines, i, List.of(piece), List.of())) {
                        left.remove(k);
                        again = true;
                    }
                }
            }
        }
    }

    private static List<Piece> letters(Line line) {
        return line.letters().stream().map(Upright::piece).toList();
    }

    private static boolean isOneLayer(Part a, Part b) {
        return a.role() == b.role() && a.layer().equals(b.layer()) && !a.paint().equals(b.paint());
    }

    private static boolean isNear(Line line, Envelope box) {
        if (line.frame().form() != Frame.Form.STRAIGHT || line.isJoined()) {
            return false;
        }
        Envelope reach = line.place().getEnvelopeInternal().copy();
        reach.expandBy(Rows.MOST_GAP * line.model().capMm());
        return reach.intersects(box);
    }

    private static boolean extend(List<Line> lines, int i, List<Piece> more, List<Piece> marks) {
        Line line = lines.get(i);
        List<Piece> all = new ArrayList<>(letters(line));
        all.addAll(more);
        LineFitter.Fit fit = LineFitter.at(all, line.frame());
        double cap = line.model().capMm();
        if (fit.size() < all.size() || Math.abs(fit.model().capMm() / cap - 1) > SAME_SIZE || Likeness.of(fit.model(), fit.size()) < line.confidence()
                || !more.stream().allMatch(piece -> stands(Upright.of(piece, line.frame()), line))) {
            return false;
        }
        List<Piece> allMarks = new ArrayList<>(line.marks());
        allMarks.addAll(marks);
        lines.set(i, Line.of(line.frame(), fit.model(), allMarks, Math.max(line.confidence(), Likeness.of(fit.model(), fit.size()))));
        return true;
    }

    /** True when a letter is as high as the line's letters and overlaps none of them. */
    private static boolean stands(Upright letter, Line line) {
        double cap = line.model().capMm();
        double top = letter.ends().top().height() - line.model().base();
        boolean high = Math.abs(top - cap) <= 2 * LineModel.NEAR * cap
                || line.model().xMm().isPresent() && Math.abs(top - line.model().xMm().getAsDouble()) <= 2 * LineModel.NEAR * cap;
        return high && Likeness.isStroked(letter.piece())
                && line.letters().stream().noneMatch(other -> other.piece().shape().getEnvelopeInternal().contains(letter.piece().centre())
                        || letter.piece().shape().getEnvelopeInternal().contains(other.piece().centre()));
    }

    private static List<Line> onTop(List<Line> lines) {
        return lines.stream().filter(line -> lines.stream().noneMatch(other -> other != line && covers(other, line))).toList();
    }

    private static boolean covers(Line above, Line line) {
        Envelope a = above.place().getEnvelopeInternal();
        Envelope b = line.place().getEnvelopeInternal();
        Envelope both = a.intersection(b);
        Envelope all = a.copy();
        all.expandToInclude(b);
        boolean copy = both.getArea() >= ONE_PLACE * all.getArea()
                && Math.abs(above.model().capMm() / line.model().capMm() - 1) <= SIZE_OF_COPY;
        return copy && rank(above) > rank(line);
    }

    /** What is seen of two lines in one place: the one painted later, and before all the part that fills an opening. */
    private static long rank(Line line) {
        long rank = line.parts().stream().mapToInt(Part::order).max().orElse(0);
        return line.first().role() == Role.OPENING ? rank - Integer.MAX_VALUE : rank;
    }
}
