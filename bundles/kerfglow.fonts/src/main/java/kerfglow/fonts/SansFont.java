// SPDX-License-Identifier: Apache-2.0
package kerfglow.fonts;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;

/** The one font that ships with the program: for live text whose own font is not installed, and for paper. SIL Open Font License. */
public final class SansFont {
    /** Chosen because its widths are those of the sans-serif that proofs ask for most. */
    public static final String FAMILY = "Liberation Sans";
    private static final String FILE = "LiberationSans-Regular.ttf";

    private SansFont() {
    }

    /** The font as a TrueType file; the caller closes it. */
    public static InputStream open() throws IOException {
        InputStream in = SansFont.class.getResourceAsStream(FILE);
        if (in == null) {
            throw new FileNotFoundException("the font " + FILE + " that ships with the program is missing; install the program again");
        }
        return in;
    }
}
