// SPDX-License-Identifier: Apache-2.0
package kerfglow.testkit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import java.util.function.Supplier;
import kerfglow.api.Check;
import kerfglow.api.Finding;
import kerfglow.api.Inspection;
import kerfglow.api.Outcome;
import kerfglow.api.PlacedModule;
import kerfglow.api.Rule;
import kerfglow.api.Setting;
import kerfglow.api.Settings;
import kerfglow.api.StockItem;
import kerfglow.api.StockKind;
import kerfglow.api.Table;
import kerfglow.api.UnitSystem;
import kerfglow.api.proof.Element;
import kerfglow.api.proof.ImportNote;
import kerfglow.api.proof.Part;
import kerfglow.api.proof.Proof;
import kerfglow.api.proof.ProofImporter;
import kerfglow.api.proof.Role;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;

/**
 * Runs one check on a few shapes given as WKT, without host and framework, or on a drawing given as SVG, through the host.
 *
 * <pre>{@code
 * CheckTester.of(new SeamCheck()).with(SeamCheck.LEAST, 3.0)
 *         .part("a", Role.FACE, "POLYGON ((0 0, 10 0, 10 2, 0 2, 0 0))")
 *         .expect(SeamCheck.THIN, "POINT (5 1)", 2.0)
 *         .verify();
 * }</pre>
 *
 * {@link #verify} fails on whatever is missing and on whatever is not expected. Settings given with {@link #with} hold for everything; what
 * scopes do is the host's and tested there.
 */
public final class CheckTester {
    private static final double PAGE_MM = 1000;
    /** Measures of flattened outlines are right to this: the chord error of the import. */
    private static final double TOLERANCE_MM = 0.02;

    private final Check check;
    private final List<Part> parts = new ArrayList<>();
    private final List<Element> elements = new ArrayList<>();
    private final List<ImportNote> notes = new ArrayList<>();
    private final Map<String, Object> values = new HashMap<>();
    private final Map<String, List<StockItem>> stock = new HashMap<>();
    private final Map<String, List<Table>> tables = new HashMap<>();
    private final List<PlacedModule> modules = new ArrayList<>();
    private final List<Expectation> expectations = new ArrayList<>();
    private String build;
    private String svg;
    private String jobSheet = "";
    private Supplier<ProofImporter> importer = HostRun::importer;
    private double toleranceMm = TOLERANCE_MM;
    private double widthMm = PAGE_MM;
    private double heightMm = PAGE_MM;
    private UnitSystem units = UnitSystem.METRIC;
    private Consumer<Double> checkpoint = fraction -> { };

    private CheckTester(Check check) {
        this.check = check;
    }

    public static CheckTester of(Check check) {
        return new CheckTester(check);
    }

    /** A geometry from WKT, mm. */
    public static Geometry wkt(String text) {
        try {
            return new WKTReader().read(text);
        } catch (ParseException wrong) {
            throw new IllegalArgumentException(text, wrong);
        }
    }

    /** Adds a part drawn as a plain shape. */
    public CheckTester part(String id, Role role, String polygonWkt) {
        return part(Part.builder(id, role, (Polygon) wkt(polygonWkt)).elements(List.of(id)).build());
    }

    public CheckTester part(Part part) {
        parts.add(part);
        return this;
    }

    public CheckTester element(Element element) {
        elements.add(element);
        return this;
    }

    public CheckTester note(ImportNote note) {
        notes.add(note);
        return this;
    }

    public <T> CheckTester with(Setting<T> setting, T value) {
        values.put(setting.key(), setting.requireAllowed(value));
        return this;
    }

    /** Adds an item of stock; fields left out have their default. */
    public CheckTester stock(StockKind kind, Map<Setting<?>, ?> fields) {
        List<StockItem> items = stock.computeIfAbsent(kind.name(), name -> new ArrayList<>());
        items.add(new Item(kind.name() + " " + (items.size() + 1), fields));
        return this;
    }

    public CheckTester page(double pageWidthMm, double pageHeightMm) {
        widthMm = pageWidthMm;
        heightMm = pageHeightMm;
        return this;
    }

    public CheckTester units(UnitSystem value) {
        units = value;
        return this;
    }

    /** How the sign is made, as the job sheet's key {@code build} says it. */
    public CheckTester build(String word) {
        build = word;
        return this;
    }

    /** Places a light module by hand. */
    public CheckTester module(PlacedModule module) {
        modules.add(module);
        return this;
    }

    /** What another check measured. */
    public CheckTester tables(String otherCheck, Table... measured) {
        tables.put(otherCheck, List.of(measured));
        return this;
    }

    /** What happens at each checkpoint; may throw to play a cancelled run. */
    public CheckTester onCheckpoint(Consumer<Double> action) {
        checkpoint = action;
        return this;
    }

    /**
     * Draws the proof as SVG instead of giving its parts: it is imported and becomes parts as in the program, by {@code data-part} and by
     * {@link #job}. Needs the host and the import on the class path.
     */
    public CheckTester svg(String text) {
        svg = text;
        return this;
    }

    /** The job sheet that an SVG drawing is read by, YAML. */
    public CheckTester job(String sheet) {
        jobSheet = sheet;
        return this;
    }

    /** The import, where it cannot be found on the class path: inside a framework it is a service. */
    public CheckTester importer(ProofImporter service) {
        importer = () -> service;
        return this;
    }

    /** How far a place (mm) or a measure (in its unit) may be from what is expected; 0.02 unless given. */
    public CheckTester tolerance(double value) {
        toleranceMm = value;
        return this;
    }

    /** A finding of this rule must be there, wherever. */
    public CheckTester expect(Rule rule) {
        expectations.add(new Expectation(rule, Optional.empty(), OptionalDouble.empty()));
        return this;
    }

    /**
     * A finding of this rule must be there, at a place.
     *
     * @param placeWkt mm; a point must lie on the found place or be its marker, any other shape must be the found place itself
     */
    public CheckTester expect(Rule rule, String placeWkt) {
        expectations.add(new Expectation(rule, Optional.of(wkt(placeWkt)), OptionalDouble.empty()));
        return this;
    }

    /**
     * A finding of this rule must be there, at a place, and with a measure.
     *
     * @param measured in the unit of its quantity
     */
    public CheckTester expect(Rule rule, String placeWkt, double measured) {
        expectations.add(new Expectation(rule, Optional.of(wkt(placeWkt)), OptionalDouble.of(measured)));
        return this;
    }

    /**
     * Runs, and compares the findings with what is expected, each with one of its own.
     *
     * @return what the check answered, for further tests
     * @throws AssertionError when a finding is missing or one is there that is not expected, or when the check could measure nothing
     */
    public Outcome verify() {
        Outcome outcome = run();
        if (!outcome.measured()) {
            throw new AssertionError("not measured: " + String.join(" ", outcome.missing()));
        }
        List<String> complaints = Expectation.complaints(expectations, outcome.findings(), toleranceMm);
        if (!complaints.isEmpty()) {
            throw new AssertionError(String.join(System.lineSeparator(), complaints));
        }
        return outcome;
    }

    public Outcome run() {
        return svg == null ? check.inspect(inspection()) : HostRun.of(check, importer.get(), svg, jobSheet, this::given);
    }

    /** What the host gives, with the settings and the stock of the test. */
    private Inspection given(Inspection host) {
        CheckTester parts = new CheckTester(check);
        parts.values.putAll(values);
        parts.stock.putAll(stock);
        parts.tables.putAll(tables);
        parts.checkpoint = checkpoint;
        parts.build = build == null ? host.build().orElse(null) : build;
        parts.modules.addAll(host.placedModules());
        parts.modules.addAll(modules);
        parts.units = units;
        return parts.inspection(host.proof(), host.parts(), host.settings());
    }

    /** The findings of one rule, top to bottom, then left to right. */
    public List<Finding> findings(Rule rule) {
        return run().findings().stream().filter(finding -> finding.rule().equals(rule)).sorted(BY_PLACE).toList();
    }

    private static final Comparator<Finding> BY_PLACE = Comparator
            .comparingDouble((Finding finding) -> finding.at().map(at -> at.y).orElse(Double.NEGATIVE_INFINITY))
            .thenComparingDouble(finding -> finding.at().map(at -> at.x).orElse(Double.NEGATIVE_INFINITY));

    private Inspection inspection() {
        Proof proof = new Proof("test.svg", "0".repeat(64), widthMm, heightMm, 1, 0.02, elements, notes);
        return inspection(proof, List.copyOf(parts), new Defaults());
    }

    private Inspection inspection(Proof proof, List<Part> checked, Settings others) {
        return new Inspection() {
            @Override
            public Proof proof() {
                return proof;
            }

            @Override
            public List<Part> parts() {
                return checked;
            }

            @Override
            public Settings settings() {
                return new Given(values, others);
            }

            @Override
            public List<StockItem> stock(StockKind kind) {
                return List.copyOf(stock.getOrDefault(kind.name(), List.of()));
            }

            @Override
            public Optional<String> build() {
                return Optional.ofNullable(build);
            }

            @Override
            public List<PlacedModule> placedModules() {
                return List.copyOf(modules);
            }

            @Override
            public List<Table> tables(String other) {
                return check.reads().contains(other) ? tables.getOrDefault(other, List.of()) : List.of();
            }

            @Override
            public UnitSystem units() {
                return units;
            }

            @Override
            public void checkpoint(double fraction) {
                checkpoint.accept(fraction);
            }
        };
    }

    private record Given(Map<String, Object> values, Settings others) implements Settings {
        @Override
        @SuppressWarnings("unchecked") // with(Setting<T>, T) is the only way in
        public <T> T get(Setting<T> setting) {
            return values.containsKey(setting.key()) ? (T) values.get(setting.key()) : others.get(setting);
        }

        @Override
        @SuppressWarnings("unchecked") // as above
        public <T> T get(Setting<T> setting, Part part) {
            return values.containsKey(setting.key()) ? (T) values.get(setting.key()) : others.get(setting, part);
        }
    }

    private record Defaults() implements Settings {
        @Override
        public <T> T get(Setting<T> setting) {
            return setting.defaultValue();
        }

        @Override
        public <T> T get(Setting<T> setting, Part part) {
            return setting.defaultValue();
        }
    }

    private record Item(String name, Map<Setting<?>, ?> fields) implements StockItem {
        @Override
        @SuppressWarnings("unchecked") // a test that gives the wrong type fails at once
        public <T> T get(Setting<T> field) {
            Object value = fields.get(field);
            return value == null ? field.defaultValue() : (T) value;
        }
    }
}
