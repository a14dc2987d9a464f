// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import kerfglow.api.proof.ImportOptions;
import org.locationtech.jts.geom.GeometryFactory;

/** What every part of one import works with. */
record Drawing(SvgSource source, ImportOptions options, Limits limits, Budget budget, Report report, Cascade cascade, Paints paints,
        Shapes shapes, GeometryFactory factory) {
    static Drawing of(SvgSource source, ImportOptions options, Limits limits) {
        Report report = new Report(limits, source.lines());
        Cascade cascade = new Cascade(source, report, options.unitsPerInch());
        return new Drawing(source, options, limits, new Budget(limits), report, cascade, new Paints(source, cascade, report),
                new Shapes(report), new GeometryFactory());
    }
}
