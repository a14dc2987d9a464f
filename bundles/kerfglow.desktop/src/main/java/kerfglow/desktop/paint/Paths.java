// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.paint;

import java.util.List;
import kerfglow.desktop.scene.Outlines;
import kerfglow.desktop.scene.View;
import org.eclipse.swt.graphics.Device;
import org.eclipse.swt.graphics.Path;

/** Turns outlines in millimetres into paths of the toolkit in pixels. Whoever asks for a path disposes it. */
final class Paths {
    private Paths() {
    }

    static Path path(Device device, List<Outlines.Line> lines, View view) {
        Path path = new Path(device);
        for (Outlines.Line line : lines) {
            double[] xy = line.xy();
            path.moveTo((float) view.toPixelX(xy[0]), (float) view.toPixelY(xy[1]));
            int last = line.closed() ? xy.length - 2 : xy.length; // a ring's last point is its first
            for (int i = 2; i < last; i += 2) {
                path.lineTo((float) view.toPixelX(xy[i]), (float) view.toPixelY(xy[i + 1]));
            }
            if (line.closed()) {
                path.close();
            }
        }
        return path;
    }
}
