// SPDX-License-Identifier: Apache-2.0
package kerfglow.check.trim;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What all faces together take of one moulding.
 *
 * @param moulding which
 * @param faces how many faces
 * @param edges how many closed edges
 * @param lengthMm length of all edges, mm
 * @param joints how many joints
 * @param rolls how many rolls, when every edge is cut from one piece where a roll is long enough (longest first, each from the
 *     first roll that still holds it)
 */
record MouldingNeed(Moulding moulding, int faces, int edges, double lengthMm, int joints, int rolls) {
    static List<MouldingNeed> of(List<TrimmedFace> faces) {
        Map<Moulding, List<TrimmedFace>> byMoulding = new LinkedHashMap<>();
        faces.forEach(face -> byMoulding.computeIfAbsent(face.task().moulding(), moulding -> new ArrayList<>()).add(face));
        List<MouldingNeed> needs = new ArrayList<>();
        byMoulding.forEach((moulding, own) -> {
            List<Double> edges = own.stream().flatMap(face -> face.lengthsMm().stream()).sorted(Comparator.reverseOrder()).toList();
            needs.add(new MouldingNeed(moulding, own.size(), edges.size(), edges.stream().mapToDouble(Double::doubleValue).sum(),
                    own.stream().mapToInt(TrimmedFace::joints).sum(), rolls(edges, moulding.rollMm())));
        });
        return needs;
    }

    private static int rolls(List<Double> edges, double rollMm) {
        int whole = 0;
        List<Double> left = new ArrayList<>();
        for (double edge : edges) {
            int full = (int) (edge / rollMm);
            whole += full;
            double rest = edge - full * rollMm;
            int fits = -1;
            for (int i = 0; i < left.size() && fits < 0; i++) {
                fits = left.get(i) >= rest ? i : -1;
            }
            if (fits >= 0) {
                left.set(fits, left.get(fits) - rest);
            } else if (rest > 0) {
                left.add(rollMm - rest);
            }
        }
        return whole + left.size();
    }
}
