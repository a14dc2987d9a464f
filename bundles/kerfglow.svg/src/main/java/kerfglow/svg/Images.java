// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.io.ByteArrayInputStream;
import java.io.DataInputStream;
import java.io.IOException;
import java.util.Base64;
import java.util.Locale;
import java.util.Optional;

/** Reads how many pixels an embedded picture has from its first bytes; decodes no picture. */
final class Images {
    /** @param width pixels across; @param height pixels down */
    record Size(int width, int height) {
    }

    private static final int PNG_FIRST = 0x89504E47;
    private static final int PNG_SIZE_AT = 16;
    private static final int GIF_FIRST = 0x47494638;
    private static final int JPEG_START = 0xFFD8;
    private static final int BYTE = 0xFF;

    private Images() {
    }

    static boolean isEmbedded(String href) {
        return href.regionMatches(true, 0, "data:", 0, 5);
    }

    /** Nothing when it is no PNG, JPEG or GIF in base64, or is damaged before its size. */
    static Optional<Size> size(String dataUri) {
        int comma = dataUri.indexOf(',');
        if (comma < 0 || !dataUri.substring(0, comma).toLowerCase(Locale.ROOT).contains("base64")) {
            return Optional.empty();
        }
        try {
            byte[] bytes = Base64.getMimeDecoder().decode(dataUri.substring(comma + 1));
            DataInputStream in = new DataInputStream(new ByteArrayInputStream(bytes));
            int first = in.readInt();
            if (first == PNG_FIRST) {
                in.skipNBytes(PNG_SIZE_AT - Integer.BYTES);
                return sized(in.readInt(), in.readInt());
            }
            if (first == GIF_FIRST) {
                in.skipNBytes(2);
                return sized(Short.toUnsignedInt(Short.reverseBytes(in.readShort())), Short.toUnsignedInt(Short.reverseBytes(in.readShort())));
            }
            return first >>> Short.SIZE == JPEG_START ? jpeg(new DataInputStream(new ByteArrayInputStream(bytes, 2, bytes.length - 2)))
                    : Optional.empty();
        } catch (IOException | IllegalArgumentException e) {
            return Optional.empty(); // damaged before its size: told as 0 pixels
        }
    }

    /** ITU-T T.81, annex B: the size stands in the frame header SOF0 to SOF15, but for DHT, JPG and DAC. */
    private static Optional<Size> jpeg(DataInputStream in) throws IOException {
        while (true) {
            int marker = in.readUnsignedByte();
            while (marker == BYTE) {
                marker = in.readUnsignedByte();
            }
            if (marker >= 0xC0 && marker <= 0xCF && marker != 0xC4 && marker != 0xC8 && marker != 0xCC) {
                in.skipNBytes(3);
                int height = in.readUnsignedShort();
                return sized(in.readUnsignedShort(), height);
            }
            int length = in.readUnsignedShort();
            if (length < 2) {
                return Optional.empty();
            }
            in.skipNBytes(length - 2);
            if (in.readUnsignedByte() != BYTE) {
                return Optional.empty();
            }
        }
    }

    private static Optional<Size> sized(int width, int height) {
        return width > 0 && height > 0 ? Optional.of(new Size(width, height)) : Optional.empty();
    }
}
