// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.section;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToIntFunction;
import kerfglow.desktop.closeup.Scale;
import kerfglow.desktop.scene.View;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;

/**
 * Where the section, its dimension lines and the rows that name them stand on a canvas. Dimensions of depth stand in lanes above and below
 * the drawing, those of height in front of it; no text lies on another.
 *
 * @param view of the section
 * @param scale the scale of the drawing on this screen
 * @param lines one for each dimension, in their order
 * @param rows one for each dimension, in their order; empty where the canvas has no room for them
 */
public record SectionLayout(View view, Scale scale, List<Line> lines, List<Box> rows) {
    /** How large the canvas is, and what is written on it. */
    public record Room(int widthPx, int heightPx, int lineHeightPx, double pixelsPerMm, ToIntFunction<String> widthOf) {
    }

    /** A rectangle of the canvas, pixels. */
    public record Box(int x, int y, int width, int height) {
        public boolean contains(int px, int py) {
            return px >= x && px < x + width && py >= y && py < y + height;
        }

        boolean meets(Box other) {
            return x < other.x + other.width && other.x < x + width && y < other.y + other.height && other.y < y + height;
        }
    }

    /**
     * A dimension line, pixels.
     *
     * @param x1 one end
     * @param x2 the other end, for a line from left to right; else the same
     * @param fromX where the extension line of the first end starts, at the piece
     * @param text its value
     * @param room where the value stands
     */
    public record Line(int x1, int y1, int x2, int y2, int fromX, int fromY, String text, Box room) {
        public boolean isUpright() {
            return x1 == x2;
        }
    }

    private static final int MARGIN_PX = 10;
    /** From the drawing to the first line. */
    private static final int OFF_PX = 12;
    private static final int GAP_PX = 5;
    /** A drawing that is lower than this shows nothing; then the rows go. */
    private static final int LEAST_DRAWING_PX = 110;
    /** From this width on the rows stand beside the drawing. */
    private static final int WIDE_PX = 560;
    private static final int ROWS_WIDTH_PX = 270;

    /**
     * Lays out.
     *
     * @param section what is drawn
     * @param texts the values of the dimensions, in their order
     * @param room the canvas
     */
    public static SectionLayout of(Section section, List<String> texts, Room room) {
        return new Placer(section, texts, room).place();
    }

    /** The dimension whose row or value lies at a pixel. */
    public Optional<Integer> measureAt(int x, int y) {
        for (int i = 0; i < lines.size(); i++) {
            if (!rows.isEmpty() && rows.get(i).contains(x, y) || lines.get(i).room().contains(x, y)) {
                return Optional.of(i);
            }
        }
        return Optional.empty();
    }

    /** The piece at a pixel; of several the front-most. */
    public Optional<Section.Piece> pieceAt(Section section, int x, int y) {
        Coordinate at = view.toMm(x, y);
        double reach = 2 / view.pixelsPerMm();
        Optional<Section.Piece> found = Optional.empty();
        for (Section.Piece piece : section.pieces()) {
            for (Envelope area : piece.areas()) {
                Envelope near = new Envelope(area);
                near.expandBy(reach);
                if (near.contains(at)) {
                    found = Optional.of(piece);
                }
            }
        }
        return found;
    }

    /** Finds the scale at which drawing and dimensions fit, then places each. */
    private static final class Placer {
        private final Section section;
        private final List<String> texts;
        private final Room room;
        private final int textHeight;
        private final List<Box> rows = new ArrayList<>();
        private final Line[] lines;
        private int drawingWidth;
        private int drawingHeight;
        private View view;

        Placer(Section section, List<String> texts, Room room) {
            this.section = section;
            this.texts = texts;
            this.room = room;
            textHeight = room.lineHeightPx();
            lines = new Line[texts.size()];
        }

        SectionLayout place() {
            placeRows();
            int front = widest(Section.Side.FRONT);
            int frontPx = front == 0 ? MARGIN_PX : OFF_PX + GAP_PX + front + 2 * GAP_PX;
            int lanesAbove = 1;
            int lanesBelow = 1;
            Scale scale = new Scale(1);
            for (int round = 0; round < 4; round++) { // the larger the drawing, the fewer the lanes: it settles at once or never needs more
                int above = MARGIN_PX + textHeight + lanes(lanesAbove);
                int below = lanes(lanesBelow) + GAP_PX;
                double across = Math.max(20, drawingWidth - MARGIN_PX - frontPx);
                double down = Math.max(20, drawingHeight - above - below);
                scale = scale(Math.min(across / section.extent().getWidth(), down / section.extent().getHeight()) / room.pixelsPerMm());
                double drawn = scale.factor() * room.pixelsPerMm();
                double left = MARGIN_PX + Math.max(0, (across - section.extent().getWidth() * drawn) / 2);
                double top = above + Math.max(0, (down - section.extent().getHeight() * drawn) / 3);
                view = new View(drawn, section.extent().getMinX() - left / drawn, section.extent().getMinY() - top / drawn);
                int usedAbove = flat(Section.Side.ABOVE);
                int usedBelow = flat(Section.Side.BELOW);
                if (usedAbove <= lanesAbove && usedBelow <= lanesBelow) {
                    break;
                }
                lanesAbove = Math.max(usedAbove, lanesAbove);
                lanesBelow = Math.max(usedBelow, lanesBelow);
            }
            inFront();
            within();
            return new SectionLayout(view, scale, List.of(lines), List.copyOf(rows));
        }

        private int lanes(int count) {
            return count == 0 ? 0 : OFF_PX + count * (textHeight + GAP_PX);
        }

        private int widest(Section.Side side) {
            int widest = 0;
            for (int i = 0; i < texts.size(); i++) {
                widest = section.measures().get(i).side() == side ? Math.max(widest, room.widthOf().applyAsInt(texts.get(i))) : widest;
            }
            return widest;
        }

        private void placeRows() {
            int row = textHeight + 6;
            int all = row * texts.size();
            drawingWidth = room.widthPx();
            drawingHeight = room.heightPx();
            if (texts.isEmpty()) {
                return;
            }
            if (room.widthPx() >= WIDE_PX) {
                drawingWidth -= ROWS_WIDTH_PX + MARGIN_PX;
                int top = Math.max(MARGIN_PX + textHeight, (room.heightPx() - all) / 2);
                for (int i = 0; i < texts.size(); i++) {
                    rows.add(new Box(drawingWidth, top + i * row, ROWS_WIDTH_PX, row - 2));
                }
            } else if (room.heightPx() - all - MARGIN_PX / 2 - lanes(2) - textHeight >= LEAST_DRAWING_PX) {
                drawingHeight -= all + MARGIN_PX / 2;
                for (int i = 0; i < texts.size(); i++) {
                    rows.add(new Box(MARGIN_PX, drawingHeight + i * row, room.widthPx() - 2 * MARGIN_PX, row - 2));
                }
            }
        }

        /** The largest of half steps that fits: a pane is small, and the steps of drawings would leave half of it empty. */
        private static Scale scale(double fit) {
            return fit >= 1 ? new Scale(Math.floor(fit * 2) / 2) : new Scale(1 / (Math.ceil(2 / fit) / 2));
        }

        private int px(double xMm) {
            return (int) Math.round(view.toPixelX(xMm));
        }

        private int py(double yMm) {
            return (int) Math.round(view.toPixelY(yMm));
        }

        private List<Integer> on(Section.Side side, Comparator<Integer> order) {
            List<Integer> on = new ArrayList<>();
            for (int i = 0; i < texts.size(); i++) {
                if (section.measures().get(i).side() == side) {
                    on.add(i);
                }
            }
            on.sort(order);
            return on;
        }

        /** Places the dimensions of depth on one side, short ones nearest to the drawing; returns how many lanes they take. */
        private int flat(Section.Side side) {
            boolean above = side == Section.Side.ABOVE;
            List<Integer> order = on(side, Comparator.comparingDouble(i -> section.measures().get(i).along().getWidth()));
            List<List<Box>> lanes = new ArrayList<>();
            int edge = above ? py(section.extent().getMinY()) - OFF_PX : py(section.extent().getMaxY()) + OFF_PX;
            for (int i : order) {
                Envelope along = section.measures().get(i).along();
                int x1 = px(along.getMinX());
                int x2 = Math.max(x1 + 1, px(along.getMaxX()));
                int lane = 0;
                Line line = flatLine(i, x1, x2, edge, lane, above);
                while (lane < lanes.size() && isTaken(lanes.get(lane), taken(line))) {
                    line = flatLine(i, x1, x2, edge, ++lane, above);
                }
                if (lane == lanes.size()) {
                    lanes.add(new ArrayList<>());
                }
                lanes.get(lane).add(taken(line));
                lines[i] = line;
            }
            return lanes.size();
        }

        private Line flatLine(int i, int x1, int x2, int edge, int lane, boolean above) {
            int width = room.widthOf().applyAsInt(texts.get(i));
            int bottom = above ? edge - lane * (textHeight + GAP_PX) : edge + (lane + 1) * (textHeight + GAP_PX) - GAP_PX;
            boolean inside = x2 - x1 >= width + 2 * GAP_PX;
            boolean left = !inside && x2 + GAP_PX + 2 + width > drawingWidth - 2;
            int x = inside ? (x1 + x2 - width) / 2 : left ? x1 - GAP_PX - 2 - width : x2 + GAP_PX + 2;
            int y = bottom - textHeight - 1;
            Envelope along = section.measures().get(i).along();
            return new Line(x1, bottom, x2, bottom, x1, py(along.getMinY()), texts.get(i), new Box(x, y, width, textHeight));
        }

        private static boolean isTaken(List<Box> lane, Box wanted) {
            return lane.stream().anyMatch(wanted::meets);
        }

        /** What a line of depth takes of its lane; lines that go on from one another share an end. */
        private static Box taken(Line line) {
            int left = Math.min(line.x1 + 1, line.room.x - GAP_PX);
            int right = Math.max(line.x2 - 1, line.room.x + line.room.width + GAP_PX);
            return new Box(left, 0, right - left, 1);
        }

        /** Places the dimensions of height before the front, each text beside its line and below the one above. */
        private void inFront() {
            int x = px(section.extent().getMaxX()) + OFF_PX;
            int free = Integer.MIN_VALUE;
            for (int i : on(Section.Side.FRONT, Comparator.comparingDouble(i -> section.measures().get(i).along().centre().y))) {
                Envelope along = section.measures().get(i).along();
                int y1 = py(along.getMinY());
                int y2 = Math.max(y1 + 1, py(along.getMaxY()));
                int y = Math.max(free, (y1 + y2 - textHeight) / 2);
                free = y + textHeight + 1;
                lines[i] = new Line(x, y1, x, y2, px(along.getMaxX()), y1, texts.get(i), new Box(x + GAP_PX + 2, y, room.widthOf().applyAsInt(texts.get(i)), textHeight));
            }
        }

        /** Places those that stand where they are measured, their text above the line, within the can. */
        private void within() {
            for (int i : on(Section.Side.WITHIN, Comparator.naturalOrder())) {
                Envelope along = section.measures().get(i).along();
                int x = px(along.getMinX());
                int y1 = py(along.getMinY());
                int y2 = Math.max(y1 + 1, py(along.getMaxY()));
                int width = room.widthOf().applyAsInt(texts.get(i));
                lines[i] = new Line(x, y1, x, y2, x, y1, texts.get(i), new Box(x - width / 2, y1 - textHeight - GAP_PX - 2, width, textHeight));
            }
        }
    }
}
