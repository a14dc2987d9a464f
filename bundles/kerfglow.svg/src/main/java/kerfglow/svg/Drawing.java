// SPDX-License-Identifier: Apache-2.0
package kerfglow.svg;

import java.util.function.Supplier;
import kerfglow.api.proof.ImportOptions;
import org.locationtech.jts.geom.GeometryFactory;

/** What every part of one import works with. */
record Drawing(SvgSource source, ImportOptions options, Limits limits, Budget budget, Report report, Cascade cascade, Paints paints,
        Shapes shapes, Supplier<Fonts> fonts, GeometryFactory factory) {
    static Drawing of(SvgSource source, ImportOptions options, Limits limits, Supplier<Fonts> fonts) {
        Report report = new Report(limits, source.lines());
        Budget budget = new Budget(limits);
        Cascade cascade = new Cascade(source, report, budget, options.unitsPerInch());
        return new Drawing(source, options, limits, budget, report, cascade, new Paints(source, cascade, report),
                new Shapes(report), fonts, new GeometryFactory());
    }
}
