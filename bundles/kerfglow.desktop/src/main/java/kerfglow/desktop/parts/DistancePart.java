// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.parts;

import jakarta.annotation.PostConstruct;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import kerfglow.api.OverlayLayer;
import kerfglow.api.Quantity;
import kerfglow.api.SharedSettings;
import kerfglow.api.Units;
import kerfglow.api.proof.Role;
import kerfglow.desktop.desk.Desk;
import kerfglow.desktop.desk.Topic;
import kerfglow.desktop.paint.NightPainter;
import kerfglow.desktop.paint.Palette;
import kerfglow.desktop.paint.ScenePainter;
import kerfglow.desktop.scene.Figure;
import kerfglow.desktop.scene.Sight;
import kerfglow.desktop.scene.View;
import kerfglow.host.Result;
import org.eclipse.e4.ui.di.Focus;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Scale;
import org.eclipse.swt.widgets.Text;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;

/** Stepping back: the proof under the angle that it will be seen under, by day on its wall and by night as it is lit. */
public final class DistancePart {
    private static final Set<Role> LIT = Set.of(Role.FACE, Role.OPENING, Role.PUSH_THROUGH);
    /** The slider runs from 1 m to 1 km, evenly to the eye. */
    private static final double NEAREST_MM = 1000;
    private static final double FARTHEST_MM = 1e6;
    private static final int STEPS = 300;
    private static final Set<Role> FILM = Set.of(Role.VINYL, Role.PRINT);
    private static final Set<String> UNLIT_BUILDS = Set.of("halo-lit letters", "flat cut letters", "vinyl"); // words of JobSheet.BUILDS
    private static final int DEFAULT_WALL = 0xb9b6ae;

    private Desk desk;
    private Canvas canvas;
    private Text distance;
    private Text eye;
    private Scale slider;
    private Button night;
    private Label words;
    private final ScenePainter scenePainter = new ScenePainter();
    private final NightPainter nightPainter = new NightPainter();
    private Sight sight = new Sight(Sight.USUAL_DISTANCE_MM, Sight.USUAL_EYE_MM);

    @PostConstruct
    void create(Composite parent, Desk newDesk) {
        desk = newDesk;
        GridLayout layout = new GridLayout(1, false);
        layout.marginWidth = 0;
        layout.marginHeight = 0;
        layout.verticalSpacing = 0;
        parent.setLayout(layout);
        createControls(parent);
        canvas = new Canvas(parent, SWT.DOUBLE_BUFFERED | SWT.NO_BACKGROUND);
        canvas.setLayoutData(new GridData(SWT.FILL, SWT.FILL, true, true));
        Accessible.name(canvas, "The proof as it looks from the distance");
        canvas.addListener(SWT.Paint, event -> paint(event.gc));
        canvas.addListener(SWT.Dispose, event -> nightPainter.dispose());
        Listening.to(desk, canvas, Topic.PROOF, this::askJob);
        Listening.to(desk, canvas, Topic.FINDINGS, this::askJob);
        Listening.to(desk, canvas, Topic.LOOK, canvas::redraw);
        Listening.to(desk, canvas, Topic.SHOWN, canvas::redraw);
        Skin.wear(parent, desk);
        askJob();
    }

    private void createControls(Composite parent) {
        Composite row = new Composite(parent, SWT.NONE);
        row.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false));
        GridLayout controls = new GridLayout(7, false);
        controls.horizontalSpacing = 10;
        row.setLayout(controls);
        new Label(row, SWT.NONE).setText("Seen from");
        distance = field(row, "Distance from the eye to the sign", 80);
        slider = new Scale(row, SWT.HORIZONTAL);
        slider.setMaximum(STEPS);
        slider.setIncrement(5);
        slider.setPageIncrement(25);
        slider.setToolTipText("Nearer and farther, from 1 m to 1 km");
        Accessible.name(slider, "Distance, from 1 m to 1 km");
        slider.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false));
        slider.addListener(SWT.Selection, event -> setSight(new Sight(NEAREST_MM * Math.pow(FARTHEST_MM / NEAREST_MM, slider.getSelection() / (double) STEPS), sight.eyeMm())));
        night = new Button(row, SWT.CHECK);
        night.setText("by night");
        night.setToolTipText("The wall dark, the lit faces with the light map where there is one");
        night.addListener(SWT.Selection, event -> canvas.redraw());
        new Label(row, SWT.NONE).setText("Eye to screen");
        eye = field(row, "Distance from the eye to the screen", 80);
        words = new Label(parent, SWT.WRAP);
        GridData room = new GridData(SWT.FILL, SWT.CENTER, true, false);
        room.horizontalIndent = 6;
        room.widthHint = 200;
        words.setLayoutData(room);
    }

    private Text field(Composite row, String name, int width) {
        Text field = new Text(row, SWT.BORDER | SWT.RIGHT);
        GridData data = new GridData(SWT.LEFT, SWT.CENTER, false, false);
        data.widthHint = width;
        field.setLayoutData(data);
        field.setToolTipText(name + "; Enter takes it");
        Accessible.name(field, name);
        field.addListener(SWT.DefaultSelection, event -> read());
        field.addListener(SWT.FocusOut, event -> read());
        return field;
    }

    private void read() {
        try {
            setSight(new Sight(Units.lengthMm(distance.getText()), Units.lengthMm(eye.getText())));
        } catch (IllegalArgumentException unreadable) {
            setSight(sight);
        }
    }

    /** The job says from where the sign is read. */
    private void askJob() {
        double given = desk.result().stream().flatMap(result -> result.settings().stream()).filter(used -> used.key().equals(SharedSettings.READING_DISTANCE.key()))
                .filter(used -> used.value() instanceof Double).mapToDouble(used -> (Double) used.value()).filter(value -> value > 0).findFirst().orElse(sight.distanceMm());
        setSight(new Sight(given, sight.eyeMm()));
    }

    private void setSight(Sight value) {
        sight = value;
        distance.setText(Units.format(value.distanceMm(), Quantity.LENGTH, desk.units()));
        eye.setText(Units.format(value.eyeMm(), Quantity.LENGTH, desk.units()));
        slider.setSelection((int) Math.round(STEPS * Math.log(value.distanceMm() / NEAREST_MM) / Math.log(FARTHEST_MM / NEAREST_MM)));
        Words.put(words, desk.proof().map(proof -> String.format(Locale.ROOT, "The proof is seen %.0f by %.0f minutes of arc wide and high. Sit %s from the screen. By night: %s.",
                value.minutesOfArc(proof.widthMm()), value.minutesOfArc(proof.heightMm()), Units.format(value.eyeMm(), Quantity.LENGTH, desk.units()),
                nightWords())).orElse(""));
        canvas.redraw();
    }

    private List<OverlayLayer> lightMaps() {
        return desk.result().stream().flatMap(result -> result.checks().stream()).flatMap(row -> row.layers().stream()).filter(layer -> layer.raster().isPresent()).toList();
    }

    /** What the night is drawn from. */
    private String nightWords() {
        Optional<OverlayLayer> map = lightMaps().stream().findFirst();
        if (map.isPresent()) {
            List<OverlayLayer.LegendEntry> legend = map.get().legend();
            return "as bright as the light check found; in full colour is what has " + (legend.isEmpty() ? "most" : legend.get(legend.size() - 1).label());
        }
        return isFaceLit() ? "lit faces are drawn evenly bright, since no check gave a light map" : "nothing is drawn lit: this build has no lit faces, and no check gave a light map of the wall";
    }

    private void paint(GC gc) {
        Point size = canvas.getSize();
        Rectangle all = new Rectangle(0, 0, size.x, size.y);
        Palette palette = Palette.of(desk.isDark());
        gc.setBackground(Palette.colour(wall()));
        gc.fillRectangle(all);
        double scale = Math.max(View.LEAST_PIXELS_PER_MM, Math.min(View.MOST_PIXELS_PER_MM, sight.pixelsPerMm(desk.screen().pixelsPerMm())));
        View view = View.centred(middle(), scale, size.x, size.y);
        scenePainter.paintArtwork(gc, desk.scene(), view, all, DistancePart::isMade, palette);
        if (night.getSelection()) {
            List<OverlayLayer.Raster> maps = lightMaps().stream().flatMap(map -> map.raster().stream()).toList();
            nightPainter.paint(gc, maps, view, all);
            if (maps.isEmpty() && isFaceLit()) {
                scenePainter.paintArtwork(gc, desk.scene(), view, all, this::isLit, palette);
            }
        }
    }

    /** Lit faces, and the film on them, which light goes through. */
    private boolean isLit(Figure figure) {
        return figure.roles().stream().anyMatch(LIT::contains)
                || figure.roles().stream().anyMatch(FILM::contains) && desk.scene().meeting(figure.extent()).stream().anyMatch(other -> other.roles().stream().anyMatch(LIT::contains)
                        && other.extent().contains(figure.extent()));
    }

    /** The other builds light the wall or nothing. */
    private boolean isFaceLit() {
        return desk.result().flatMap(result -> result.job().build()).filter(UNLIT_BUILDS::contains).isEmpty();
    }

    /** The middle of what is made, so that the sign stands straight before the eye. */
    private Coordinate middle() {
        Envelope made = new Envelope();
        desk.scene().figures().stream().filter(DistancePart::isMade).forEach(figure -> made.expandToInclude(figure.extent()));
        return made.isNull() ? desk.scene().page().centre() : made.centre();
    }

    /** What stands on the wall in the end: notes, holes and backs are not seen. */
    private static boolean isMade(Figure figure) {
        return figure.kind() == Figure.Kind.PAINTED && figure.roles().stream().anyMatch(role -> role != Role.BACK && role != Role.HOLE && role != Role.MODULE);
    }

    /** The wall's colour as the job names it. */
    private int wall() {
        String given = desk.result().stream().flatMap(result -> result.settings().stream()).filter(used -> used.key().equals(SharedSettings.WALL_COLOUR.key()))
                .map(Result.SettingUsed::value).filter(String.class::isInstance).map(String.class::cast).filter(text -> text.matches("#[0-9a-fA-F]{6}")).findFirst().orElse("");
        return given.isEmpty() ? DEFAULT_WALL : Integer.parseInt(given.substring(1), 16);
    }

    @Focus
    void focus() {
        distance.setFocus();
    }
}
