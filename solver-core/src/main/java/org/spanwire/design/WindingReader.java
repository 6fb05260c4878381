package org.spanwire.design;

import java.util.Map;
import java.util.Optional;
import org.spanwire.circuit.PermeabilityTable;
import org.spanwire.circuit.ToroidCore;
import org.spanwire.circuit.TransmissionLine;
import org.spanwire.circuit.Winding;
import org.spanwire.circuit.WoundTransformer.Autotransformer;
import org.spanwire.circuit.WoundTransformer.Connection;
import org.spanwire.circuit.WoundTransformer.EqualDelay;
import org.spanwire.unit.Dimension;

/** Reads how a transformer is wound. */
final class WindingReader {

  private static final double WHOLE = 1e-9;
  private static final int LARGEST_COUNT = 1000;

  private final Evaluator evaluator;
  private final double ratio;
  private final Optional<Stage.Output> output;

  /**
   * A reader.
   *
   * @param ratio impedance ratio, which sets the number of lines
   * @param output the tie of the antenna side, if the file says
   */
  WindingReader(Evaluator evaluator, double ratio, Optional<Stage.Output> output) {
    this.evaluator = evaluator;
    this.ratio = ratio;
    this.output = output;
  }

  Winding read(Item item) {
    Fields fields = fields(item);
    return winding(item, fields, count(fields.required("turns", "9")));
  }

  /** A winding whose turns may be left open: a single one then. */
  Winding sketch(Item item) {
    Fields fields = fields(item);
    return winding(item, fields, fields.optional("turns").map(this::count).orElse(1));
  }

  /** Whether the number of turns is written. */
  static boolean statesTurns(Item item) {
    return fields(item).optional("turns").isPresent();
  }

  private static Fields fields(Item item) {
    return item.fields("connection", "core", "turns", "line", "leakage", "capacitance");
  }

  private Winding winding(Item item, Fields fields, int turns) {
    Connection connection = connection(fields.required("connection", "equal-delay"));
    ToroidCore core = core(fields.required("core", "{outer: 61 mm, …}"));
    Item lineItem = fields.required("line", "{impedance: 100 ohm, velocity-factor: 0.7}");
    Fields lineFields = lineItem.fields(LineReader.KEYS);
    double length =
        lineFields
            .optional("length")
            .map(each -> evaluator.positive(each, Dimension.LENGTH))
            .orElse(turns * core.turnLength());
    TransmissionLine line = new LineReader(evaluator).line(lineItem, lineFields, length);
    double leakage = notNegative(fields, "leakage", Dimension.INDUCTANCE);
    double capacitance = notNegative(fields, "capacitance", Dimension.CAPACITANCE);
    return item.checked(() -> new Winding(connection, core, turns, line, leakage, capacitance));
  }

  private double notNegative(Fields fields, String key, Dimension dimension) {
    return fields.optional(key).map(each -> evaluator.notNegative(each, dimension)).orElse(0.0);
  }

  private Connection connection(Item item) {
    boolean equalDelay =
        item.choice(Map.of("equal-delay", true, "autotransformer", false)).booleanValue();
    if (!equalDelay) {
      if (ratio != 4) {
        throw item.fault(
            item.name() + " is autotransformer with ratio " + ratio + "; expected ratio: 4");
      }
      return new Autotransformer(output.orElse(Stage.Output.BALANCED) == Stage.Output.BALANCED);
    }
    if (output.isPresent()) {
      throw item.fault(
          item.name() + " is equal-delay, whose outputs are balanced; remove the key output");
    }
    double lines = Math.rint(Math.sqrt(ratio));
    if (Math.abs(lines * lines - ratio) > WHOLE * ratio || lines < 1 || lines > 8) {
      throw item.fault(
          item.name()
              + " is equal-delay with ratio "
              + ratio
              + "; expected the square of a number of lines: 1, 4, 9, 16, …, 64");
    }
    return new EqualDelay((int) lines);
  }

  private ToroidCore core(Item item) {
    Fields fields = item.fields("outer", "inner", "height", "count", "material");
    double outer = evaluator.positive(fields.required("outer", "61 mm"), Dimension.LENGTH);
    double inner = evaluator.positive(fields.required("inner", "35.5 mm"), Dimension.LENGTH);
    double height = evaluator.positive(fields.required("height", "12.7 mm"), Dimension.LENGTH);
    int count = fields.optional("count").map(this::count).orElse(1);
    PermeabilityTable material = material(fields.required("material", "ferrite.csv"));
    return item.checked(() -> new ToroidCore(outer, inner, height, count, material));
  }

  private static PermeabilityTable material(Item item) {
    return switch (item.text()) {
      case "generic-nickel-zinc" -> PermeabilityTable.genericNickelZinc();
      case "generic-manganese-zinc" -> PermeabilityTable.genericManganeseZinc();
      default -> {
        String text = TextFile.read(item);
        yield item.checked(() -> PermeabilityTable.parse(item.path().toString(), text));
      }
    };
  }

  private int count(Item item) {
    double value = evaluator.positive(item, Dimension.NUMBER);
    if (value != Math.rint(value) || value > LARGEST_COUNT) {
      throw item.fault(
          item.name() + " is " + value + "; expected a whole number up to " + LARGEST_COUNT);
    }
    return (int) value;
  }
}
