// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.legibility;

import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import kerfglow.api.Inspection;
import kerfglow.api.Settings;
import kerfglow.api.proof.Part;

/**
 * From how far a line must be readable, for whoever the job says reads it.
 *
 * <p>Standing: the distance given. Walking: that distance and the way that the reader goes while reading. Driving towards a sign that
 * faces the road: the way gone during the reaction time, before the point where the eye would have to turn too far, offset / tan(turn).
 * Driving past a sign alongside: where the line of sight first meets it at the least angle, offset / sin(angle).
 *
 * @param distanceMm from where it must be readable, mm; 0 when that is not known
 * @param words who reads, for messages
 * @param missing what is not given, or what else the person should know; empty when nothing
 */
record Reader(double distanceMm, String words, String missing) {
    private static final double MM_PER_M = 1000;
    private static final double SECONDS_PER_HOUR = 3600;
    private static final double MM_PER_MILE = 1_609_344; // exact: 5280 ft of 304.8 mm
    private static final double MM_PER_KM = 1e6;
    /** Assumed: an easy walk. */
    private static final double WALK_MM_PER_S = 1.4 * MM_PER_M;
    private static final Map<String, Double> SPEEDS = Map.of("mph", MM_PER_MILE / SECONDS_PER_HOUR, "km/h", MM_PER_KM / SECONDS_PER_HOUR,
            "m/s", MM_PER_M);
    private static final Pattern SPEED = Pattern.compile("(\\d+(?:\\.\\d+)?)\\s*(mph|km/h|m/s)");
    /** Defaults of legibility.reaction-time, seconds; their sources stand there. */
    private static final double FEW_LANES_S = 8;
    private static final double MANY_LANES_S = 10;
    private static final double WALK_S = 5;
    private static final int FEW_LANES = 2;

    static Reader of(Inspection inspection, Part part) {
        Settings settings = inspection.settings();
        double distance = settings.get(LegibilitySettings.DISTANCE, part);
        String reader = settings.get(LegibilitySettings.READER, part);
        if (reader.equals(LegibilitySettings.DRIVING)) {
            return driving(inspection, part);
        }
        if (distance <= 0) {
            return unknown("From how far the lettering must be read is not given (legibility.distance), so heights were measured and not compared.");
        }
        if (reader.equals(LegibilitySettings.STANDING)) {
            return new Reader(distance, "from " + inspection.length(distance), "");
        }
        String text = settings.get(LegibilitySettings.SPEED, part);
        double speed = text.isBlank() ? WALK_MM_PER_S : speedMmPerS(text);
        if (Double.isNaN(speed)) {
            return unreadable(text);
        }
        double time = given(settings.get(LegibilitySettings.REACTION_TIME, part), WALK_S);
        double from = distance + speed * time;
        return new Reader(from, "by a walker who has " + seconds(time) + " until " + inspection.length(distance) + " from it, so from "
                + inspection.length(from), "");
    }

    private static Reader driving(Inspection inspection, Part part) {
        Settings settings = inspection.settings();
        String text = settings.get(LegibilitySettings.SPEED, part);
        if (text.isBlank()) {
            return unknown("How fast drivers go is not given (legibility.speed), so heights were measured and not compared.");
        }
        double speed = speedMmPerS(text);
        if (Double.isNaN(speed)) {
            return unreadable(text);
        }
        int lanes = settings.get(LegibilitySettings.LANES, part);
        double time = given(settings.get(LegibilitySettings.REACTION_TIME, part), lanes <= FEW_LANES ? FEW_LANES_S : MANY_LANES_S);
        double offset = settings.get(LegibilitySettings.OFFSET, part);
        double way = speed * time;
        if (settings.get(LegibilitySettings.FACES, part).equals(LegibilitySettings.FACING)) {
            double turn = Math.toRadians(settings.get(LegibilitySettings.EYE_TURN, part));
            double from = offset / Math.tan(turn) + way;
            return new Reader(from, "by a driver at " + text.strip() + " within " + seconds(time) + ", so from " + inspection.length(from), "");
        }
        if (offset <= 0) {
            return unknown("How far beside the road the sign alongside stands is not given (legibility.offset), so heights were not compared.");
        }
        double angle = Math.toRadians(settings.get(LegibilitySettings.LEAST_VIEW, part));
        double from = offset / Math.sin(angle);
        double inView = offset / Math.tan(angle) / speed;
        String shortTime = inView >= time ? "" : "At " + text.strip() + " a sign alongside at " + inspection.length(offset) + " is in view for "
                + seconds(inView) + "; reading it is reckoned to take " + seconds(time) + ". Heights were compared where it comes into view.";
        return new Reader(from, "by a driver past it, so from " + inspection.length(from), shortTime);
    }

    boolean isKnown() {
        return distanceMm > 0;
    }

    /** Millimetres a second, or NaN for what cannot be read. */
    static double speedMmPerS(String text) {
        Matcher parts = SPEED.matcher(text.strip().toLowerCase(Locale.ROOT));
        return parts.matches() ? Double.parseDouble(parts.group(1)) * SPEEDS.get(parts.group(2)) : Double.NaN;
    }

    private static double given(double seconds, double otherwise) {
        return seconds > 0 ? seconds : otherwise;
    }

    private static String seconds(double value) {
        return String.format(Locale.ROOT, "%.1f s", value);
    }

    private static Reader unreadable(String text) {
        return unknown("The speed \"" + text + "\" cannot be read: write for instance 45 mph, 70 km/h or 1.4 m/s (legibility.speed).");
    }

    private static Reader unknown(String missing) {
        return new Reader(0, "", missing);
    }
}
