package org.spanwire.internal.halfspace;

import org.spanwire.internal.math.BesselFunctions;
import org.spanwire.internal.math.VectorQuadrature;

/**
 * The kernels by a path of descent through the saddle point (lengths in units of 1/k0). With kρ =
 * k0 sinθ and J0 replaced by H0⁽²⁾/2 over the whole line, K[f] = ½ ∫ f (s/j) H0⁽²⁾(sρ) e^{−jwζ} dθ
 * and C = ½ ∫ s² w D H1⁽²⁾(sρ) e^{−jwζ} dθ. In the variable u, cos(θ − θ0) = 1 − ju², tanθ0 = ρ/ζ,
 * the exponentials together are e^{−jR'} e^{−Ru²}, whatever the soil (Felsen and Marcuvitz 1973,
 * section 4.2).
 *
 * <p>The half u &lt; 0 is followed as it is. The half u &gt; 0 is turned by an angle φ, chosen so
 * that it passes neither close to the pole q = −εw, which lies on or below the real u axis, nor
 * close to the branch point q = 0. If the branch point lies above the turned path, the integral
 * along its two sides is added ({@link #addBranchCut}).
 */
final class SaddlePath implements VectorQuadrature.Integrand {

  private static final double STEP_OF_ANGLE = 0.05;
  private static final int ANGLES = 13;
  private static final double STEEPEST = STEP_OF_ANGLE * (ANGLES - 1);

  /**
   * Angle of the second part of a bent path, and the angle by which its corner lies above the
   * branch point.
   */
  private static final double BENT_ANGLE = 0.2;

  private static final double CLEARANCE = 0.35;

  /** Below this value of k0R' √|ε − 1| the path must not leave the branch point above it. */
  private static final double NEAR = 10;

  private final ReflectionSpectrum spectrum;
  private final KernelSet kernels;
  private final ComplexRoot root = new ComplexRoot();
  private final double[] factors = new double[8];
  private final double[] hankel = new double[8];
  private final BranchCut branchCut = new BranchCut();

  private double rho;
  private double distance;
  private double cos0;
  private double sin0;

  private double poleRe;
  private double poleIm;
  private double branchRe;
  private double branchIm;
  private double branchW;
  private double branchWIm;
  private double k1Re;
  private double k1Im;

  private double startRe;
  private double startIm;
  private double directionRe;
  private double directionIm;
  private double factorRe;
  private double factorIm;
  private double rootC;
  private double rootS;

  SaddlePath(ReflectionSpectrum spectrum, KernelSet kernels) {
    this.spectrum = spectrum;
    this.kernels = kernels;
  }

  /**
   * Adds the kernels times e^{jR'} to {@code sum}; {@code digits} is −ln of the wanted relative
   * error.
   */
  void add(
      double rho,
      double zeta,
      double limit,
      double digits,
      VectorQuadrature quadrature,
      double[] sum) {
    this.rho = rho;
    distance = Math.sqrt(rho * rho + zeta * zeta);
    cos0 = zeta / distance;
    sin0 = rho / distance;
    double theta0 = Math.atan2(rho, zeta);
    locateSingularities();
    double pole = Math.hypot(poleRe, poleIm);
    double branch = Math.hypot(branchRe, branchIm);
    double wide = 1.5 / Math.sqrt(distance);

    turn(Math.PI, -Math.PI / 6);
    double logarithm = Math.sqrt(2) * Math.sin(0.5 * theta0);
    addPanels(
        this, Math.min(wide, logarithm), Math.sqrt(digits / distance), limit, quadrature, sum);

    double fine = Math.min(wide, Math.min(pole, branch));
    double towardsBranch = branchRe > 0 ? Math.atan2(branchIm, branchRe) : -Math.PI;
    // Close to the image the integrand grows beyond the branch point unless the path passes above
    // it.
    boolean passAbove = distance * spectrum.rootOfContrast() < NEAR;
    if (passAbove && towardsBranch > STEEPEST - 0.25) {
      addBentPath(towardsBranch, branch, fine, limit, digits, quadrature, sum);
      return;
    }
    double angle = bestAngle(digits, passAbove ? towardsBranch : -Math.PI);
    double slope = theta0 - 2 * angle;
    boolean branchAbove = towardsBranch > angle;
    turn(
        angle,
        branchAbove ? 0.125 * Math.PI - 0.5 * slope : -0.25 * (Math.PI + 2 * Math.max(slope, 0)));
    double end = Math.sqrt(digits / (distance * Math.cos(2 * angle)));
    addPanels(this, fine, end, limit, quadrature, sum);

    double branchDecay = distance * (branchRe * branchRe - branchIm * branchIm);
    if (branchAbove && branchDecay < digits) {
      branchCut.prepare(angle, slope);
      double reach = (digits - branchDecay) / (distance * Math.cos(2 * angle));
      addPanels(branchCut, Math.min(wide, branch), Math.sqrt(reach), limit, quadrature, sum);
    }
  }

  /** The half u > 0 by a straight line to a corner above the branch point and a ray from there. */
  private void addBentPath(
      double towardsBranch,
      double branch,
      double fine,
      double limit,
      double digits,
      VectorQuadrature quadrature,
      double[] sum) {
    double slope = Math.atan2(sin0, cos0) - 2 * BENT_ANGLE;
    double eta = -0.25 * (Math.PI + 2 * Math.max(slope, 0));
    double corner = towardsBranch + CLEARANCE;
    turn(corner, eta);
    addPanels(this, fine, branch, limit, quadrature, sum);
    turn(BENT_ANGLE, eta);
    startRe = branch * Math.cos(corner);
    startIm = branch * Math.sin(corner);
    double growth = distance * (startIm * startIm - startRe * startRe);
    double end = Math.sqrt((digits + Math.max(growth, 0)) / (distance * Math.cos(2 * BENT_ANGLE)));
    addPanels(this, Math.min(fine, CLEARANCE * branch), end, limit, quadrature, sum);
  }

  private static void addPanels(
      VectorQuadrature.Integrand integrand,
      double scale,
      double end,
      double limit,
      VectorQuadrature quadrature,
      double[] sum) {
    double a = 0;
    double b = scale;
    while (a < end) {
      b = Math.min(b, end);
      quadrature.add(integrand, a, b, limit, sum);
      a = b;
      b = 2 * a;
    }
  }

  /**
   * Sets the ray u = t e^{jφ} from the saddle and the direction 2η around which the squares of q
   * lie.
   */
  private void turn(double angle, double eta) {
    startRe = 0;
    startIm = 0;
    directionRe = angle == Math.PI ? -1 : Math.cos(angle);
    directionIm = angle == Math.PI ? 0 : Math.sin(angle);
    // The left half runs towards the saddle: ∫ g(u) du over u < 0 is ∫ g(−t) dt.
    factorRe = angle == Math.PI ? 1 : directionRe;
    factorIm = directionIm;
    rootC = Math.cos(eta);
    rootS = Math.sin(eta);
  }

  /**
   * Pole and branch point in the u plane: s = 1/√(1 + 1/ε), w = −1/√(1 + ε); s = √ε, w = −√(1 − ε).
   */
  private void locateSingularities() {
    double er = spectrum.epsRe;
    double ei = spectrum.epsIm;
    double norm = er * er + ei * ei;
    root.principal(1 + er / norm, -ei / norm);
    double n = root.re * root.re + root.im * root.im;
    double sr = root.re / n;
    double si = -root.im / n;
    root.principal(1 + er, ei);
    n = root.re * root.re + root.im * root.im;
    toSaddlePlane(sr, si, -root.re / n, root.im / n);
    poleRe = root.re;
    poleIm = root.im;
    root.principal(er, ei);
    k1Re = root.re;
    k1Im = root.im;
    root.principal(1 - er, -ei);
    // Root of 1 − ε with negative imaginary part; on the cut (lossless soil) the limit of small
    // loss.
    boolean up = root.im > 0 || (root.im == 0 && root.re > 0) || ei == 0;
    branchW = up ? -root.re : root.re;
    branchWIm = -Math.abs(root.im);
    toSaddlePlane(k1Re, k1Im, branchW, branchWIm);
    branchRe = root.re;
    branchIm = root.im;
  }

  /**
   * u = sin(θ − θ0)/√(2j + u²), u² = j(cos(θ − θ0) − 1), for given s = sinθ, w = cosθ; the result
   * is left in the root.
   */
  private void toSaddlePlane(double sr, double si, double wr, double wi) {
    double cr = wr * cos0 + sr * sin0;
    double ci = wi * cos0 + si * sin0;
    double snr = sr * cos0 - wr * sin0;
    double sni = si * cos0 - wi * sin0;
    root.principal(-ci, 1 + cr);
    double n = root.re * root.re + root.im * root.im;
    double ur = (snr * root.re + sni * root.im) / n;
    double ui = (sni * root.re - snr * root.im) / n;
    root.re = ur;
    root.im = ui;
  }

  /** The angle at which the ray keeps the largest angular distance from pole and branch point. */
  private double bestAngle(double digits, double least) {
    double pole = Math.atan2(poleIm, poleRe);
    double branch = Math.atan2(branchIm, branchRe);
    boolean branchFar =
        distance * (branchRe * branchRe - branchIm * branchIm) > 2 * digits && branchRe > 0;
    double best = -1;
    double angle = 0;
    for (int i = 0; i < ANGLES; i++) {
      double candidate = i * STEP_OF_ANGLE;
      double gap = Math.min(0.35, candidate - pole);
      if (!branchFar) {
        gap = Math.min(gap, Math.abs(candidate - branch));
      }
      double merit = gap * Math.cos(2 * candidate);
      if (merit > best && candidate > least) {
        best = merit;
        angle = candidate;
      }
    }
    return angle;
  }

  @Override
  public void evaluate(double t, double[] values) {
    double ur = startRe + t * directionRe;
    double ui = startIm + t * directionIm;
    double u2r = ur * ur - ui * ui;
    double u2i = 2 * ur * ui;
    root.principal(u2r, u2i + 2); // √(2j + u²)
    double gr = root.re;
    double gi = root.im;
    double snr = ur * gr - ui * gi;
    double sni = ur * gi + ui * gr;
    double cr = 1 + u2i; // 1 − ju²
    double ci = -u2r;
    double n = 2 / (gr * gr + gi * gi);
    double decay = Math.exp(-distance * u2r);
    double phase = -distance * u2i;
    // dθ = 2j du/√(2j + u²)
    double er = decay * Math.cos(phase) * n;
    double ei = decay * Math.sin(phase) * n;
    double dr = gi * factorRe + gr * -factorIm;
    double di = gr * factorRe + gi * factorIm;
    double mr = er * dr - ei * di;
    double mi = er * di + ei * dr;
    double sr = sin0 * cr + cos0 * snr;
    double si = sin0 * ci + cos0 * sni;
    double wr = cos0 * cr - sin0 * snr;
    double wi = cos0 * ci - sin0 * sni;
    root.around(spectrum.epsRe - (sr * sr - si * si), spectrum.epsIm - 2 * sr * si, rootC, rootS);
    spectrum.at(wr, wi, root.re, root.im, factors);
    combine(sr, si, wr, wi, 0.5 * mr, 0.5 * mi, values);
  }

  /** Hands s/j times the measure to the kernels, with Hankel functions for Bessel functions. */
  private void combine(
      double sr, double si, double wr, double wi, double mr, double mi, double[] values) {
    BesselFunctions.hankelScaled(rho * sr, rho * si, hankel);
    double ar = sr * mr - si * mi;
    double ai = sr * mi + si * mr;
    kernels.write(sr, si, wr, wi, ai, -ar, factors, hankel, rho, values);
  }

  /**
   * The two sides of the cut from q = 0 along u² = u_b² + v² e^{2jφ}, parallel to the path: −½ ∫
   * (f(q) − f(−q)) …, q continued from the side of the path.
   */
  private final class BranchCut implements VectorQuadrature.Integrand {

    private double turnRe;
    private double turnIm;
    private double rayC;
    private double rayS;
    private double u2Re;
    private double u2Im;

    void prepare(double angle, double slope) {
      turnRe = Math.cos(2 * angle);
      turnIm = Math.sin(2 * angle);
      u2Re = branchRe * branchRe - branchIm * branchIm;
      u2Im = 2 * branchRe * branchIm;
      // Direction of s when the ray leaves the branch point: ds = j e^{2jφ} w/sin(θ − θ0) d(v²).
      double snr = k1Re * cos0 - branchW * sin0;
      double sni = k1Im * cos0 - branchWIm * sin0;
      double leaving =
          0.5 * Math.PI + 2 * angle + Math.atan2(branchWIm, branchW) - Math.atan2(sni, snr);
      double near = Math.PI + Math.atan2(k1Im, k1Re) + leaving;
      double eta = 0.25 * (near + Math.PI - 2 * slope);
      rayC = Math.cos(eta);
      rayS = Math.sin(eta);
    }

    @Override
    public void evaluate(double v, double[] values) {
      double v2 = v * v;
      double u2r = u2Re + v2 * turnRe;
      double u2i = u2Im + v2 * turnIm;
      double cr = 1 + u2i;
      double ci = -u2r;
      // sin(θ − θ0) = √(1 − c) √(1 + c)
      root.principal(1 - cr, -ci);
      double pr = root.re;
      double pi = root.im;
      root.principal(1 + cr, ci);
      double snr = pr * root.re - pi * root.im;
      double sni = pr * root.im + pi * root.re;
      double sr = sin0 * cr + cos0 * snr;
      double si = sin0 * ci + cos0 * sni;
      double wr = cos0 * cr - sin0 * snr;
      double wi = cos0 * ci - sin0 * sni;
      // dθ = −dc/sin(θ − θ0) = j e^{2jφ} 2v dv/sin(θ − θ0); the factor is −½.
      double n = -v / (snr * snr + sni * sni);
      double dr = (-turnIm * snr + turnRe * sni) * n;
      double di = (turnRe * snr + turnIm * sni) * n;
      double decay = Math.exp(-distance * u2r);
      double er = decay * Math.cos(distance * u2i);
      double ei = -decay * Math.sin(distance * u2i);
      root.around(spectrum.epsRe - (sr * sr - si * si), spectrum.epsIm - 2 * sr * si, rayC, rayS);
      spectrum.jump(wr, wi, root.re, root.im, factors);
      combine(sr, si, wr, wi, dr * er - di * ei, dr * ei + di * er, values);
    }
  }
}
