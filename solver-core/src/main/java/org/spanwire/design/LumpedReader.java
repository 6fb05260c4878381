package org.spanwire.design;

import java.util.Optional;
import org.spanwire.geometry.LumpedImpedance;
import org.spanwire.unit.Dimension;

/** Reads lumped parts: {r, l, c}. */
final class LumpedReader {

  private final Evaluator evaluator;

  LumpedReader(Evaluator evaluator) {
    this.evaluator = evaluator;
  }

  /** Resistance, inductance and capacitance in series, at least one of them. */
  LumpedImpedance series(Item item) {
    return part(item, true).impedance();
  }

  /** The same as a part of a matching network. */
  Stage.Part part(Item item, boolean inSeries) {
    Fields fields = item.fields("r", "l", "c");
    Optional<Item> l = fields.optional("l");
    Optional<Item> c = fields.optional("c");
    if (l.isEmpty() && c.isEmpty() && fields.optional("r").isEmpty()) {
      throw item.fault(item.name() + " is empty; expected at least one of r, l, c");
    }
    return new Stage.Part(
        inSeries,
        resistance(fields),
        l.map(i -> evaluator.notNegative(i, Dimension.INDUCTANCE)).orElse(0.0),
        c.map(i -> evaluator.positive(i, Dimension.CAPACITANCE)).orElse(Double.POSITIVE_INFINITY));
  }

  /** A trap: an inductor with its loss resistance, in parallel with a capacitor. */
  LumpedImpedance parallel(Item item) {
    Fields fields = item.fields("r", "l", "c");
    return LumpedImpedance.parallel(
        resistance(fields),
        evaluator.positive(fields.required("l", "4.2 uH"), Dimension.INDUCTANCE),
        evaluator.positive(fields.required("c", "60 pF"), Dimension.CAPACITANCE));
  }

  private double resistance(Fields fields) {
    return fields
        .optional("r")
        .map(r -> evaluator.notNegative(r, Dimension.RESISTANCE))
        .orElse(0.0);
  }
}
