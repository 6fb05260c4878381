package org.spanwire.internal.field;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;
import org.apache.commons.math3.optim.univariate.UnivariatePointValuePair;
import org.spanwire.result.Direction;
import org.spanwire.result.GainSample;
import org.spanwire.result.Lobe;
import org.spanwire.result.PeakGain;

/**
 * Gain 4πU/P of a far field over a reference power: the power accepted gives gain, the power
 * radiated directivity (IEEE Std 145-2013). Maxima are found by search: samples dense enough that
 * none of a pattern of this electrical size can hide between them, then a local search from each
 * sample that could lead to the highest. Equal maxima (to 1e-9) are told apart by position: nearest
 * the horizon, above before below, lowest azimuth. Angles are given to 1e-4 degree.
 */
public final class GainPattern {

  /** Two intensities closer than this, relatively, are the same. */
  private static final double SAME = 1e-9;

  /**
   * A sample next to the highest maximum is no lower than this fraction of it. The samples stand
   * 1/M apart, M the highest harmonic of the intensity, so the nearest one is at most 0.71/M away;
   * by Bernstein's inequality the second derivative of a positive trigonometric polynomial is at
   * most M²/2 of its maximum, and the loss at most 0.13.
   */
  private static final double WORTH_CLIMBING = 0.8;

  private static final double ANGLE_STEPS_PER_DEGREE = 1e4;

  private final FarField field;
  private final double referencePower;

  /** A direction in degrees where the intensity may be largest. */
  record Candidate(double intensity, double elevation, double azimuth) {

    /** Whether two maxima are equal but for rounding. */
    boolean isAsHighAs(Candidate other) {
      return Math.abs(intensity - other.intensity) <= 1e-8 * other.intensity;
    }
  }

  /** A sample and the local maximum above it. */
  private record Climb(Candidate from, Candidate top) {}

  /**
   * Prepares a pattern.
   *
   * @param field the far field
   * @param referencePower accepted or radiated power in watts, positive
   */
  public GainPattern(FarField field, double referencePower) {
    if (!(referencePower > 0) || Double.isInfinite(referencePower)) {
      throw new IllegalArgumentException(
          "reference power " + referencePower + " W must be positive and finite");
    }
    this.field = field;
    this.referencePower = referencePower;
  }

  /** Gain in dBi in a direction; negative infinity in a null and below a ground. */
  public double gainDbi(Direction direction) {
    return decibels(field.intensity(direction));
  }

  private double decibels(double intensity) {
    return 10 * Math.log10(4 * Math.PI * intensity / referencePower);
  }

  /**
   * Samples around a full circle for a pattern of radius kR, a multiple of eight so that the axes
   * are among them.
   */
  private static int circle(double radius) {
    double highestHarmonic = 2 * radius + 4;
    return 8 * (int) Math.ceil(2 * Math.PI * highestHarmonic / 8);
  }

  /** The largest gain at an elevation; its azimuth is empty if the gain is the same all around. */
  public GainSample atElevation(double elevationDegrees) {
    double elevation = Math.toRadians(new Direction(elevationDegrees, 0).elevationDegrees());
    double sin = Math.sin(elevation);
    double cos = Math.cos(elevation);
    double[] ring = ring(sin, cos);
    double highest = highest(ring);
    if (isLevel(ring)) {
      return new GainSample(elevationDegrees, OptionalDouble.empty(), decibels(highest));
    }
    Candidate best = select(climbRing(ring, elevationDegrees));
    return new GainSample(
        elevationDegrees, OptionalDouble.of(best.azimuth), decibels(best.intensity));
  }

  /** The local maxima of a ring that could be the highest, samples and what is found from them. */
  private List<Candidate> climbRing(double[] ring, double elevationDegrees) {
    List<Candidate> found = new ArrayList<>();
    double highest = highest(ring);
    int n = ring.length;
    for (int i = 0; i < n; i++) {
      boolean local = ring[i] >= ring[(i + n - 1) % n] && ring[i] >= ring[(i + 1) % n];
      if (local && ring[i] >= WORTH_CLIMBING * highest) {
        found.add(candidate(ring[i], elevationDegrees, 360.0 * i / n));
        found.add(climb(elevationDegrees, 2 * Math.PI / n, i));
      }
    }
    return found;
  }

  private double[] ring(double sin, double cos) {
    double[] work = new double[FarField.WORK];
    double[] ring = new double[circle(field.horizontalRadius() * cos)];
    for (int i = 0; i < ring.length; i++) {
      double phi = 2 * Math.PI * i / ring.length;
      ring[i] = field.intensity(sin, cos, Math.cos(phi), Math.sin(phi), work);
    }
    return ring;
  }

  private Candidate climb(double elevationDegrees, double step, int i) {
    double sin = Math.sin(Math.toRadians(elevationDegrees));
    double cos = Math.cos(Math.toRadians(elevationDegrees));
    double[] work = new double[FarField.WORK];
    UnivariatePointValuePair top =
        new BrentOptimizer(1e-9, 1e-9 * step)
            .optimize(
                new MaxEval(500),
                GoalType.MAXIMIZE,
                new UnivariateObjectiveFunction(
                    phi -> field.intensity(sin, cos, Math.cos(phi), Math.sin(phi), work)),
                new SearchInterval((i - 1) * step, (i + 1) * step, i * step));
    return candidate(top.getValue(), elevationDegrees, Math.toDegrees(top.getPoint()));
  }

  /** The largest gain over all directions, over a ground over those above it. */
  public PeakGain peak() {
    Samples samples = samples();
    if (samples.areLevel()) {
      return new PeakGain(
          decibels(samples.highest), OptionalDouble.empty(), OptionalDouble.empty());
    }
    List<Candidate> found = new ArrayList<>();
    for (Climb climb : climbAll(samples, WORTH_CLIMBING)) {
      found.add(climb.from);
      found.add(climb.top);
    }
    // A crest may run through many elevations; where it meets the horizon is the place to name.
    found.addAll(climbRing(ring(0, 1), 0));
    return described(select(found));
  }

  /**
   * The lobes, highest first: local maxima that are no lower than a fraction of the highest. A
   * crest counts once; so does a pattern that is the same in all directions, which has no lobes.
   *
   * @param fraction least intensity of a lobe over the largest
   * @param most number of lobes at most, the highest are kept
   */
  public List<Lobe> lobes(double fraction, int most) {
    Samples samples = samples();
    if (samples.areLevel()) {
      return List.of();
    }
    List<Candidate> tops = new ArrayList<>();
    climbAll(samples, WORTH_CLIMBING * fraction).forEach(climb -> tops.add(climb.top));
    // Where a crest meets the horizon is the place to name.
    for (Candidate low : climbRing(ring(0, 1), 0)) {
      if (tops.stream().anyMatch(top -> low.isAsHighAs(top))) {
        tops.add(low);
      }
    }
    double step = 1 / (2 * field.electricalRadius() + 4);
    return new Crests(field, step)
        .of(tops).stream()
            .map(GainPattern::select)
            .filter(c -> c.intensity >= fraction * samples.highest)
            .sorted(
                Comparator.comparingLong((Candidate c) -> -Math.round(1e7 * decibels(c.intensity)))
                    .thenComparingDouble(c -> Math.abs(c.elevation))
                    .thenComparingDouble(c -> -c.elevation)
                    .thenComparingDouble(Candidate::azimuth))
            .limit(most)
            .map(this::lobe)
            .toList();
  }

  private Lobe lobe(Candidate top) {
    PeakGain gain = described(top);
    return new Lobe(gain.gainDbi(), top.elevation, gain.azimuthDegrees());
  }

  /** Intensities at a grid of directions, one row for each elevation in radians. */
  private record Samples(double[] elevations, double[][] grid, double lowest, double highest) {
    boolean areLevel() {
      return highest - lowest <= SAME * highest;
    }
  }

  private Samples samples() {
    double[] elevations = elevations();
    double[][] grid = new double[elevations.length][];
    int columns = circle(field.horizontalRadius());
    double[] work = new double[FarField.WORK];
    double highest = 0;
    double lowest = Double.POSITIVE_INFINITY;
    for (int row = 0; row < grid.length; row++) {
      grid[row] = new double[columns];
      for (int i = 0; i < columns; i++) {
        double phi = 2 * Math.PI * i / columns;
        double sin = Math.sin(elevations[row]);
        double cos = Math.cos(elevations[row]);
        grid[row][i] = field.intensity(sin, cos, Math.cos(phi), Math.sin(phi), work);
        highest = Math.max(highest, grid[row][i]);
        lowest = Math.min(lowest, grid[row][i]);
      }
    }
    return new Samples(elevations, grid, lowest, highest);
  }

  private PeakGain described(Candidate best) {
    double elevation = Math.toRadians(best.elevation);
    boolean noAzimuth =
        Math.abs(best.elevation) == 90 || isLevel(ring(Math.sin(elevation), Math.cos(elevation)));
    return new PeakGain(
        decibels(best.intensity),
        OptionalDouble.of(best.elevation),
        noAzimuth ? OptionalDouble.empty() : OptionalDouble.of(best.azimuth));
  }

  /**
   * Rows of the grid, ascending, radians; over soil two more next to the horizon, where the
   * reflection changes fast.
   */
  private double[] elevations() {
    int quarter = (int) Math.ceil(0.5 * Math.PI * (2 * field.electricalRadius() + 4));
    double step = 0.5 * Math.PI / quarter;
    List<Double> rows = new ArrayList<>();
    for (int i = field.hasGround() ? 0 : -quarter; i <= quarter; i++) {
      rows.add(i * step);
      if (i == 0 && field.soilScale() < 1) {
        rows.add(0.25 * step);
        rows.add(0.5 * step);
      }
    }
    return rows.stream().mapToDouble(Double::doubleValue).toArray();
  }

  private List<Climb> climbAll(Samples samples, double worth) {
    double[][] grid = samples.grid;
    double[] elevations = samples.elevations;
    double detail = 1 / (2 * field.electricalRadius() + 4);
    PeakSearch search = new PeakSearch(field);
    List<Climb> found = new ArrayList<>();
    for (int row = 0; row < grid.length; row++) {
      int columns = Math.abs(elevations[row]) > 1.57 ? 1 : grid[row].length;
      for (int i = 0; i < columns; i++) {
        if (grid[row][i] >= worth * samples.highest && isLocalMaximum(grid, row, i)) {
          double phi = 2 * Math.PI * i / grid[row].length;
          double cos = Math.cos(elevations[row]);
          search.climb(cos * Math.cos(phi), cos * Math.sin(phi), Math.sin(elevations[row]), detail);
          found.add(
              new Climb(
                  candidate(grid[row][i], Math.toDegrees(elevations[row]), Math.toDegrees(phi)),
                  candidate(
                      search.intensity(), search.elevationDegrees(), search.azimuthDegrees())));
        }
      }
    }
    return found;
  }

  private static boolean isLocalMaximum(double[][] grid, int row, int column) {
    int n = grid[row].length;
    for (int r = Math.max(0, row - 1); r <= Math.min(grid.length - 1, row + 1); r++) {
      for (int side = -1; side <= 1; side++) {
        if (grid[r][(column + n + side) % n] > grid[row][column] * (1 + SAME)) {
          return false;
        }
      }
    }
    return true;
  }

  static Candidate candidate(double intensity, double elevation, double azimuth) {
    double turned = Math.rint(azimuth * ANGLE_STEPS_PER_DEGREE) / ANGLE_STEPS_PER_DEGREE % 360;
    return new Candidate(
        intensity,
        Math.rint(elevation * ANGLE_STEPS_PER_DEGREE) / ANGLE_STEPS_PER_DEGREE + 0.0,
        (turned < 0 ? turned + 360 : turned) + 0.0);
  }

  /** The first by position among the candidates that are as high as the highest. */
  private static Candidate select(List<Candidate> found) {
    double highest = found.stream().mapToDouble(Candidate::intensity).max().orElseThrow();
    Candidate first =
        found.stream()
            .filter(c -> c.intensity >= highest * (1 - SAME))
            .min(
                Comparator.comparingDouble((Candidate c) -> Math.abs(c.elevation))
                    .thenComparingDouble(c -> -c.elevation)
                    .thenComparingDouble(Candidate::azimuth))
            .orElseThrow();
    return new Candidate(highest, first.elevation, first.azimuth);
  }

  private static boolean isLevel(double[] ring) {
    double lowest = Double.POSITIVE_INFINITY;
    for (double value : ring) {
      lowest = Math.min(lowest, value);
    }
    double highest = highest(ring);
    return highest - lowest <= SAME * highest;
  }

  private static double highest(double[] ring) {
    double highest = 0;
    for (double value : ring) {
      highest = Math.max(highest, value);
    }
    return highest;
  }
}
