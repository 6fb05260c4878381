package org.spanwire.circuit.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;

/**
 * A batch of wound units: every quantity at every frequency that all of them were measured at.
 *
 * @param rows rising in frequency
 */
public record BatchStatistics(List<Row> rows) {

  /**
   * A quantity at a frequency.
   *
   * @param frequencyHz frequency in hertz
   * @param quantity the quantity
   * @param batch its distribution over the units
   * @param offset mean of the batch less the golden unit's value, where there is one
   */
  public record Row(
      double frequencyHz, BenchQuantity quantity, Batch batch, OptionalDouble offset) {}

  /** Takes a copy. */
  public BatchStatistics {
    rows = List.copyOf(rows);
  }

  /**
   * Of several units.
   *
   * @param units at least one
   * @param golden the unit that the batch is compared with
   */
  public static BatchStatistics of(List<MeasuredUnit> units, Optional<MeasuredUnit> golden) {
    TreeSet<Double> common = new TreeSet<>();
    units.get(0).readings().forEach(reading -> common.add(reading.frequencyHz()));
    List<Row> rows = new ArrayList<>();
    for (double frequency : common) {
      for (BenchQuantity quantity : BenchQuantity.values()) {
        List<Double> values = new ArrayList<>();
        units.forEach(unit -> value(unit, quantity, frequency).ifPresent(values::add));
        if (values.size() == units.size()) {
          Batch batch = Batch.of(values);
          rows.add(new Row(frequency, quantity, batch, offset(batch, golden, quantity, frequency)));
        }
      }
    }
    return new BatchStatistics(rows);
  }

  private static OptionalDouble offset(
      Batch batch, Optional<MeasuredUnit> golden, BenchQuantity quantity, double frequencyHz) {
    OptionalDouble value =
        golden.map(unit -> value(unit, quantity, frequencyHz)).orElse(OptionalDouble.empty());
    return value.isPresent()
        ? OptionalDouble.of(batch.offset(value.getAsDouble()))
        : OptionalDouble.empty();
  }

  private static OptionalDouble value(
      MeasuredUnit unit, BenchQuantity quantity, double frequencyHz) {
    return unit.readings().stream()
        .filter(reading -> reading.frequencyHz() == frequencyHz)
        .map(quantity::of)
        .findFirst()
        .filter(value -> value.isPresent() && Double.isFinite(value.getAsDouble()))
        .orElse(OptionalDouble.empty());
  }
}
