package org.spanwire.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleFunction;
import java.util.stream.IntStream;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.complex.ComplexField;
import org.apache.commons.math3.linear.Array2DRowFieldMatrix;
import org.apache.commons.math3.linear.ArrayFieldVector;
import org.apache.commons.math3.linear.FieldLUDecomposition;
import org.spanwire.Antenna;
import org.spanwire.Solver;
import org.spanwire.circuit.Mismatch;
import org.spanwire.geometry.Feed;

/**
 * The port matrix of an antenna over a range of frequencies: a rational function through solutions
 * at frequencies that are chosen one after another where the function is least certain. Immutable.
 *
 * <p>Method: adaptive Antoulas–Anderson interpolation (Nakatsukasa, Sète and Trefethen, SIAM J.
 * Sci. Comput. 40, A1494, 2018) of all entries with common poles, which are the antenna's
 * resonances.
 */
public final class FrequencyResponse {

  /**
   * Solutions are asked to be this much better than the interpolant, so that it does not fit their
   * error.
   */
  private static final double SOLVER_SHARE = 0.1;

  private static final int MOST_SOLVES = 240;
  private static final int SCAN_PER_GAP = 24;
  private static final double RELATIVE_ACCURACY = 1e-10;

  private final List<Feed> feeds;
  private final FrequencyRange range;
  private final double[] solved;
  private final RationalFit fit;
  private final double error;

  private FrequencyResponse(List<Feed> feeds, FrequencyRange range, AdaptiveFit.Outcome outcome) {
    this.feeds = List.copyOf(feeds);
    this.range = range;
    this.solved = outcome.places();
    this.fit = outcome.fit();
    this.error = outcome.error();
  }

  /**
   * Solves an antenna over a range.
   *
   * @param antenna at least one feed
   * @param range frequencies in hertz, the high end above the low one
   * @param accuracy wanted relative error of the port matrix, 1e-5 to 0.05; see {@link
   *     #relativeError}
   * @param threads number of threads; the result does not depend on it
   * @throws org.spanwire.geometry.GeometryException if the antenna cannot be modelled as given
   * @throws org.spanwire.ToleranceException if the solver cannot reach a tenth of the accuracy
   */
  public static FrequencyResponse of(
      Antenna antenna, FrequencyRange range, double accuracy, int threads) {
    return of(new Solver(), antenna, range, accuracy, threads);
  }

  /**
   * Solves an antenna over a range as {@link #of(Antenna, FrequencyRange, double, int)} does.
   *
   * @param watched its watch and its limit of memory are used, its tolerance is not
   */
  public static FrequencyResponse of(
      Solver watched, Antenna antenna, FrequencyRange range, double accuracy, int threads) {
    if (!(accuracy >= 1e-5 && accuracy <= 0.05)) {
      throw new IllegalArgumentException(
          "accuracy " + accuracy + " must lie between 1e-5 and 0.05");
    }
    if (!(range.highHz() > range.lowHz())) {
      throw new IllegalArgumentException(
          "range from " + range.lowHz() + " Hz must end at a higher frequency");
    }
    double tolerance = SOLVER_SHARE * accuracy;
    Solver solver = watched.withTolerance(tolerance);
    return of(
        antenna.feeds(),
        range,
        f -> solver.solve(antenna, f).portMatrix(),
        new AdaptiveFit.Goal(accuracy, tolerance, MOST_SOLVES),
        threads);
  }

  static FrequencyResponse of(
      List<Feed> feeds,
      FrequencyRange range,
      DoubleFunction<Complex[][]> portMatrix,
      AdaptiveFit.Goal goal,
      int threads) {
    AdaptiveFit adaptive = new AdaptiveFit(range, f -> flat(portMatrix.apply(f)), goal);
    try (Workers workers = new Workers(threads)) {
      return new FrequencyResponse(feeds, range, adaptive.run(workers));
    }
  }

  /** The upper triangle, row by row: the matrix is symmetric. */
  private static Complex[] flat(Complex[][] matrix) {
    int ports = matrix.length;
    Complex[] flat = new Complex[ports * (ports + 1) / 2];
    int next = 0;
    for (int i = 0; i < ports; i++) {
      for (int j = i; j < ports; j++) {
        flat[next++] = matrix[i][j];
      }
    }
    return flat;
  }

  /** The range in hertz. */
  public FrequencyRange range() {
    return range;
  }

  /** Frequencies in hertz that were solved, rising. */
  public List<Double> solvedFrequencies() {
    return Arrays.stream(solved).boxed().toList();
  }

  /**
   * Relative error in the norm of the port matrix: the largest error of the last predictions at
   * frequencies not yet solved, which were chosen where the interpolant was least certain, plus the
   * tolerance of the solver. Above the wanted accuracy if that could not be reached.
   */
  public double relativeError() {
    return error;
  }

  /**
   * Open-circuit impedance matrix in ohms between the feeds, in the order of the antenna's feeds;
   * symmetric. A fresh copy.
   *
   * @param frequencyHz frequency in hertz within the range
   */
  public Complex[][] portMatrix(double frequencyHz) {
    Complex[] flat = flatAt(frequencyHz);
    int ports = feeds.size();
    Complex[][] matrix = new Complex[ports][ports];
    int next = 0;
    for (int i = 0; i < ports; i++) {
      for (int j = i; j < ports; j++) {
        matrix[i][j] = flat[next];
        matrix[j][i] = flat[next++];
      }
    }
    return matrix;
  }

  private Complex[] flatAt(double frequencyHz) {
    if (!(frequencyHz >= range.lowHz() && frequencyHz <= range.highHz())) {
      throw new IllegalArgumentException(
          "frequency "
              + frequencyHz
              + " Hz must lie between "
              + range.lowHz()
              + " and "
              + range.highHz()
              + " Hz");
    }
    return fit.at(frequencyHz);
  }

  /**
   * Input impedance in ohms of a feed with all feeds driven as stated; infinite for zero current.
   *
   * @param frequencyHz frequency in hertz within the range
   */
  public Complex impedance(String feed, double frequencyHz) {
    int index = index(feed);
    if (feeds.size() == 1) {
      return flatAt(frequencyHz)[0];
    }
    Complex[] voltages = feeds.stream().map(Feed::voltage).toArray(Complex[]::new);
    Complex current =
        new FieldLUDecomposition<>(
                new Array2DRowFieldMatrix<>(ComplexField.getInstance(), portMatrix(frequencyHz)))
            .getSolver()
            .solve(new ArrayFieldVector<>(ComplexField.getInstance(), voltages))
            .getEntry(index);
    return current.equals(Complex.ZERO) ? Complex.INF : voltages[index].divide(current);
  }

  private int index(String feed) {
    return IntStream.range(0, feeds.size())
        .filter(i -> feeds.get(i).name().equals(feed))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("there is no feed '" + feed + "'"));
  }

  /**
   * A frequency where the input reactance is zero.
   *
   * @param frequencyHz frequency in hertz
   * @param resistanceOhm input resistance there in ohms
   * @param series whether the reactance rises through zero with frequency, as that of a series
   *     circuit does; it falls at a parallel resonance
   */
  public record Resonance(double frequencyHz, double resistanceOhm, boolean series) {}

  /** The resonances of a feed, rising in frequency, by root finding. */
  public List<Resonance> resonances(String feed) {
    List<Resonance> resonances = new ArrayList<>();
    double[] scan = scan();
    for (int i = 1; i < scan.length; i++) {
      double before = impedance(feed, scan[i - 1]).getImaginary();
      double after = impedance(feed, scan[i]).getImaginary();
      if (before != 0 && before * after <= 0) {
        double root =
            after == 0
                ? scan[i]
                : new BrentSolver(RELATIVE_ACCURACY, RELATIVE_ACCURACY * range.lowHz())
                    .solve(1000, f -> impedance(feed, f).getImaginary(), scan[i - 1], scan[i]);
        resonances.add(new Resonance(root, impedance(feed, root).getReal(), before < 0));
      }
    }
    return resonances;
  }

  /**
   * Where the SWR of a feed stays at or below a limit: the bandwidths, by root finding.
   *
   * @param referenceOhm reference impedance in ohms
   * @param maximumSwr limit, at least 1
   */
  public List<FrequencyRange> within(String feed, double referenceOhm, double maximumSwr) {
    return search(feed, referenceOhm).within((maximumSwr - 1) / (maximumSwr + 1));
  }

  /**
   * The minima of a feed's SWR between the ends of the range, rising in frequency.
   *
   * @param referenceOhm reference impedance in ohms
   */
  public List<SwrAt> bestMatches(String feed, double referenceOhm) {
    return search(feed, referenceOhm).minima().stream()
        .map(f -> new SwrAt(f, mismatch(feed, referenceOhm, f).swr()))
        .toList();
  }

  private ReflectionSearch search(String feed, double referenceOhm) {
    return new ReflectionSearch(
        scan(),
        f -> {
          double magnitude = mismatch(feed, referenceOhm, f).reflection().abs();
          return magnitude * magnitude;
        });
  }

  private Mismatch mismatch(String feed, double referenceOhm, double frequencyHz) {
    return Mismatch.of(impedance(feed, frequencyHz), referenceOhm);
  }

  /** Steps between the solved frequencies, which lie close where the impedance moves fast. */
  private double[] scan() {
    int gaps = solved.length - 1;
    double[] scan = new double[gaps * SCAN_PER_GAP + 1];
    for (int gap = 0; gap < gaps; gap++) {
      for (int i = 0; i < SCAN_PER_GAP; i++) {
        scan[gap * SCAN_PER_GAP + i] =
            solved[gap] + (solved[gap + 1] - solved[gap]) * i / SCAN_PER_GAP;
      }
    }
    scan[scan.length - 1] = solved[gaps];
    return scan;
  }
}
