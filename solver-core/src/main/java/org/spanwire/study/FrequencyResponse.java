package org.spanwire.study;

import java.util.List;
import java.util.Objects;
import java.util.function.DoubleFunction;
import java.util.stream.IntStream;
import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.complex.ComplexField;
import org.apache.commons.math3.linear.Array2DRowFieldMatrix;
import org.apache.commons.math3.linear.ArrayFieldVector;
import org.apache.commons.math3.linear.FieldLUDecomposition;
import org.spanwire.Antenna;
import org.spanwire.Solution;
import org.spanwire.Solver;
import org.spanwire.circuit.Mismatch;
import org.spanwire.geometry.Feed;
import org.spanwire.result.Direction;

/**
 * The port matrix of an antenna over a range of frequencies: a rational function through solutions
 * at frequencies that are chosen one after another where the function is least certain. Immutable.
 *
 * <p>Method: adaptive Antoulas–Anderson interpolation (Nakatsukasa, Sète and Trefethen, SIAM J.
 * Sci. Comput. 40, A1494, 2018) of all entries with common poles, which are the antenna's
 * resonances.
 */
public final class FrequencyResponse {

  private final List<Feed> feeds;
  private final RangeFit fit;

  private FrequencyResponse(List<Feed> feeds, RangeFit fit) {
    this.feeds = List.copyOf(feeds);
    this.fit = fit;
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
    return of(new Solver(), antenna, range, accuracy, List.of(), threads);
  }

  /**
   * Solves an antenna over a range as {@link #of(Antenna, FrequencyRange, double, int)} does, with
   * the gain at chosen directions as a second rational function.
   *
   * @param watched its watch and its limit of memory are used, its tolerance is not
   * @param accuracy wanted of the gains too; see {@link #gainError}
   * @param directions where the gain is wanted, perhaps none
   */
  public static FrequencyResponse of(
      Solver watched,
      Antenna antenna,
      FrequencyRange range,
      double accuracy,
      List<Direction> directions,
      int threads) {
    Objects.requireNonNull(watched, "watched");
    Objects.requireNonNull(antenna, "antenna");
    Objects.requireNonNull(directions, "directions");
    double tolerance = RangeFit.tolerance(range, accuracy);
    Solver solver = watched.withTolerance(tolerance);
    return new FrequencyResponse(
        antenna.feeds(),
        RangeFit.of(
            range,
            directions,
            f -> {
              Solution solution = solver.solve(antenna, f);
              return new RangeFit.Sample(RangeFit.upper(solution.portMatrix()), solution::gainDbi);
            },
            AdaptiveFit.Group.relative(tolerance),
            new AdaptiveFit.Goal(accuracy, RangeFit.MOST_SOLVES),
            threads));
  }

  /** The response of a port matrix given at a frequency in hertz. */
  static FrequencyResponse of(
      List<Feed> feeds,
      FrequencyRange range,
      DoubleFunction<Complex[][]> portMatrix,
      double noise,
      AdaptiveFit.Goal goal,
      int threads) {
    return new FrequencyResponse(
        feeds,
        RangeFit.of(
            range,
            List.of(),
            f -> new RangeFit.Sample(RangeFit.upper(portMatrix.apply(f)), direction -> 0),
            AdaptiveFit.Group.relative(noise),
            goal,
            threads));
  }

  /** The range in hertz. */
  public FrequencyRange range() {
    return fit.range();
  }

  /** Frequencies in hertz that were solved, rising. */
  public List<Double> solvedFrequencies() {
    return fit.solvedFrequencies();
  }

  /**
   * Relative error in the norm of the port matrix: the largest error of the last predictions at
   * frequencies not yet solved, which were chosen where the interpolant was least certain, plus the
   * tolerance of the solver. Above the wanted accuracy if that could not be reached.
   */
  public double relativeError() {
    return fit.portError();
  }

  /**
   * Open-circuit impedance matrix in ohms between the feeds, in the order of the antenna's feeds;
   * symmetric. A fresh copy.
   *
   * @param frequencyHz frequency in hertz within the range
   */
  public Complex[][] portMatrix(double frequencyHz) {
    return RangeFit.symmetric(fit.ports(frequencyHz));
  }

  /**
   * Input impedance in ohms of a feed with all feeds driven as stated; infinite for zero current.
   *
   * @param frequencyHz frequency in hertz within the range
   */
  public Complex impedance(String feed, double frequencyHz) {
    int index = index(feed);
    if (feeds.size() == 1) {
      return fit.ports(frequencyHz)[0];
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
    index(feed);
    return fit.scan().resonances(f -> impedance(feed, f));
  }

  /**
   * Gain in dBi in one of the directions asked for, with all feeds driven as stated; −∞ where
   * nothing is radiated, or so little beside the other directions that the fit does not tell it
   * from nothing.
   *
   * @param frequencyHz frequency in hertz within the range
   * @throws IllegalArgumentException for a direction that was not asked for
   */
  public double gainDbi(Direction direction, double frequencyHz) {
    return fit.gainDbi(direction, frequencyHz);
  }

  /**
   * Error of the gains as ratios, relative to the root of the sum of their squares over all
   * directions, measured as {@link #relativeError} is; 0 without directions.
   */
  public double gainError() {
    return fit.gainError();
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
    index(feed);
    return fit.scan().search(f -> mismatch(feed, referenceOhm, f).reflection());
  }

  private Mismatch mismatch(String feed, double referenceOhm, double frequencyHz) {
    return Mismatch.of(impedance(feed, frequencyHz), referenceOhm);
  }
}
