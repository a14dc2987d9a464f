// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.ImportOptions;
import kerfglow.api.proof.Proof;
import kerfglow.api.proof.ProofException;
import kerfglow.api.proof.Visibility;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/** Short ways to write a proof in a test and to read it. */
final class Svg {
    /** The chord error at which closed forms are compared: design.md, section 2. */
    static final double EXACT_MM = 0.002;

    private Svg() {
    }

    /** A proof of 100 by 100 mm with one user unit to the mm around the given content. */
    static String in100(String content) {
        return "<svg xmlns='http://www.w3.org/2000/svg' xmlns:xlink='http://www.w3.org/1999/xlink' width='100mm' height='100mm' "
                + "viewBox='0 0 100 100'>" + content + "</svg>";
    }

    static Proof read(String text) {
        return read(text, ImportOptions.defaults().withChordErrorMm(EXACT_MM));
    }

    static Proof read(String text, ImportOptions options) {
        try {
            return readFile(text, options);
        } catch (ProofException e) {
            throw new AssertionError("the file should be usable: " + e.getMessage(), e);
        }
    }

    static Proof readFile(String text, ImportOptions options) throws ProofException {
        try {
            Path file = Files.createTempFile("proof", ".svg");
            try {
                Files.writeString(file, text);
                return new SvgImporter().read(file, options);
            } finally {
                Files.delete(file);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static Element only(String content) {
        List<Element> elements = read(in100(content)).elements();
        if (elements.size() != 1) {
            throw new AssertionError("expected one element, found " + elements);
        }
        return elements.get(0);
    }

    static Element byId(Proof proof, String id) {
        return proof.elements().stream().filter(e -> e.id().equals(id)).findFirst()
                .orElseThrow(() -> new AssertionError("no element " + id + " among " + proof.elements()));
    }

    /** The union of everything that is seen. */
    static Geometry shown(Proof proof) {
        List<Geometry> areas = new ArrayList<>();
        for (Element element : proof.elements()) {
            if (element.visibility() == Visibility.SHOWN) {
                areas.add(element.fillArea());
                areas.add(element.strokeArea());
            }
        }
        return areas.isEmpty() ? new GeometryFactory().createPolygon() : OverlayNGRobust.union(areas);
    }
}
