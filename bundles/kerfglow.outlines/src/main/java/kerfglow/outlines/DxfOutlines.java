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

    private final DxfPairs dxf;
    private final OutlineSet set;

    private DxfOutlines(OutlineSet set, Writer out) {
        this.set = set;
        this.dxf = new DxfPairs(out);
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
        dxf.section("CLASSES");
        dxf.pair(0, "ENDSEC");
        tables();
        blocks();
        dxf.section("ENTITIES");
        for (OutlineLayer layer : set.layers()) {
            for (CutPath path : layer.paths()) {
                polyline(layer.name(), path);
            }
            for (CutPath.Vertex point : layer.points()) {
                entity("POINT", layer.name(), "AcDbPoint");
                dxf.place(10, point.xMm(), up(point.yMm()));
            }
        }
        notes();
        dxf.pair(0, "ENDSEC");
        objects();
        dxf.pair(0, "EOF");
    }

    private double up(double yMm) {
        return set.heightMm() - yMm;
    }

    private void header() throws IOException {
        dxf.section("HEADER");
        variable("$ACADVER", 1, "AC1015");
        variable("$DWGCODEPAGE", 3, "ANSI_1252");
        variable("$INSUNITS", 70, MILLIMETRES);
        variable("$MEASUREMENT", 70, "1");
        variable("$HANDSEED", 5, "FFFFF");
        dxf.pair(9, "$EXTMIN");
        dxf.place(10, 0, 0);
        dxf.pair(9, "$EXTMAX");
        dxf.place(10, set.widthMm(), set.heightMm());
        dxf.pair(0, "ENDSEC");
    }

    private void variable(String name, int code, String value) throws IOException {
        dxf.pair(9, name);
        dxf.pair(code, value);
    }

    private void tables() throws IOException {
        dxf.section("TABLES");
        table("VPORT", "8", 0);
        dxf.pair(0, "ENDTAB");
        table("LTYPE", "5", 3);
        for (String name : List.of("ByBlock", "ByLayer", "Continuous")) {
            record("LTYPE", "5", 5, "AcDbLinetypeTableRecord", name);
            dxf.pair(3, "");
            dxf.pair(72, "65");
            dxf.pair(73, "0");
            dxf.pair(40, "0.0");
        }
        dxf.pair(0, "ENDTAB");
        List<String> layers = new ArrayList<>(List.of("0"));
        set.layers().forEach(layer -> layers.add(layer.name()));
        layers.add(NOTES);
        table("LAYER", "2", layers.size());
        for (int i = 0; i < layers.size(); i++) {
            record("LAYER", "2", 5, "AcDbLayerTableRecord", layers.get(i));
            dxf.pair(62, Integer.toString(i == 0 || i == layers.size() - 1 ? 7 : COLOURS.get((i - 1) % COLOURS.size())));
            dxf.pair(6, "Continuous");
        }
        dxf.pair(0, "ENDTAB");
        table("STYLE", "3", 1);
        record("STYLE", "3", 5, "AcDbTextStyleTableRecord", "Standard");
        for (int code : new int[] {40, 50}) {
            dxf.pair(code, "0.0");
        }
        dxf.pair(41, "1.0");
        dxf.pair(71, "0");
        dxf.pair(42, "2.5");
        dxf.pair(3, "txt");
        dxf.pair(4, "");
        dxf.pair(0, "ENDTAB");
        table("VIEW", "6", 0);
        dxf.pair(0, "ENDTAB");
        table("UCS", "7", 0);
        dxf.pair(0, "ENDTAB");
        table("APPID", "9", 1);
        record("APPID", "9", 5, "AcDbRegAppTableRecord", "ACAD");
        dxf.pair(0, "ENDTAB");
        table("DIMSTYLE", "A", 1);
        dxf.pair(100, "AcDbDimStyleTable");
        record("DIMSTYLE", "A", 105, "AcDbDimStyleTableRecord", "Standard");
        dxf.pair(0, "ENDTAB");
        table("BLOCK_RECORD", Handles.BLOCK_RECORDS, 2);
        blockRecord(Handles.MODEL_SPACE, "*Model_Space");
        blockRecord(Handles.PAPER_SPACE, "*Paper_Space");
        dxf.pair(0, "ENDTAB");
        dxf.pair(0, "ENDSEC");
    }

    private void table(String name, String handle, int entries) throws IOException {
        dxf.pair(0, "TABLE");
        dxf.pair(2, name);
        dxf.pair(5, handle);
        dxf.pair(330, "0");
        dxf.pair(100, "AcDbSymbolTable");
        dxf.pair(70, Integer.toString(entries));
    }

    private void record(String type, String owner, int handleCode, String kind, String name) throws IOException {
        dxf.pair(0, type);
        dxf.pair(handleCode, dxf.handle());
        dxf.pair(330, owner);
        dxf.pair(100, "AcDbSymbolTableRecord");
        dxf.pair(100, kind);
        dxf.pair(2, name);
        dxf.pair(70, "0");
    }

    private void blockRecord(String handle, String name) throws IOException {
        dxf.pair(0, "BLOCK_RECORD");
        dxf.pair(5, handle);
        dxf.pair(330, Handles.BLOCK_RECORDS);
        dxf.pair(100, "AcDbSymbolTableRecord");
        dxf.pair(100, "AcDbBlockTableRecord");
        dxf.pair(2, name);
    }

    private void blocks() throws IOException {
        dxf.section("BLOCKS");
        for (String[] space : new String[][] {{"*Model_Space", Handles.MODEL_SPACE}, {"*Paper_Space", Handles.PAPER_SPACE}}) {
            dxf.pair(0, "BLOCK");
            dxf.pair(5, dxf.handle());
            dxf.pair(330, space[1]);
            dxf.pair(100, "AcDbEntity");
            dxf.pair(8, "0");
            dxf.pair(100, "AcDbBlockBegin");
            dxf.pair(2, space[0]);
            dxf.pair(70, "0");
            dxf.place(10, 0, 0);
            dxf.pair(3, space[0]);
            dxf.pair(1, "");
            dxf.pair(0, "ENDBLK");
            dxf.pair(5, dxf.handle());
            dxf.pair(330, space[1]);
            dxf.pair(100, "AcDbEntity");
            dxf.pair(8, "0");
            dxf.pair(100, "AcDbBlockEnd");
        }
        dxf.pair(0, "ENDSEC");
    }

    private void polyline(String layer, CutPath path) throws IOException {
        entity("LWPOLYLINE", layer, "AcDbPolyline");
        dxf.pair(90, Integer.toString(path.vertices().size()));
        dxf.pair(70, path.closed() ? "1" : "0");
        for (CutPath.Vertex vertex : path.vertices()) {
            dxf.pair(10, DxfPairs.number(vertex.xMm()));
            dxf.pair(20, DxfPairs.number(up(vertex.yMm())));
            if (vertex.bulge() != 0) {
                dxf.pair(42, String.format(Locale.ROOT, "%.12f", -vertex.bulge())); // turned up, an arc bends the other way
            }
        }
    }

    private void notes() throws IOException {
        double y = -2 * NOTE_MM;
        for (OutlineLayer layer : set.layers()) {
            if (!layer.note().isEmpty()) {
                entity("TEXT", NOTES, "AcDbText");
                dxf.place(10, 0, y);
                dxf.pair(40, DxfPairs.number(NOTE_MM));
                dxf.pair(1, DxfPairs.ascii(layer.name() + ": " + layer.note()));
                dxf.pair(100, "AcDbText");
                y -= NOTE_MM * 1.5;
            }
        }
    }

    private void entity(String type, String layer, String kind) throws IOException {
        dxf.pair(0, type);
        dxf.pair(5, dxf.handle());
        dxf.pair(330, Handles.MODEL_SPACE);
        dxf.pair(100, "AcDbEntity");
        dxf.pair(8, layer);
        dxf.pair(100, kind);
    }

    private void objects() throws IOException {
        dxf.section("OBJECTS");
        dxf.pair(0, "DICTIONARY");
        dxf.pair(5, Handles.ROOT);
        dxf.pair(330, "0");
        dxf.pair(100, "AcDbDictionary");
        dxf.pair(281, "1");
        dxf.pair(3, "ACAD_GROUP");
        dxf.pair(350, Handles.GROUPS);
        dxf.pair(0, "DICTIONARY");
        dxf.pair(5, Handles.GROUPS);
        dxf.pair(330, Handles.ROOT);
        dxf.pair(100, "AcDbDictionary");
        dxf.pair(281, "1");
        dxf.pair(0, "ENDSEC");
    }
}
