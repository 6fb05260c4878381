package org.spanwire.design;

import java.util.List;
import java.util.TreeMap;
import org.spanwire.circuit.LineAttenuation;
import org.spanwire.circuit.TransmissionLine;
import org.spanwire.unit.Dimension;

/** Reads a transmission line and its matched loss. */
final class LineReader {

  static final String[] KEYS = {"impedance", "length", "velocity-factor", "loss"};

  private final Evaluator evaluator;

  LineReader(Evaluator evaluator) {
    this.evaluator = evaluator;
  }

  TransmissionLine line(Item item, Fields fields) {
    return line(
        item, fields, evaluator.positive(fields.required("length", "20 m"), Dimension.LENGTH));
  }

  TransmissionLine line(Item item, Fields fields, double length) {
    double impedance =
        evaluator.positive(fields.required("impedance", "50 ohm"), Dimension.RESISTANCE);
    double velocityFactor =
        evaluator.positive(fields.required("velocity-factor", "0.66"), Dimension.NUMBER);
    LineAttenuation loss = fields.optional("loss").map(this::loss).orElse(LineAttenuation.NONE);
    return item.checked(() -> new TransmissionLine(impedance, length, velocityFactor, loss));
  }

  /** One figure, its two parts, or a table of figures, per a length. */
  private LineAttenuation loss(Item item) {
    Fields fields = item.fields("frequency", "per", "value", "conductor", "dielectric", "table");
    double per = evaluator.positive(fields.required("per", "100 m"), Dimension.LENGTH);
    if (fields.optional("table").isPresent()) {
      if (fields.optional("frequency").isPresent()) {
        throw item.fault(item.name() + " has a table and a frequency too; keep the table");
      }
      fields.only("value", "conductor", "dielectric", "table");
      return table(fields.required("table", "[]"), per);
    }
    double frequency =
        evaluator.positive(fields.required("frequency", "10 MHz"), Dimension.FREQUENCY);
    if (fields.optional("value").isPresent()) {
      fields.only("value", "conductor", "dielectric");
      return LineAttenuation.ofConductor(
          frequency, level(fields.required("value", "2.2 dB")) / per);
    }
    double conductor = level(fields.required("conductor", "2 dB")) / per;
    double dielectric = level(fields.required("dielectric", "0.1 dB")) / per;
    return new LineAttenuation(conductor / Math.sqrt(frequency), dielectric / frequency);
  }

  private LineAttenuation table(Item item, double per) {
    TreeMap<Double, Double> rows = new TreeMap<>();
    for (Item row : item.items("rows such as [[3.6 MHz, 2.6 dB], [28 MHz, 7.8 dB]]")) {
      List<Item> cells = row.items("frequency and loss such as [3.6 MHz, 2.6 dB]");
      if (cells.size() != 2) {
        throw row.fault(
            row.name() + " has " + cells.size() + " values; expected frequency and loss");
      }
      double frequency = evaluator.positive(cells.get(0), Dimension.FREQUENCY);
      if (!rows.isEmpty() && frequency <= rows.lastKey()) {
        throw row.fault(row.name() + " is not above the one before; sort the rows by frequency");
      }
      rows.put(frequency, evaluator.positive(cells.get(1), Dimension.LEVEL) / per);
    }
    return item.checked(() -> LineAttenuation.fitted(rows));
  }

  private double level(Item item) {
    return evaluator.notNegative(item, Dimension.LEVEL);
  }
}
