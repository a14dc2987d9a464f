// SPDX-License-Identifier: Apache-2.0
package kerfglow.worksheet;

import java.util.List;
import kerfglow.api.Table;
import kerfglow.job.ReviewedResult;

/**
 * The production worksheet of a result: what it is, what to mind, what the whole sign takes, every part, and a sheet for each letter. Numbers are those of the result;
 * what is added up says so.
 *
 * @param reviewed the result, with what was decided about it
 * @param header job, proof, revision
 * @param cautions what must be minded, one sentence each
 * @param totals what the whole sign takes
 * @param parts one row a part
 * @param letters one sheet for each part that is made of more than its outline
 * @param gaps what was not measured, one sentence each
 */
public record Worksheet(ReviewedResult reviewed, List<Fact> header, List<String> cautions, List<Table> totals, Table parts, List<LetterSheet> letters, List<String> gaps) {
    public Worksheet {
        header = List.copyOf(header);
        cautions = List.copyOf(cautions);
        totals = List.copyOf(totals);
        letters = List.copyOf(letters);
        gaps = List.copyOf(gaps);
    }

    /**
     * Makes the worksheet.
     *
     * @param revision what the person calls this revision; empty when they did not say
     * @param made when, as it shall read
     */
    public static Worksheet of(ReviewedResult reviewed, String revision, String made) {
        return new WorksheetMaker(reviewed, revision, made).make();
    }
}
