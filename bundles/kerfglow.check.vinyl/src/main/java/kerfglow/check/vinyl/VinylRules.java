// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.vinyl;

import java.util.List;
import kerfglow.api.Rule;
import kerfglow.api.Severity;

/** What the check of film can report. */
final class VinylRules {
    static final Rule SMALL_PIECE = new Rule("vinyl.small-piece", Severity.REVIEW,
            "A piece of film, or of its waste, is too small to weed or to stick",
            "A piece this small lifts with the waste or with the transfer tape; waste this small is picked out one by one, if it is seen at all.",
            "Make it larger, join it to its neighbour, leave it out, or have it printed.",
            "\"Vinyl Cutting\" and \"Cut Vinyl Lettering\", two shops' pages: 2 mm square");
    static final Rule THIN = new Rule("vinyl.thin", Severity.REVIEW,
            "A stroke of film, or a sliver of its waste, is thinner than can be cut and weeded",
            "The knife drags a thin stroke off its liner, it stretches when it is weeded, and it has too little glue to hold.",
            "Widen the stroke or the gap, or have it printed.",
            "\"Vinyl Cutting\" and \"Cut Vinyl Lettering\", two shops' pages: strokes of 2 mm and more");
    static final Rule OVERLAP = new Rule("vinyl.overlap", Severity.REVIEW,
            "Two colours of film that meet overlap too little, or repeat one edge",
            "Film shrinks and is laid by hand. Where two colours only just meet a gap opens, a bright line when lit; where the upper one repeats an edge "
                    + "of the lower, the lower shows beside it.",
            "Let the lower colour run on below the upper one; let the upper one stand back from the edge, or run past it.",
            "adjoining layers overlap, else light shows as the film shrinks: a shop's advice in a forum; amount: common practice, no source");
    static final Rule SEAM = new Rule("vinyl.seam", Severity.REVIEW,
            "A piece of film is wider than the roll and is laid in panels",
            "The seam is seen from near, lit from behind it is a dark line as wide as the overlap, and it is where film lifts first.",
            "Use a wider roll, or agree on the seams; they are drawn where they cross least detail.",
            "geometry: the hull of the piece on the roll less its margins, at every angle");
    static final Rule USE = new Rule("vinyl.use", Severity.INFO,
            "How much film of each colour the sign takes",
            "Film is ordered by the metre and paid for with its waste; intricate work costs more in weeding than in film.",
            "Order by the metres, and let the nesting of the plotter better them.",
            "shelf packing of the rectangles around the pieces, largest first: an estimate; bound: geometry");

    static final List<Rule> ALL = List.of(SMALL_PIECE, THIN, OVERLAP, SEAM, USE);

    private VinylRules() {
    }
}
