// SPDX-License-Identifier: Apache-2.0
package kerfglow.outlines;

import java.io.IOException;
import java.io.Writer;
import java.util.List;
import java.util.Locale;
import kerfglow.views.PlainText;

/** Outlines as an SVG file at real size: one user unit is 1 mm, a group a kind, its name as title. */
public final class SvgOutlines {
    /** As thin as cut files are drawn, mm; common practice, no source. */
    private static final double STROKE_MM = 0.1;
    /** Half the length of the cross at a place, mm. */
    private static final double CROSS_MM = 2;
    private static final double NOTE_MM = 8;
    private static final List<String> COLOURS = List.of("#c00000", "#0000c0", "#008000", "#a000a0", "#c06000", "#008080", "#404040");

    private SvgOutlines() {
    }

    /** Writes; the writer is flushed and stays open. */
    public static void write(OutlineSet set, Writer out) throws IOException {
        String width = number(set.widthMm());
        String height = number(set.heightMm());
        out.write("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" + width + "mm\" height=\"" + height + "mm\" viewBox=\"0 0 "
                + width + " " + height + "\">\n<title>" + escape(set.title()) + "</title>\n");
        int index = 0;
        for (OutlineLayer layer : set.layers()) {
            out.write("<g id=\"" + layer.id() + "\" fill=\"none\" stroke=\"" + COLOURS.get(index++ % COLOURS.size()) + "\" stroke-width=\"" + STROKE_MM + "\">\n<title>"
                    + escape(layer.name()) + "</title>\n");
            for (CutPath path : layer.paths()) {
                out.write("<path d=\"" + data(path) + "\"/>\n");
            }
            for (CutPath.Vertex point : layer.points()) {
                out.write("<path d=\"M" + number(point.xMm() - CROSS_MM) + " " + number(point.yMm()) + "h" + number(2 * CROSS_MM) + "M" + number(point.xMm()) + " "
                        + number(point.yMm() - CROSS_MM) + "v" + number(2 * CROSS_MM) + "\"/>\n");
            }
            out.write("</g>\n");
        }
        notes(set, out);
        out.write("</svg>\n");
        out.flush();
    }

    /** In a group of their own, for a machine must not cut them. */
    private static void notes(OutlineSet set, Writer out) throws IOException {
        List<OutlineLayer> noted = set.layers().stream().filter(layer -> !layer.note().isEmpty()).toList();
        if (noted.isEmpty()) {
            return;
        }
        out.write("<g id=\"notes\" font-family=\"sans-serif\" font-size=\"" + number(NOTE_MM) + "\">\n<title>Notes</title>\n");
        for (int i = 0; i < noted.size(); i++) {
            out.write("<text x=\"0\" y=\"" + number(set.heightMm() - NOTE_MM / 2 - i * NOTE_MM * 1.5) + "\">" + escape(noted.get(i).name() + ": " + noted.get(i).note()) + "</text>\n");
        }
        out.write("</g>\n");
    }

    private static String data(CutPath path) {
        StringBuilder data = new StringBuilder();
        int last = path.closed() ? path.vertices().size() : path.vertices().size() - 1;
        data.append("M").append(number(path.vertices().get(0).xMm())).append(" ").append(number(path.vertices().get(0).yMm()));
        for (int i = 0; i < last; i++) {
            CutPath.Vertex to = path.next(i);
            if (path.isArc(i)) {
                String radius = number(path.radiusMm(i));
                data.append("A").append(radius).append(" ").append(radius).append(" 0 ").append(Math.abs(path.sweep(i)) > Math.PI ? 1 : 0).append(" ")
                        .append(path.sweep(i) > 0 ? 1 : 0).append(" ").append(number(to.xMm())).append(" ").append(number(to.yMm()));
            } else if (i < last - 1 || !path.closed()) {
                data.append("L").append(number(to.xMm())).append(" ").append(number(to.yMm()));
            }
        }
        return path.closed() ? data.append("Z").toString() : data.toString();
    }

    /** To a tenth of a micrometre, without zeros that say nothing. */
    private static String number(double value) {
        String text = String.format(Locale.ROOT, "%.4f", value).replaceAll("0+$", "").replaceAll("\\.$", "");
        return text.equals("-0") ? "0" : text;
    }

    private static String escape(String text) {
        return PlainText.of(text).replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }
}
