package org.spanwire.circuit.bench;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A unit at one frequency, by whatever way it was measured; what that way cannot show is empty.
 *
 * @param frequencyHz frequency in hertz
 * @param lossDb loss of one unit in dB
 * @param returnLossDb at the unbalanced port of the unit or the pair in dB
 * @param imbalance of the outputs
 * @param conversionDb from common to differential mode in dB
 */
public record UnitReading(
    double frequencyHz,
    OptionalDouble lossDb,
    OptionalDouble returnLossDb,
    Optional<Imbalance> imbalance,
    OptionalDouble conversionDb) {

  /** Checks that all are there. */
  public UnitReading {
    Objects.requireNonNull(lossDb, "lossDb");
    Objects.requireNonNull(returnLossDb, "returnLossDb");
    Objects.requireNonNull(imbalance, "imbalance");
    Objects.requireNonNull(conversionDb, "conversionDb");
  }

  /** From three ports. */
  static UnitReading of(BalunReading reading) {
    return new UnitReading(
        reading.frequencyHz(),
        OptionalDouble.of(reading.lossDb()),
        OptionalDouble.of(reading.returnLossDb()),
        Optional.of(reading.imbalance()),
        OptionalDouble.of(reading.conversionDb()));
  }

  /** Loss alone, with the return loss if it was read. */
  public static UnitReading ofLoss(double frequencyHz, double lossDb, OptionalDouble returnLossDb) {
    return new UnitReading(
        frequencyHz,
        OptionalDouble.of(lossDb),
        returnLossDb,
        Optional.empty(),
        OptionalDouble.empty());
  }

  /** Balance alone. */
  public static UnitReading ofBalance(double frequencyHz, Imbalance imbalance) {
    return new UnitReading(
        frequencyHz,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        Optional.of(imbalance),
        OptionalDouble.empty());
  }
}
