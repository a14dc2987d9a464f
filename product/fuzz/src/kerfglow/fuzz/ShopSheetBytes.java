// SPDX-License-Identifier: Apache-2.0
package kerfglow.fuzz;

/** Any bytes as a shop sheet. */
public final class ShopSheetBytes {
    private static final Sheets SHEETS = new Sheets("shop-sheet");

    private ShopSheetBytes() {
    }

    public static void fuzzerTestOneInput(byte[] bytes) {
        SHEETS.tryAs(false, bytes);
    }
}
