package org.spanwire.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.function.DoubleFunction;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.result.Direction;

/**
 * What ports show over a range of frequencies, and gains at chosen directions: a rational function
 * each through the same solutions.
 *
 * <p>Gains are fitted as ratios: |E|² and the power accepted have the same poles, so that their
 * ratio is smoother than either.
 *
 * @param range the range
 * @param directions directions of the gains, perhaps none
 * @param outcome the fit of the ports, and that of the gains if there are any
 */
record RangeFit(FrequencyRange range, List<Direction> directions, AdaptiveFit.Outcome outcome) {

  /** Solutions made before it gives up. */
  static final int MOST_SOLVES = 240;

  /**
   * Solutions are asked to be this much better than the interpolant, so that it does not fit their
   * error.
   */
  private static final double SOLVER_SHARE = 0.1;

  /** Error of a gain over that of the impedance: both are ratios of quadratic forms; see Gauge. */
  private static final double GAIN_SHARE = 2;

  RangeFit {
    directions = List.copyOf(directions);
  }

  /**
   * A solution.
   *
   * @param ports what the ports show
   * @param gainDbi gain in dBi at a direction
   */
  record Sample(Complex[] ports, ToDoubleFunction<Direction> gainDbi) {}

  /**
   * Fits.
   *
   * @param solve solves at a frequency in hertz
   * @param ports how the error of the ports counts, and the noise of solutions
   */
  static RangeFit of(
      FrequencyRange range,
      List<Direction> directions,
      DoubleFunction<Sample> solve,
      AdaptiveFit.Group ports,
      AdaptiveFit.Goal goal,
      int threads) {
    List<AdaptiveFit.Group> groups = new ArrayList<>(List.of(ports));
    if (!directions.isEmpty()) {
      groups.add(AdaptiveFit.Group.relative(GAIN_SHARE * ports.noise()));
    }
    AdaptiveFit adaptive =
        new AdaptiveFit(range, f -> quantities(solve.apply(f), directions), groups, goal);
    try (Workers workers = new Workers(threads)) {
      return new RangeFit(range, directions, adaptive.run(workers));
    }
  }

  private static Complex[][] quantities(Sample sample, List<Direction> directions) {
    if (directions.isEmpty()) {
      return new Complex[][] {sample.ports()};
    }
    Complex[] gains =
        directions.stream()
            .map(each -> new Complex(Math.pow(10, sample.gainDbi().applyAsDouble(each) / 10), 0))
            .toArray(Complex[]::new);
    return new Complex[][] {sample.ports(), gains};
  }

  /**
   * The tolerance that solutions need for an accuracy over a range.
   *
   * @throws IllegalArgumentException if no response can be had for these
   */
  static double tolerance(FrequencyRange range, double accuracy) {
    Objects.requireNonNull(range, "range");
    double least = InstallationResponse.LEAST_ACCURACY;
    double most = InstallationResponse.MOST_ACCURACY;
    if (!(accuracy >= least && accuracy <= most)) {
      throw new IllegalArgumentException(
          "accuracy " + accuracy + " must lie between " + least + " and " + most);
    }
    if (!(range.highHz() > range.lowHz())) {
      throw new IllegalArgumentException(
          "range from " + range.lowHz() + " Hz must end at a higher frequency");
    }
    return SOLVER_SHARE * accuracy;
  }

  /** The upper triangle of a symmetric matrix, row by row. */
  static Complex[] upper(Complex[][] matrix) {
    List<Complex> entries = new ArrayList<>();
    for (int i = 0; i < matrix.length; i++) {
      entries.addAll(Arrays.asList(matrix[i]).subList(i, matrix.length));
    }
    return entries.toArray(Complex[]::new);
  }

  /** The symmetric matrix of an upper triangle. */
  static Complex[][] symmetric(Complex[] upper) {
    int size = (int) Math.round((Math.sqrt(8.0 * upper.length + 1) - 1) / 2);
    Complex[][] matrix = new Complex[size][size];
    int next = 0;
    for (int i = 0; i < size; i++) {
      for (int j = i; j < size; j++) {
        matrix[i][j] = upper[next];
        matrix[j][i] = upper[next++];
      }
    }
    return matrix;
  }

  /** What the ports show at a frequency in hertz within the range. */
  Complex[] ports(double frequencyHz) {
    range.check(frequencyHz);
    return outcome.fits().get(0).at(frequencyHz);
  }

  double portError() {
    return outcome.errors()[0];
  }

  /** Gain in dBi in one of the directions; −∞ where the fitted ratio is not above 0. */
  double gainDbi(Direction direction, double frequencyHz) {
    range.check(frequencyHz);
    int index = directions.indexOf(direction);
    if (index < 0) {
      throw new IllegalArgumentException(direction + " is none of the directions asked for");
    }
    double ratio = outcome.fits().get(1).at(frequencyHz)[index].getReal();
    return 10 * Math.log10(Math.max(0, ratio));
  }

  /** Error of the gains, over the root of the sum of their squares; 0 without directions. */
  double gainError() {
    return directions.isEmpty() ? 0 : outcome.errors()[1];
  }

  List<Double> solvedFrequencies() {
    return Arrays.stream(outcome.places()).boxed().toList();
  }

  ResponseScan scan() {
    return new ResponseScan(outcome.places());
  }
}
