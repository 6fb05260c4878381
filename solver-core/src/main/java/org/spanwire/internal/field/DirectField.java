package org.spanwire.internal.field;

import java.util.List;
import org.spanwire.internal.math.GaussLegendre;
import org.spanwire.internal.math.LegendrePolynomials;
import org.spanwire.internal.mesh.Piece;

/**
 * Field in free space of currents along straight pieces. With G the mean of exp(−jkR)/R around the
 * piece, u = s − s' the axial distance and both integrations by parts done,
 *
 * <p>E_u = (1/4πjωε0) { ∫ (I″ + k²I) G ds' − [I ∂G/∂u + I′ G] }, E_ρ = (1/4πjωε0) { ∫ I′ ∂G/∂ρ ds'
 * − [I ∂G/∂ρ] }, H_φ = −(1/4π) ∫ I ∂G/∂ρ ds'
 *
 * <p>(Schelkunoff and Friis 1952, section 10; the brackets are the end points' terms). The
 * integrals are taken by Gauss rules on stretches halved until the rule's error bound, from the
 * distance of the kernel's singularity, is met (Trefethen, SIAM Review 50, 2008, theorem 4.5).
 *
 * <p>Fields leave out the factor 1/(4π); E has the factor 1/(jωε0) left out too. Not thread-safe:
 * holds work space.
 */
final class DirectField {

  /** E_x, E_y, E_z, H_x, H_y, H_z as pairs of real and imaginary part. */
  static final int VALUES = 12;

  private static final int MOST_NODES = 20;
  private static final int DEEPEST = 60;

  /** A point on the surface is taken from outside by this share of the radius. */
  private static final double OUTSIDE = 1e-9;

  private final double k;
  private final double digits;
  private final List<SourcePiece> sources;
  private final List<Terminal> terminals;
  private final double smoothing2;

  private final double[] kernel = new double[6];
  private final double[] legendre;

  /** ∫ (I″ + k²I) G, ∫ I′ ∂G/∂ρ and ∫ I ∂G/∂ρ, real and imaginary. */
  private final double[] integrals = new double[6];

  private SourcePiece source;
  private RingKernel ring;
  private double along;
  private double rho;
  private double nearest2;

  /**
   * @param sources pieces with their currents, images included
   * @param terminals their ends
   * @param smoothing2 square in m² of the distance that smooths line currents, 0 as a rule
   * @param accuracy wanted relative error of each integral
   */
  DirectField(
      List<SourcePiece> sources,
      List<Terminal> terminals,
      double k,
      double smoothing2,
      double accuracy) {
    this.k = k;
    this.sources = sources;
    this.terminals = terminals;
    this.smoothing2 = smoothing2;
    this.digits = 3 - Math.log(accuracy);
    int most = 0;
    for (SourcePiece s : sources) {
      most = Math.max(most, s.terms());
    }
    this.legendre = new double[most];
  }

  /** Adds the field at a point to {@code out}. */
  void add(double x, double y, double z, double[] out) {
    for (SourcePiece next : sources) {
      add(next, x, y, z, out);
    }
    for (Terminal terminal : terminals) {
      add(terminal, x, y, z, out);
    }
  }

  private void add(SourcePiece next, double x, double y, double z, double[] out) {
    source = next;
    Piece p = next.piece();
    double dx = x - p.x();
    double dy = y - p.y();
    double dz = z - p.z();
    along = dx * p.ux() + dy * p.uy() + dz * p.uz();
    double px = dx - along * p.ux();
    double py = dy - along * p.uy();
    double pz = dz - along * p.uz();
    double distance = Math.sqrt(px * px + py * py + pz * pz);
    boolean beside = along >= 0 && along <= p.length();
    rho = beside ? Math.max(distance, p.radius() * (1 + OUTSIDE)) : distance;
    ring = new RingKernel(k, p.radius(), smoothing2);
    nearest2 = (rho - p.radius()) * (rho - p.radius()) + smoothing2;
    for (int i = 0; i < 6; i++) {
      integrals[i] = 0;
    }
    integrate(-1, 1, 0);
    double norm = distance > 0 ? 1 / distance : 0;
    px *= norm;
    py *= norm;
    pz *= norm;
    double hx = p.uy() * pz - p.uz() * py;
    double hy = p.uz() * px - p.ux() * pz;
    double hz = p.ux() * py - p.uy() * px;
    for (int part = 0; part < 2; part++) {
      double axial = integrals[part];
      double across = integrals[2 + part];
      double around = -integrals[4 + part];
      out[part] += axial * p.ux() + across * px;
      out[2 + part] += axial * p.uy() + across * py;
      out[4 + part] += axial * p.uz() + across * pz;
      out[6 + part] += around * hx;
      out[8 + part] += around * hy;
      out[10 + part] += around * hz;
    }
  }

  private void integrate(double from, double to, int depth) {
    double h = 0.5 * (to - from) * source.piece().length();
    double start = 0.5 * (1 + from) * source.piece().length();
    double gap = Math.max(0, Math.max(start - along, along - start - h));
    double y = 2 * Math.sqrt(gap * gap + nearest2) / h;
    double ellipse = Math.min(8, y + Math.sqrt(1 + y * y));
    double growth = 0.25 * k * h * (ellipse - 1 / ellipse);
    int nodes = (int) Math.ceil(0.5 * (source.terms() + 1 + (digits + growth) / Math.log(ellipse)));
    if (nodes > MOST_NODES && depth < DEEPEST) {
      double middle = 0.5 * (from + to);
      integrate(from, middle, depth + 1);
      integrate(middle, to, depth + 1);
      return;
    }
    GaussLegendre rule = GaussLegendre.of(Math.min(nodes, MOST_NODES));
    for (int i = 0; i < rule.size(); i++) {
      double share = 0.5 * (1 + rule.node(i)) * (to - from);
      addNode(from + share, start + 0.5 * (1 + rule.node(i)) * h, 0.5 * h * rule.weight(i));
    }
  }

  private void addNode(double t, double s, double weight) {
    ring.evaluate(along - s, rho, kernel);
    int terms = source.terms();
    LegendrePolynomials.fill(t, terms - 1, weight, legendre, 0);
    double[] re = source.re()[0];
    double[] im = source.im()[0];
    double[] re1 = source.re()[1];
    double[] im1 = source.im()[1];
    double[] re2 = source.re()[2];
    double[] im2 = source.im()[2];
    double i0 = 0;
    double j0 = 0;
    double i1 = 0;
    double j1 = 0;
    double i2 = 0;
    double j2 = 0;
    for (int n = 0; n < terms; n++) {
      double p = legendre[n];
      i0 += p * re[n];
      j0 += p * im[n];
      i1 += p * re1[n];
      j1 += p * im1[n];
      i2 += p * re2[n];
      j2 += p * im2[n];
    }
    i2 += k * k * i0;
    j2 += k * k * j0;
    accumulate(0, i2, j2, kernel[RingKernel.VALUE], kernel[RingKernel.VALUE + 1]);
    accumulate(2, i1, j1, kernel[RingKernel.ACROSS], kernel[RingKernel.ACROSS + 1]);
    accumulate(4, i0, j0, kernel[RingKernel.ACROSS], kernel[RingKernel.ACROSS + 1]);
  }

  private void accumulate(int at, double ar, double ai, double br, double bi) {
    integrals[at] += ar * br - ai * bi;
    integrals[at + 1] += ar * bi + ai * br;
  }

  private void add(Terminal t, double x, double y, double z, double[] out) {
    double dx = x - t.x();
    double dy = y - t.y();
    double dz = z - t.z();
    double u = dx * t.ux() + dy * t.uy() + dz * t.uz();
    double px = dx - u * t.ux();
    double py = dy - u * t.uy();
    double pz = dz - u * t.uz();
    double distance = Math.sqrt(px * px + py * py + pz * pz);
    double r = distance;
    if (Math.abs(u) <= OUTSIDE * t.radius()) {
      r = Math.max(r, t.radius() * (1 + OUTSIDE));
    }
    new RingKernel(k, t.radius(), smoothing2).evaluate(u, r, kernel);
    double norm = distance > 0 ? 1 / distance : 0;
    for (int part = 0; part < 2; part++) {
      double axial =
          -product(part, t.currentRe(), t.currentIm(), RingKernel.ALONG)
              - product(part, t.slopeRe(), t.slopeIm(), RingKernel.VALUE);
      double across = -norm * product(part, t.currentRe(), t.currentIm(), RingKernel.ACROSS);
      out[part] += axial * t.ux() + across * px;
      out[2 + part] += axial * t.uy() + across * py;
      out[4 + part] += axial * t.uz() + across * pz;
    }
  }

  /** Real (part 0) or imaginary (part 1) part of a complex number times a kernel. */
  private double product(int part, double re, double im, int at) {
    return part == 0
        ? re * kernel[at] - im * kernel[at + 1]
        : re * kernel[at + 1] + im * kernel[at];
  }
}
