// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.font.FontRenderContext;
import java.awt.geom.PathIterator;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Role;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.locationtech.jts.operation.union.UnaryUnionOp;

/** An open font from a Debian package: its outlines as parts, and what its own OS/2 table says of its heights. */
final class OpenFont {
    private static final GeometryFactory FACTORY = new GeometryFactory();
    private static final double CHORD_ERROR_MM = 0.02;
    /** Outlines are single precision: taken large and scaled down. */
    private static final float TAKEN = 1000;
    // Where the OpenType specification puts these in the tables OS/2 (version 2 and later) and head.
    private static final int X_HEIGHT_AT = 86;
    private static final int CAP_HEIGHT_AT = 88;
    private static final int UNITS_PER_EM_AT = 18;

    private final Font font;
    private final double capShare;
    private final double xShare;
    private final double emMm;

    private OpenFont(Font font, double capShare, double xShare, double emMm) {
        this.font = font;
        this.capShare = capShare;
        this.xShare = xShare;
        this.emMm = emMm;
    }

    /**
     * Reads a font.
     *
     * @param emMm its size, mm
     * @throws IllegalStateException when it is not there; the message names the package
     */
    static OpenFont of(String debianPackage, String path, double emMm) {
        Path file = Path.of("/usr/share", path);
        if (!Files.isReadable(file)) {
            throw new IllegalStateException("the font " + file + " is not installed: package " + debianPackage);
        }
        try {
            ByteBuffer bytes = ByteBuffer.wrap(Files.readAllBytes(file));
            double perEm = bytes.getShort(table(bytes, "head") + UNITS_PER_EM_AT);
            int os2 = table(bytes, "OS/2");
            return new OpenFont(Font.createFont(Font.TRUETYPE_FONT, file.toFile()).deriveFont(TAKEN),
                    bytes.getShort(os2 + CAP_HEIGHT_AT) / perEm, bytes.getShort(os2 + X_HEIGHT_AT) / perEm, emMm);
        } catch (IOException | FontFormatException wrong) {
            throw new IllegalStateException(file.toString(), wrong);
        }
    }

    private static int table(ByteBuffer bytes, String tag) {
        int tables = bytes.getShort(4);
        for (int i = 0; i < tables; i++) {
            int at = 12 + 16 * i;
            byte[] name = new byte[4];
            bytes.get(at, name);
            if (new String(name, StandardCharsets.US_ASCII).equals(tag)) {
                return bytes.getInt(at + 8);
            }
        }
        throw new IllegalStateException("no table " + tag);
    }

    /** The same font in another size, mm. */
    OpenFont sized(double otherEmMm) {
        return new OpenFont(font, capShare, xShare, otherEmMm);
    }

    /** sCapHeight at this size, mm. */
    double capMm() {
        return capShare * emMm;
    }

    /** sxHeight at this size, mm. */
    double xMm() {
        return xShare * emMm;
    }

    /** One letter standing at the origin, y down, mm; empty for a space. */
    Geometry glyph(char letter) {
        var vector = font.createGlyphVector(new FontRenderContext(null, true, true), String.valueOf(letter));
        PathIterator path = vector.getOutline().getPathIterator(null, CHORD_ERROR_MM * TAKEN / emMm);
        List<Polygon> rings = new ArrayList<>();
        List<Coordinate> ring = new ArrayList<>();
        double[] at = new double[6];
        Geometry all = FACTORY.createPolygon();
        for (; !path.isDone(); path.next()) {
            int kind = path.currentSegment(at);
            if (kind == PathIterator.SEG_CLOSE) {
                if (!ring.get(0).equals2D(ring.get(ring.size() - 1))) {
                    ring.add(ring.get(0).copy());
                }
                if (ring.size() > 3) {
                    rings.add(FACTORY.createPolygon(ring.toArray(new Coordinate[0])));
                }
                ring = new ArrayList<>();
            } else {
                if (kind == PathIterator.SEG_MOVETO) {
                    ring = new ArrayList<>();
                }
                ring.add(new Coordinate(at[0], at[1]));
            }
        }
        for (Polygon each : rings) {
            all = all.symDifference(each.buffer(0));
        }
        double scale = emMm / TAKEN;
        return AffineTransformation.scaleInstance(scale, scale).transform(all);
    }

    double advance(char letter) {
        return font.createGlyphVector(new FontRenderContext(null, true, true), String.valueOf(letter)).getGlyphMetrics(0).getAdvanceX() * emMm / TAKEN;
    }

    /** A text on the line y = 0 from x = 0; letters that touch are one piece, as the import makes it. */
    List<Polygon> straight(String text) {
        return set(text, middle -> AffineTransformation.translationInstance(middle, 0));
    }

    /** A text on a circle, its middle at the top or, with its letters' heads inward, at the bottom. */
    List<Polygon> arched(String text, Coordinate centre, double radiusMm, boolean outward) {
        double length = text.chars().mapToDouble(letter -> advance((char) letter)).sum();
        double sign = outward ? 1 : -1;
        return set(text, middle -> {
            double turn = sign * (middle - length / 2) / radiusMm;
            return AffineTransformation.translationInstance(centre.x, centre.y - sign * radiusMm)
                    .rotate(turn, centre.x, centre.y);
        });
    }

    private interface Place {
        AffineTransformation at(double middleMm);
    }

    private List<Polygon> set(String text, Place place) {
        List<Geometry> glyphs = new ArrayList<>();
        double x = 0;
        for (char letter : text.toCharArray()) {
            double width = advance(letter);
            Geometry standing = AffineTransformation.translationInstance(-width / 2, 0).transform(glyph(letter));
            glyphs.add(place.at(x + width / 2).transform(standing));
            x += width;
        }
        return pieces(UnaryUnionOp.union(glyphs));
    }

    static List<Polygon> pieces(Geometry all) {
        List<Polygon> pieces = new ArrayList<>();
        for (int i = 0; i < all.getNumGeometries(); i++) {
            if (!all.getGeometryN(i).isEmpty()) {
                pieces.add((Polygon) all.getGeometryN(i));
            }
        }
        return pieces;
    }

    static List<Polygon> turned(List<Polygon> pieces, double degrees) {
        AffineTransformation turn = AffineTransformation.rotationInstance(Math.toRadians(degrees));
        return pieces.stream().map(piece -> (Polygon) turn.transform(piece)).toList();
    }

    static List<Polygon> turnedAbout(List<Polygon> pieces, double degrees, Coordinate centre) {
        AffineTransformation turn = AffineTransformation.rotationInstance(Math.toRadians(degrees), centre.x, centre.y);
        return pieces.stream().map(piece -> (Polygon) turn.transform(piece)).toList();
    }

    static List<Part> parts(List<Polygon> pieces, UnaryOperator<Part.Builder> more) {
        List<Part> parts = new ArrayList<>();
        for (int i = 0; i < pieces.size(); i++) {
            String id = "p" + i;
            parts.add(more.apply(Part.builder(id, Role.FACE, pieces.get(i)).layer("letters").elements(List.of(id))).build());
        }
        return parts;
    }

    static List<Piece> asPieces(List<Polygon> polygons) {
        return parts(polygons, part -> part).stream().map(Piece::of).toList();
    }

    @Override
    public String toString() {
        return font.getFontName();
    }
}
