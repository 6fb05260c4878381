package org.spanwire.design;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Function;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.circuit.bench.BackToBack;
import org.spanwire.circuit.bench.BenchReadings;
import org.spanwire.circuit.bench.ChokeReading;
import org.spanwire.circuit.bench.HeatRun;
import org.spanwire.circuit.bench.Imbalance;
import org.spanwire.circuit.bench.MeasuredUnit;
import org.spanwire.circuit.bench.MeasuredUnit.Method;
import org.spanwire.circuit.bench.Pad;
import org.spanwire.circuit.bench.UnitReading;
import org.spanwire.unit.Dimension;

/**
 * Reads what was typed at the bench, in YAML 1.2 or JSON. Losses are insertion losses as read, with
 * the resistors of the method in place; where a return loss stands beside one, what the input
 * reflects is taken out of it.
 */
public final class BenchReader {

  /** What readings of this version begin with, under the key {@code format}. */
  public static final String FORMAT = "spanwire-readings/1";

  /** Error of |Γ| or |S21| assumed where the file states none; common practice, no source. */
  public static final double READING_ERROR = 0.005;

  private final Evaluator evaluator = new Evaluator(Optional.empty(), Map.of());
  private final double unbalancedOhm;
  private final double balancedOhm;
  private final String title;

  private BenchReader(Item root, double unbalancedOhm, double balancedOhm) {
    this.unbalancedOhm = unbalancedOhm;
    this.balancedOhm = balancedOhm;
    title = Words.oneLine(fields(root).required("title", "Unit 07").text());
  }

  /**
   * Reads a file.
   *
   * @param unbalancedOhm nominal impedance of the unbalanced port, and of all ports read at, in
   *     ohms
   * @param balancedOhm nominal impedance across the outputs in ohms
   * @throws DesignException if the file cannot be read or holds no readings
   */
  public static BenchReadings read(Path file, double unbalancedOhm, double balancedOhm) {
    Item root =
        Document.parse(TextFile.read(file), file.toString(), Optional.empty())
            .root()
            .as("the file");
    return new BenchReader(root, unbalancedOhm, balancedOhm).readings(root);
  }

  private static Fields fields(Item root) {
    return root.fields(
        "format",
        "title",
        "series-resistor",
        "minimum-loss-pad",
        "back-to-back",
        "three-units",
        "balance",
        "choke",
        "heat-run");
  }

  private BenchReadings readings(Item root) {
    Fields fields = fields(root);
    Item format = fields.required("format", FORMAT);
    if (!format.text().equals(FORMAT)) {
      throw format.fault(
          "format " + Words.quote(format.text()) + " is not known here; expected " + FORMAT);
    }
    List<MeasuredUnit> units = new ArrayList<>();
    fields.optional("series-resistor").map(this::seriesResistor).ifPresent(units::add);
    fields.optional("minimum-loss-pad").map(this::minimumLossPad).ifPresent(units::add);
    fields.optional("back-to-back").map(this::backToBack).ifPresent(units::add);
    fields.optional("three-units").map(this::threeUnits).ifPresent(units::addAll);
    fields.optional("balance").map(this::balance).ifPresent(units::add);
    List<BenchReadings.ChokeAt> choke = fields.optional("choke").map(this::choke).orElse(List.of());
    Optional<BenchReadings.Heat> heat = fields.optional("heat-run").map(this::heatRun);
    if (units.isEmpty() && choke.isEmpty() && heat.isEmpty()) {
      throw root.fault(
          "the file holds no readings; add some such as series-resistor: {readings: …}");
    }
    return new BenchReadings(title, units, choke, heat);
  }

  private MeasuredUnit seriesResistor(Item item) {
    Fields fields = item.fields("resistor", "readings");
    Pad pad =
        fields
            .optional("resistor")
            .map(r -> evaluator.positive(r, Dimension.RESISTANCE))
            .map(r -> new Pad(r, Double.POSITIVE_INFINITY, unbalancedOhm))
            .orElseGet(() -> Pad.seriesResistor(balancedOhm, unbalancedOhm));
    return unit(item, Method.SERIES_RESISTOR, fields, loss -> loss - pad.correctionDb());
  }

  private MeasuredUnit minimumLossPad(Item item) {
    Fields fields = item.fields("readings");
    Pad pad = item.checked(() -> Pad.minimumLoss(balancedOhm, unbalancedOhm));
    return unit(item, Method.MINIMUM_LOSS_PAD, fields, loss -> loss - pad.correctionDb());
  }

  private MeasuredUnit backToBack(Item item) {
    return unit(item, Method.PAIR, item.fields("readings"), loss -> loss / 2);
  }

  private MeasuredUnit unit(
      Item item, Method method, Fields fields, Function<Double, Double> ofOneUnit) {
    List<UnitReading> readings = new ArrayList<>();
    for (Item each : rows(fields, "{at: 7 MHz, loss: 6.4 dB, return-loss: 22 dB}")) {
      Fields row = each.fields("at", "loss", "return-loss");
      double loss = evaluator.notNegative(row.required("loss", "6.4 dB"), Dimension.LEVEL);
      OptionalDouble returnLoss =
          row.optional("return-loss")
              .map(r -> OptionalDouble.of(evaluator.positive(r, Dimension.LEVEL)))
              .orElse(OptionalDouble.empty());
      double entered =
          returnLoss.isPresent()
              ? BackToBack.withoutReflectionDb(loss, returnLoss.getAsDouble())
              : loss;
      readings.add(UnitReading.ofLoss(frequency(row), ofOneUnit.apply(entered), returnLoss));
    }
    return item.checked(() -> new MeasuredUnit(title, method, readings));
  }

  private List<MeasuredUnit> threeUnits(Item item) {
    List<List<UnitReading>> units =
        List.of(new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
    Fields fields = item.fields("readings");
    for (Item each : rows(fields, "{at: 7 MHz, ab: 0.6 dB, ac: 0.7 dB, bc: 0.5 dB}")) {
      Fields row = each.fields("at", "ab", "ac", "bc");
      double frequency = frequency(row);
      double ab = evaluator.notNegative(row.required("ab", "0.6 dB"), Dimension.LEVEL);
      double ac = evaluator.notNegative(row.required("ac", "0.7 dB"), Dimension.LEVEL);
      double bc = evaluator.notNegative(row.required("bc", "0.5 dB"), Dimension.LEVEL);
      double[] losses = {
        BackToBack.firstOfThreeDb(ab, ac, bc),
        BackToBack.firstOfThreeDb(ab, bc, ac),
        BackToBack.firstOfThreeDb(ac, bc, ab)
      };
      for (int k = 0; k < 3; k++) {
        units.get(k).add(UnitReading.ofLoss(frequency, losses[k], OptionalDouble.empty()));
      }
    }
    List<MeasuredUnit> measured = new ArrayList<>();
    for (int k = 0; k < 3; k++) {
      List<UnitReading> readings = units.get(k);
      String name = title + ", unit " + "ABC".charAt(k);
      measured.add(item.checked(() -> new MeasuredUnit(name, Method.THREE_UNITS, readings)));
    }
    return measured;
  }

  private MeasuredUnit balance(Item item) {
    Fields fields = item.fields("probes", "terminations", "readings");
    Optional<Imbalance> probes =
        fields.optional("probes").map(p -> imbalance(p.fields("amplitude", "phase"), 0));
    Optional<double[]> ends = fields.optional("terminations").map(this::terminations);
    List<UnitReading> readings = new ArrayList<>();
    for (Item each : rows(fields, "{at: 7 MHz, amplitude: 0.2 dB, phase: 177 deg}")) {
      Fields row = each.fields("at", "amplitude", "phase", "delay");
      double frequency = frequency(row);
      Imbalance read = imbalance(row, frequency);
      Imbalance withoutProbes = probes.map(read::withoutProbes).orElse(read);
      readings.add(
          UnitReading.ofBalance(
              frequency,
              ends.map(r -> withoutProbes.withTerminations(r[0], r[1])).orElse(withoutProbes)));
    }
    return item.checked(() -> new MeasuredUnit(title, Method.BALANCE, readings));
  }

  /** The second output beside the first: amplitude, and phase or delay. */
  private Imbalance imbalance(Fields row, double frequencyHz) {
    double amplitude = evaluator.value(row.required("amplitude", "0.2 dB"), Dimension.LEVEL);
    if (frequencyHz == 0) {
      double own = evaluator.value(row.required("phase", "1 deg"), Dimension.ANGLE);
      return new Imbalance(amplitude, Math.toDegrees(own));
    }
    if (row.only("phase", "delay").equals("delay")) {
      double delay = evaluator.value(row.required("delay", "1 ns"), Dimension.TIME);
      return Imbalance.ofTraces(1, Math.pow(10, amplitude / 20), delay, frequencyHz);
    }
    double phase =
        Math.toDegrees(evaluator.value(row.required("phase", "177 deg"), Dimension.ANGLE));
    return new Imbalance(amplitude, Math.IEEEremainder(phase - 180, 360));
  }

  private double[] terminations(Item item) {
    List<Item> items = item.items("the two terminations such as [100 ohm, 102 ohm]");
    if (items.size() != 2) {
      throw item.fault(item.name() + " has " + items.size() + " values; expected two");
    }
    return items.stream().mapToDouble(i -> evaluator.positive(i, Dimension.RESISTANCE)).toArray();
  }

  private List<BenchReadings.ChokeAt> choke(Item item) {
    Fields fields =
        item.fields("reading-error", "fixture-capacitance", "capacitance-error", "readings");
    double error =
        fields
            .optional("reading-error")
            .map(e -> evaluator.positive(e, Dimension.NUMBER))
            .orElse(READING_ERROR);
    double capacitance = farads(fields, "fixture-capacitance");
    double capacitanceError = farads(fields, "capacitance-error");
    List<BenchReadings.ChokeAt> found = new ArrayList<>();
    for (Item each : rows(fields, "{at: 7 MHz, through: -34 dB, phase: -20 deg}")) {
      Fields row = each.fields("at", "through", "reflection", "phase");
      double frequency = frequency(row);
      boolean through = row.only("through", "reflection").equals("through");
      Item given = row.required(through ? "through" : "reflection", "");
      double level = evaluator.value(given, Dimension.LEVEL);
      double angle = evaluator.value(row.required("phase", "-20 deg"), Dimension.ANGLE);
      double size = Math.pow(10, level / 20);
      Complex value = new Complex(size * Math.cos(angle), size * Math.sin(angle));
      ChokeReading reading =
          through
              ? ChokeReading.ofSeriesThrough(value, unbalancedOhm, error)
              : ChokeReading.ofReflection(value, unbalancedOhm, error);
      found.add(
          new BenchReadings.ChokeAt(
              frequency, reading.withoutCapacitance(capacitance, capacitanceError, frequency)));
    }
    return found;
  }

  private double farads(Fields fields, String key) {
    return fields
        .optional(key)
        .map(c -> evaluator.notNegative(c, Dimension.CAPACITANCE))
        .orElse(0.0);
  }

  private BenchReadings.Heat heatRun(Item item) {
    Fields fields = item.fields("power", "dissipated", "allowed-rise", "readings");
    double power = evaluator.positive(fields.required("power", "100 W"), Dimension.POWER);
    double rise =
        evaluator.positive(fields.required("allowed-rise", "60 K"), Dimension.TEMPERATURE);
    OptionalDouble dissipated =
        fields
            .optional("dissipated")
            .map(d -> OptionalDouble.of(evaluator.positive(d, Dimension.POWER)))
            .orElse(OptionalDouble.empty());
    TreeMap<Double, Double> readings = new TreeMap<>();
    for (Item each : rows(fields, "{at: 60 s, celsius: 41.5}")) {
      Fields row = each.fields("at", "celsius");
      double at = evaluator.notNegative(row.required("at", "60 s"), Dimension.TIME);
      if (!readings.isEmpty() && at <= readings.lastKey()) {
        throw each.fault(each.name() + " is not after the one before; sort them by time");
      }
      readings.put(at, evaluator.value(row.required("celsius", "41.5"), Dimension.NUMBER));
    }
    HeatRun run = item.checked(() -> HeatRun.fitted(readings));
    if (!(run.rise() > 0)) {
      throw item.fault(item.name() + ": the temperature falls; expected one that rises");
    }
    return new BenchReadings.Heat(run, power, dissipated, rise);
  }

  private static List<Item> rows(Fields fields, String example) {
    return fields
        .required("readings", "[" + example + "]")
        .items("a list such as [" + example + "]");
  }

  private double frequency(Fields row) {
    return evaluator.positive(row.required("at", "7 MHz"), Dimension.FREQUENCY);
  }
}
