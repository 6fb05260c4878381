package org.spanwire.internal.halfspace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Impedance change of an elementary dipole at height H over ground, in units of its free-space
 * radiation resistance, from the potentials. Values: exact spectral integrals of Sommerfeld (1909,
 * 1926), with e^{+jωt}, s_z = √(1 − s²), r_p and r_s the Fresnel coefficients: vertical (3/2) ∫
 * (s³/s_z) r_p e^{−2jkHs_z} ds, horizontal (3/4) ∫ (s/s_z)(r_s − s_z² r_p) e^{−2jkHs_z} ds; five
 * decimals. In the potentials these are (3/2) j (v − ∂²φ/∂ζ²) and (3/2) j (h + ∂²φ/∂ρ²) at ρ = 0
 * with k0 = 1, so that all but the cross kernel are put to the test.
 */
class DipoleOverGroundTest {

  private static final double STEP = 0.08;

  @ParameterizedTest
  @CsvSource({
    "70, 5, 0.05, 2.03917, 14.28479, 0.13672, 5.24633",
    "70, 5, 0.1, 1.87505, 2.26888, 0.31472, 0.77918",
    "70, 5, 0.25, 1.30133, -0.10072, 1.15598, 0.42119",
    "70, 5, 0.5, 0.92480, 0.01311, 0.95953, -0.22921",
    "30, 0.01, 0.05, 3.35404, 13.87015, 1.17206, 5.53449",
    "30, 0.01, 0.1, 2.15533, 1.98047, 0.71617, 0.76110",
    "30, 0.01, 0.25, 1.23360, -0.13166, 1.15191, 0.28916",
    "30, 0.01, 0.5, 0.94303, 0.02020, 0.95225, -0.16622",
    "13, 0.005, 0.05, 4.01854, 13.32441, 1.55631, 5.50900",
    "13, 0.005, 0.1, 2.26782, 1.81829, 0.87132, 0.75865",
    "13, 0.005, 0.25, 1.20269, -0.14445, 1.15376, 0.23506",
    "13, 0.005, 0.5, 0.95086, 0.02329, 0.94752, -0.14062",
    "15, 0.001, 0.05, 3.28871, 12.72973, 1.43224, 5.20367",
    "15, 0.001, 0.1, 2.10369, 1.72943, 0.87681, 0.62834",
    "15, 0.001, 0.25, 1.19058, -0.11578, 1.10404, 0.22904",
    "15, 0.001, 0.5, 0.95406, 0.01614, 0.97095, -0.13419",
    "3, 0.0001, 0.05, 2.58502, 7.36364, 1.40654, 3.18742",
    "3, 0.0001, 0.1, 1.73146, 0.98019, 1.05736, 0.40416",
    "3, 0.0001, 0.25, 1.09357, -0.08130, 1.05479, 0.08855",
    "3, 0.0001, 0.5, 0.97873, 0.01176, 0.98485, -0.05854",
    "80, 0.003, 0.05, 2.82911, 13.86247, 0.95120, 5.27995",
    "80, 0.003, 0.1, 2.00850, 2.02863, 0.59060, 0.68177",
    "80, 0.003, 0.25, 1.24994, -0.10828, 1.12572, 0.33128",
    "80, 0.003, 0.5, 0.93857, 0.01429, 0.96757, -0.18439"
  })
  void resistanceAndReactanceFollowFromThePotentials(
      double permittivity,
      double conductivity,
      double height,
      double rv,
      double xv,
      double rh,
      double xh) {
    SommerfeldKernel kernel =
        new SommerfeldKernel(1, SoilsForTests.at(permittivity, conductivity, 7.1e6), 1e-12);
    double zeta = 4 * Math.PI * height;
    double[] at = new double[8];
    kernel.evaluate(0, zeta, at, 0);
    Complex curvatureZ = secondDerivative(kernel, zeta, true);
    Complex curvatureX = secondDerivative(kernel, zeta, false);
    Complex vertical = new Complex(at[2], at[3]).subtract(curvatureZ).multiply(new Complex(0, 1.5));
    Complex horizontal = new Complex(at[0], at[1]).add(curvatureX).multiply(new Complex(0, 1.5));
    assertThat(1 + vertical.getReal()).isCloseTo(rv, within(2e-5));
    assertThat(vertical.getImaginary()).isCloseTo(xv, within(2e-5));
    assertThat(1 + horizontal.getReal()).isCloseTo(rh, within(2e-5));
    assertThat(horizontal.getImaginary()).isCloseTo(xh, within(2e-5));
  }

  /** Central difference of eighth order of the scalar kernel (Fornberg 1988, table 1). */
  private static Complex secondDerivative(SommerfeldKernel kernel, double zeta, boolean alongZ) {
    double[] weights = {-205.0 / 72, 8.0 / 5, -1.0 / 5, 8.0 / 315, -1.0 / 560};
    double step = STEP * Math.min(1, zeta);
    double[] out = new double[8];
    Complex sum = Complex.ZERO;
    for (int i = -4; i <= 4; i++) {
      double shift = i * step;
      kernel.evaluate(alongZ ? 0 : Math.abs(shift), alongZ ? zeta + shift : zeta, out, 0);
      sum = sum.add(new Complex(out[4], out[5]).multiply(weights[Math.abs(i)]));
    }
    return sum.divide(step * step);
  }
}
