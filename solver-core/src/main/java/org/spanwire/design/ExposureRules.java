package org.spanwire.design;

import java.util.List;
import java.util.Objects;
import org.spanwire.circuit.bench.OperatingMode;

/**
 * What exposure is judged by.
 *
 * @param limits limits, in the order of tables
 * @param mode mode of operation: average over peak envelope power while transmitting
 * @param transmitting share of the averaging time that is transmitted, above 0, at most 1
 * @param floors heights in metres above the ground of the floors that people stand on
 */
public record ExposureRules(
    List<ExposureLimit> limits, OperatingMode mode, double transmitting, List<Double> floors) {

  /**
   * The limits for everybody; a carrier without pause; the ground and a floor 3 m above it, for a
   * window near the wire.
   */
  public static final ExposureRules STRICT =
      new ExposureRules(
          ExposureLimit.all().stream()
              .filter(limit -> limit.population() == ExposureLimit.Population.PUBLIC)
              .filter(limit -> !limit.name().endsWith("-local"))
              .toList(),
          OperatingMode.CARRIER,
          1,
          List.of(0.0, 3.0));

  /** Checks the ranges. */
  public ExposureRules {
    Objects.requireNonNull(mode, "mode");
    limits = List.copyOf(limits);
    floors = List.copyOf(floors);
    if (limits.isEmpty() || floors.isEmpty()) {
      throw new IllegalArgumentException(
          "exposure needs at least one limit and one floor, got "
              + limits.size()
              + " and "
              + floors.size());
    }
    if (!(transmitting > 0 && transmitting <= 1)) {
      throw new IllegalArgumentException(
          "share of time transmitted " + transmitting + " must lie above 0 and at most 1");
    }
    for (double floor : floors) {
      if (!(floor >= 0) || Double.isInfinite(floor)) {
        throw new IllegalArgumentException("floor " + floor + " m must not be below the ground");
      }
    }
  }

  /** Average over peak envelope power, over the averaging time of the limits. */
  public double duty() {
    return mode.duty() * transmitting;
  }
}
