package org.spanwire.design;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.complex.ComplexUtils;
import org.spanwire.Antenna;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.Fitting;
import org.spanwire.geometry.LumpedImpedance;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.geometry.Wire;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.MechanicalProperties;
import org.spanwire.unit.Dimension;

/** Reads what stands in the air and what lies below it. */
final class AntennaReader {

  private final Evaluator evaluator;
  private final Map<String, MechanicalProperties> mechanical = new LinkedHashMap<>();
  private final Map<String, Conductor> conductors = new LinkedHashMap<>();
  private final Map<String, Hang> hangs = new LinkedHashMap<>();

  AntennaReader(Evaluator evaluator) {
    this.evaluator = evaluator;
  }

  /** The hanging wires by name, found by {@link #read}. */
  Map<String, Hang> hangs() {
    return hangs;
  }

  /** What conductors weigh and bear, as far as known, found by {@link #read}. */
  Map<String, MechanicalProperties> mechanical() {
    return mechanical;
  }

  Antenna read(Fields design) {
    Names made =
        some(
            design.required("conductors", "{strand: {material: copper, diameter: 2 mm}}"),
            "conductor");
    ConductorReader reader = new ConductorReader(evaluator);
    conductors.putAll(made.map(reader::conductor));
    made.map((name, item) -> reader.mechanical(item, conductors.get(name)))
        .forEach((name, m) -> m.ifPresent(properties -> mechanical.put(name, properties)));
    Map<String, Wire> wires =
        some(
                design.required(
                    "wires", "{radiator: {conductor: strand, path: [[0, 0, 9], [20, 0, 9]]}}"),
                "wire")
            .map(this::wire);
    Antenna.Builder builder =
        Antenna.builder()
            .ground(
                new GroundReader(evaluator).read(design.required("ground", GroundReader.EXAMPLE)));
    wires.values().forEach(builder::wire);
    some(design.required("feeds", "{main: {wire: radiator, at: 36 %}}"), "feed")
        .map((name, item) -> feed(name, item, wires))
        .values()
        .forEach(builder::feed);
    design
        .optional("fittings")
        .map(item -> item.names("fitting").map((name, i) -> fitting(name, i, wires)))
        .ifPresent(fittings -> fittings.values().forEach(builder::fitting));
    return builder.build();
  }

  /** The conductor that an item names. */
  Conductor conductor(Item reference) {
    Conductor conductor = conductors.get(reference.text());
    if (conductor == null) {
      throw reference.unknown("conductor", conductors.keySet());
    }
    return conductor;
  }

  private static Names some(Item item, String kind) {
    Names names = item.names(kind);
    if (names.all().isEmpty()) {
      throw item.fault(item.name() + " is empty; expected at least one " + kind);
    }
    return names;
  }

  private Wire wire(String name, Item item) {
    Fields fields = item.fields("conductor", "path", "hang");
    Item reference = fields.required("conductor", conductors.keySet().iterator().next());
    Conductor conductor = conductor(reference);
    Item path = fields.required("path", "[[0, 0, 9 m], [20 m, 0, 9 m]]");
    List<Point> points = new ArrayList<>();
    for (Item point : path.items("a list of points such as [[0, 0, 9 m], [20 m, 0, 9 m]]")) {
      points.add(point(point));
    }
    if (points.size() < 2) {
      throw path.fault(path.name() + " has " + points.size() + " points; expected at least two");
    }
    Optional<Hang> hang = fields.optional("hang").map(h -> hang(name, h, reference.text(), points));
    hang.ifPresent(h -> hangs.put(name, h));
    return new Wire(
        name,
        conductor,
        hang.flatMap(Hang::shape).map(shape -> shape.path(Hang.CHORD_ERROR)).orElse(points));
  }

  private Hang hang(String wire, Item item, String conductor, List<Point> points) {
    MechanicalProperties properties = mechanical.get(conductor);
    if (properties == null) {
      throw item.fault(
          item.name()
              + " needs the weight of conductor "
              + Words.quote(conductor)
              + "; add mechanical: {mass-per-length: 28 g/m} to it, or the density of its"
              + " insulation");
    }
    return new HangReader(evaluator).hang(wire, item, points, properties);
  }

  Point point(Item item) {
    List<Item> coordinates = item.items("three coordinates such as [0, 0, 9 m]");
    if (coordinates.size() != 3) {
      throw item.fault(
          item.name()
              + " has "
              + coordinates.size()
              + " coordinates; expected three: x, y, and z"
              + " above ground");
    }
    return new Point(
        evaluator.valueOrBare(coordinates.get(0), Dimension.LENGTH),
        evaluator.valueOrBare(coordinates.get(1), Dimension.LENGTH),
        evaluator.valueOrBare(coordinates.get(2), Dimension.LENGTH));
  }

  private Feed feed(String name, Item item, Map<String, Wire> wires) {
    Fields fields = item.fields("wire", "at", "gap", "voltage", "capacitance");
    String wire = wire(fields, wires);
    Position at = evaluator.position(fields.required("at", "36 %"));
    Complex voltage = fields.optional("voltage").map(this::voltage).orElse(Complex.ONE);
    double capacitance =
        fields
            .optional("capacitance")
            .map(c -> evaluator.notNegative(c, Dimension.CAPACITANCE))
            .orElse(0.0);
    return new Feed(name, wire, at, gap(fields), voltage, capacitance);
  }

  private Complex voltage(Item item) {
    if (item.isText()) {
      return new Complex(evaluator.value(item, Dimension.VOLTAGE));
    }
    Fields fields = item.fields("magnitude", "phase");
    double magnitude =
        evaluator.notNegative(fields.required("magnitude", "1 V"), Dimension.VOLTAGE);
    double phase = evaluator.value(fields.required("phase", "90 deg"), Dimension.ANGLE);
    return ComplexUtils.polar2Complex(magnitude, phase);
  }

  private Fitting fitting(String name, Item item, Map<String, Wire> wires) {
    Fields fields = item.fields("wire", "at", "gap", "series", "parallel", "impedance");
    String wire = wire(fields, wires);
    Position at = evaluator.position(fields.required("at", "12 m"));
    OptionalDouble gap = gap(fields);
    String kind = fields.only("series", "parallel", "impedance");
    Item part = fields.required(kind, "");
    LumpedImpedance impedance =
        kind.equals("impedance") ? fromFile(part, name) : lumped(part, kind);
    return new Fitting(name, wire, at, gap, impedance);
  }

  private static LumpedImpedance fromFile(Item item, String fitting) {
    return MeasuredImpedance.isNamedBy(item)
        ? MeasuredImpedance.read(item, fitting)
        : ImpedanceTable.read(item, fitting);
  }

  private LumpedImpedance lumped(Item item, String kind) {
    LumpedReader lumped = new LumpedReader(evaluator);
    return kind.equals("parallel") ? lumped.parallel(item) : lumped.series(item);
  }

  private String wire(Fields fields, Map<String, Wire> wires) {
    Item reference = fields.required("wire", wires.keySet().iterator().next());
    if (!wires.containsKey(reference.text())) {
      throw reference.unknown("wire", wires.keySet());
    }
    return reference.text();
  }

  private OptionalDouble gap(Fields fields) {
    return fields
        .optional("gap")
        .map(gap -> OptionalDouble.of(evaluator.positive(gap, Dimension.LENGTH)))
        .orElse(OptionalDouble.empty());
  }
}
