package org.spanwire.internal.field;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.spanwire.internal.math.GaussLegendre;
import org.spanwire.internal.math.LegendrePolynomials;
import org.spanwire.internal.mesh.Piece;

/**
 * Consecutive pieces on one straight line, taken together for kernels that vary slowly: a rule on
 * any part of the stretch whose weights are those of Lagrange interpolation at Gauss nodes with the
 * current, or its derivative, as weight function. However finely the pieces are graded, the kernel
 * is evaluated at a few nodes only. Immutable to its user and safe for use by several threads.
 */
final class Stretch {

  private final List<SourcePiece> sources;
  private final double[] starts;
  private final double length;
  private final Map<Part, double[]> weights = new ConcurrentHashMap<>();

  private record Part(double from, double to, int nodes, int derivative) {}

  private Stretch(List<SourcePiece> sources) {
    this.sources = List.copyOf(sources);
    starts = new double[sources.size() + 1];
    for (int i = 0; i < sources.size(); i++) {
      starts[i + 1] = starts[i] + sources.get(i).piece().length();
    }
    length = starts[sources.size()];
  }

  /** Gathers pieces in the order given. */
  static List<Stretch> of(List<SourcePiece> sources) {
    List<Stretch> stretches = new ArrayList<>();
    List<SourcePiece> run = new ArrayList<>();
    for (SourcePiece source : sources) {
      if (!run.isEmpty() && !continues(run.get(run.size() - 1).piece(), source.piece())) {
        stretches.add(new Stretch(run));
        run.clear();
      }
      run.add(source);
    }
    if (!run.isEmpty()) {
      stretches.add(new Stretch(run));
    }
    return stretches;
  }

  private static boolean continues(Piece before, Piece after) {
    double turn =
        Math.abs(before.ux() - after.ux())
            + Math.abs(before.uy() - after.uy())
            + Math.abs(before.uz() - after.uz());
    double step =
        Math.abs(before.x(1) - after.x())
            + Math.abs(before.y(1) - after.y())
            + Math.abs(before.z(1) - after.z());
    return turn < 1e-9 && step < 1e-7 * Math.min(before.length(), after.length());
  }

  double length() {
    return length;
  }

  double ux() {
    return sources.get(0).piece().ux();
  }

  double uy() {
    return sources.get(0).piece().uy();
  }

  double uz() {
    return sources.get(0).piece().uz();
  }

  /** x at a distance in metres from the start. */
  double x(double s) {
    return sources.get(0).piece().x() + s * ux();
  }

  double y(double s) {
    return sources.get(0).piece().y() + s * uy();
  }

  double z(double s) {
    return sources.get(0).piece().z() + s * uz();
  }

  /**
   * Weights for the nodes of a Gauss rule on the part from a to b (metres from the start).
   *
   * @param derivative 0 for the current, 1 for its derivative
   * @return real and imaginary part for each node; not to be written to, since the same part is
   *     asked for again and again and its weights are kept
   */
  double[] weights(double a, double b, GaussLegendre rule, int derivative) {
    return weights.computeIfAbsent(
        new Part(a, b, rule.size(), derivative), part -> computeWeights(a, b, rule, derivative));
  }

  private double[] computeWeights(double a, double b, GaussLegendre rule, int derivative) {
    int n = rule.size();
    double[] out = new double[2 * n];
    double[] momentsRe = new double[n];
    double[] momentsIm = new double[n];
    double[] p = new double[n];
    for (int i = 0; i < sources.size(); i++) {
      double from = Math.max(a, starts[i]);
      double to = Math.min(b, starts[i + 1]);
      if (to > from) {
        addMoments(i, a, b, from, to, derivative, momentsRe, momentsIm, p);
      }
    }
    for (int i = 0; i < n; i++) {
      LegendrePolynomials.fill(rule.node(i), n - 1, rule.weight(i), p, 0);
      double re = 0;
      double im = 0;
      for (int m = 0; m < n; m++) {
        re += (m + 0.5) * p[m] * momentsRe[m];
        im += (m + 0.5) * p[m] * momentsIm[m];
      }
      out[2 * i] = re;
      out[2 * i + 1] = im;
    }
    return out;
  }

  private void addMoments(
      int index,
      double a,
      double b,
      double from,
      double to,
      int derivative,
      double[] momentsRe,
      double[] momentsIm,
      double[] p) {
    SourcePiece source = sources.get(index);
    double[] re = source.re()[derivative];
    double[] im = source.im()[derivative];
    double[] q = new double[re.length];
    GaussLegendre rule = GaussLegendre.of((p.length + re.length + 1) / 2);
    double h = source.piece().length();
    for (int node = 0; node < rule.size(); node++) {
      double s = from + 0.5 * (1 + rule.node(node)) * (to - from);
      double t = Math.max(-1, Math.min(1, 2 * (s - starts[index]) / h - 1));
      LegendrePolynomials.fill(t, q.length - 1, 0.5 * (to - from) * rule.weight(node), q, 0);
      double valueRe = 0;
      double valueIm = 0;
      for (int m = 0; m < q.length; m++) {
        valueRe += q[m] * re[m];
        valueIm += q[m] * im[m];
      }
      LegendrePolynomials.fill(2 * (s - a) / (b - a) - 1, p.length - 1, 1, p, 0);
      for (int m = 0; m < p.length; m++) {
        momentsRe[m] += p[m] * valueRe;
        momentsIm[m] += p[m] * valueIm;
      }
    }
  }
}
