package org.spanwire.design;

import org.apache.commons.math3.complex.Complex;
import org.spanwire.geometry.LumpedImpedance;
import org.spanwire.unit.Dimension;

/** Reads the common-mode impedance of a choke: {@code 3 kohm}, {r, x}, or {table}. */
final class ChokeReader {

  private final Evaluator evaluator;

  ChokeReader(Evaluator evaluator) {
    this.evaluator = evaluator;
  }

  LumpedImpedance impedance(Item item) {
    if (item.isText()) {
      Complex resistance = new Complex(evaluator.notNegative(item, Dimension.RESISTANCE), 0);
      return f -> resistance;
    }
    Fields fields = item.fields("r", "x", "table");
    if (fields.optional("table").isPresent()) {
      fields.only("r", "x", "table");
      return ImpedanceTable.read(fields.required("table", "choke.csv"), item.name());
    }
    Complex impedance =
        new Complex(
            evaluator.notNegative(fields.required("r", "2 kohm"), Dimension.RESISTANCE),
            evaluator.value(fields.required("x", "-1 kohm"), Dimension.RESISTANCE));
    return f -> impedance;
  }
}
