// SPDX-License-Identifier: Apache-2.0
package kerfglow.light;

/** Follows straight light through a can. Not for use by several threads at once. */
final class Room {
    private final Outline outline;
    private final Patches patches;
    private final double depth;
    private final Outline.Hit hit = new Outline.Hit();
    private double x;
    private double y;
    private double dx;
    private double dy;

    /** Where {@link #follow} came to. */
    double endX;
    double endY;
    /** Its height above the back, mm. */
    double endZ;
    /** The wall's edge, or -1 for back and face. */
    int edge;

    Room(Outline outline, Patches patches, double depth) {
        this.outline = outline;
        this.patches = patches;
        this.depth = depth;
    }

    /** Looks from a point in a plan direction; false where it sees nothing, as when it stands in the very corner of two walls. */
    boolean look(double fromX, double fromY, double directionX, double directionY) {
        x = fromX;
        y = fromY;
        dx = directionX;
        dy = directionY;
        outline.cast(x, y, dx, dy, hit);
        return hit.edge >= 0;
    }

    /** Follows a ray of the last {@link #look} from a height, rising by {@code up} while it goes {@code sideways}. */
    void follow(double z, double up, double sideways) {
        double height = z + hit.distance / sideways * up;
        boolean wall = height >= 0 && height <= depth;
        endZ = wall ? height : height < 0 ? 0 : depth;
        double distance = wall ? hit.distance : (endZ - z) / up * sideways;
        endX = x + dx * distance;
        endY = y + dy * distance;
        edge = wall ? hit.edge : -1;
    }

    /** The patch that {@link #follow} came to. */
    int patch() {
        if (edge < 0) {
            return patches.planAt(endX, endY) + (endZ > 0 ? patches.plan : 0);
        }
        int piece = patches.ringPieces[patches.ringOf(edge)] + (int) patches.alongRing(edge, endX, endY);
        return patches.wall(piece, Math.min(patches.bands - 1, (int) (endZ / depth * patches.bands)));
    }
}
