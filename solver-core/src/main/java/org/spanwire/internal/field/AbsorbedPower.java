package org.spanwire.internal.field;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.internal.basis.CurrentExpansion;
import org.spanwire.internal.math.AdaptiveQuadrature;
import org.spanwire.internal.math.AdaptiveQuadrature.Integral;
import org.spanwire.medium.Soil;
import org.spanwire.unit.PhysicalConstants;

/**
 * Power absorbed by soil: the flux of the transmitted field through z = 0, summed over its plane
 * waves, the fading ones included. It knows nothing of the power accepted or radiated. In a
 * lossless dielectric it is the power radiated downward.
 *
 * <p>Below its lowest point the current's field is the sum of plane waves (Weyl 1919; Clemmow 1966,
 * section 2.2)
 *
 * <p>E = −(ωμ/8π²) ∬ [N − k(k·N)/k0²]/k_z0 e^{−jk·r} dk_x dk_y, k = (k_x, k_y, −k_z0)
 *
 * <p>At z = 0 the magnetic field of the TM part is multiplied by 1 + r_p, the electric field of the
 * TE part by 1 + r_s. With the powers of the two parts orthogonal and Parseval's theorem in the
 * plane, and s = k_ρ/k0, c = √(1 − s²), q = √(ε − s²) (Im ≤ 0):
 *
 * <p>P = (k0²η/4π²) ∫_0^∞ s ds ∫_0^{2π} dα { Re(q ε*) |c N_ρ + s N_z|² / |εc + q|² + Re(q) |N_α|² /
 * |c + q|² }.
 *
 * <p>The square-root singularities at s = 1 and s = Re √ε are removed by substitution; the integral
 * over s is adaptive, that over azimuth of an order that follows from the size.
 */
public final class AbsorbedPower {

  private final CurrentSpectrum spectrum;
  private final double epsRe;
  private final double epsIm;
  private final double lowest;

  /** Beyond this value of k_z h the integrand is e^{−8} of the tolerance and less. */
  private final double tail;

  private final double[] edges;
  private final double[] work = new double[CurrentSpectrum.WORK];

  private AbsorbedPower(CurrentSpectrum spectrum, Complex permittivity, double tolerance) {
    this.spectrum = spectrum;
    this.epsRe = permittivity.getReal();
    this.epsIm = permittivity.getImaginary();
    this.lowest = spectrum.lowest();
    this.tail = 4 - 0.5 * Math.log(tolerance);
    this.edges = edges(permittivity);
  }

  /**
   * Power absorbed by the soil below a current.
   *
   * @param current the current, rms amperes, everywhere above z = 0
   * @param frequencyHz frequency in hertz, positive
   * @param soil the soil that fills z &lt; 0
   * @param relativeTolerance wanted relative error, for example 1e-6
   * @throws IllegalArgumentException if the current touches or crosses the surface
   */
  public static PowerIntegral of(
      CurrentExpansion current, double frequencyHz, Soil soil, double relativeTolerance) {
    double wavenumber = PhysicalConstants.wavenumber(frequencyHz);
    CurrentSpectrum spectrum = new CurrentSpectrum(current, wavenumber);
    if (!(spectrum.lowest() > 0)) {
      throw new IllegalArgumentException(
          "lowest point of the current at "
              + spectrum.lowest() / wavenumber
              + " m must lie above the soil at 0 m; raise the wire");
    }
    AbsorbedPower power =
        new AbsorbedPower(spectrum, soil.complexPermittivity(frequencyHz), relativeTolerance);
    double[] starts = new double[power.edges.length];
    for (int i = 0; i < starts.length; i++) {
      starts[i] = i;
    }
    Integral flux = AdaptiveQuadrature.integrate(power::mapped, starts, relativeTolerance);
    double scale =
        wavenumber
            * wavenumber
            * PhysicalConstants.IMPEDANCE_OF_FREE_SPACE
            / (4 * Math.PI * Math.PI);
    return new PowerIntegral(scale * flux.value(), scale * flux.error());
  }

  /**
   * Ends of the panels in s: 0, 1, then widths that double from the scale of the height, with Re √ε
   * among them.
   */
  private double[] edges(Complex permittivity) {
    boolean lossless = epsIm == 0;
    double refraction = permittivity.sqrt().getReal();
    double last = Math.hypot(1, tail / lowest);
    if (lossless) {
      last = Math.min(last, refraction);
    }
    List<Double> found = new ArrayList<>(List.of(0.0, 1.0));
    double width = Math.min(0.5, 0.5 / lowest);
    double s = 1;
    while (s < last) {
      double next = Math.min(s + width, last);
      if (s < refraction && refraction < next) {
        next = refraction;
      }
      found.add(next);
      s = next;
      width *= 2;
    }
    return found.stream().mapToDouble(Double::doubleValue).toArray();
  }

  /**
   * Integrand over panel number plus τ: s runs through the panel like 3τ² − 2τ³, quadratic at both
   * of its ends.
   */
  private double mapped(double t) {
    int panel = Math.min((int) t, edges.length - 2);
    double tau = t - panel;
    double width = edges[panel + 1] - edges[panel];
    double s = edges[panel] + width * tau * tau * (3 - 2 * tau);
    // 1 − s² without cancellation next to the panel's end at s = 1.
    double rest = 1 - tau;
    double below = panel == 0 ? rest * rest * (1 + 2 * tau) : 1 - s;
    if (panel == 1) {
      below = -width * tau * tau * (3 - 2 * tau);
    }
    return ring(s, below * (1 + s)) * 6 * tau * rest * width;
  }

  /** s times the integral over azimuth; {@code c2} is 1 − s². */
  private double ring(double s, double c2) {
    double wRe = epsRe - 1 + c2;
    double size = Math.sqrt(0.5 * (Math.hypot(wRe, epsIm) + Math.abs(wRe)));
    double other = size == 0 ? 0 : 0.5 * Math.abs(epsIm) / size;
    double qRe = wRe >= 0 ? size : other;
    double qIm = wRe >= 0 ? -other : -size;
    double cRe = c2 >= 0 ? Math.sqrt(c2) : 0;
    double cIm = c2 >= 0 ? 0 : -Math.sqrt(-c2);
    double dRe = epsRe * cRe - epsIm * cIm + qRe;
    double dIm = epsRe * cIm + epsIm * cRe + qIm;
    double magnetic = (qRe * epsRe + qIm * epsIm) / (dRe * dRe + dIm * dIm);
    double electric = qRe / ((cRe + qRe) * (cRe + qRe) + (cIm + qIm) * (cIm + qIm));
    // Pieces that this wave does not reach any more need no resolution.
    double height = cIm == 0 ? Double.POSITIVE_INFINITY : lowest - 2 * tail / cIm;
    int samples = AzimuthRule.samples(s * spectrum.horizontalRadius(height));
    double step = 2 * Math.PI / samples;
    double sum = 0;
    for (int i = 0; i < samples; i++) {
      sum += flux(s, cRe, cIm, i * step, magnetic, electric);
    }
    return s * sum * step;
  }

  private double flux(
      double s, double cRe, double cIm, double alpha, double magnetic, double electric) {
    double cos = Math.cos(alpha);
    double sin = Math.sin(alpha);
    if (cIm == 0) {
      spectrum.evaluate(s * cos, s * sin, -cRe, false, work);
    } else {
      spectrum.evaluateEvanescent(s * cos, s * sin, -cIm, work);
    }
    double rhoRe = work[0] * cos + work[2] * sin;
    double rhoIm = work[1] * cos + work[3] * sin;
    double acrossRe = work[2] * cos - work[0] * sin;
    double acrossIm = work[3] * cos - work[1] * sin;
    double tmRe = cRe * rhoRe - cIm * rhoIm + s * work[4];
    double tmIm = cRe * rhoIm + cIm * rhoRe + s * work[5];
    return magnetic * (tmRe * tmRe + tmIm * tmIm)
        + electric * (acrossRe * acrossRe + acrossIm * acrossIm);
  }
}
