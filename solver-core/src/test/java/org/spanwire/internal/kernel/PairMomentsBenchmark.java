package org.spanwire.internal.kernel;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.spanwire.internal.mesh.Piece;

/** All moments of one pair of pieces of 0.1 λ and order 5, radius 1e-4 λ. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 7, time = 1)
public class PairMomentsBenchmark {

  private static final int ORDER = 5;
  private static final double LENGTH = 0.1;
  private static final double RADIUS = 1e-4;

  /** How the pieces lie. */
  public enum Pair {
    SELF,
    NEXT_ON_LINE,
    RIGHT_ANGLE,
    PARALLEL_AT_8_RADII,
    FAR
  }

  @Param Pair pair;

  private final PairMoments moments = new PairMoments(ORDER, 1e-6);
  private final double[] wavenumbers = {2 * Math.PI};
  private final double[][] re = new double[1][(ORDER + 1) * (ORDER + 1)];
  private final double[][] im = new double[1][(ORDER + 1) * (ORDER + 1)];
  private Piece a;
  private Piece b;

  /** Lays the pieces. */
  @Setup
  public void place() {
    a = new Piece(0, 0, 0, 1, 0, 0, LENGTH, RADIUS);
    b =
        switch (pair) {
          case SELF -> a;
          case NEXT_ON_LINE -> new Piece(LENGTH, 0, 0, 1, 0, 0, LENGTH, RADIUS);
          case RIGHT_ANGLE -> new Piece(LENGTH, 0, 0, 0, 1, 0, LENGTH, RADIUS);
          case PARALLEL_AT_8_RADII -> new Piece(0, 8 * RADIUS, 0, 1, 0, 0, LENGTH, RADIUS);
          case FAR -> new Piece(1, 0.5, 0.3, 0, 0.6, 0.8, LENGTH, RADIUS);
        };
  }

  /** 36 moments. */
  @Benchmark
  public double moments() {
    moments.direct(a, ORDER, b, ORDER, wavenumbers, re, im);
    return re[0][0];
  }
}
