package org.spanwire.internal.halfspace;

/**
 * Functions of one transverse wavenumber that are integrated together: spectral factors times
 * Bessel functions times a measure M that stands for s ds/(jw), with s = kρ/k0, w = k_z0/k0 and
 * lengths in units of 1/k0.
 */
interface KernelSet {

  /** Number of doubles that {@link #write} writes, two for each function. */
  int size();

  /**
   * Writes the integrands.
   *
   * @param factors Γh, −Γe + w² D, Γe − D and D as {@link ReflectionSpectrum} gives them
   * @param bessel real and imaginary parts of J0(sρ) and J1(sρ), or of Hankel functions in their
   *     place
   * @param rho horizontal distance ρ
   */
  void write(
      double sr,
      double si,
      double wr,
      double wi,
      double mr,
      double mi,
      double[] factors,
      double[] bessel,
      double rho,
      double[] values);
}
