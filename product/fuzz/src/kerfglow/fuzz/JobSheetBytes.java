// SPDX-License-Identifier: Apache-2.0
package kerfglow.fuzz;

/** Any bytes as a job sheet. */
public final class JobSheetBytes {
    private static final Sheets SHEETS = new Sheets("job-sheet");

    private JobSheetBytes() {
    }

    public static void fuzzerTestOneInput(byte[] bytes) {
        SHEETS.tryAs(true, bytes);
    }
}
