// SPDX-License-Identifier: Apache-2.0
package kerfglow.worksheet;

import java.util.List;
import kerfglow.api.Table;
import kerfglow.api.proof.Part;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;

/**
 * The sheet of one part that is made of more than its outline: a letter with its back, its strips, its modules.
 *
 * @param part the face, or the drawn return
 * @param title in words
 * @param facts about it
 * @param tables of its strips, modules and weights
 * @param bends the bend table of each strip, in the order of the strips
 * @param drawing what is drawn of it
 */
public record LetterSheet(Part part, String title, List<Fact> facts, List<Table> tables, List<Table> bends, Drawn drawing) {
    /**
     * What is drawn of a letter beside its outline, mm.
     *
     * @param backs backs that were made or drawn for it
     * @param joints where strips begin and end
     * @param bends places of bends, numbered as in their tables
     * @param modules centres
     */
    public record Drawn(List<Geometry> backs, List<Coordinate> joints, List<Numbered> bends, List<Coordinate> modules) {
    }

    /** A place with the number that it has in its table. */
    public record Numbered(String number, Coordinate at) {
    }

    public LetterSheet {
        facts = List.copyOf(facts);
        tables = List.copyOf(tables);
        bends = List.copyOf(bends);
    }
}
