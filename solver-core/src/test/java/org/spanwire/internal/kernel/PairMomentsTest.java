package org.spanwire.internal.kernel;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanwire.internal.math.LegendrePolynomials;
import org.spanwire.internal.mesh.Piece;

/** Moments against adaptive double quadrature of the same kernel, errors relative to |M_00|. */
class PairMomentsTest {

  private static final double ACCURACY = 1e-9;

  /** The blend of two kernels has two continuous derivatives only. */
  private static final double NEIGHBOURS = 1e-8;

  private static final int ORDER = 8;
  private static final double A = 1e-3;
  private static final double K = 2;

  private static final GaussIntegratorFactory RULES = new GaussIntegratorFactory();

  private static Piece piece(double x, double y, double z, double angle, double length, double a) {
    return new Piece(x, y, z, Math.sin(angle), 0, Math.cos(angle), length, a);
  }

  private static double[][] moments(Piece a, int pa, Piece b, int pb, double k, double accuracy) {
    double[] re = new double[(pa + 1) * (pb + 1)];
    double[] im = new double[re.length];
    new PairMoments(Math.max(pa, pb), accuracy)
        .direct(a, pa, b, pb, new double[] {k}, new double[][] {re}, new double[][] {im});
    return new double[][] {re, im};
  }

  private static boolean areNeighbours(Piece a, Piece b) {
    return new TubePairKernel(new DirectKernel(), ACCURACY)
        .applies(a, b, PieceDistance.squared(a, -1, 1, b, -1, 1));
  }

  /**
   * Between close wires the kernel blends two forms, and the code averages only within its reach.
   */
  private static double accuracy(Piece a, Piece b) {
    return areNeighbours(a, b) ? NEIGHBOURS : ACCURACY;
  }

  private static double worst(double[][] got, double[][] expected) {
    double worst = 0;
    for (int i = 0; i < got[0].length; i++) {
      worst = Math.max(worst, Math.hypot(got[0][i] - expected[0][i], got[1][i] - expected[1][i]));
    }
    return worst / Math.hypot(expected[0][0], expected[1][0]);
  }

  /**
   * Moments of the tube kernel by an outer and an inner rule in panels graded toward every place
   * where either integrand is singular.
   */
  private static final class CoaxialJudge {
    private final Piece b;
    private final double start;
    private final double[] value = new double[2];
    private final double[][] sum = new double[2][(ORDER + 1) * (ORDER + 1)];
    private final double[] pa = new double[ORDER + 1];
    private final double[] pb = new double[ORDER + 1];

    private CoaxialJudge(Piece b, double start) {
      this.b = b;
      this.start = start;
    }

    /** b starts at the distance start along a, in a's direction. */
    static double[][] moments(Piece a, Piece b, double start) {
      CoaxialJudge judge = new CoaxialJudge(b, start);
      graded(0, a.length(), new double[] {start, start + b.length()}, (s, w) -> judge.at(a, s, w));
      return judge.sum;
    }

    private void at(Piece a, double s, double weight) {
      LegendrePolynomials.fill(2 * s / a.length() - 1, ORDER, weight, pa, 0);
      double difference = a.radius() - b.radius();
      graded(
          0,
          b.length(),
          new double[] {s - start},
          (t, w) -> {
            double u = Math.max(Math.abs(t + start - s), 1e-14 * b.length());
            TubeKernel.evaluate(
                u * u + difference * difference,
                4 * a.radius() * b.radius(),
                new double[] {K},
                value);
            LegendrePolynomials.fill(2 * t / b.length() - 1, ORDER, w, pb, 0);
            for (int i = 0; i <= ORDER; i++) {
              for (int j = 0; j <= ORDER; j++) {
                sum[0][i * (ORDER + 1) + j] += pa[i] * pb[j] * value[0];
                sum[1][i * (ORDER + 1) + j] += pa[i] * pb[j] * value[1];
              }
            }
          });
    }
  }

  @FunctionalInterface
  private interface Node {
    void at(double s, double weight);
  }

  /** Gauss rules from..to, the panels halved toward the singular places inside or at the ends. */
  private static void graded(double from, double to, double[] singular, Node node) {
    double[] clipped = new double[singular.length + 2];
    clipped[0] = from;
    clipped[1] = to;
    for (int i = 0; i < singular.length; i++) {
      clipped[i + 2] = Math.max(from, Math.min(to, singular[i]));
    }
    java.util.Arrays.sort(clipped);
    for (int i = 1; i < clipped.length; i++) {
      double half = 0.5 * (clipped[i] - clipped[i - 1]);
      if (half > 1e-12 * (to - from)) {
        panels(clipped[i - 1], half, singular, node);
        panels(clipped[i], -half, singular, node);
      }
    }
  }

  private static void panels(double end, double half, double[] singular, Node node) {
    double far = Double.POSITIVE_INFINITY;
    for (double place : singular) {
      far = Math.min(far, Math.abs(place - end));
    }
    double hi = 1;
    while (hi > 0) {
      double lo = hi < 1e-10 || hi * Math.abs(half) < far ? 0 : 0.2 * hi;
      GaussIntegrator rule = RULES.legendre(12, lo, hi);
      for (int q = 0; q < 12; q++) {
        node.at(end + rule.getPoint(q) * half, rule.getWeight(q) * Math.abs(half));
      }
      hi = lo;
    }
  }

  /** Moments of the general kernel by rectangles halved until they agree with their halves. */
  private static final class AdaptiveJudge {
    private static final int NODES = 10;
    private static final double TOLERANCE = 1e-12;

    private final Piece a;
    private final Piece b;
    private final double k;
    private final NodeKernel kernel;
    private final double[] value = new double[2];
    private final double[] pa = new double[ORDER + 1];
    private final double[] pb = new double[ORDER + 1];
    private final double[][] sum = new double[2][(ORDER + 1) * (ORDER + 1)];
    private double scale;

    private AdaptiveJudge(Piece a, Piece b, double k) {
      this.a = a;
      this.b = b;
      this.k = k;
      DirectKernel direct = new DirectKernel();
      direct.prepare(a, b, k);
      if (areNeighbours(a, b)) {
        TubePairKernel around = new TubePairKernel(direct, ACCURACY);
        around.prepare(a, b, k);
        around.enter(Math.sqrt(PieceDistance.squared(a, -1, 1, b, -1, 1)));
        kernel = around;
      } else {
        kernel = direct;
      }
    }

    static double[][] moments(Piece a, Piece b, double k) {
      AdaptiveJudge judge = new AdaptiveJudge(a, b, k);
      double[][] whole = judge.rule(-1, 1, -1, 1);
      judge.scale = Math.hypot(whole[0][0], whole[1][0]);
      judge.refine(whole, -1, 1, -1, 1);
      return judge.sum;
    }

    private void refine(double[][] whole, double a0, double a1, double b0, double b1) {
      boolean cutA = (a1 - a0) * a.length() >= (b1 - b0) * b.length();
      double middle = cutA ? 0.5 * (a0 + a1) : 0.5 * (b0 + b1);
      double[][] first = cutA ? rule(a0, middle, b0, b1) : rule(a0, a1, b0, middle);
      double[][] second = cutA ? rule(middle, a1, b0, b1) : rule(a0, a1, middle, b1);
      double change = 0;
      for (int i = 0; i < whole[0].length; i++) {
        for (int part = 0; part < 2; part++) {
          change = Math.max(change, Math.abs(first[part][i] + second[part][i] - whole[part][i]));
        }
      }
      if (change <= TOLERANCE * scale) {
        for (int i = 0; i < whole[0].length; i++) {
          sum[0][i] += first[0][i] + second[0][i];
          sum[1][i] += first[1][i] + second[1][i];
        }
      } else if (cutA) {
        refine(first, a0, middle, b0, b1);
        refine(second, middle, a1, b0, b1);
      } else {
        refine(first, a0, a1, b0, middle);
        refine(second, a0, a1, middle, b1);
      }
    }

    private double[][] rule(double a0, double a1, double b0, double b1) {
      double[][] out = new double[2][(ORDER + 1) * (ORDER + 1)];
      GaussIntegrator ruleA = RULES.legendre(NODES, a0, a1);
      GaussIntegrator ruleB = RULES.legendre(NODES, b0, b1);
      for (int p = 0; p < NODES; p++) {
        double t = ruleA.getPoint(p);
        LegendrePolynomials.fill(t, ORDER, ruleA.getWeight(p), pa, 0);
        for (int q = 0; q < NODES; q++) {
          double s = ruleB.getPoint(q);
          kernel.evaluate(a.x(t) - b.x(s), a.y(t) - b.y(s), a.z(t) - b.z(s), value);
          LegendrePolynomials.fill(
              s, ORDER, 0.25 * a.length() * b.length() * ruleB.getWeight(q), pb, 0);
          for (int i = 0; i <= ORDER; i++) {
            for (int j = 0; j <= ORDER; j++) {
              out[0][i * (ORDER + 1) + j] += pa[i] * pb[j] * value[0];
              out[1][i * (ORDER + 1) + j] += pa[i] * pb[j] * value[1];
            }
          }
        }
      }
      return out;
    }
  }

  /** Lengths of a and b, start of b along a, radii; on one line. */
  @ParameterizedTest
  @CsvSource({
    "0.1, 0.1, 0, 1e-3, 1e-3",
    "1e-3, 1e-3, 0, 1e-3, 1e-3",
    "3e-6, 3e-6, 0, 1e-3, 1e-3",
    "3e-6, 1.5e-5, 3e-6, 1e-3, 1e-3",
    "5e-3, 5e-3, 0, 1e-3, 1e-3",
    "1, 1, 0, 1e-5, 1e-5",
    "0.1, 0.1, 0.1, 1e-3, 1e-3",
    "0.1, 0.3, 0.1, 1e-3, 1e-3",
    "0.002, 0.3, 0.002, 1e-3, 1e-3",
    "0.3, 0.002, -0.002, 1e-3, 1e-3",
    "0.1, 0.1, 0.1, 1e-3, 2e-3",
    "0.05, 0.2, -0.2, 1e-3, 1.3e-3",
    "0.1, 0.1, 0.104, 1e-3, 1e-3",
    "0.1, 0.3, 0.12, 1e-3, 1e-3",
    "0.1, 0.03, -0.05, 1e-3, 1e-3"
  })
  void collinearPieces(double ha, double hb, double start, double ra, double rb) {
    Piece a = piece(0.2, 0, 0, 0.7, ha, ra);
    Piece b = piece(a.x() + start * a.ux(), 0, a.z() + start * a.uz(), 0.7, hb, rb);
    double[][] got = moments(a, ORDER, b, ORDER, K, ACCURACY);
    assertThat(worst(got, CoaxialJudge.moments(a, b, start))).isLessThan(2e-10);
  }

  /** Where the coaxial rule hands over to the general one, both give the same. */
  @ParameterizedTest
  @ValueSource(doubles = {0.1, 0.3, 1})
  void collinearPiecesFarApart(double gap) {
    Piece a = piece(0, 0, 0, 0, 0.1, A);
    Piece b = piece(0, 0, 0.1 + gap, 0, 0.1, A);
    double[][] got = moments(a, ORDER, b, ORDER, K, ACCURACY);
    assertThat(worst(got, CoaxialJudge.moments(a, b, 0.1 + gap))).isLessThan(ACCURACY);
  }

  @ParameterizedTest
  @ValueSource(doubles = {5, 20, 45, 90, 120, 150, 170, 179, 179.9})
  void touchingPieces(double degrees) {
    Piece a = piece(0, 0, 0, 0, 0.05, A);
    for (double hb : new double[] {0.05, 0.003}) {
      Piece b = piece(0, 0, 0, Math.toRadians(degrees), hb, A);
      double[][] got = moments(a, ORDER, b, ORDER, K, ACCURACY);
      assertThat(worst(got, AdaptiveJudge.moments(a, b, K))).as("hb %g", hb).isLessThan(ACCURACY);
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {4, 6, 10, 40})
  void parallelPieces(double radii) {
    Piece a = piece(0, 0, 0, 0, 0.2, A);
    Piece opposite = piece(radii * A, 0, 0, 0, 0.2, A);
    Piece shifted = piece(0, radii * A, 0.07, Math.PI, 0.12, A);
    assertThat(
            worst(
                moments(a, ORDER, opposite, ORDER, K, ACCURACY),
                AdaptiveJudge.moments(a, opposite, K)))
        .isLessThan(accuracy(a, opposite));
    assertThat(
            worst(
                moments(a, ORDER, shifted, ORDER, K, ACCURACY),
                AdaptiveJudge.moments(a, shifted, K)))
        .isLessThan(accuracy(a, shifted));
  }

  @ParameterizedTest
  @ValueSource(doubles = {2.1, 4, 20})
  void crossingPieces(double radii) {
    Piece a = piece(0, 0, -0.1, 0, 0.2, A);
    for (double angle : new double[] {0.1, 1, 1.5}) {
      Piece b = piece(-0.05 * Math.sin(angle), radii * A, -0.05 * Math.cos(angle), angle, 0.2, A);
      double[][] got = moments(a, ORDER, b, ORDER, K, ACCURACY);
      assertThat(worst(got, AdaptiveJudge.moments(a, b, K)))
          .as("angle %g", angle)
          .isLessThan(accuracy(a, b));
    }
  }

  /** Random pairs up to half a wavelength long, from near to tens of wavelengths apart. */
  @Test
  void randomPieces() {
    Random random = new Random(41);
    for (int i = 0; i < 80; i++) {
      double ha = 0.1 + random.nextDouble();
      double hb = 0.1 + random.nextDouble();
      double k = Math.PI / Math.max(ha, hb) * random.nextDouble();
      double away = Math.pow(10, -2 + 3.5 * random.nextDouble());
      double direction = 3 * random.nextDouble();
      Piece a = piece(0, 0, 0, 0, ha, A);
      Piece b =
          piece(
              away * Math.sin(direction),
              0.01 + 0.2 * away * random.nextDouble(),
              away * Math.cos(direction),
              3 * random.nextDouble(),
              hb,
              A);
      double[][] got = moments(a, ORDER, b, ORDER, k, ACCURACY);
      assertThat(worst(got, AdaptiveJudge.moments(a, b, k)))
          .as("ha %g, hb %g, k %g, away %g, direction %g", ha, hb, k, away, direction)
          .isLessThan(accuracy(a, b));
    }
  }

  @Test
  void areConsistentBetweenOrders() {
    Piece a = piece(0, 0, 0, 0, 0.05, A);
    Piece[] partners = {
      a,
      piece(0, 0, 0.05, 0, 0.1, A),
      piece(0, 0, 0, 2, 0.02, A),
      piece(0.006, 0, 0, 0, 0.05, A),
      piece(3, 1, 0, 1, 0.05, A)
    };
    for (Piece b : partners) {
      double[][] high = moments(a, 8, b, 7, K, ACCURACY);
      double[][] low = moments(a, 3, b, 2, K, ACCURACY);
      double scale = Math.hypot(high[0][0], high[1][0]);
      for (int i = 0; i <= 3; i++) {
        for (int j = 0; j <= 2; j++) {
          assertThat(
                  Math.hypot(
                      high[0][i * 8 + j] - low[0][i * 3 + j],
                      high[1][i * 8 + j] - low[1][i * 3 + j]))
              .isLessThan(2 * ACCURACY * scale);
        }
      }
    }
  }

  @Test
  void areSymmetricInThePieces() {
    Piece a = piece(0, 0, 0, 0, 0.05, A);
    Piece[] partners = {
      piece(0, 0, 0.05, 0, 0.1, 2 * A), piece(0, 0, 0, 2, 0.02, A), piece(0.006, 0, 0, 0, 0.05, A)
    };
    for (Piece b : partners) {
      double[][] ab = moments(a, 4, b, 3, K, ACCURACY);
      double[][] ba = moments(b, 3, a, 4, K, ACCURACY);
      double scale = Math.hypot(ab[0][0], ab[1][0]);
      for (int i = 0; i <= 4; i++) {
        for (int j = 0; j <= 3; j++) {
          assertThat(
                  Math.hypot(
                      ab[0][i * 4 + j] - ba[0][j * 5 + i], ab[1][i * 4 + j] - ba[1][j * 5 + i]))
              .isLessThan(2 * ACCURACY * scale);
        }
      }
    }
  }

  /** A piece run the other way changes the sign of its odd degrees. */
  @Test
  void reversalChangesTheSignOfOddDegrees() {
    Piece a = piece(0, 0, 0, 0, 0.05, A);
    Piece[] partners = {
      a,
      piece(0, 0, 0.05, 0, 0.1, A),
      piece(0, 0, 0.3, 0, 0.1, A),
      piece(0, 0, 0, 2, 0.02, A),
      piece(0.006, 0, 0, 0, 0.05, A)
    };
    for (Piece b : partners) {
      Piece reversed =
          new Piece(b.x(1), b.y(1), b.z(1), -b.ux(), -b.uy(), -b.uz(), b.length(), b.radius());
      double[][] forth = moments(a, ORDER, b, ORDER, K, ACCURACY);
      double[][] back = moments(a, ORDER, reversed, ORDER, K, ACCURACY);
      double scale = Math.hypot(forth[0][0], forth[1][0]);
      for (int i = 0; i < forth[0].length; i++) {
        int sign = i % (ORDER + 1) % 2 == 0 ? 1 : -1;
        assertThat(Math.hypot(forth[0][i] - sign * back[0][i], forth[1][i] - sign * back[1][i]))
            .isLessThan(1e-11 * scale);
      }
    }
  }

  /** A bend that straightens out becomes the exact kernel of the straight tube. */
  @Test
  void straighteningBendReachesTheStraightTube() {
    Piece a = piece(0, 0, 0, 0, 0.05, A);
    Piece straight = piece(0, 0, -0.05, 0, 0.05, A);
    double[][] expected = moments(a, ORDER, straight, ORDER, K, ACCURACY);
    for (double degrees : new double[] {0.1, 0.01, 0.001}) {
      double angle = Math.toRadians(degrees);
      Piece bent = piece(-0.05 * Math.sin(angle), 0, -0.05 * Math.cos(angle), angle, 0.05, A);
      assertThat(worst(moments(a, ORDER, bent, ORDER, K, ACCURACY), expected))
          .as("bend of %g deg", degrees)
          .isLessThan(2e-3 * degrees * degrees + 2 * ACCURACY);
    }
  }
}
