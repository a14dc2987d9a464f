// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

/**
 * What one file may cost. Each limit lies far above what a sign's proof needs and below what harms a machine with 1 GiB for the
 * program; crossing one ends the import with a message that names it.
 *
 * @param fileBytes bytes of the file, and of its contents when it is packed
 * @param nesting elements inside each other, in the file and through {@code use}
 * @param elements elements in the file
 * @param attributeCharacters characters in one attribute
 * @param drawnElements elements walked once {@code use} is followed
 * @param flattenedVertices corners of all outlines after flattening
 * @param dashes dashes of one stroke
 * @param clipShapes shapes of all clip paths that have to be worked out
 * @param styleMatches steps of matching style rules to elements
 * @param entities entities that the file declares
 * @param entityCharacters characters in one entity
 * @param notes notes kept; later ones are only counted
 */
record Limits(long fileBytes, int nesting, int elements, int attributeCharacters, int drawnElements, int flattenedVertices,
        int dashes, int clipShapes, long styleMatches, int entities, int entityCharacters, int notes) {
    /** Assumed: a proof of two thousand letters is about 5 MB; text is held twice, so this stays below a quarter of 1 GiB. */
    private static final long FILE_BYTES = 64L << 20;
    /** Assumed: drawing programs nest 5 to 30 deep; each level costs three Java frames of a stack of half a megabyte. */
    private static final int NESTING = 256;
    /** Assumed: fifty times a large proof; an element costs about 1 kB. */
    private static final int ELEMENTS = 200_000;
    /** Assumed: the outline of a whole script line is below 1 MB. */
    private static final int ATTRIBUTE_CHARACTERS = 16 << 20;
    /** As {@link #ELEMENTS}: what is used many times costs as much as what is written many times. */
    private static final int DRAWN_ELEMENTS = 200_000;
    /** Assumed: four times a proof of 2,000 letters (490,000); a corner costs up to 250 bytes in outline, nodes and area. */
    private static final int FLATTENED_VERTICES = 2_000_000;
    /** Assumed: a 10 m line dashed at 1 mm has 5,000. */
    private static final int DASHES = 100_000;
    /** Assumed: ten shapes for each letter of a large proof; clips inside clips multiply, and each costs an intersection. */
    private static final int CLIP_SHAPES = 20_000;
    /** Assumed: a hundred rules for each of 200,000 elements, twice over; takes a second or two. */
    private static final long STYLE_MATCHES = 40_000_000;
    /** Assumed: design programs declare about ten names of namespaces. */
    private static final int ENTITIES = 100;
    /** Assumed: a namespace name is shorter than this. */
    private static final int ENTITY_CHARACTERS = 256;
    /** Assumed: nobody reads more. */
    private static final int NOTES = 5_000;

    /** The limits that hold for every import. */
    static Limits standard() {
        return new Limits(FILE_BYTES, NESTING, ELEMENTS, ATTRIBUTE_CHARACTERS, DRAWN_ELEMENTS, FLATTENED_VERTICES, DASHES,
                CLIP_SHAPES, STYLE_MATCHES, ENTITIES, ENTITY_CHARACTERS, NOTES);
    }
}
