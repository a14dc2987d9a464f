// SPDX-License-Identifier: Apache-2.0
package kerfglow.light.layout;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import kerfglow.light.Can;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.simplify.TopologyPreservingSimplifier;

/**
 * Lays light modules out in a can: few of them, on the centre lines of the strokes or in rows where a stroke is wide, turned along it, so that the
 * darkest place of the lit face keeps the wanted share of the mean. Fixed modules stay and are built upon. The same request gives the same
 * layout, and a turned or moved one gives it turned or moved. Where the target is out of reach, the best that was found with as few modules as give it.
 *
 * <p>It is a search and gives no proof that fewer would not do; tests hold it against brute force on small letters.
 */
public final class Layouter {
    /** Assumed: this much of an outline's wiggle, mm, changes no light worth looking at. */
    private static final double SMOOTH_MM = 0.2;
    /** Pitches that a search starts from, in the pitch that the series of the endless row asks for; reflecting walls bear wider ones. Assumed. */
    private static final double[] STARTS = {2, 1.4, 1, 0.7, 0.5};
    /** Likewise for a long row whose ends are lit apart: the series leaves out that its modules lie at steps of the sites. */
    private static final double[] LONG_STARTS = {1, 0.95};
    /** Likewise where bright spots decide the pitch. */
    private static final double[] EVEN_STARTS = {1.5, 1.25, 1.05, 0.9, 0.75, 0.6, 0.5};
    /** How far modules are moved in one step, in heights. Assumed. */
    private static final double MOVES = 0.7;
    private static final double LEAST_MOVE_MM = 12;
    /** Times that the light which surfaces send on is reckoned anew for the whole layout and the search goes on. Assumed: it settles in two or three. */
    private static final int MOST_LOOKS = 6;
    /** So much more is wanted at each look, as a share, because moved modules make surfaces send on other light than reckoned. Assumed. */
    private static final double MORE_A_LOOK = 0.01;
    /** Wanted so much more than asked for, as a share, so that another map of the same light with cells elsewhere still has it. Assumed. */
    private static final double MARGIN = 0.01;
    /** Likewise of the contrast so much is made use of. */
    private static final double CONTRAST_LEFT = 0.7;
    /** Pitches that are tried for an even layout, in the pitch that the series of the endless row asks for, and the step from one to the next. Assumed. */
    private static final double MOST_EVEN_PITCH = 3;
    private static final double LEAST_EVEN_PITCH = 0.25;
    private static final double EVEN_STEP = 0.96;
    /** Where the target is out of reach, modules may go that cost less than this share of what was reached. Assumed. */
    private static final double KEEPS = 0.99;

    private final LayoutRequest request;
    private final Runnable pulse;
    private final List<CentreLine> lines;
    private final List<Site> sites;
    private final Target target;
    private final RowSeries series;
    private final Map<Target, Double> pitches = new HashMap<>();

    private Layouter(LayoutRequest request, Runnable pulse) {
        this.request = request;
        this.pulse = pulse;
        lines = CentreLines.of(request.can().inside(), pulse);
        sites = Sites.of(request, lines, pulse);
        target = wanted(1 + MARGIN);
        series = new RowSeries(request.type());
    }

    /**
     * Lays out.
     *
     * @param request what is to be lit, and by what
     * @param pulse called often, for progress; throws when the work is over
     * @throws IllegalArgumentException when the emitters stand at or beyond the face
     */
    public static Layout layout(LayoutRequest request, Runnable pulse) {
        if (request.type().heightMm() >= request.can().depthMm()) {
            throw new IllegalArgumentException("emitter height must be below the depth of " + request.can().depthMm() + " mm, not " + request.type().heightMm());
        }
        Pose pose = Pose.of(request.can().inside());
        Polygon inside = (Polygon) smooth(pose.into(request.can().inside()));
        Geometry lit = request.can().lit() == request.can().inside() ? inside : smooth(pose.into(request.can().lit()));
        LayoutRequest inPose = new LayoutRequest(new Can(inside, lit, request.can().depthMm(), request.can().finish()), request.type(),
                pose.into(request.keepClear()), request.edgeMm(), request.clearMm(), request.gapMm(), request.cablePitchMm(),
                request.fixed().stream().map(pose::into).toList(), request.uniformity(), request.contrast(), request.eyeMm());
        Layout found = new Layouter(inPose, pulse).find();
        return new Layout(found.modules().stream().map(pose::back).toList(), found.pitchMm(), found.uniformity(), found.contrast(), found.reached(), found.limits(),
                pose.back(found.dark()), found.neededDepthMm());
    }

    private static Geometry smooth(Geometry area) {
        Geometry smooth = TopologyPreservingSimplifier.simplify(area, SMOOTH_MM);
        return smooth.isValid() && !smooth.isEmpty() && smooth.getGeometryType().equals(area.getGeometryType()) ? smooth : area;
    }

    private Layout find() {
        if (sites.isEmpty()) {
            return Verdict.noRoom(request);
        }
        Lighting lighting = new Lighting(request, sites, pulse);
        if (lighting.cells() == 0) {
            return Verdict.noRoom(request);
        }
        Samples samples = new Samples(lighting, sites.size());
        Base fixed = new Base(lighting.of(request.fixed()), lighting.seen(request.fixed()));
        Search search = new Search(request, sites, Math.max(LEAST_MOVE_MM, MOVES * request.heightMm()), pulse);
        Choice chosen = first(search, samples, fixed.plus(lighting.correction(even(search, samples, fixed))), target);
        Choice best = null;
        for (int look = 0; look < MOST_LOOKS; look++) {
            Base base = fixed.plus(lighting.correction(chosen.sites()));
            Choice now = chosen.over(base, target).lookedCloser();
            best = best == null || isMet(now) || now.merit() > best.merit() ? now : best;
            if (isMet(now)) {
                break;
            }
            chosen = search.grown(now.toward(wanted(1 + MARGIN + look * MORE_A_LOOK)));
            if (!Search.isReached(chosen)) {
                chosen = better(chosen, first(search, samples, base, chosen.target()));
            }
            search.chain(chosen);
        }
        Choice ended = evened(search, lighting, samples, fixed, isMet(best) ? leaner(search, lighting, samples, fixed, best) : fewer(search, best));
        Base base = fixed.plus(lighting.correction(ended.sites()));
        return new Verdict(request, lighting, sites).layout(samples.total(base, ended.sites()), samples.seenTotal(base, ended.sites()), ended.sites(),
                search.isChained(ended));
    }

    /** With fewer modules where that is still met when the light that surfaces send on is reckoned anew. */
    private Choice leaner(Search search, Lighting lighting, Samples samples, Base fixed, Choice met) {
        Choice best = met;
        for (int look = 1; look <= MOST_LOOKS; look++) {
            Choice fewer = search.reduced(met.toward(wanted(1 + MARGIN + look * MORE_A_LOOK)));
            Choice now = fewer.size() < best.size() ? fewer.over(fixed.plus(lighting.correction(fewer.sites())), target) : best;
            if (now == best || isMet(now)) {
                return now;
            }
        }
        return best;
    }

    /** As many modules at one pitch, where that does not fall short of what a search put anywhere: even rows look better and are set out faster. */
    private Choice evened(Search search, Lighting lighting, Samples samples, Base fixed, Choice found) {
        for (double pitch = pitch(target) * MOST_EVEN_PITCH; pitch > pitch(target) * LEAST_EVEN_PITCH; pitch *= EVEN_STEP) {
            pulse.run();
            Choice even = Choice.none(samples, fixed, target);
            new Pattern(sites, lines).sites(pitch).stream().filter(site -> search.isFree(even, site, -1)).forEach(even::add);
            if (even.size() > found.size()) {
                return found;
            }
            if (even.size() == found.size() && search.isChained(even)) {
                Choice now = even.over(fixed.plus(lighting.correction(even.sites())), target);
                if (isMet(now) || !isMet(found) && now.merit() >= found.merit()) {
                    return now;
                }
            }
        }
        return found;
    }

    /** Sites at the pitch that an even row asks for: a first idea of what surfaces send on. */
    private List<Integer> even(Search search, Samples samples, Base fixed) {
        return chosen(search, Choice.none(samples, fixed, target), new Pattern(sites, lines).sites(pitch(target))).sites();
    }

    private double pitch(Target wanted) {
        return pitches.computeIfAbsent(wanted, this::pitchOf);
    }

    private double pitchOf(Target wanted) {
        double pitch = series.pitchMm(wanted.uniformity(), request.heightMm());
        return Double.isFinite(wanted.contrast()) ? Math.min(pitch, series.pitchOfContrastMm(wanted.contrast(), request.heightMm())) : pitch;
    }

    /** True when all cells keep what was asked for. */
    private boolean isMet(Choice choice) {
        return choice.uniformity() >= request.uniformity() * (1 + MARGIN / 2) && !choice.hasSpots();
    }

    private Target wanted(double times) {
        return new Target(Math.min(Verdict.MOST_UNIFORM, request.uniformity() * times), request.contrast() * CONTRAST_LEFT);
    }

    /** Where the target is out of reach, what can be left out for next to nothing. */
    private static Choice fewer(Search search, Choice chosen) {
        Choice lower = chosen.toward(new Target(Math.min(chosen.target().uniformity(), chosen.uniformity() * KEEPS), chosen.contrast()));
        return Search.isReached(lower) ? search.reduced(lower) : lower;
    }

    /** The fewest that some starts lead to; denser ones are tried only where the others do not get there. */
    private Choice first(Search search, Samples samples, Base base, Target wanted) {
        double pitch = pitch(wanted);
        boolean isEven = pitch < pitch(new Target(wanted.uniformity(), Double.POSITIVE_INFINITY));
        Pattern pattern = new Pattern(sites, lines);
        Choice best = ended(search, Choice.none(samples, base, wanted));
        for (double start : isEven ? new double[0] : LONG_STARTS) {
            double end = series.endMm(wanted.uniformity(), start * pitch, request.heightMm());
            best = better(best, ended(search, chosen(search, Choice.none(samples, base, wanted), pattern.between(start * pitch, end))));
        }
        for (double start : isEven ? EVEN_STARTS : STARTS) {
            if (start < 1 && Search.isReached(best)) {
                break;
            }
            pulse.run();
            best = better(best, ended(search, chosen(search, Choice.none(samples, base, wanted), pattern.sites(start * pitch))));
        }
        return best;
    }

    private static Choice chosen(Search search, Choice choice, List<Integer> sites) {
        sites.stream().filter(site -> search.isFree(choice, site, -1)).forEach(choice::add);
        return choice;
    }

    private static Choice ended(Search search, Choice start) {
        Choice grown = search.grown(start);
        search.chain(grown);
        return Search.isReached(grown) ? search.reduced(grown) : grown;
    }

    /** The one that reaches the target, with fewer modules, or else the one that comes nearer to it; the first of equals. */
    private static Choice better(Choice one, Choice other) {
        boolean reached = Search.isReached(one);
        if (reached != Search.isReached(other)) {
            return reached ? one : other;
        }
        boolean isOther = reached ? other.size() < one.size() : other.merit() > one.merit();
        return isOther ? other : one;
    }
}
