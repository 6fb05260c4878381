package org.spanwire.study;

import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.Solution;
import org.spanwire.design.Requirement;
import org.spanwire.result.Direction;
import org.spanwire.study.CheckedRequirement.Quantity;

/**
 * Reads the quantity of a requirement off an installation at a frequency. What is read is smooth in
 * frequency and has a magnitude that the quantity rises with: the reflection coefficient for SWR,
 * the gain as a ratio, else the quantity itself.
 *
 * @param quantity what is read
 * @param limit the requirement's limit
 * @param reading the smooth quantity
 * @param error estimated error of its magnitude
 * @param value the quantity from the magnitude
 */
record Gauge(
    Quantity quantity,
    double limit,
    Function<Operation, Complex> reading,
    Function<Operation, Double> error,
    DoubleUnaryOperator value) {

  /**
   * Relative error of a gain or an efficiency over that of the impedance. Both are ratios of
   * quadratic forms of the current; the test of the guard band holds this to results at a tighter
   * tolerance.
   */
  private static final double POWER_SHARE = 2;

  /** The same for the heat of a choke, the square of a current that need not be the feed's. */
  private static final double HEAT_SHARE = 10;

  /** The gauge of a requirement on an installation's feed. */
  static Gauge of(Requirement requirement, String feed) {
    if (requirement instanceof Requirement.MaximumSwr swr) {
      return swr(swr.plane(), swr.maximum(), feed);
    }
    if (requirement instanceof Requirement.LowestVerdict verdict) {
      double limit = Verdict.valueOf(verdict.lowest().name()).limit();
      return reflection(Quantity.VERDICT, limit, Plane.TRANSMITTER, feed, Gauge::swrOf);
    }
    if (requirement instanceof Requirement.MinimumBandwidth bandwidth) {
      return reflection(
          Quantity.BANDWIDTH, bandwidth.minimumHz(), plane(bandwidth.plane()), feed, Gauge::swrOf);
    }
    if (requirement instanceof Requirement.MinimumGain gain) {
      return power(
          Quantity.GAIN,
          gain.minimumDbi(),
          POWER_SHARE,
          feed,
          operation -> Math.pow(10, gainDbi(gain, operation.solution()) / 10),
          ratio -> 10 * Math.log10(ratio));
    }
    if (requirement instanceof Requirement.MinimumEfficiency efficiency) {
      return power(
          Quantity.EFFICIENCY,
          efficiency.minimum(),
          POWER_SHARE,
          feed,
          operation -> operation.solution().radiationEfficiency(),
          DoubleUnaryOperator.identity());
    }
    if (requirement instanceof Requirement.MaximumChokeHeat heat) {
      return power(
          Quantity.CHOKE_HEAT,
          heat.maximumWatts(),
          HEAT_SHARE,
          feed,
          operation -> operation.commonMode().orElseThrow().topWatts(),
          DoubleUnaryOperator.identity());
    }
    throw new IllegalArgumentException("no gauge for " + requirement);
  }

  private static Gauge swr(Requirement.Plane where, double limit, String feed) {
    Quantity quantity =
        where == Requirement.Plane.FEEDPOINT ? Quantity.SWR_FEEDPOINT : Quantity.SWR_TRANSMITTER;
    return reflection(quantity, limit, plane(where), feed, Gauge::swrOf);
  }

  static Plane plane(Requirement.Plane plane) {
    return Plane.valueOf(plane.name());
  }

  private static Gauge reflection(
      Quantity quantity, double limit, Plane plane, String feed, DoubleUnaryOperator value) {
    return new Gauge(
        quantity,
        limit,
        operation -> operation.feed(feed).at(plane).reflection(),
        operation -> reflectionError(operation.feed(feed), plane),
        value);
  }

  /**
   * How far an error of the impedance can move the reflection coefficient at a plane. A passive
   * network between feedpoint and plane shortens distances of the hyperbolic plane or keeps them
   * (Schwarz–Pick lemma), so |δΓ| / (1 − |Γ|²) is nowhere larger than |δZ| / 2R at the feedpoint.
   */
  private static double reflectionError(SolvedFeed feed, Plane plane) {
    if (feed.impedance().isInfinite()) {
      return 0;
    }
    double magnitude = feed.at(plane).reflection().abs();
    double resistance = feed.impedance().getReal();
    return resistance > 0
        ? Math.min(1, (1 - magnitude * magnitude) * feed.errorOhm() / (2 * resistance))
        : 1;
  }

  private static Gauge power(
      Quantity quantity,
      double limit,
      double share,
      String feed,
      Function<Operation, Double> reading,
      DoubleUnaryOperator value) {
    return new Gauge(
        quantity,
        limit,
        operation -> new Complex(reading.apply(operation), 0),
        operation -> share * operation.feed(feed).relativeError() * reading.apply(operation),
        value);
  }

  static double gainDbi(Requirement.MinimumGain gain, Solution solution) {
    return gain.azimuthDegrees().isPresent()
        ? solution.gainDbi(
            new Direction(gain.elevationDegrees(), gain.azimuthDegrees().getAsDouble()))
        : solution.gainAtElevation(gain.elevationDegrees()).gainDbi();
  }

  private static double swrOf(double magnitude) {
    return magnitude >= 1 ? Double.POSITIVE_INFINITY : (1 + magnitude) / (1 - magnitude);
  }

  /** The quantity at a magnitude raised or lowered by an error; magnitudes stay 0 or more. */
  double value(double magnitude, double by) {
    return value.applyAsDouble(Math.max(0, magnitude + by));
  }

  /** Whether it reads a reflection coefficient. */
  boolean isReflection() {
    return switch (quantity) {
      case SWR_FEEDPOINT, SWR_TRANSMITTER, VERDICT, BANDWIDTH -> true;
      case GAIN, EFFICIENCY, CHOKE_HEAT, EXPOSURE_DISTANCE, YIELD -> false;
    };
  }
}
