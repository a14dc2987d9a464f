// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.awt.Color;
import java.awt.Shape;
import java.text.AttributedCharacterIterator;
import java.text.CharacterIterator;
import java.util.ArrayList;
import java.util.List;
import org.apache.batik.bridge.BridgeContext;
import org.apache.batik.bridge.FontFamilyResolver;
import org.apache.batik.bridge.GVTBuilder;
import org.apache.batik.bridge.StrokingTextPainter;
import org.apache.batik.bridge.TextNode;
import org.apache.batik.bridge.TextSpanLayout;
import org.apache.batik.bridge.UserAgentAdapter;
import org.apache.batik.gvt.CompositeGraphicsNode;
import org.apache.batik.gvt.GraphicsNode;
import org.apache.batik.gvt.text.TextPaintInfo;
import org.apache.batik.util.ParsedURL;
import org.w3c.dom.Document;

/** Has Batik lay out a document that holds one text, and returns the outlines run by run. */
final class TextLayout {
    /**
     * Characters laid out alike.
     *
     * @param mark the fill colour that the characters were given, 0xRRGGBB
     * @param text the characters
     * @param outlines glyphs and lines under, over or through them
     * @param heights of the font, and where they stand
     */
    record Run(int mark, String text, List<Shape> outlines, RunHeights heights) {
    }

    private static final int RGB = 0xFFFFFF;

    private TextLayout() {
    }

    static List<Run> runs(Document document, Fonts fonts) {
        // Batik looks its services up through the thread's class loader, which in a framework is not its own.
        Thread thread = Thread.currentThread();
        ClassLoader before = thread.getContextClassLoader();
        thread.setContextClassLoader(GVTBuilder.class.getClassLoader());
        try {
            // Batik keeps glyphs in a cache without locks that all of the program shares.
            synchronized (TextLayout.class) {
                return laidOut(document, fonts);
            }
        } finally {
            thread.setContextClassLoader(before);
        }
    }

    private static List<Run> laidOut(Document document, Fonts fonts) {
        BridgeContext context = new BridgeContext(new Agent(fonts));
        try {
            List<Run> runs = new ArrayList<>();
            collect(new GVTBuilder().build(context, document), runs);
            return runs;
        } finally {
            context.dispose();
        }
    }

    private static void collect(GraphicsNode node, List<Run> runs) {
        if (node instanceof TextNode text) {
            AttributedCharacterIterator characters = text.getAttributedCharacterIterator();
            if (characters != null) {
                for (Object run : new StrokingTextPainter().getTextRuns(text, characters)) {
                    runs.add(run((StrokingTextPainter.TextRun) run));
                }
            }
        } else if (node instanceof CompositeGraphicsNode group) {
            for (Object child : group.getChildren()) {
                collect((GraphicsNode) child, runs);
            }
        }
    }

    private static Run run(StrokingTextPainter.TextRun run) {
        AttributedCharacterIterator characters = run.getACI();
        StringBuilder text = new StringBuilder();
        for (char c = characters.first(); c != CharacterIterator.DONE; c = characters.next()) {
            text.append(c);
        }
        characters.first();
        TextPaintInfo paint = (TextPaintInfo) characters.getAttribute(StrokingTextPainter.PAINT_INFO);
        TextSpanLayout layout = run.getLayout();
        List<Shape> outlines = new ArrayList<>();
        outlines.add(layout.getOutline());
        if (paint.underlinePaint != null) {
            outlines.add(layout.getDecorationOutline(TextSpanLayout.DECORATION_UNDERLINE));
        }
        if (paint.overlinePaint != null) {
            outlines.add(layout.getDecorationOutline(TextSpanLayout.DECORATION_OVERLINE));
        }
        if (paint.strikethroughPaint != null) {
            outlines.add(layout.getDecorationOutline(TextSpanLayout.DECORATION_STRIKETHROUGH));
        }
        int mark = paint.fillPaint instanceof Color colour ? colour.getRGB() & RGB : 0;
        return new Run(mark, text.toString(), outlines, RunHeights.of(layout.getGlyphVector()));
    }

    /** Fetches nothing and says nothing. */
    private static final class Agent extends UserAgentAdapter {
        private final Fonts fonts;

        Agent(Fonts fonts) {
            this.fonts = fonts;
        }

        @Override
        public FontFamilyResolver getFontFamilyResolver() {
            return fonts;
        }

        @Override
        public void checkLoadScript(String type, ParsedURL script, ParsedURL document) {
            throw new SecurityException("no script is run");
        }

        @Override
        public void checkLoadExternalResource(ParsedURL resource, ParsedURL document) {
            throw new SecurityException("nothing is fetched");
        }

        @Override
        public void displayError(Exception e) {
            throw new IllegalStateException("text cannot be laid out", e);
        }

        @Override
        public void displayError(String message) {
            throw new IllegalStateException("text cannot be laid out: " + message);
        }

        @Override
        public void displayMessage(String message) {
            // The document is ours: there is nothing to tell.
        }
    }
}
