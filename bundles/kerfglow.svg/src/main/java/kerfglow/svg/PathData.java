// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

/**
 * Reads path data at double precision. An error ends the path there: what stands before it is drawn, as SVG 2, 9.5.4 "Error
 * handling in path data" says.
 */
final class PathData {
    private final NumberScanner in;
    private final DrawnPath path = new DrawnPath();
    private double controlX;
    private double controlY;
    private char before = ' ';

    /** @param path what could be read; @param error what ended it, or empty */
    record Reading(DrawnPath path, String error) {
    }

    private PathData(String text) {
        in = new NumberScanner(text);
    }

    static Reading read(String text) {
        PathData data = new PathData(text);
        try {
            data.readAll();
            return new Reading(data.path, "");
        } catch (BadValueException e) {
            return new Reading(data.path, e.getMessage());
        }
    }

    private void readAll() throws BadValueException {
        in.skipSpace();
        while (!in.isAtEnd()) {
            int position = in.position();
            char command = in.next();
            if (path.size() == 0 && command != 'M' && command != 'm') {
                throw new BadValueException("starts with \"" + command + "\" instead of M");
            }
            if ("MmLlHhVvCcSsQqTtAaZz".indexOf(command) < 0) {
                throw new BadValueException("has \"" + command + "\" at character " + position + ", which is no command");
            }
            in.skipSpace();
            if (command == 'Z' || command == 'z') {
                path.close();
                before = 'Z';
                continue;
            }
            segment(command);
            in.skipSeparator();
            while (in.isAtNumber()) {
                segment(command == 'M' ? 'L' : command == 'm' ? 'l' : command);
                in.skipSeparator();
            }
        }
    }

    private void segment(char command) throws BadValueException {
        boolean relative = Character.isLowerCase(command);
        double ox = relative ? path.currentX() : 0;
        double oy = relative ? path.currentY() : 0;
        char kind = Character.toUpperCase(command);
        switch (kind) {
            case 'M' -> {
                double x = ox + number();
                path.moveTo(x, oy + number());
            }
            case 'L' -> {
                double x = ox + number();
                path.lineTo(x, oy + number());
            }
            case 'H' -> path.lineTo(ox + number(), path.currentY());
            case 'V' -> path.lineTo(path.currentX(), oy + number());
            case 'C' -> {
                double ax = ox + number();
                double ay = oy + number();
                cubic(ax, ay, ox, oy);
            }
            case 'S' -> {
                boolean smooth = before == 'C' || before == 'S';
                cubic(smooth ? 2 * path.currentX() - controlX : path.currentX(),
                        smooth ? 2 * path.currentY() - controlY : path.currentY(), ox, oy);
            }
            case 'Q' -> {
                double cx = ox + number();
                double cy = oy + number();
                quadratic(cx, cy, ox, oy);
            }
            case 'T' -> {
                boolean smooth = before == 'Q' || before == 'T';
                quadratic(smooth ? 2 * path.currentX() - controlX : path.currentX(),
                        smooth ? 2 * path.currentY() - controlY : path.currentY(), ox, oy);
            }
            default -> arc(ox, oy);
        }
        before = kind;
    }

    private void cubic(double ax, double ay, double ox, double oy) throws BadValueException {
        double bx = ox + number();
        double by = oy + number();
        double x = ox + number();
        double y = oy + number();
        path.cubicTo(ax, ay, bx, by, x, y);
        controlX = bx;
        controlY = by;
    }

    private void quadratic(double cx, double cy, double ox, double oy) throws BadValueException {
        double x = ox + number();
        double y = oy + number();
        path.quadraticTo(cx, cy, x, y);
        controlX = cx;
        controlY = cy;
    }

    private void arc(double ox, double oy) throws BadValueException {
        double rx = number();
        double ry = number();
        double degrees = number();
        in.skipSeparator();
        boolean large = in.flag();
        in.skipSeparator();
        boolean sweep = in.flag();
        double x = ox + number();
        double y = oy + number();
        path.arcTo(rx, ry, degrees, large, sweep, x, y);
    }

    private double number() throws BadValueException {
        in.skipSeparator();
        return in.number();
    }
}
