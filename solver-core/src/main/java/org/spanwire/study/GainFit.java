package org.spanwire.study;

import java.util.List;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.result.Direction;

/**
 * Gains at chosen directions over a range of frequencies, as ratios: |E|² and the power accepted
 * have the same poles, so that their ratio is smoother than either and what is fitted.
 *
 * @param directions the directions, in the order of the fit's quantities
 * @param fit fitted gains as ratios
 * @param error error relative to the root of the sum of squares over all directions
 */
record GainFit(List<Direction> directions, RationalFit fit, double error) {

  /** Error of a gain over that of the impedance: both are ratios of quadratic forms; see Gauge. */
  private static final double NOISE_SHARE = 2;

  GainFit {
    directions = List.copyOf(directions);
  }

  /** The group of an adaptive fit for solutions of a tolerance. */
  static AdaptiveFit.Group group(double tolerance) {
    return AdaptiveFit.Group.relative(NOISE_SHARE * tolerance);
  }

  /** What is sampled. */
  static Complex[] sample(List<Direction> directions, ToDoubleFunction<Direction> gainDbi) {
    return directions.stream()
        .map(direction -> new Complex(Math.pow(10, gainDbi.applyAsDouble(direction) / 10), 0))
        .toArray(Complex[]::new);
  }

  /** Gain in dBi; −∞ where nothing is radiated. */
  double gainDbi(Direction direction, double frequencyHz) {
    int index = directions.indexOf(direction);
    if (index < 0) {
      throw new IllegalArgumentException(direction + " is none of the directions asked for");
    }
    return 10 * Math.log10(Math.max(0, fit.at(frequencyHz)[index].getReal()));
  }
}
