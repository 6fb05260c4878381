package org.spanwire.internal.field;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.internal.basis.CurrentExpansion;
import org.spanwire.internal.halfspace.ReflectedFieldKernel;
import org.spanwire.internal.math.GaussLegendre;
import org.spanwire.internal.math.LegendrePolynomials;
import org.spanwire.internal.math.VectorQuadrature;
import org.spanwire.internal.mesh.Piece;
import org.spanwire.medium.Ground;
import org.spanwire.medium.PerfectGround;
import org.spanwire.medium.Soil;
import org.spanwire.unit.PhysicalConstants;

/**
 * Rumsey's reaction ∫ E1·J2 between two line currents (Phys. Rev. 94, 1483, 1954), the field of the
 * first integrated along the second. The direct field is smoothed over the wires' radii, R² → R² +
 * (a1² + a2²)/2: symmetric, and for a wire with itself the field of the axis at its surface.
 */
public final class Reaction {

  private static final GaussLegendre RULE = GaussLegendre.of(12);
  private static final int NODES = 12;
  private static final int DEEPEST = 30;

  /** Ratio of neighbouring panels. */
  private static final double GRADING = 6;

  private final double k;
  private final double tolerance;
  private final double[] field = new double[DirectField.VALUES];
  private final double[] gross = new double[2];
  private final double[] along = new double[2 * NODES];
  private final double[] legendre = new double[NODES];

  private Reaction(double k, double tolerance) {
    this.k = k;
    this.tolerance = tolerance;
  }

  /**
   * The reaction in volt-amperes.
   *
   * @param source the first current; the radii of its pieces smooth its field
   * @param test the second current
   * @param frequencyHz frequency in hertz
   * @param ground what lies below z = 0
   * @param relativeTolerance wanted error relative to the sum of the moduli of what the pieces add
   */
  public static Complex of(
      CurrentExpansion source,
      CurrentExpansion test,
      double frequencyHz,
      Ground ground,
      double relativeTolerance) {
    Reaction reaction = new Reaction(PhysicalConstants.wavenumber(frequencyHz), relativeTolerance);
    List<SourcePiece> from = sources(source);
    List<SourcePiece> to = sources(test);
    double[] sum = reaction.direct(from, to, ground instanceof PerfectGround);
    if (ground instanceof Soil soil) {
      ReflectedFieldKernel kernel =
          new ReflectedFieldKernel(
              reaction.k,
              soil.complexPermittivity(frequencyHz),
              Math.max(1e-12, 0.1 * relativeTolerance));
      PotentialField reflected =
          new PotentialField(
              Stretch.of(from),
              Terminal.charges(from, largest(from)),
              reaction.k,
              new PotentialField.Reflected(kernel::evaluate),
              relativeTolerance);
      for (Stretch stretch : Stretch.of(to)) {
        reaction.reflected(reflected, stretch, 0, stretch.length(), 0, sum);
      }
    }
    double factor = PhysicalConstants.IMPEDANCE_OF_FREE_SPACE / (4 * Math.PI * reaction.k);
    return new Complex(factor * sum[1], -factor * sum[0]);
  }

  private static List<SourcePiece> sources(CurrentExpansion current) {
    List<SourcePiece> sources = new ArrayList<>();
    for (int i = 0; i < current.pieces().size(); i++) {
      sources.add(SourcePiece.of(current.pieces().get(i), current.re()[i], current.im()[i], 1));
    }
    return sources;
  }

  private static double largest(List<SourcePiece> sources) {
    double largest = 0;
    for (SourcePiece s : sources) {
      for (int n = 0; n < s.terms(); n++) {
        largest = Math.max(largest, Math.hypot(s.re()[0][n], s.im()[0][n]));
      }
    }
    return largest;
  }

  /** Wires of each radius have their own smoothing. */
  private double[] direct(List<SourcePiece> from, List<SourcePiece> to, boolean image) {
    double[] sum = new double[2];
    TreeSet<Double> radii = new TreeSet<>();
    from.forEach(s -> radii.add(s.piece().radius()));
    for (double radius : radii) {
      List<SourcePiece> lines = new ArrayList<>();
      for (SourcePiece s : from) {
        if (s.piece().radius() == radius) {
          lines.add(line(s, s.piece(), 1));
          if (image) {
            lines.add(line(s, s.piece().image(), -1));
          }
        }
      }
      double largest = largest(from);
      List<Terminal> terminals = Terminal.alongAxes(lines, largest);
      addDirect(lines, terminals, radius, to, sum);
    }
    return sum;
  }

  private static SourcePiece line(SourcePiece s, Piece p, double factor) {
    Piece axis = new Piece(p.x(), p.y(), p.z(), p.ux(), p.uy(), p.uz(), p.length(), 0);
    return SourcePiece.of(axis, s.re()[0], s.im()[0], factor);
  }

  private void addDirect(
      List<SourcePiece> lines,
      List<Terminal> terminals,
      double radius,
      List<SourcePiece> to,
      double[] sum) {
    for (SourcePiece test : to) {
      double other = test.piece().radius();
      double smoothing2 = 0.5 * (radius * radius + other * other);
      DirectField direct = new DirectField(lines, terminals, k, smoothing2, 0.01 * tolerance);
      VectorQuadrature.Integrand integrand = (t, values) -> integrand(direct, test, t, values);
      double[] edges = edges(test.piece().length(), Math.sqrt(smoothing2));
      double[] rough = new double[2];
      integrate(integrand, edges, Double.MAX_VALUE, rough);
      double limit = 0.01 * tolerance * Math.hypot(rough[0], rough[1]);
      integrate(integrand, edges, Math.max(limit, Double.MIN_NORMAL), sum);
    }
  }

  private static void integrate(
      VectorQuadrature.Integrand integrand, double[] edges, double limit, double[] sum) {
    for (int i = 0; i + 1 < edges.length; i++) {
      new VectorQuadrature(2).add(integrand, edges[i], edges[i + 1], limit, sum);
    }
  }

  /**
   * Panels that shrink to the smoothing distance towards both ends of a piece, where the field is
   * as large as 1/R and 1/R².
   */
  private static double[] edges(double length, double smallest) {
    List<Double> half = new ArrayList<>();
    for (double share = 1; share * 0.5 * length > smallest && half.size() < 40; share /= GRADING) {
      half.add(share);
    }
    int n = half.size();
    double[] edges = new double[2 * n + 1 + (n == 0 ? 2 : 0)];
    edges[0] = -1;
    edges[edges.length - 1] = 1;
    for (int i = 1; i < n; i++) {
      edges[n - i] = half.get(i) - 1;
      edges[n + i] = 1 - half.get(i);
    }
    return edges;
  }

  private void integrand(DirectField direct, SourcePiece test, double t, double[] values) {
    Piece p = test.piece();
    java.util.Arrays.fill(field, 0);
    direct.add(p.x(t), p.y(t), p.z(t), field);
    double re = field[0] * p.ux() + field[2] * p.uy() + field[4] * p.uz();
    double im = field[1] * p.ux() + field[3] * p.uy() + field[5] * p.uz();
    double[] basis = new double[test.terms()];
    LegendrePolynomials.fill(t, basis.length - 1, 0.5 * p.length(), basis, 0);
    double currentRe = 0;
    double currentIm = 0;
    for (int n = 0; n < basis.length; n++) {
      currentRe += basis[n] * test.re()[0][n];
      currentIm += basis[n] * test.im()[0][n];
    }
    values[0] = re * currentRe - im * currentIm;
    values[1] = re * currentIm + im * currentRe;
  }

  private void reflected(
      PotentialField source, Stretch test, double a, double b, int depth, double[] sum) {
    boolean tooLong = k * (b - a) > 6;
    if (depth < DEEPEST && (tooLong || !resolved(source, test, a, b))) {
      double middle = 0.5 * (a + b);
      reflected(source, test, a, middle, depth + 1, sum);
      reflected(source, test, middle, b, depth + 1, sum);
      return;
    }
    double[] weights = test.weights(a, b, RULE, 0);
    for (int i = 0; i < 2 * NODES; i += 2) {
      sum[0] += weights[i] * along[i] - weights[i + 1] * along[i + 1];
      sum[1] += weights[i] * along[i + 1] + weights[i + 1] * along[i];
    }
  }

  /** Evaluates the field along a part and tells whether its interpolant has converged. */
  private boolean resolved(PotentialField source, Stretch test, double a, double b) {
    double largest = 0;
    double[] last = new double[4];
    for (int node = 0; node < NODES; node++) {
      double s = a + 0.5 * (1 + RULE.node(node)) * (b - a);
      java.util.Arrays.fill(field, 0);
      source.add(test.x(s), test.y(s), test.z(s), field, gross);
      LegendrePolynomials.fill(RULE.node(node), NODES - 1, RULE.weight(node), legendre, 0);
      for (int part = 0; part < 2; part++) {
        double value =
            field[part] * test.ux() + field[2 + part] * test.uy() + field[4 + part] * test.uz();
        along[2 * node + part] = value;
        largest = Math.max(largest, Math.abs(value));
        last[part] += (NODES - 0.5) * legendre[NODES - 1] * value;
        last[2 + part] += (NODES - 1.5) * legendre[NODES - 2] * value;
      }
    }
    double tail = 0;
    for (double value : last) {
      tail = Math.max(tail, Math.abs(value));
    }
    return tail <= 10 * tolerance * largest;
  }
}
