package org.spanwire.circuit.bench;

import java.util.OptionalDouble;
import java.util.function.Function;

/** What a unit is judged by. */
public enum BenchQuantity {
  /** Loss of one unit. */
  LOSS("loss", "dB", UnitReading::lossDb),
  /** Return loss at the unbalanced port. */
  RETURN_LOSS("return loss", "dB", UnitReading::returnLossDb),
  /** Difference of the outputs' amplitudes. */
  AMPLITUDE("amplitude imbalance", "dB", r -> imbalance(r, Imbalance::amplitudeDb)),
  /** Difference of the outputs' phases from half a turn. */
  PHASE("phase imbalance", "deg", r -> imbalance(r, Imbalance::phaseDegrees));

  private final String label;
  private final String unit;
  private final Function<UnitReading, OptionalDouble> value;

  BenchQuantity(String label, String unit, Function<UnitReading, OptionalDouble> value) {
    this.label = label;
    this.unit = unit;
    this.value = value;
  }

  private static OptionalDouble imbalance(UnitReading reading, Function<Imbalance, Double> value) {
    return reading
        .imbalance()
        .map(each -> OptionalDouble.of(value.apply(each)))
        .orElse(OptionalDouble.empty());
  }

  /** What it is called. */
  public String label() {
    return label;
  }

  /** The unit of its values. */
  public String unit() {
    return unit;
  }

  /** Its value in a reading, if the reading shows it. */
  public OptionalDouble of(UnitReading reading) {
    return value.apply(reading);
  }
}
