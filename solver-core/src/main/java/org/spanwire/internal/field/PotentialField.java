package org.spanwire.internal.field;

import java.util.List;
import org.spanwire.internal.halfspace.ReflectedFieldKernel;
import org.spanwire.internal.math.GaussLegendre;
import org.spanwire.internal.math.LegendrePolynomials;

/**
 * Field of line currents from mixed potentials: E = −jωA − ∇φ, H = ∇×A/μ0. For what soil reflects
 * they are those of {@link ReflectedFieldKernel} (formulation C of Michalski and Zheng 1990), for
 * the direct field both are those of free space. On each part of a wire the integrand is
 * interpolated at Gauss nodes; the part is halved until the last coefficients of the interpolant
 * are small.
 *
 * <p>Fields leave out the factor 1/(4π); E has the factor 1/(jωε0) left out too. Not thread-safe:
 * holds work space.
 */
final class PotentialField {

  private static final GaussLegendre RULE = GaussLegendre.of(12);
  private static final int NODES = 12;
  private static final int DEEPEST = 30;
  private static final double ROUNDING = 1e-14;

  /** Field of a unit current element (E and H) and of a unit charge (E): 9 complex numbers. */
  private static final int CHANNELS = 18;

  private static final int CHARGE = 12;

  /** Weights of the last two Legendre coefficients at the nodes, in turn. */
  private static final double[] LAST = lastCoefficients();

  /** Potentials of a source at a height z', seen at a height z. */
  interface Potentials {

    /** 1 for ζ = z + z', a reflected field; −1 for ζ = z − z', the direct one. */
    double mirror();

    /** As {@link ReflectedFieldKernel#evaluate}. */
    void evaluate(double rho, double zeta, double[] out);
  }

  /** Those of a source below the surface, its image. */
  record Reflected(Kernels kernels) implements Potentials {

    /** Where they come from. */
    @FunctionalInterface
    interface Kernels {
      /** As {@link ReflectedFieldKernel#evaluate}. */
      void evaluate(double rho, double zeta, double[] out);
    }

    @Override
    public double mirror() {
      return 1;
    }

    @Override
    public void evaluate(double rho, double zeta, double[] out) {
      kernels.evaluate(rho, zeta, out);
    }
  }

  /** Those of free space, all of them G = exp(−jkR)/R. */
  record Direct(double k) implements Potentials {

    @Override
    public double mirror() {
      return -1;
    }

    @Override
    public void evaluate(double rho, double zeta, double[] out) {
      double distance = Math.sqrt(rho * rho + zeta * zeta);
      double re = Math.cos(k * distance) / distance;
      double im = -Math.sin(k * distance) / distance;
      // G'/R = −(jk + 1/R) G/R
      double slopeRe = (k * im - re / distance) / distance;
      double slopeIm = (-k * re - im / distance) / distance;
      for (int part = 0; part < 2; part++) {
        double value = part == 0 ? re : im;
        double slope = part == 0 ? slopeRe : slopeIm;
        out[ReflectedFieldKernel.HORIZONTAL + part] = value;
        out[ReflectedFieldKernel.VERTICAL + part] = value;
        out[ReflectedFieldKernel.CROSS_OVER_RHO + part] = 0;
        out[ReflectedFieldKernel.CROSS_SUM + part] = 0;
        out[ReflectedFieldKernel.SCALAR_ZETA + part] = slope * zeta;
        out[ReflectedFieldKernel.SCALAR_RHO + part] = slope * rho;
        out[ReflectedFieldKernel.HORIZONTAL_ZETA + part] = slope * zeta;
        out[ReflectedFieldKernel.HORIZONTAL_RHO + part] = slope * rho;
        out[ReflectedFieldKernel.CURL + part] = slope * rho;
      }
    }
  }

  private final double k;
  private final List<Stretch> stretches;
  private final List<Terminal> charges;
  private final Potentials potentials;
  private final double tolerance;

  private final double[] kernels = new double[ReflectedFieldKernel.VALUES];
  private final double[][] values = new double[NODES][CHANNELS];

  private double x;
  private double y;
  private double z;
  private double offsetX;
  private double offsetY;
  private double rho;
  private double cos;
  private double sin;

  /**
   * @param tolerance wanted relative error of the interpolation, well above the kernel's own error
   */
  PotentialField(
      List<Stretch> stretches,
      List<Terminal> charges,
      double k,
      Potentials potentials,
      double tolerance) {
    this.k = k;
    this.stretches = stretches;
    this.charges = charges;
    this.potentials = potentials;
    this.tolerance = tolerance;
  }

  /**
   * Adds the field at a point to {@code out}, in the order of {@link DirectField}, and the sums of
   * the moduli of what was added to E and H to {@code gross}.
   */
  void add(double toX, double toY, double toZ, double[] out, double[] gross) {
    x = toX;
    y = toY;
    z = toZ;
    for (Stretch stretch : stretches) {
      integrate(stretch, 0, stretch.length(), 0, out, gross);
    }
    for (Terminal t : charges) {
      evaluate(t.x(), t.y(), t.z());
      charge(values[0]);
      for (int i = 0; i < 6; i += 2) {
        addProduct(-t.currentRe(), -t.currentIm(), values[0], CHARGE + i, out, i, gross, 0);
      }
    }
  }

  private void integrate(
      Stretch stretch, double a, double b, int depth, double[] out, double[] gross) {
    if (depth < DEEPEST && !resolved(stretch, a, b)) {
      double middle = 0.5 * (a + b);
      integrate(stretch, a, middle, depth + 1, out, gross);
      integrate(stretch, middle, b, depth + 1, out, gross);
      return;
    }
    double[] currents = stretch.weights(a, b, RULE, 0);
    double[] slopes = stretch.weights(a, b, RULE, 1);
    for (int node = 0; node < NODES; node++) {
      double[] v = values[node];
      for (int i = 0; i < CHARGE; i += 2) {
        addProduct(currents[2 * node], currents[2 * node + 1], v, i, out, i, gross, i < 6 ? 0 : 1);
      }
      for (int i = 0; i < 6; i += 2) {
        addProduct(slopes[2 * node], slopes[2 * node + 1], v, CHARGE + i, out, i, gross, 0);
      }
    }
  }

  private static void addProduct(
      double re, double im, double[] v, int from, double[] out, int to, double[] gross, int part) {
    double productRe = re * v[from] - im * v[from + 1];
    double productIm = re * v[from + 1] + im * v[from];
    out[to] += productRe;
    out[to + 1] += productIm;
    gross[part] += Math.abs(productRe) + Math.abs(productIm);
  }

  /** Evaluates the nodes of a part and tells whether the interpolant has converged. */
  private boolean resolved(Stretch stretch, double a, double b) {
    double middle = 0.5 * (a + b);
    double dx = x - stretch.x(middle);
    double dy = y - stretch.y(middle);
    double dz = z + potentials.mirror() * stretch.z(middle);
    double distance = Math.sqrt(dx * dx + dy * dy + dz * dz);
    if (b - a > 4 * distance || k * (b - a) > 6) {
      return false;
    }
    for (int node = 0; node < NODES; node++) {
      double s = a + 0.5 * (1 + RULE.node(node)) * (b - a);
      evaluate(stretch.x(s), stretch.y(s), stretch.z(s));
      current(stretch, values[node]);
      charge(values[node]);
    }
    // Phases are known to the rounding of kR only.
    double least = Math.max(tolerance, 8 * Math.ulp(k * distance));
    // On the axis of the stretch H is what rounding leaves of gradients as large as a charge's.
    double rounding = ROUNDING * largest(CHARGE, CHANNELS);
    return tail(CHARGE, CHANNELS, least, 0)
        && tail(0, 6, least, 0)
        && tail(6, CHARGE, least, rounding);
  }

  private static double[] lastCoefficients() {
    double[] last = new double[2 * NODES];
    double[] legendre = new double[NODES];
    for (int node = 0; node < NODES; node++) {
      LegendrePolynomials.fill(RULE.node(node), NODES - 1, RULE.weight(node), legendre, 0);
      last[2 * node] = (NODES - 0.5) * legendre[NODES - 1];
      last[2 * node + 1] = (NODES - 1.5) * legendre[NODES - 2];
    }
    return last;
  }

  private double largest(int from, int to) {
    double largest = 0;
    for (double[] v : values) {
      for (int channel = from; channel < to; channel++) {
        largest = Math.max(largest, Math.abs(v[channel]));
      }
    }
    return largest;
  }

  /**
   * Whether the last two Legendre coefficients of a vector are small against its largest value, or
   * no more than rounding.
   */
  private boolean tail(int from, int to, double share, double rounding) {
    double last = 0;
    for (int channel = from; channel < to; channel++) {
      double odd = 0;
      double even = 0;
      for (int node = 0; node < NODES; node++) {
        double value = values[node][channel];
        odd += LAST[2 * node] * value;
        even += LAST[2 * node + 1] * value;
      }
      last = Math.max(last, Math.abs(odd) + Math.abs(even));
    }
    return last <= share * largest(from, to) + rounding;
  }

  private void evaluate(double fromX, double fromY, double fromZ) {
    offsetX = x - fromX;
    offsetY = y - fromY;
    rho = Math.sqrt(offsetX * offsetX + offsetY * offsetY);
    cos = rho > 0 ? offsetX / rho : 1;
    sin = rho > 0 ? offsetY / rho : 0;
    potentials.evaluate(rho, z + potentials.mirror() * fromZ, kernels);
  }

  /** −∇φ of a unit charge per time, without the common factor: the gradient itself. */
  private void charge(double[] v) {
    for (int part = 0; part < 2; part++) {
      double slope = kernels[ReflectedFieldKernel.SCALAR_RHO + part];
      v[CHARGE + part] = cos * slope;
      v[CHARGE + 2 + part] = sin * slope;
      v[CHARGE + 4 + part] = kernels[ReflectedFieldKernel.SCALAR_ZETA + part];
    }
  }

  /** k²A and ∇×A of a unit current element along the stretch. */
  private void current(Stretch stretch, double[] v) {
    double ux = stretch.ux();
    double uy = stretch.uy();
    double uz = stretch.uz();
    double k2 = k * k;
    double toward = cos * ux + sin * uy;
    double across = cos * uy - sin * ux;
    for (int part = 0; part < 2; part++) {
      double horizontal = kernels[ReflectedFieldKernel.HORIZONTAL + part];
      double vertical = kernels[ReflectedFieldKernel.VERTICAL + part];
      double quotient = kernels[ReflectedFieldKernel.CROSS_OVER_RHO + part];
      double sum = kernels[ReflectedFieldKernel.CROSS_SUM + part];
      double up = kernels[ReflectedFieldKernel.HORIZONTAL_ZETA + part];
      double out = kernels[ReflectedFieldKernel.HORIZONTAL_RHO + part];
      double curl = kernels[ReflectedFieldKernel.CURL + part];
      v[part] = k2 * (horizontal * ux - offsetX * quotient * uz);
      v[2 + part] = k2 * (horizontal * uy - offsetY * quotient * uz);
      v[4 + part] = k2 * (vertical * uz + rho * toward * quotient);
      // Horizontal gradient of C (cosφ u_x + sinφ u_y): along ρ ∂C/∂ρ toward, along φ C/ρ across.
      double radial = (sum - quotient) * toward;
      double azimuthal = quotient * across;
      double gradX = cos * radial - sin * azimuthal;
      double gradY = sin * radial + cos * azimuthal;
      v[6 + part] = sin * curl * uz + gradY - up * uy;
      v[8 + part] = up * ux - cos * curl * uz - gradX;
      v[10 + part] = out * across;
    }
  }
}
