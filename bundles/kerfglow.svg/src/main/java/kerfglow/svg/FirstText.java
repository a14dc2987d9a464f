// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.nio.charset.StandardCharsets;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Supplier;
import org.apache.batik.anim.dom.SVGDOMImplementation;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/**
 * Lays out one letter ahead, so that a second core loads Batik's text classes and looks for fonts while the first still reads and draws shapes. The first
 * text of a process costs about a third of the import of a small proof, nearly all of it loading. Changes no result.
 */
final class FirstText {
    private static final byte[] TAG = "<text".getBytes(StandardCharsets.US_ASCII);

    private final AtomicBoolean begun = new AtomicBoolean();

    /** Returns at once. Does nothing after the first file that seems to hold text; one in another encoding or with a prefix only waits longer later. */
    void expect(byte[] contents, Supplier<Fonts> fonts) {
        if (holdsTag(contents) && begun.compareAndSet(false, true)) {
            Thread ahead = new Thread(() -> layOut(fonts), "first text");
            ahead.setDaemon(true);
            ahead.start();
        }
    }

    private static boolean holdsTag(byte[] contents) {
        for (int at = 0; at <= contents.length - TAG.length; at++) {
            int same = 0;
            while (same < TAG.length && contents[at + same] == TAG[same]) {
                same++;
            }
            if (same == TAG.length) {
                return true;
            }
        }
        return false;
    }

    private static void layOut(Supplier<Fonts> fonts) {
        try {
            Document document = SVGDOMImplementation.getDOMImplementation().createDocument(Names.SVG, "svg", null);
            Element text = document.createElementNS(Names.SVG, "text");
            text.setAttributeNS(null, "font-family", "'" + Fonts.FALLBACK + "'");
            text.setTextContent("a");
            document.getDocumentElement().appendChild(text);
            TextLayout.runs(document, fonts.get());
        } catch (RuntimeException | Error e) {
            // The proof's own text meets the same fault and tells it; a program that ends meanwhile takes the classes away.
        }
    }
}
