// SPDX-License-Identifier: Apache-2.0
package kerfglow.outlines;

import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Outlines as a drawing interchange file (DXF) of version AC1015, in mm, y turned up, at real size: closed polylines with arcs as bulges, points, one layer
 * a kind. Written by the published reference of the format; nothing but what that version needs.
 */
public final class DxfOutlines {
    /** Drawing units: millimetres. */
    private static final String MILLIMETRES = "4";
    /** Colours of layers by index: red, blue, green, magenta, cyan, yellow, black or white. */
    private static final List<Integer> COLOURS = List.of(1, 5, 3, 6, 4, 2, 7);
    private static final double NOTE_MM = 8;
    private static final String NOTES = "Notes";

    private final Writer out;
    private final OutlineSet set;
    private int nextHandle = 0x100;

    private DxfOutlines(OutlineSet set, Writer out) {
        this.set = set;
        this.out = out;
    }

    /** Writes; the writer is flushed and stays open. ASCII alone: a character beyond it is written as its code. */
    public static void write(OutlineSet set, Writer out) throws IOException {
        new DxfOutlines(set, out).file();
        out.flush();
    }

    /** Handles that other entries refer to. */
    private static final class Handles {
        static final String BLOCK_RECORDS = "1";
        static final String MODEL_SPACE = "1F";
        static final String PAPER_SPACE = "1B";
        static final String ROOT = "C";
        static final String GROUPS = "D";

        private Handles() {
        }
    }

    private void file() throws IOException {
        header();
        section("CLASSES");
        pair(0, "ENDSEC");
        tables();
        blocks();
        section("ENTITIES");
        for (OutlineLayer layer : set.layers()) {
            for (CutPath path : layer.paths()) {
                polyline(layer.name(), path);
            }
            for (CutPath.Vertex point : layer.points()) {
                entity("POINT", layer.name(), "AcDbPoint");
                place(10, point.xMm(), up(point.yMm()));
            }
        }
        notes();
        pair(0, "ENDSEC");
        objects();
        pair(0, "EOF");
    }

    private double up(double yMm) {
        return set.heightMm() - yMm;
    }

    private void header() throws IOException {
        section("HEADER");
        variable("$ACADVER", 1, "AC1015");
        variable("$DWGCODEPAGE", 3, "ANSI_1252");
        variable("$INSUNITS", 70, MILLIMETRES);
        variable("$MEASUREMENT", 70, "1");
        variable("$HANDSEED", 5, "FFFFF");
        pair(9, "$EXTMIN");
        place(10, 0, 0);
        pair(9, "$EXTMAX");
        place(10, set.widthMm(), set.heightMm());
        pair(0, "ENDSEC");
    }

    private void variable(String name, int code, String value) throws IOException {
        pair(9, name);
        pair(code, value);
    }

    private void tables() throws IOException {
        section("TABLES");
        table("VPORT", "8", 0);
        pair(0, "ENDTAB");
        table("LTYPE", "5", 3);
        for (String name : List.of("ByBlock", "ByLayer", "Continuous")) {
            record("LTYPE", "5", 5, "AcDbLinetypeTableRecord", name);
            pair(3, "");
            pair(72, "65");
            pair(73, "0");
            pair(40, "0.0");
        }
        pair(0, "ENDTAB");
        List<String> layers = new ArrayList<>(List.of("0"));
        set.layers().forEach(layer -> layers.add(layer.name()));
        layers.add(NOTES);
        table("LAYER", "2", layers.size());
        for (int i = 0; i < layers.size(); i++) {
            record("LAYER", "2", 5, "AcDbLayerTableRecord", layers.get(i));
            pair(62, Integer.toString(i == 0 || i == layers.size() - 1 ? 7 : COLOURS.get((i - 1) % COLOURS.size())));
            pair(6, "Continuous");
        }
        pair(0, "ENDTAB");
        table("STYLE", "3", 1);
        record("STYLE", "3", 5, "AcDbTextStyleTableRecord", "Standard");
        for (int code : new int[] {40, 50}) {
            pair(code, "0.0");
        }
        pair(41, "1.0");
        pair(71, "0");
        pair(42, "2.5");
        pair(3, "txt");
        pair(4, "");
        pair(0, "ENDTAB");
        table("VIEW", "6", 0);
        pair(0, "ENDTAB");
        table("UCS", "7", 0);
        pair(0, "ENDTAB");
        table("APPID", "9", 1);
        record("APPID", "9", 5, "AcDbRegAppTableRecord", "ACAD");
        pair(0, "ENDTAB");
        table("DIMSTYLE", "A", 1);
        pair(100, "AcDbDimStyleTable");
        record("DIMSTYLE", "A", 105, "AcDbDimStyleTableRecord", "Standard");
        pair(0, "ENDTAB");
        table("BLOCK_RECORD", Handles.BLOCK_RECORDS, 2);
        blockRecord(Handles.MODEL_SPACE, "*Model_Space");
        blockRecord(Handles.PAPER_SPACE, "*Paper_Space");
        pair(0, "ENDTAB");
        pair(0, "ENDSEC");
    }

    private void table(String name, String handle, int entries) throws IOException {
        pair(0, "TABLE");
        pair(2, name);
        pair(5, handle);
        pair(330, "0");
        pair(100, "AcDbSymbolTable");
        pair(70, Integer.toString(entries));
    }

    private void record(String type, String owner, int handleCode, String kind, String name) throws IOException {
        pair(0, type);
        pair(handleCode, handle());
        pair(330, owner);
        pair(100, "AcDbSymbolTableRecord");
        pair(100, kind);
        pair(2, name);
        pair(70, "0");
    }

    private void blockRecord(String handle, String name) throws IOException {
        pair(0, "BLOCK_RECORD");
        pair(5, handle);
        pair(330, Handles.BLOCK_RECORDS);
        pair(100, "AcDbSymbolTableRecord");
        pair(100, "AcDbBlockTableRecord");
        pair(2, name);
    }

    private void blocks() throws IOException {
        section("BLOCKS");
        for (String[] space : new String[][] {{"*Model_Space", Handles.MODEL_SPACE}, {"*Paper_Space", Handles.PAPER_SPACE}}) {
            pair(0, "BLOCK");
            pair(5, handle());
            pair(330, space[1]);
            pair(100, "AcDbEntity");
            pair(8, "0");
            pair(100, "AcDbBlockBegin");
            pair(2, space[0]);
            pair(70, "0");
            place(10, 0, 0);
            pair(3, space[0]);
            pair(1, "");
            pair(0, "ENDBLK");
            pair(5, handle());
            pair(330, space[1]);
            pair(100, "AcDbEntity");
            pair(8, "0");
            pair(100, "AcDbBlockEnd");
        }
        pair(0, "ENDSEC");
    }

    private void polyline(String layer, CutPath path) throws IOException {
        entity("LWPOLYLINE", layer, "AcDbPolyline");
        pair(90, Integer.toString(path.vertices().size()));
        pair(70, path.closed() ? "1" : "0");
        for (CutPath.Vertex vertex : path.vertices()) {
            pair(10, number(vertex.xMm()));
            pair(20, number(up(vertex.yMm())));
            if (vertex.bulge() != 0) {
                pair(42, String.format(Locale.ROOT, "%.12f", -vertex.bulge())); // turned up, an arc bends the other way
            }
        }
    }

    private void notes() throws IOException {
        double y = -2 * NOTE_MM;
        for (OutlineLayer layer : set.layers()) {
            if (!layer.note().isEmpty()) {
                entity("TEXT", NOTES, "AcDbText");
                place(10, 0, y);
                pair(40, number(NOTE_MM));
                pair(1, ascii(layer.name() + ": " + layer.note()));
                pair(100, "AcDbText");
                y -= NOTE_MM * 1.5;
            }
        }
    }

    private void entity(String type, String layer, String kind) throws IOException {
        pair(0, type);
        pair(5, handle());
        pair(330, Handles.MODEL_SPACE);
        pair(100, "AcDbEntity");
        pair(8, layer);
        pair(100, kind);
    }

    private void objects() throws IOException {
        section("OBJECTS");
        pair(0, "DICTIONARY");
        pair(5, Handles.ROOT);
        pair(330, "0");
        pair(100, "AcDbDictionary");
        pair(281, "1");
        pair(3, "ACAD_GROUP");
        pair(350, Handles.GROUPS);
        pair(0, "DICTIONARY");
        pair(5, Handles.GROUPS);
        pair(330, Handles.ROOT);
        pair(100, "AcDbDictionary");
        pair(281, "1");
        pair(0, "ENDSEC");
    }

    private void section(String name) throws IOException {
        pair(0, "SECTION");
        pair(2, name);
    }

    private void place(int code, double x, double y) throws IOException {
        pair(code, number(x));
        pair(code + 10, number(y));
        pair(code + 20, "0.0");
    }

    private String handle() {
        return Integer.toHexString(nextHandle++).toUpperCase(Locale.ROOT);
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.6f", value);
    }

    private static String ascii(String text) {
        StringBuilder safe = new StringBuilder();
        text.chars().forEach(each -> safe.append(each < 0x80 ? Character.toString(each) : String.format(Locale.ROOT, "\\U+%04X", each)));
        return safe.toString();
    }

    private void pair(int code, String value) throws IOException {
        out.write(code + "\r\n" + value + "\r\n");
    }
}
