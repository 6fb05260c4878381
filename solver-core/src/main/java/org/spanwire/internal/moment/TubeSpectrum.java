package org.spanwire.internal.moment;

import org.apache.commons.math3.complex.Complex;
import org.spanwire.internal.math.BesselFunctions;
import org.spanwire.internal.math.ScaledModifiedBessel;
import org.spanwire.medium.Conductor;
import org.spanwire.unit.PhysicalConstants;

/**
 * An infinitely long straight wire in free space, seen by waves exp(−jζs) along it: the impressed
 * field over the current is Z(ζ) = (jη0/2πk) (k² − ζ²) I0(γa) K0(γa) + z + ζ² w with γ² = ζ² − k²,
 * the spectrum of the tube kernel (Schelkunoff, Advanced Antenna Theory, 1952) and the wire's own
 * terms of {@link SeriesImpedance}.
 *
 * @param k wavenumber in rad/m
 * @param radius outer radius in metres
 * @param series what the wire adds
 */
record TubeSpectrum(double k, double radius, SeriesImpedance series) {

  private static final int MOST_STEPS = 200;

  /** Modulus from which the exponentials are kept out. */
  private static final double FAR = 6;

  /** A wire of a conductor. */
  static TubeSpectrum of(Conductor conductor, double frequencyHz) {
    return new TubeSpectrum(
        PhysicalConstants.wavenumber(frequencyHz),
        conductor.outerRadius(),
        SeriesImpedance.of(conductor, frequencyHz));
  }

  /** Impedance per length in ohm/m at ζ in the upper half plane or on the real axis beyond k. */
  Complex impedance(Complex zeta) {
    Complex square = zeta.multiply(zeta);
    Complex transverse = square.subtract(k * k);
    return own(square).subtract(transverse.multiply(outside(transverse)));
  }

  private Complex own(Complex square) {
    return new Complex(series.currentRe(), series.currentIm())
        .add(square.multiply(new Complex(series.chargeRe(), series.chargeIm())));
  }

  /** (jη0/2πk) I0(γa) K0(γa) for γ². */
  private Complex outside(Complex transverse) {
    Complex x = transverse.sqrt().multiply(radius);
    Complex product = x.getImaginary() < 0 ? product(x.conjugate()).conjugate() : product(x);
    return product.multiply(
        new Complex(0, PhysicalConstants.IMPEDANCE_OF_FREE_SPACE / (2 * Math.PI * k)));
  }

  /**
   * I0(x) K0(x) in the first quadrant, I0(x) = J0(jx) and K0(x) = −(jπ/2) H0⁽²⁾(−jx) (Abramowitz
   * and Stegun 1964, 9.6.3 and 9.6.4).
   */
  static Complex product(Complex x) {
    if (x.abs() > FAR) {
      ScaledModifiedBessel bessel = ScaledModifiedBessel.at(x);
      return bessel.i0().multiply(bessel.k0());
    }
    double[] bessel = new double[8];
    BesselFunctions.besselJ(x.getImaginary(), x.getReal(), bessel);
    Complex first = new Complex(bessel[0], -bessel[1]);
    BesselFunctions.hankelScaled(x.getImaginary(), -x.getReal(), bessel);
    Complex second = new Complex(bessel[1], -bessel[0]).multiply(Math.PI / 2);
    return first.multiply(second).multiply(x.negate().exp());
  }

  /**
   * The ζ of the wave that the wire guides, a zero of the impedance at or near k, by fixed-point
   * iteration on ζ² − k² = (z + ζ² w)/((jη0/2πk) I0 K0), whose right-hand side varies slowly.
   */
  Complex guided() {
    Complex square = new Complex(k * k);
    if (own(square).equals(Complex.ZERO)) {
      return new Complex(k);
    }
    Complex transverse = new Complex(1e-3 * k * k, -1e-3 * k * k);
    for (int step = 0; step < MOST_STEPS; step++) {
      Complex next = own(square).divide(outside(transverse));
      boolean settled = next.subtract(transverse).abs() <= 1e-13 * k * k;
      transverse = next;
      square = transverse.add(k * k);
      if (settled) {
        break;
      }
    }
    return square.sqrt();
  }
}
