package kerfglow.geometry;
public final class Congruence { public static boolean congruent(org.locationtech.jts.geom.Geometry a, org.locationtech.jts.geom.Geometry b, double t) { return false; } }
