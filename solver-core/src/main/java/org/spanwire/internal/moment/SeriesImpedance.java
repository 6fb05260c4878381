package org.spanwire.internal.moment;

import org.apache.commons.math3.complex.Complex;
import org.spanwire.internal.basis.LocalBasis;
import org.spanwire.internal.mesh.Mesh;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Insulation;
import org.spanwire.unit.PhysicalConstants;

/**
 * What a wire adds to the field outside it: a series impedance z for current, ∫ z f_m f_n ds, and w
 * for charge, ∫ w f_m' f_n' ds.
 *
 * <p>z holds the conductor's surface impedance and, with a coat from radius a to b, the flux in it,
 * jωμ0 ln(b/a)/2π; w the potential drop across the coat, ln(b/a)/(2π jω ε0 ε_2). The field outside
 * is that of radius b. Needs b much smaller than the wavelength. Same terms as the series impedance
 * of a coaxial line section (Goubau 1950).
 *
 * @param currentRe real part of z, ohm/m
 * @param currentIm imaginary part
 * @param chargeRe real part of w, ohm·m
 * @param chargeIm imaginary part
 */
record SeriesImpedance(double currentRe, double currentIm, double chargeRe, double chargeIm) {

  /** Of every piece of a mesh. */
  static SeriesImpedance[] of(Mesh mesh, double frequencyHz) {
    SeriesImpedance[] series = new SeriesImpedance[mesh.size()];
    for (int i = 0; i < series.length; i++) {
      series[i] =
          i > 0 && mesh.wire()[i] == mesh.wire()[i - 1]
              ? series[i - 1]
              : of(mesh.wires().get(mesh.wire()[i]).conductor(), frequencyHz);
    }
    return series;
  }

  static SeriesImpedance of(Conductor conductor, double frequencyHz) {
    Complex z = conductor.surfaceImpedance(frequencyHz);
    if (conductor.insulation().isEmpty()) {
      return new SeriesImpedance(z.getReal(), z.getImaginary(), 0, 0);
    }
    Insulation coat = conductor.insulation().get();
    double omega = 2 * Math.PI * frequencyHz;
    double log = Math.log1p(coat.thickness() / conductor.radius()) / (2 * Math.PI);
    Complex permittivity =
        new Complex(1, -coat.lossTangent())
            .multiply(PhysicalConstants.ELECTRIC_CONSTANT * coat.relativePermittivity());
    Complex w = permittivity.multiply(new Complex(0, omega)).reciprocal().multiply(log);
    return new SeriesImpedance(
        z.getReal(),
        z.getImaginary() + omega * PhysicalConstants.MAGNETIC_CONSTANT * log,
        w.getReal(),
        w.getImaginary());
  }

  /** ∫ N_f N_g dt over one piece. */
  static double product(int f, int g) {
    double sum = 0;
    for (int m : new int[] {LocalBasis.low(f), LocalBasis.high(f)}) {
      for (int n : new int[] {LocalBasis.low(g), LocalBasis.high(g)}) {
        if (m == n) {
          double a = m == LocalBasis.low(f) ? LocalBasis.lowFactor(f) : LocalBasis.highFactor(f);
          double b = n == LocalBasis.low(g) ? LocalBasis.lowFactor(g) : LocalBasis.highFactor(g);
          sum += a * b * 2 / (2 * m + 1);
        }
      }
    }
    return sum;
  }

  /** ∫ N_f' N_g' dt over one piece. */
  static double derivativeProduct(int f, int g) {
    int m = LocalBasis.derivativeDegree(f);
    return m == LocalBasis.derivativeDegree(g)
        ? LocalBasis.derivativeFactor(f) * LocalBasis.derivativeFactor(g) * 2 / (2 * m + 1)
        : 0;
  }
}
