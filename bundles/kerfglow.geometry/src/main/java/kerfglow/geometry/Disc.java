// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import org.locationtech.jts.geom.Coordinate;

/**
 * An inscribed disc: it touches its owner, the feature, and nothing stands in it.
 *
 * @param site the owner, an edge or a corner ({@link Contacts})
 * @param place where on the owner
 * @param radiusMm its radius
 * @param centreX its centre
 * @param centreY its centre
 * @param touchX where it touches the owner
 * @param touchY where it touches the owner
 * @param feature the other wall
 * @param featurePlace where on the feature
 * @param separation angle between the two contacts seen from the centre, radians
 */
record Disc(int site, double place, double radiusMm, double centreX, double centreY, double touchX, double touchY, int feature,
        double featurePlace, double separation) {
    Coordinate centre() {
        return new Coordinate(centreX, centreY);
    }

    Coordinate touch() {
        return new Coordinate(touchX, touchY);
    }

    double widthMm() {
        return 2 * radiusMm;
    }

    double distanceTo(double x, double y) {
        double dx = centreX - x;
        double dy = centreY - y;
        return Math.sqrt(dx * dx + dy * dy); // a sign's millimetres cannot overflow, and Math.hypot is ten times slower
    }
}
