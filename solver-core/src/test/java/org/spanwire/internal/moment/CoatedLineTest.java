package org.spanwire.internal.moment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanwire.internal.math.ScaledModifiedBessel;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Insulation;
import org.spanwire.unit.PhysicalConstants;

class CoatedLineTest {

  /**
   * The wave that an infinite coated wire guides in this model, against the exact axial surface
   * wave (Goubau, Journal of Applied Physics 21, 1950; root of the characteristic equation): metal
   * radius and coat radius in millimetres, permittivity, megahertz, velocity over that of light,
   * and inductance per metre in nH that the coat adds, (μ0/2π)(1 − 1/ε) ln(b/a).
   *
   * <p>The model's tube of radius b has the averaged kernel I0(τb) K0(τb)/2π per length for a
   * current exp(−jβz), τ² = β² − k², so its wave obeys z + β² w + (jωμ0 + β²/jωε0) I0 K0/2π = 0.
   */
  @ParameterizedTest
  @CsvSource({
    "1, 1.8, 2.3, 7.1, 0.9842737, 66.445",
    "1, 1.8, 3.5, 7.1, 0.9798401, 83.97",
    "1, 1.8, 2.3, 28.5, 0.9817382, 66.445",
    "1, 1.8, 2.3, 300, 0.9747332, 66.445",
    "0.8, 1.6, 4.0, 14.2, 0.9734053, 103.97",
    "1, 1.005, 2.5, 3300, 0.9997746, 0.5985"
  })
  void guidesTheWaveOfGoubau(
      double a,
      double b,
      double permittivity,
      double megahertz,
      double velocity,
      double nanohenry) {
    double hertz = megahertz * 1e6;
    double k = PhysicalConstants.wavenumber(hertz);
    SeriesImpedance series =
        SeriesImpedance.of(
            Conductor.perfect(a * 1e-3)
                .withInsulation(new Insulation((b - a) * 1e-3, permittivity, 0)),
            hertz);
    double found =
        new BrentSolver(1e-10)
            .solve(200, v -> reactance(series, k / v, b * 1e-3, hertz), 0.9, 1 - 1e-7);
    assertThat(found).isCloseTo(velocity, withinPercentage(1e-4));
    double omega = 2 * Math.PI * hertz;
    double added = (series.currentIm() + k * k * series.chargeIm()) / omega;
    assertThat(added * 1e9).isCloseTo(nanohenry, withinPercentage(0.01));
  }

  private static double reactance(
      SeriesImpedance series, double beta, double radius, double hertz) {
    double k = PhysicalConstants.wavenumber(hertz);
    double omega = 2 * Math.PI * hertz;
    ScaledModifiedBessel at =
        ScaledModifiedBessel.at(new Complex(Math.sqrt(beta * beta - k * k) * radius));
    double kernel = at.i0().multiply(at.k0()).getReal() / (2 * Math.PI);
    double outside =
        omega * PhysicalConstants.MAGNETIC_CONSTANT
            - beta * beta / (omega * PhysicalConstants.ELECTRIC_CONSTANT);
    return series.currentIm() + beta * beta * series.chargeIm() + outside * kernel;
  }
}
